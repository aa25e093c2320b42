#include "nest/pair_loss.h"

#include <algorithm>
#include <cmath>
#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace gownsheaf::nest {
namespace {

// The sum over circle pairs of a's circles and b's at offset (dx, dy); four partial sums in a fixed order.
double circle_sum(const CircleRows& a, std::size_t count_a, const CircleRows& b, float dx, float dy, float eps) {
  float sums[4] = {0, 0, 0, 0};
#ifdef __SSE2__
  const __m128 eps1 = _mm_set1_ps(eps), eps2 = _mm_set1_ps(eps * eps), twice = _mm_set1_ps(2 * eps);
  __m128 sum = _mm_setzero_ps();
  for (std::size_t p = 0; p < count_a; ++p) {
    const __m128 ax = _mm_set1_ps(a.x[p] - dx), ay = _mm_set1_ps(a.y[p] - dy), ar = _mm_set1_ps(a.r[p]);
    for (std::size_t q = 0; q < b.x.size(); q += 4) {
      const __m128 ux = _mm_sub_ps(ax, _mm_loadu_ps(&b.x[q])), uy = _mm_sub_ps(ay, _mm_loadu_ps(&b.y[q])),
                   r = _mm_loadu_ps(&b.r[q]);
      const __m128 apart = _mm_sqrt_ps(_mm_add_ps(_mm_mul_ps(ux, ux), _mm_mul_ps(uy, uy)));
      const __m128 depth = _mm_sub_ps(_mm_add_ps(ar, r), apart);
      const __m128 far = _mm_div_ps(eps2, _mm_sub_ps(twice, _mm_min_ps(depth, eps1)));
      const __m128 value = _mm_max_ps(depth, far);  // they meet where depth is eps, and depth is the greater above
      sum = _mm_add_ps(sum, _mm_mul_ps(_mm_mul_ps(_mm_loadu_ps(&b.weight[q]), value), _mm_min_ps(ar, r)));
    }
  }
  _mm_storeu_ps(sums, sum);
#else
  const float eps2 = eps * eps, twice = 2 * eps;
  for (std::size_t p = 0; p < count_a; ++p) {
    const float ax = a.x[p] - dx, ay = a.y[p] - dy, ar = a.r[p];
    for (std::size_t q = 0; q < b.x.size(); q += 4) {
      for (std::size_t l = 0; l < 4; ++l) {
        const float ux = ax - b.x[q + l], uy = ay - b.y[q + l];
        const float depth = (ar + b.r[q + l]) - std::sqrt(ux * ux + uy * uy);
        const float far = eps2 / (twice - (depth < eps ? depth : eps));
        sums[l] += b.weight[q + l] * (depth > far ? depth : far) * (ar < b.r[q + l] ? ar : b.r[q + l]);
      }
    }
  }
#endif
  return static_cast<double>((sums[0] + sums[2]) + (sums[1] + sums[3]));
}

// Does a circle of a meet one of b by more than this? Not, where rounding could make the difference.
bool circles_meet(const Shape& a, const Shape& b, int offset_x, int offset_y, double by) {
  const CircleRows &p = a.rows, &q = b.rows;
  const float dx = static_cast<float>(offset_x + b.width / 2.0 - a.width / 2.0),
              dy = static_cast<float>(offset_y + b.height / 2.0 - a.height / 2.0);
  const float less = static_cast<float>(by + 2 + 1e-6 * (a.diameter + b.diameter));
  for (std::size_t i = 0; i < a.circles.size(); ++i) {
    const float ax = p.x[i] - dx, ay = p.y[i] - dy, ar = p.r[i] - less;
    for (std::size_t k = 0; k < q.x.size(); k += 4) {
      bool meet = false;
      for (std::size_t l = k; l < k + 4; ++l) {
        const float ux = ax - q.x[l], uy = ay - q.y[l], r = ar + q.r[l];
        meet |= r > 0 && ux * ux + uy * uy < r * r;
      }
      if (meet) return true;
    }
  }
  return false;
}

// Some edge of a has all of b beyond it, at every offset up to so far from this one.
bool side_apart(const Ring& a, const Ring& b, std::int64_t dx, std::int64_t dy, std::int64_t far_x, std::int64_t far_y) {
  for (std::size_t i = 0, j = a.size() - 1; i < a.size(); j = i++) {
    const std::int64_t ux = static_cast<std::int64_t>(a[i].x) - a[j].x, uy = static_cast<std::int64_t>(a[i].y) - a[j].y;
    const std::int64_t most = ux * (a[j].y - dy) - uy * (a[j].x - dx) - std::abs(ux) * far_y - std::abs(uy) * far_x;
    bool beyond = true;
    for (std::size_t k = 0; k < b.size() && beyond; ++k) beyond = ux * b[k].y - uy * b[k].x <= most;
    if (beyond) return true;
  }
  return false;
}

bool pieces_apart(const Ring& p, const Ring& q, std::int64_t dx, std::int64_t dy, int far_x, int far_y) {
  return side_apart(p, q, dx, dy, far_x, far_y) || side_apart(q, p, -dx, -dy, far_x, far_y);
}

// Calls found(p, q) for every two convex pieces that no line along an edge or an axis keeps apart at all these offsets,
// until it says true.
template <typename Found>
bool any_meeting(const Shape& a, const Shape& b, int dx, int dy, int far_x, int far_y, const Found& found) {
  for (std::size_t p = 0; p < a.convex.size(); ++p) {
    const std::int64_t xl = static_cast<std::int64_t>(a.convex_low[p].x) - dx - far_x,
                       xh = static_cast<std::int64_t>(a.convex_high[p].x) - dx + far_x;
    const std::int64_t yl = static_cast<std::int64_t>(a.convex_low[p].y) - dy - far_y,
                       yh = static_cast<std::int64_t>(a.convex_high[p].y) - dy + far_y;
    if (xl >= b.high.x || xh <= b.low.x || yl >= b.high.y || yh <= b.low.y) continue;
    for (std::size_t q = 0; q < b.convex.size(); ++q) {
      if (xl >= b.convex_high[q].x || xh <= b.convex_low[q].x || yl >= b.convex_high[q].y || yh <= b.convex_low[q].y) continue;
      if (!pieces_apart(a.convex[p], b.convex[q], dx, dy, far_x, far_y) && found(p, q)) return true;
    }
  }
  return false;
}

}  // namespace

