// Do two shapes overlap at this offset, and how badly? One table per pair of shapes: the box of offsets at which their
// bounds meet is cut into cells that are free, overlapping, or undecided; an undecided cell keeps the edges of the convex
// no-fit pieces that cut it, so that the answer is exact everywhere.
#pragma once
#include <cstdint>
#include <vector>

#include "nest/pair_loss.h"
#include "nest/shape.h"

namespace gownsheaf::nest {

class alignas(64) PairTable {
 public:
  static constexpr int kFine = 32, kCoarse = 16;  // cells along each side
  // gap: kept between the two, in ticks.
  PairTable(const Shape& a, const Shape& b, int gap, int cells);

  // Offset: place of b less place of a, less least_offset. 0 = they do not overlap; else how bad it is, above 0.
  double loss(int u, int v) const {
    if (grid_.outside(u, v)) return 0;
    const Grid::Spot s = grid_.spot(u, v);
    const std::uint16_t cell = cells_[static_cast<std::size_t>(s.cell)];
    if (cell == 0) return 0;
    if (cell > 1 && !inside(leaves_[static_cast<std::size_t>(cell) - 2], u, v)) return 0;
    const float *n = nodes_.data() + s.node, *above = n + grid_.cells() + 1;
    return Grid::between(s, n[0], n[1], above[0], above[1]);
  }
  std::size_t bytes() const;

 private:
  friend class TableMaker;
  struct Line { std::int32_t a, b; std::int64_t c; };  // a u + b v + c > 0: on the overlapping side
  // Most undecided cells are cut by one line. Where there are more, further says where they stand: of each piece the
  // number of lines and the lines, of the first without its first.
  struct Leaf { Line first; int further = -1, pieces = 1; };
  static bool beyond(const Line& l, std::int64_t u, std::int64_t v) { return l.a * u + l.b * v + l.c > 0; }
  bool inside(const Leaf& leaf, int u, int v) const {
    const bool first = beyond(leaf.first, u, v);
    if (leaf.further < 0 || (!first && leaf.pieces == 1)) return first;
    const std::uint16_t* at = further_.data() + leaf.further;
    for (int piece = 0; piece < leaf.pieces; ++piece) {
      const int count = *at++;
      bool all = piece > 0 || first;
      for (int k = 0; k < count && all; ++k) all = beyond(lines_[at[k]], u, v);
      if (all) return true;
      at += count;
    }
    return false;
  }
  void work_out_losses(const Shape& a, const Shape& b, int gap);

  Grid grid_;
  std::vector<std::uint16_t> cells_;  // 0 free, 1 overlapping, else 2 + leaf
  std::vector<float> nodes_;
  std::vector<Leaf> leaves_;
  std::vector<std::uint16_t> further_;
  std::vector<Line> lines_;
};

// Sum of two convex rings; of three with the ring that stands for the gap.
Ring minkowski_sum(const Ring& a, const Ring& b);
Ring turned_half(const Ring& ring);
// Sixteen corners around a circle of this radius; its extents along x and y are the radius exactly.
Ring around_circle(int radius);

}  // namespace gownsheaf::nest
