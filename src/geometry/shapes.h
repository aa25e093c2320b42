// Points, boxes and polygons in exact lengths. What closed lines enclose: region.h; allowances round it: allowance.h.
#pragma once
#include <vector>

#include "units/length.h"

namespace gownsheaf {

struct Point {
  Length x, y;
  friend auto operator<=>(const Point&, const Point&) = default;
};
struct Box {
  Length x, y, width, height;  // x, y: least corner
  Length right() const { return x + width; }
  Length bottom() const { return y + height; }
  Area area() const { return Area::of(width, height); }
  friend auto operator<=>(const Box&, const Box&) = default;
};
bool overlap(const Box& a, const Box& b);           // share more than an edge
bool contains(const Box& outer, const Box& inner);  // edges may touch
using Polygon = std::vector<Point>;                 // closed, not repeated
Polygon rectangle(Length width, Length height);
bool is_rectangle(const Polygon& p);  // axis-parallel, four corners
Box bounds(const Polygon& p);

}  // namespace gownsheaf
