// A part in one of its poses, prepared for the search: its exact outline, an outline of few corners that contains it, that
// one cut into convex pieces, and circles that fill it. All coordinates are whole ticks from the least corner of the
// exact outline's bounds.
#pragma once
#include <cstdint>
#include <vector>

#include "geometry/shapes.h"
#include "nest/nest.h"

namespace gownsheaf::nest {

struct Corner {
  int x = 0, y = 0;
  friend auto operator<=>(const Corner&, const Corner&) = default;
};
using Ring = std::vector<Corner>;  // anticlockwise, no three corners in one line, nowhere touching itself
struct Circle {
  double x = 0, y = 0, r = 0;
};

// Circles as rows, filled up to fours with circles that count nothing; from the middle of the exact outline's bounds.
struct CircleRows {
  std::vector<float> x, y, r, weight;
};

struct Shape {
  Ring outline;                                 // exact
  Ring cover;                                   // contains the outline; the same when that has few corners
  std::vector<Ring> convex;                     // the cover in convex pieces, any two sharing no more than edges
  std::vector<Corner> convex_low, convex_high;  // their bounds
  std::vector<Circle> circles;                  // inside the cover, apart, greatest first
  CircleRows rows;
  int width = 0, height = 0;                     // of the exact outline: from 0 to width, 0 to height
  Corner low, high;                              // bounds of the cover
  double area = 0, hull_area = 0, diameter = 0;  // of the cover
  int turned[4] = {-1, -1, -1, -1};              // the shapes that this one is after so many quarter turns, where there are such
  bool obstacle = false;                         // keeps no gap
};

// No part may be longer or broader than this (16 m), so that every test of a point against a line is exact in a double.
constexpr std::int64_t kLongestPart = 46'000'000;

// > 0: c lies to the left of a -> b. Exact.
inline std::int64_t turn_of(Corner a, Corner b, Corner c) {
  return (static_cast<std::int64_t>(b.x) - a.x) * (static_cast<std::int64_t>(c.y) - a.y) -
         (static_cast<std::int64_t>(b.y) - a.y) * (static_cast<std::int64_t>(c.x) - a.x);
}
std::int64_t twice_area(const Ring& ring);

// Without doubled corners, corners in a line, spikes; anticlockwise; empty when nothing is left. Corners must fit an int.
Ring tidied(const Ring& ring);
bool touches_itself(const Ring& ring);
Ring with_quarter_turns(const Ring& ring, int turns);  // least corner of the bounds at 0, 0
Ring ring_of(const Polygon& outline);                  // tidied, least corner of the bounds at 0, 0
// Few corners, containing the ring, at most one part in a thousand larger.
Ring simple_cover(const Ring& ring, std::size_t enough_corners);
std::vector<Ring> convex_pieces(const Ring& ring);  // empty when the ring cannot be cut up
std::vector<Circle> circles_in(const Ring& ring);
double hull_area(const Ring& ring);
double diameter(const Ring& ring);

}  // namespace gownsheaf::nest
