// Do two shapes overlap at this offset, and how badly? One table per pair of shapes: the box of offsets at which their
// bounds meet is cut into cells that are free, overlapping, or undecided; an undecided cell keeps the edges of the convex
// no-fit pieces that cut it, so that the answer is exact everywhere.
#pragma once
#include <cstdint>
#include <vector>

#include "nest/pair_loss.h"
#include "nest/seldom_table.h"
#include "nest/shape.h"

namespace gownsheaf::nest {

class alignas(64) PairTable {
 public:
  static constexpr int kFine = 32, kCoarse = SeldomTable::kCells;  // cells along each side
  // gap: kept between the two, in ticks.
  PairTable(const Shape& a, const Shape& b, int gap, int cells);
  PairTable(const PairTable&) = delete;
  PairTable& operator=(const PairTable&) = delete;

  // Offset: place of b less place of a, less least_offset. 0 = they do not overlap; else how bad it is, above 0. No branch
  // but for the cells that several lines cut: which way the others go cannot be foreseen.
  double loss(int u, int v) const {
    if (grid_.outside(u, v)) return 0;
    const Grid::Spot s = grid_.spot(u, v);
    const std::uint16_t cell = cells_[static_cast<std::size_t>(s.cell)];
    const Leaf& leaf = leaf_of_[cell > 1][cell];
    bool inside = beyond(leaf.first, u, v);
    if (leaf.further >= 0) inside = inside_further(leaf, inside, u, v);
    const float *n = nodes_.data() + s.node, *above = n + grid_.cells() + 1;
    return static_cast<double>(inside) * Grid::between(s, n[0], n[1], above[0], above[1]);
  }
  std::size_t bytes() const;

 private:
  friend class TableMaker;
  struct Line {
    std::int32_t a, b;
    std::int64_t c;
  };  // a u + b v + c > 0: on the overlapping side
  // Most undecided cells are cut by one line. Where there are more, further says where they stand: of each piece the
  // number of lines and the lines, of the first without its first.
  struct Leaf {
    Line first;
    int further, pieces;
  };
  static bool beyond(const Line& l, std::int64_t u, std::int64_t v) { return l.a * u + l.b * v + l.c > 0; }
  static constexpr Leaf kDecided[2] = {{{0, 0, -1}, -1, 1}, {{0, 0, 1}, -1, 1}};  // what stands for 0 and 1
  bool inside_further(const Leaf& leaf, bool first, int u, int v) const {
    if (!first && leaf.pieces == 1) return false;
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
  std::vector<std::uint16_t> cells_;  // 0 free, 1 overlapping, else a leaf
  std::vector<float> nodes_;
  const Leaf* leaf_of_[2] = {kDecided, nullptr};
  std::vector<Leaf> leaves_;  // the first two stand idle
  std::vector<std::uint16_t> further_;
  std::vector<Line> lines_;
};

// Sum of two convex rings; of three with the ring that stands for the gap.
Ring minkowski_sum(const Ring& a, const Ring& b);
Ring turned_half(const Ring& ring);
// Sixteen corners around a circle of this radius; its extents along x and y are the radius exactly.
Ring around_circle(int radius);

}  // namespace gownsheaf::nest
