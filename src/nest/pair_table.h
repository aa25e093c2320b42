// Do two shapes overlap at this offset, and how badly? One table per pair of shapes: the box of offsets at which their
// bounds meet is cut into cells that are free, overlapping, or undecided; an undecided cell keeps the edges of the convex
// no-fit pieces that cut it, so that the answer is exact everywhere. How bad an overlap is comes from circles
// (Gardeyn, Vanden Berghe, Wauters 2025), worked out at the cells' corners and interpolated.
#pragma once
#include <cstdint>
#include <vector>

#include "nest/shape.h"

namespace gownsheaf::nest {

class PairTable {
 public:
  static constexpr int kCells = 32;
  // gap: kept between the two, in ticks.
  PairTable(const Shape& a, const Shape& b, int gap);

  // Offset: place of b less place of a. 0 = they do not overlap; else how bad it is, above 0.
  double loss(int dx, int dy) const {
    const std::int64_t u = static_cast<std::int64_t>(dx) - x0_, v = static_cast<std::int64_t>(dy) - y0_;
    if (u <= 0 || v <= 0 || u >= width_ || v >= height_) return 0;
    const double fu = static_cast<double>(u) * per_x_, fv = static_cast<double>(v) * per_y_;
    const int i = static_cast<int>(fu), j = static_cast<int>(fv);
    const std::uint16_t cell = cells_[j * kCells + i];
    if (cell == 0) return 0;
    if (cell > 1 && !inside(cell - 2, static_cast<double>(u), static_cast<double>(v))) return 0;
    const float* n = nodes_.data() + j * (kCells + 1) + i;
    const double x = fu - i, y = fv - j;
    const double low = n[0] + x * (n[1] - n[0]);
    const double high = n[kCells + 1] + x * (n[kCells + 2] - n[kCells + 1]);
    return low + y * (high - low);
  }
  std::size_t bytes() const;

 private:
  struct Line { double a, b, c; };  // a x + b y + c > 0: on the overlapping side
  struct Active { int piece, first, count; };
  bool inside(int leaf, double x, double y) const {
    for (std::uint32_t p = leaf_begin_[leaf]; p < leaf_begin_[leaf + 1]; ++p) {
      bool in = true;
      for (std::uint32_t k = piece_begin_[p]; k < piece_begin_[p + 1]; ++k) {
        const Line& line = lines_[k];
        if (line.a * x + line.b * y + line.c <= 0) {
          in = false;
          break;
        }
      }
      if (in) return true;
    }
    return false;
  }
  void classify(int i, int j, int size, const std::vector<std::vector<Line>>& pieces);
  void work_out_losses(const Shape& a, const Shape& b, int gap);

  int x0_ = 0, y0_ = 0, width_ = 0, height_ = 0;  // offsets that matter: x0_ < dx < x0_ + width_
  double per_x_ = 1, per_y_ = 1;                  // cells per tick
  std::vector<std::uint16_t> cells_;
  std::vector<float> nodes_;
  std::vector<std::uint32_t> leaf_begin_, piece_begin_;
  std::vector<Line> lines_;
};

// Sum of two convex rings; of three with the ring that stands for the gap.
Ring minkowski_sum(const Ring& a, const Ring& b);
Ring turned_half(const Ring& ring);
// Sixteen corners around a circle of this radius; its extents along x and y are the radius exactly.
Ring around_circle(int radius);

}  // namespace gownsheaf::nest
