// What the tables of pairs are made of: the offsets at which two shapes' bounds meet, cut into cells; how bad an overlap is
// at the cells' corners, from circles (Gardeyn, Vanden Berghe, Wauters 2025), and in between, interpolated.
#pragma once
#include <cstddef>
#include <cstdint>

#include "nest/shape.h"

namespace gownsheaf::nest {

CircleRows rows_of(const Shape& shape, double more);

// Offsets count from the least at which bounds meet: 0 < u < width, 0 < v < height. Cells are found in whole numbers.
struct Grid {
  static constexpr int kBits = 56;
  Grid(const Shape& a, const Shape& b, int gap, int cells);

  struct Spot {
    int cell, node;
    float x, y;
  };  // the node at the cell's least corner; how far into the cell, 0 to 1
  bool outside(int u, int v) const { return u <= 0 || v <= 0 || u >= width || v >= height; }
  Spot spot(int u, int v) const {
    const std::uint64_t fu = static_cast<std::uint64_t>(u) * per_x, fv = static_cast<std::uint64_t>(v) * per_y;
    const int i = static_cast<int>(fu >> kBits), j = static_cast<int>(fv >> kBits);
    return {(j << shift) + i, (j << shift) + j + i, share(fu), share(fv)};
  }
  static float share(std::uint64_t f) {
    return static_cast<float>(static_cast<std::int32_t>(f >> (kBits - 24)) & 0xFFFFFF) * 0x1p-24F;
  }
  static double between(const Spot& s, float n0, float n1, float n2, float n3) {  // rows n0 n1 and n2 n3
    const float low = n0 + s.x * (n1 - n0), high = n2 + s.x * (n3 - n2);
    return static_cast<double>(low + s.y * (high - low));
  }
  int cells() const { return 1 << shift; }
  int nodes() const { return ((1 << shift) + 1) * ((1 << shift) + 1); }
  double cell_width() const { return static_cast<double>(width) / cells(); }
  double cell_height() const { return static_cast<double>(height) / cells(); }

  int width, height, shift;
  std::uint64_t per_x, per_y;  // cells per tick, times 2 to the kBits
};
// The offset (place of b less place of a) at which u and v are 0.
Corner least_offset(const Shape& a, const Shape& b, int gap);

class LossAtNodes {
 public:
  LossAtNodes(const Shape& a, const CircleRows& rows_a, const Shape& b, const CircleRows& rows_b, const Grid& grid, Corner least);
  float operator()(int i, int j) const;

 private:
  const CircleRows &rows_a_, &rows_b_;
  std::size_t count_a_;
  double x0_, y0_, step_x_, step_y_, eps_, scale_;
};

// Of all offsets up to so far from one, along x and along y: do the shapes overlap at none of them, at all, or does it
// hang on one or two pairs of convex pieces, or on more? Exact for the covers; no gap. In one word: the kind, and 7 bits
// for each piece.
struct Meeting {
  enum Kind : std::uint32_t { unknown, never, always, one_pair, two_pairs, more };
  std::uint32_t word = 0;
  Kind kind() const { return static_cast<Kind>(word & 15); }
  std::size_t piece(int k) const { return word >> (4 + 7 * k) & 127; }  // of a, of b, of a, of b
};
Meeting meeting_around(const Shape& a, const Shape& b, int dx, int dy, int far_x, int far_y);
// Do they overlap, b being this far from a? meeting: of offsets among which this is one.
bool overlap_at(const Shape& a, const Shape& b, int dx, int dy, Meeting meeting);

}  // namespace gownsheaf::nest
