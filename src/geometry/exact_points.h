// Exact signs and rounding for points in ticks. Internal to geometry.
#pragma once
#include "geometry/shapes.h"

namespace gownsheaf::exact {

inline Int128 wide(Length a) { return static_cast<Int128>(a.in_ticks()); }

// > 0: c lies to the left of a → b where x is right and y up, that is to the right on a page with y down.
inline Int128 turn(Point a, Point b, Point c) { return wide(b.x - a.x) * wide(c.y - a.y) - wide(b.y - a.y) * wide(c.x - a.x); }
inline int sign(Int128 v) { return (v > 0) - (v < 0); }

// n/d to the nearest whole number, ties away from zero; d > 0.
inline std::int64_t nearest(Int128 n, Int128 d) {
  const Int128 half = d / 2;
  return static_cast<std::int64_t>(n >= 0 ? (n + half) / d : -((-n + half) / d));
}

// c is on the line through a and b: whether it is on the segment.
inline bool within(Point a, Point b, Point c) {
  const auto between = [](Length u, Length v, Length w) { return (u <= w && w <= v) || (v <= w && w <= u); };
  return between(a.x, b.x, c.x) && between(a.y, b.y, c.y);
}

}  // namespace gownsheaf::exact
