#include "geometry/shapes.h"

#include <algorithm>

namespace gownsheaf {

bool overlap(const Box& a, const Box& b) {
  // A box without area shares nothing, whatever it lies on.
  const Length left = std::max(a.x, b.x), right = std::min(a.right(), b.right());
  const Length top = std::max(a.y, b.y), bottom = std::min(a.bottom(), b.bottom());
  return left < right && top < bottom;
}

bool contains(const Box& outer, const Box& inner) {
  return outer.x <= inner.x && outer.y <= inner.y && inner.right() <= outer.right() && inner.bottom() <= outer.bottom();
}

Polygon rectangle(Length width, Length height) {
  const Length zero;
  return {{zero, zero}, {width, zero}, {width, height}, {zero, height}};
}

bool is_rectangle(const Polygon& p) {
  if (p.size() != 4) return false;
  const Box box = bounds(p);
  if (box.width.is_zero() || box.height.is_zero()) return false;
  for (std::size_t i = 0; i < 4; ++i) {
    const Point& here = p[i];
    const Point& next = p[(i + 1) % 4];
    const bool at_corner = (here.x == box.x || here.x == box.right()) && (here.y == box.y || here.y == box.bottom());
    if (!at_corner || ((here.x == next.x) == (here.y == next.y))) return false;
  }
  // Four corners joined by sides that each change one coordinate; going there and back again is no rectangle.
  return p[0] != p[2] && p[1] != p[3];
}

Box bounds(const Polygon& p) {
  if (p.empty()) return {};
  Point least = p.front(), most = p.front();
  for (const Point& q : p) {
    least = {std::min(least.x, q.x), std::min(least.y, q.y)};
    most = {std::max(most.x, q.x), std::max(most.y, q.y)};
  }
  return {least.x, least.y, most.x - least.x, most.y - least.y};
}

}  // namespace gownsheaf
