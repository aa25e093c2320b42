// A pleat run drawn twice: flat (a key: where to fold, what goes under) and folded, seen from the top edge, true along
// the waist. Works from the marks alone, so knife, box and inverted pleats come out of the same rules.
#pragma once
#include <optional>
#include <vector>

#include "figures/plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"
#include "packet/scale.h"

namespace gownsheaf {

// Pleats drawn side by side. Crowded: the first three and the last two with a gap; the table stays whole.
struct DrawnPleats {
  bool crowded = false;
  std::vector<std::size_t> first, last;  // marks, by their place in PleatPlan::marks
  int left_out = 0;                      // pleats in the gap
};
DrawnPleats drawn_pleats(const PleatPlan& plan, double narrowest);

// The flat run stretched to 486 wide. Cloth that goes under is grey.
Drawing draw_flat_run(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter);
// The folded run at 1:2 or smaller (1:1 when crowded needs it). `shows` and `deep` are dimensioned from the figures.
Drawing draw_folded_run(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter);

// The first pleats of the flat run at full size, in strips as long as the page is wide; nothing where not even one pleat
// would fit three of them.
std::optional<Drawing> draw_trial_strip(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter);

// The folded run as a list of stretches along the finished edge: for the drawing and its laws.
struct Stretch {
  Length from, to;  // finished positions; from > to: the cloth runs back
  int layer = 0;    // 0 seen, 1 turned under, 2 below it; 3 and 4: the second fold of a double box pleat
};
std::vector<Stretch> folded_path(const PleatPlan& plan);

}  // namespace gownsheaf