CircleRows rows_of(const Shape& shape, double more) {
  CircleRows rows;
  const std::vector<Circle>& circles = shape.circles;
  for (std::size_t i = 0; i < (circles.size() + 3) / 4 * 4; ++i) {
    const Circle& c = circles[std::min(i, circles.size() - 1)];
    rows.x.push_back(static_cast<float>(c.x - shape.width / 2.0));
    rows.y.push_back(static_cast<float>(c.y - shape.height / 2.0));
    rows.r.push_back(static_cast<float>(c.r + more));
    rows.weight.push_back(i < circles.size() ? 1.0F : 0.0F);
  }
  return rows;
}

Corner least_offset(const Shape& a, const Shape& b, int gap) { return {a.low.x - b.high.x - gap, a.low.y - b.high.y - gap}; }

Grid::Grid(const Shape& a, const Shape& b, int gap, int cells) {
  const Corner least = least_offset(a, b, gap);
  width = a.high.x - b.low.x + gap - least.x;
  height = a.high.y - b.low.y + gap - least.y;
  shift = 0;
  while ((1 << shift) < cells) ++shift;
  per_x = (std::uint64_t{1} << (kBits + shift)) / static_cast<std::uint64_t>(width);
  per_y = (std::uint64_t{1} << (kBits + shift)) / static_cast<std::uint64_t>(height);
}

LossAtNodes::LossAtNodes(const Shape& a, const CircleRows& rows_a, const Shape& b, const CircleRows& rows_b, const Grid& grid,
                         Corner least)
    : rows_a_(rows_a), rows_b_(rows_b), count_a_(a.circles.size()), x0_(least.x + b.width / 2.0 - a.width / 2.0),
      y0_(least.y + b.height / 2.0 - a.height / 2.0), step_x_(grid.cell_width()), step_y_(grid.cell_height()),
      eps_(0.01 * std::max(a.diameter, b.diameter)), scale_(std::sqrt(std::sqrt(a.hull_area * b.hull_area))) {}

float LossAtNodes::operator()(int i, int j) const {
  const float dx = static_cast<float>(x0_ + i * step_x_), dy = static_cast<float>(y0_ + j * step_y_);
  const double sum = 3.141592653589793 * circle_sum(rows_a_, count_a_, rows_b_, dx, dy, static_cast<float>(eps_));
  return static_cast<float>(std::sqrt(sum + eps_ * eps_) * scale_ * 1e-9);
}

Meeting meeting_around(const Shape& a, const Shape& b, int dx, int dy, int far_x, int far_y) {
  const double reach = std::sqrt(static_cast<double>(far_x) * far_x + static_cast<double>(far_y) * far_y);
  if (circles_meet(a, b, dx, dy, reach)) return {Meeting::always};
  std::uint32_t pairs = 0, count = 0;
  const bool many = any_meeting(a, b, dx, dy, far_x, far_y, [&](std::size_t p, std::size_t q) {
    if (count == 2 || p > 127 || q > 127) return true;
    pairs |= static_cast<std::uint32_t>(p | q << 7) << (4 + 14 * count++);
    return false;
  });
  if (many) return {Meeting::more};
  return {(count == 0 ? Meeting::never : count == 1 ? Meeting::one_pair : Meeting::two_pairs) | pairs};
}

bool overlap_at(const Shape& a, const Shape& b, int dx, int dy, Meeting meeting) {
  const auto overlap = [&](int k) {
    return !pieces_apart(a.convex[meeting.piece(k)], b.convex[meeting.piece(k + 1)], dx, dy, 0, 0);
  };
  switch (meeting.kind()) {
    case Meeting::never: return false;
    case Meeting::always: return true;
    case Meeting::one_pair: return overlap(0);
    case Meeting::two_pairs: return overlap(0) || overlap(2);
    default: return any_meeting(a, b, dx, dy, 0, 0, [](std::size_t, std::size_t) { return true; });
  }
}

}  // namespace gownsheaf::nest
