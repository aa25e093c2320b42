#include <algorithm>

#include "packet/pleat_drawing.h"

namespace gownsheaf {

// Each mark brings its fold onto its lay-on line. Where the fold comes first (f < l) the cloth is seen up to the fold,
// goes back under by the depth and forward again to the lay-on line below the fold. Where the lay-on line comes first
// (f > l) the cloth goes on below the next face by the depth, returns, and is seen from the fold on.
std::vector<Stretch> folded_path(const PleatPlan& plan) {
  std::vector<Stretch> path;
  Length flat{}, edge{};
  for (const PleatMark& m : plan.marks) {
    const Length start = std::min(m.fold, m.lay_on);
    const Length depth = (std::max(m.fold, m.lay_on) - start).times(1, 2);
    const Length seen = start - flat;
    const bool fold_first = m.fold < m.lay_on;
    if (!seen.is_zero()) {
      path.push_back({edge, edge + seen, 0});
      edge += seen;
    }
    if (fold_first) {
      path.push_back({edge, edge - depth, 1});
      path.push_back({edge - depth, edge, 2});
    } else {
      path.push_back({edge, edge + depth, 2});
      path.push_back({edge + depth, edge, 1});
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
