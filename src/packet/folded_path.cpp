#include <algorithm>

#include "packet/pleat_drawing.h"

namespace gownsheaf {

// Each mark brings its fold onto its lay-on line. Where the fold comes first (f < l) the cloth is seen up to the fold,
// goes back under by the depth and forward again to the lay-on line below the fold. Where the lay-on line comes first
// (f > l) the cloth goes on below the next face by the depth, returns, and is seen from the fold on.
std::vector<Stretch> folded_path(const PleatPlan& plan) {
  std::vector<Stretch> path;
  Length flat{}, edge{};
  int pleat = 0, nth = 0;  // the fold's place in its pleat
  for (const PleatMark& m : plan.marks) {
    const Length start = std::min(m.fold, m.lay_on);
    const Length depth = (std::max(m.fold, m.lay_on) - start).times(1, 2);
    const Length seen = start - flat;
    const bool fold_first = m.fold < m.lay_on;
    nth = m.pleat == pleat ? nth + 1 : 0;
    pleat = m.pleat;
    // Of the two folds on each side of a double box pleat the outer one lies below.
    const int below = plan.kind == "double box" && (nth == 0 || nth == 3) ? 2 : 0;
    if (!seen.is_zero()) {
      path.push_back({edge, edge + seen, 0});
      edge += seen;
    }
    if (fold_first) {
      path.push_back({edge, edge - depth, below + 1});
      path.push_back({edge - depth, edge, below + 2});
    } else {
      path.push_back({edge, edge + depth, below + 2});
      path.push_back({edge + depth, edge, below + 1});
    }
    flat = std::max(m.fold, m.lay_on);
  }
  if (flat < plan.flat) path.push_back({edge, edge + (plan.flat - flat), 0});
  return path;
}

DrawnPleats drawn_pleats(const PleatPlan& plan, double narrowest) {
  DrawnPleats out;
  const auto pleats = static_cast<int>(plan.count);
  out.crowded = pleats > 6 && narrowest < 24;
  for (std::size_t i = 0; i < plan.marks.size(); ++i) {
    const int pleat = plan.marks[i].pleat;
    if (!out.crowded || pleat <= 3) out.first.push_back(i);
    else if (pleat > pleats - 2) out.last.push_back(i);
  }
  if (out.crowded) out.left_out = pleats - 5;
  return out;
}

}  // namespace gownsheaf
