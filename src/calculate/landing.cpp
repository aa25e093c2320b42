// Where one place of the flat cloth comes to lie, and where the seams of full breadths are.
#include "calculate/pleat_map.h"

#include <algorithm>

namespace gownsheaf {
namespace {

// Two places within two ticks are one: halves are rounded once each.
bool one_place(Length a, Length b) { return (a < b ? b - a : a - b) <= Length::ticks(2); }

}  // namespace

Landing landing_of(const std::vector<PleatMark>& marks, Length at, Length plus) {
  Landing out;
  Length flat = plus, edge;  // end of the last doubled cloth, and where that lies
  bool any_before = false;
  for (const PleatMark& m : marks) {
    const Length a = std::min(m.fold, m.lay_on), b = std::max(m.fold, m.lay_on), deep = (b - a).times(1, 2);
    const bool fold_first = m.fold < m.lay_on;
    if (at > b && !one_place(at, b)) {
      flat = b;
      edge = m.edge;
      any_before = true;
      continue;
    }
    out.pleat = m.pleat;
    out.pleated = m.edge;
    if (one_place(at, m.fold)) out.in = Landing::In::fold;
    else if (one_place(at, m.lay_on)) out.in = Landing::In::line;
    else if (at > a) {
      out.in = Landing::In::hidden;
      const Length in = at - a, back = in <= deep ? in : deep - (in - deep);
      out.pleated = fold_first ? m.edge - back : m.edge + back;
      out.to_edge = at - a <= b - at ? a - at : b - at;
    } else {
      out.pleated = std::max(Length{}, edge + (at - flat));
      const Length ahead = a - at, behind = at - flat;
      out.to_hidden = any_before && behind < ahead ? -behind : ahead;
    }
    return out;
  }
  out.pleated = edge + (at - flat);
  out.to_hidden = flat - at;
  return out;
}

std::vector<Length> breadth_seams(const Project& project, RoundSums& sums, const PleatRun& run, bool half, bool seam_at_front) {
  const Round* round = sums.round_of(run);
  const std::vector<std::string>& of = run.of.empty() && round != nullptr ? round->of : run.of;
  if (of.size() != 1) return {};
  const Piece* piece = project.piece(of.front());
  const Cloth* cloth = piece != nullptr && !piece->from.empty() ? project.cloth(piece->from.front()) : nullptr;
  if (cloth == nullptr || !is_full_width(*piece)) return {};
  const auto breadth = joined_width(*piece, *cloth);
  const auto number = sums.number_of(*piece, *cloth);
  if (!breadth || !number || *number < 2) return {};
  if (piece->make.known() && piece->make->kind == Make::Kind::fills) return {};  // cut back to its run: where is not said
  const std::int64_t first = seam_at_front ? 0 : 1;                              // in half breadths
  std::vector<Length> at;
  for (std::int64_t i = 0; 2 * i + first <= (half ? *number : 2 * *number); ++i)
    at.push_back((*breadth * (2 * i + first)).times(1, 2));
  return at;
}

}  // namespace gownsheaf
