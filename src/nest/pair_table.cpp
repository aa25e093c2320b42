#include "nest/pair_table.h"

#include <algorithm>
#include <cmath>
#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace gownsheaf::nest {
namespace {

std::size_t lowest(const Ring& ring) {
  std::size_t at = 0;
  for (std::size_t i = 1; i < ring.size(); ++i) {
    if (ring[i].y < ring[at].y || (ring[i].y == ring[at].y && ring[i].x < ring[at].x)) at = i;
  }
  return at;
}

// Circles as rows, filled up to fours with circles that count nothing.
struct Rows { std::vector<float> x, y, r, weight; };

Rows rows_of(const std::vector<Circle>& circles, double centre_x, double centre_y, double more) {
  Rows rows;
  for (std::size_t i = 0; i < (circles.size() + 3) / 4 * 4; ++i) {
    const Circle& c = circles[std::min(i, circles.size() - 1)];
    rows.x.push_back(static_cast<float>(c.x - centre_x));
    rows.y.push_back(static_cast<float>(c.y - centre_y));
    rows.r.push_back(static_cast<float>(c.r + more));
    rows.weight.push_back(i < circles.size() ? 1.0F : 0.0F);
  }
  return rows;
}

// The sum over circle pairs of a's circles and b's at offset (dx, dy); four partial sums in a fixed order.
double circle_sum(const Rows& a, std::size_t count_a, const Rows& b, float dx, float dy, float eps) {
  float sums[4] = {0, 0, 0, 0};
#ifdef __SSE2__
  const __m128 eps1 = _mm_set1_ps(eps), eps2 = _mm_set1_ps(eps * eps), twice = _mm_set1_ps(2 * eps);
  __m128 sum = _mm_setzero_ps();
  for (std::size_t p = 0; p < count_a; ++p) {
    const __m128 ax = _mm_set1_ps(a.x[p] - dx), ay = _mm_set1_ps(a.y[p] - dy), ar = _mm_set1_ps(a.r[p]);
    for (std::size_t q = 0; q < b.x.size(); q += 4) {
      const __m128 ux = _mm_sub_ps(ax, _mm_loadu_ps(&b.x[q])), uy = _mm_sub_ps(ay, _mm_loadu_ps(&b.y[q])), r = _mm_loadu_ps(&b.r[q]);
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

}  // namespace

Ring turned_half(const Ring& ring) {
  Ring out = ring;
  for (Corner& c : out) c = {-c.x, -c.y};
  return out;
}

Ring minkowski_sum(const Ring& a, const Ring& b) {
  Ring out;
  const std::size_t n = a.size(), m = b.size(), i0 = lowest(a), j0 = lowest(b);
  std::size_t i = 0, j = 0;
  while (i < n || j < m) {
    const Corner p = a[(i0 + i) % n], q = b[(j0 + j) % m];
    out.push_back({p.x + q.x, p.y + q.y});
    const Corner pn = a[(i0 + i + 1) % n], qn = b[(j0 + j + 1) % m];
    const std::int64_t ux = pn.x - p.x, uy = pn.y - p.y, vx = qn.x - q.x, vy = qn.y - q.y;
    const std::int64_t cross = ux * vy - uy * vx;
    if (j >= m || (i < n && cross > 0)) {
      ++i;
    } else if (i >= n || cross < 0) {
      ++j;
    } else {
      ++i;
      ++j;
    }
  }
  return out;
}

Ring around_circle(int radius) {
  if (radius < 100) return {{radius, -radius}, {radius, radius}, {-radius, radius}, {-radius, -radius}};  // too small to round
  // Corners at tan(pi/16) and the like of the radius, rounded away from the centre.
  const int t = static_cast<int>(radius * 0.198912367379658) + 1;
  const int u = static_cast<int>(radius * 0.847759065022574) + 1, v = static_cast<int>(radius * 0.566454497350522) + 1;
  const int r = radius;
  return {{r, -t}, {r, t}, {u, v}, {v, u}, {t, r}, {-t, r}, {-v, u}, {-u, v},
          {-r, t}, {-r, -t}, {-u, -v}, {-v, -u}, {-t, -r}, {t, -r}, {v, -u}, {u, -v}};
}

PairTable::PairTable(const Shape& a, const Shape& b, int gap) {
  x0_ = a.low.x - b.high.x - gap;
  y0_ = a.low.y - b.high.y - gap;
  width_ = a.high.x - b.low.x + gap - x0_;
  height_ = a.high.y - b.low.y + gap - y0_;
  per_x_ = static_cast<double>(kCells) / width_;
  per_y_ = static_cast<double>(kCells) / height_;
  std::vector<std::vector<Line>> pieces;
  const Ring circle = gap > 0 ? around_circle(gap) : Ring{};
  for (const Ring& p : a.convex) {
    for (const Ring& q : b.convex) {
      Ring sum = minkowski_sum(p, turned_half(q));
      if (gap > 0) sum = minkowski_sum(sum, circle);
      std::vector<Line> lines;
      for (std::size_t i = 0; i < sum.size(); ++i) {
        const double ax = static_cast<double>(sum[i].x) - x0_, ay = static_cast<double>(sum[i].y) - y0_;
        const Corner& n = sum[(i + 1) % sum.size()];
        const double ux = n.x - x0_ - ax, uy = n.y - y0_ - ay;
        lines.push_back({-uy, ux, uy * ax - ux * ay});
      }
      pieces.push_back(std::move(lines));
    }
  }
  cells_.assign(kCells * kCells, 0);
  leaf_begin_ = {0};
  piece_begin_ = {0};
  classify(0, 0, kCells, pieces);
  work_out_losses(a, b, gap);
  leaf_begin_.shrink_to_fit();
  piece_begin_.shrink_to_fit();
  lines_.shrink_to_fit();
}

void PairTable::classify(int i, int j, int size, const std::vector<std::vector<Line>>& pieces) {
  // A tick more on every side: which cell a place falls into is rounded.
  const double xl = i / per_x_ - 1, xh = (i + size) / per_x_ + 1, yl = j / per_y_ - 1, yh = (j + size) / per_y_ + 1;
  std::vector<std::vector<Line>> kept;
  bool covered = false;
  for (const std::vector<Line>& piece : pieces) {
    std::vector<Line> cutting;
    bool out = false;
    for (const Line& l : piece) {
      const double most = l.a * (l.a > 0 ? xh : xl) + l.b * (l.b > 0 ? yh : yl) + l.c;
      if (most <= 0) {
        out = true;
        break;
      }
      const double least = l.a * (l.a > 0 ? xl : xh) + l.b * (l.b > 0 ? yl : yh) + l.c;
      if (least <= 0) cutting.push_back(l);
    }
    if (out) continue;
    if (cutting.empty()) {
      covered = true;
      break;
    }
    kept.push_back(std::move(cutting));
  }
  if (covered || kept.empty()) {
    if (covered) {
      for (int y = j; y < j + size; ++y) std::fill_n(cells_.begin() + y * kCells + i, size, std::uint16_t{1});
    }
    return;
  }
  if (size > 1) {
    const int half = size / 2;
    for (const int y : {0, half}) {
      for (const int x : {0, half}) classify(i + x, j + y, half, kept);
    }
    return;
  }
  cells_[static_cast<std::size_t>(j * kCells + i)] = static_cast<std::uint16_t>(leaf_begin_.size() + 1);
  for (const std::vector<Line>& piece : kept) {
    lines_.insert(lines_.end(), piece.begin(), piece.end());
    piece_begin_.push_back(static_cast<std::uint32_t>(lines_.size()));
  }
  leaf_begin_.push_back(static_cast<std::uint32_t>(piece_begin_.size() - 1));
}

void PairTable::work_out_losses(const Shape& a, const Shape& b, int gap) {
  constexpr int kNodes = kCells + 1;
  std::vector<bool> wanted(kNodes * kNodes, false);
  for (int j = 0; j < kCells; ++j) {
    for (int i = 0; i < kCells; ++i) {
      if (cells_[static_cast<std::size_t>(j * kCells + i)] == 0) continue;
      for (const int k : {0, 1, kNodes, kNodes + 1}) wanted[static_cast<std::size_t>(j * kNodes + i + k)] = true;
    }
  }
  const double eps = 0.01 * std::max(a.diameter, b.diameter);
  const double scale = std::sqrt(std::sqrt(a.hull_area * b.hull_area));
  const double ax = a.width / 2.0, ay = a.height / 2.0, bx = b.width / 2.0, by = b.height / 2.0;
  const Rows rows_a = rows_of(a.circles, ax, ay, gap / 2.0), rows_b = rows_of(b.circles, bx, by, gap / 2.0);
  nodes_.assign(kNodes * kNodes, 0.0F);
  for (int j = 0; j < kNodes; ++j) {
    for (int i = 0; i < kNodes; ++i) {
      const std::size_t k = static_cast<std::size_t>(j * kNodes + i);
      if (!wanted[k]) continue;
      const float dx = static_cast<float>(x0_ + i / per_x_ + bx - ax), dy = static_cast<float>(y0_ + j / per_y_ + by - ay);
      const double sum = 3.141592653589793 * circle_sum(rows_a, a.circles.size(), rows_b, dx, dy, static_cast<float>(eps));
      nodes_[k] = static_cast<float>(std::sqrt(sum + eps * eps) * scale * 1e-9);
    }
  }
}

std::size_t PairTable::bytes() const {
  return sizeof *this + cells_.capacity() * 2 + nodes_.capacity() * 4 + (leaf_begin_.capacity() + piece_begin_.capacity()) * 4 +
         lines_.capacity() * sizeof(Line);
}

}  // namespace gownsheaf::nest
