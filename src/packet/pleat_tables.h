// Tables of the pleats sheet: marks, what lands where, plans to choose from, tiers.
#pragma once
#include <string>

#include "packet/figure_text.h"
#include "packet/sheets.h"

namespace gownsheaf {

// below: the run's key, and at the hip or the hem "/at hip" after it. far: read from further off.
Table marks_table(const PleatPlan& plan, const std::vector<PleatMark>& marks, const std::string& below, const FigureText& text,
                  bool far);
Table landings_table(const PleatPlan& plan, const FigureText& text, bool far);
// What the seam of this run comes to, its stitching, and what is added to the edges of inverted pleats at seams.
Text at_the_seam(const PleatPlan& plan, const std::string& key, const FigureText& text);
void add_landings(Sheet& sheet, const PleatPlan& plan, const FigureText& text, bool far);
Sheet gathered_sheet(const PacketInput& input, const PleatPlan& plan);
Table choices_table(const PleatPlan& plan, const FigureText& text, bool far);
Table tiers_table(const PleatPlan& plan, const FigureText& text, bool far);

}  // namespace gownsheaf
