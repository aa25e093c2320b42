// Where breadth seams, plackets and pockets come to lie when the skirt is pleated: in running lengths, as an angle from
// centre front, and in which pleat. A half of the skirt is walked from centre front to centre back through its runs; the
// other half mirrors it. A run that turns one way all round is walked right round.
//
//   angle     place after pleating / half of the finished round x 180 degrees (or right round, 360)
//   pockets   unwritten: the fold line nearest 95 degrees, of those between 80 and 110 (common practice)
//
// Formulas: docs/formulas.md#pleat-map. Tests: tests/calculate/pleat_map_test.cpp.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/rounds.h"
#include "diagnostics/diagnostics.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

// Seams of full breadths, flat from centre front: of half the round, or of all of it. A seam lies at centre front, or the
// middle of a breadth; either way seams fall symmetrically. Empty where it is not known.
std::vector<Length> breadth_seams(const Project& project, RoundSums& sums, const PleatRun& run, bool half, bool seam_at_front);

// A place of the flat cloth in a pleated run, distances from where its marks begin.
struct Landing {
  enum class In { seen, fold, line, hidden } in = In::seen;  // fold: on a fold line; line: where a fold is laid
  int pleat = 0;     // whose fold, or the pleat that follows where it is seen; 0 past the last one
  Length pleated;    // where it lies after pleating
  Length to_edge;    // hidden: to the nearer end of the doubled cloth; + is further along the marks
  Length to_hidden;  // seen: to the nearest cloth that is hidden; + is further along the marks
};
// plus: flat cloth before the pleats, which is not part of the finished width.
Landing landing_of(const std::vector<PleatMark>& marks, Length at, Length plus = {});

// The run as one walks it from centre front: where it begins, what it has there of flat and finished cloth.
bool marked_from_the_back(const RunSum& s);  // marks of halves toward centre front begin at the back

// Fills the plans' landings and ends. Warnings: pleat-on-placket, seam-shows. Note: pocket-out-of-reach.
void add_pleat_map(const Project& project, RoundSums& sums, std::vector<PleatPlan>& plans, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
