#include "outline/cut_line.h"

#include <algorithm>
#include <cmath>

#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr double kOnMarkMm = 1.0;     // an edge whose two ends are this near a mark runs along it
constexpr double kCornerReach = 0.5;  // mm to either side over which a turn is judged

// The first point of the ring at least kCornerReach from corner i, going `step` (1 or -1).
Point looked_at(const Polygon& edge, std::size_t i, bool onward) {
  const std::size_t n = edge.size();
  std::size_t at = i;
  for (std::size_t k = 1; k < n; ++k) {
    at = onward ? (at + 1) % n : (at + n - 1) % n;
    if (distance_mm(edge[at], edge[i], edge[i]) >= kCornerReach) break;
  }
  return edge[at];
}

bool is_corner(const Polygon& edge, std::size_t i) {
  const Point before = looked_at(edge, i, false), after = looked_at(edge, i, true), at = edge[i];
  const double ax = (at.x - before.x).in_mm(), ay = (at.y - before.y).in_mm(), bx = (after.x - at.x).in_mm(),
               by = (after.y - at.y).in_mm();
  const double along = ax * bx + ay * by, across = ax * by - ay * bx;
  return along <= 0 || 3 * across * across >= along * along;  // tan 30 degrees = 1 / sqrt(3)
}

bool near_mark(Point p, const PickedMark& mark) {
  for (std::size_t i = 0; i + 1 < mark.points.size(); ++i)
    if (distance_mm(p, mark.points[i], mark.points[i + 1]) <= kOnMarkMm) return true;
  return mark.closed && mark.points.size() > 2 && distance_mm(p, mark.points.back(), mark.points.front()) <= kOnMarkMm;
}

bool runs_along(Point a, Point b, const PickedMark& mark) {
  const Point middle{a.x + (b.x - a.x).times(1, 2), a.y + (b.y - a.y).times(1, 2)};
  return near_mark(a, mark) && near_mark(b, mark) && near_mark(middle, mark);
}

// How level a side lies: its width over its height.
double levelness(const Polygon& edge, const OutlineSide& side) {
  Polygon points;
  for (std::size_t k = 0; k <= side.count; ++k) points.push_back(edge[(side.first + k) % edge.size()]);
  const Box box = bounds(points);
  return box.width.in_mm() / std::max(box.height.in_mm(), 0.01);
}

// The side that holds the lowest place (y down); of several the more level one.
const OutlineSide* lowest(const Polygon& edge, const std::vector<OutlineSide>& sides) {
  Length low = edge.front().y;
  for (const Point& p : edge) low = std::max(low, p.y);
  const OutlineSide* best = nullptr;
  for (const OutlineSide& side : sides) {
    bool there = false;
    for (std::size_t k = 0; k <= side.count; ++k)
      there = there || low - edge[(side.first + k) % edge.size()].y <= Length::tenth_mm(1);
    if (there && (best == nullptr || levelness(edge, side) > levelness(edge, *best))) best = &side;
  }
  return best;
}

const Polygon* largest_outer(const Region& region) {
  const Polygon* best = nullptr;
  for (const Polygon& ring : region.rings)
    if (area(ring) > Area() && (best == nullptr || area(ring) > area(*best))) best = &ring;
  return best;
}

}  // namespace

std::vector<OutlineSide> sides_of(const Polygon& edge) {
  std::vector<std::size_t> corners;
  for (std::size_t i = 0; i < edge.size(); ++i)
    if (is_corner(edge, i)) corners.push_back(i);
  if (corners.empty()) return {{0, edge.size()}};
  std::vector<OutlineSide> sides;
  for (std::size_t k = 0; k < corners.size(); ++k) {
    const std::size_t next = corners[(k + 1) % corners.size()];
    const std::size_t count = (next + edge.size() - corners[k]) % edge.size();
    sides.push_back({corners[k], count == 0 ? edge.size() : count});
  }
  return sides;
}

SideAllowances side_allowances(const PickedOutline& piece, const SideWidths& widths) {
  SideAllowances out;
  const std::size_t n = piece.edge.size();
  out.allowances.of_edges.assign(n, widths.seam);
  bool hem_drawn = false;
  for (const PickedMark& mark : piece.marks) hem_drawn = hem_drawn || mark.kind == MarkKind::hem;
  if (!hem_drawn && widths.hem != widths.seam) {
    const std::vector<OutlineSide> sides = sides_of(piece.edge);
    if (const OutlineSide* side = lowest(piece.edge, sides)) {
      for (std::size_t k = 0; k < side->count; ++k) out.allowances.of_edges[(side->first + k) % n] = widths.hem;
      out.hem_guessed = true;
    }
  }
  for (const MarkKind kind : {MarkKind::hem, MarkKind::fold})  // a fold wins
    for (const PickedMark& mark : piece.marks)
      if (mark.kind == kind)
        for (std::size_t i = 0; i < n; ++i)
          if (runs_along(piece.edge[i], piece.edge[(i + 1) % n], mark))
            out.allowances.of_edges[i] = kind == MarkKind::fold ? Length() : widths.hem;
  return out;
}

std::optional<CutAndSeam> cut_and_seam(const PickedOutline& piece, OutlineIs is, const SideWidths& widths, const SourceSpan& at,
                                       Diagnostics& diag) {
  const SideAllowances sides = side_allowances(piece, widths);
  const std::string name = piece.title.empty() ? "the outline" : piece.title;
  CutAndSeam out;
  out.hem_guessed = sides.hem_guessed;
  if (is == OutlineIs::seam_line) {
    const std::optional<Region> cut = with_allowances(piece.edge, sides.allowances);
    const Polygon* ring = cut ? largest_outer(*cut) : nullptr;
    if (ring == nullptr) {
      diag.add(message({}, Severity::error, "allowance-refused", at, "No cut line can be drawn round " + name + ".",
                       "is its outline right?"));
      return {};
    }
    out.cut = *ring;
    out.seam = {piece.edge};
    return out;
  }
  out.cut = piece.edge;
  const std::optional<Region> seam = within_allowances(piece.edge, sides.allowances);
  if (seam)
    for (const Polygon& ring : seam->rings) out.seam.push_back(ring);
  if (out.seam.empty()) {
    diag.add(message({}, Severity::error, "allowances-meet", at, "Nothing is left of " + name + " between its allowances.",
                     "is the outline the seam line? `outline is: seam line`"));
    return {};
  }
  if (out.seam.size() > 1)
    diag.add(message({}, Severity::warning, "seam-in-parts", at,
                     "Between its allowances " + name + " falls in " + std::to_string(out.seam.size()) +
                         " parts: somewhere two allowances meet.",
                     "a smaller seam allowance there"));
  return out;
}

}  // namespace gownsheaf
