// Do two shapes overlap at this offset, and how badly? One table per pair of shapes: the box of offsets at which their
// bounds meet is cut into cells that are free, overlapping, or undecided; an undecided cell keeps the edges of the convex
// no-fit pieces that cut it, so that the answer is exact everywhere. How bad an overlap is comes from circles
// (Gardeyn, Vanden Berghe, Wauters 2025), worked out at the cells' corners and interpolated.
#pragma once
#include <cstdint>
#include <vector>

#include "nest/shape.h"

namespace gownsheaf::nest {

// The offsets at which two shapes' bounds meet, cut into cells.
struct TableFrame {
  TableFrame(const Shape& a, const Shape& b, int gap, int cells);
  int n, x0, y0, width, height;  // offsets that matter: x0 < dx < x0 + width
  double per_x, per_y;           // cells per tick
};

CircleRows rows_of(const Shape& shape, double more);

// What a table of no gap would say, worked out for this offset alone: the same to the last bit, but slower. For pairs that
// are asked for too seldom to be worth a table.
double loss_without_table(const Shape& a, const Shape& b, int cells, int dx, int dy);

class PairTable {
 public:
  static constexpr int kFine = 32, kCoarse = 16;  // cells along each side
  // gap: kept between the two, in ticks.
  PairTable(const Shape& a, const Shape& b, int gap, int cells);

  // Offset: place of b less place of a. 0 = they do not overlap; else how bad it is, above 0.
  double loss(int dx, int dy) const {
    const std::int64_t u = static_cast<std::int64_t>(dx) - x0_, v = static_cast<std::int64_t>(dy) - y0_;
    if (u <= 0 || v <= 0 || u >= width_ || v >= height_) return 0;
    const double fu = static_cast<double>(u) * per_x_, fv = static_cast<double>(v) * per_y_;
    const int i = static_cast<int>(fu), j = static_cast<int>(fv);
    const std::uint16_t cell = cells_[static_cast<std::size_t>(j * n_ + i)];
    if (cell == 0) return 0;
    if (cell > 1 && !inside(leaf_at_[cell - 2], u, v)) return 0;
    const float* n = nodes_.data() + j * (n_ + 1) + i;
    const double x = fu - i, y = fv - j;
    const double low = n[0] + x * (n[1] - n[0]);
    const double high = n[n_ + 1] + x * (n[n_ + 2] - n[n_ + 1]);
    return low + y * (high - low);
  }
  std::size_t bytes() const;

 private:
  friend class TableMaker;
  struct Line { std::int32_t a, b; std::int64_t c; };  // a u + b v + c > 0: on the overlapping side
  bool inside(std::uint32_t leaf, std::int64_t u, std::int64_t v) const {
    const std::uint16_t* at = leaves_.data() + leaf;
    for (int pieces = *at++; pieces > 0; --pieces) {
      const int count = *at++;
      int k = 0;
      for (; k < count; ++k) {
        const Line& line = lines_[at[k]];
        if (line.a * u + line.b * v + line.c <= 0) break;
      }
      if (k == count) return true;
      at += count;
    }
    return false;
  }
  void work_out_losses(const Shape& a, const Shape& b, int gap);

  int n_, x0_ = 0, y0_ = 0, width_ = 0, height_ = 0;  // offsets that matter: x0_ < dx < x0_ + width_
  double per_x_ = 1, per_y_ = 1;                      // cells per tick
  std::vector<std::uint16_t> cells_;                  // 0 free, 1 overlapping, else 2 + leaf
  std::vector<float> nodes_;
  std::vector<std::uint32_t> leaf_at_;
  std::vector<std::uint16_t> leaves_;                 // number of pieces, then of each: number of lines, the lines
  std::vector<Line> lines_;
};

// Sum of two convex rings; of three with the ring that stands for the gap.
Ring minkowski_sum(const Ring& a, const Ring& b);
Ring turned_half(const Ring& ring);
// Sixteen corners around a circle of this radius; its extents along x and y are the radius exactly.
Ring around_circle(int radius);

}  // namespace gownsheaf::nest
