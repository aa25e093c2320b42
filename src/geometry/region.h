// What closed lines enclose: crossings resolved, areas, inside or outside. All in whole ticks; products in 128 bits.
//
// Library: none. Clipper 6.4.2 agrees in its results, but Debian 12 has it only as a shared library that brings a second
// C++ runtime to each start (2 ms of the 20 that `check` may take), and it has no allowance that differs from edge to edge.
//
// Method: iterated snap rounding. Segments are split where they cross or touch, each crossing rounded to the nearest tick,
// until none cross; a sweep then counts for each segment how often the lines wind round the place beside it (J. D. Hobby,
// Practical segment intersection with finite precision output, Computational Geometry 13, 1999, for the rounding). A line
// moves by half a tick at each rounding; two or three rounds are usual, so kRegionShift bounds it in practice and the tests.
#pragma once
#include <optional>
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf {

enum class FillRule { nonzero, even_odd, positive };  // positive: what is wound round with the inside at its left

// Rings that meet at corners only. With y down as on a page, outer rings run clockwise (their area by the shoelace formula
// is positive) and holes anticlockwise. Each begins at its least corner; rings are in the order of their beginnings.
struct Region {
  std::vector<Polygon> rings;
  friend bool operator==(const Region&, const Region&) = default;
};

constexpr Length kRegionShift = Length::ticks(2);     // how far resolving may move a line: 0.0007 mm
constexpr Length kFarthest = Length::mm(10'000'000);  // coordinates further out are refused
constexpr std::size_t kMostCrossings = 200'000;       // a tangle past this is refused

struct Resolved {
  Region region;
  std::vector<Point> crossings;  // where lines cross or touch other than end to end, sorted, each once, at most 100
  bool refused = false;          // too far out, or a tangle; the region is empty then
};
// What the closed polygons enclose by the rule. Polygons of fewer than three corners enclose nothing.
Resolved resolve(const std::vector<Polygon>& polygons, FillRule rule);

// Shoelace: positive for an outer ring. Twice the area is a whole number, so this rounds half a square tick down.
Area area(const Polygon& ring);
Area area(const Region& region);
Box box_of(const Region& region);

enum class Side { inside, on, outside };
Side side_of(const Region& region, Point p);  // exact
// Whether p lies in the region or within `reach` of its edge.
bool reaches(const Region& region, Point p, Length reach);
double distance_mm(Point p, Point a, Point b);  // from a point to a segment

}  // namespace gownsheaf
