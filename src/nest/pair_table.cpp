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

// The sum over circle pairs of a's circles and b's at offset (dx, dy); four partial sums in a fixed order.
double circle_sum(const CircleRows& a, std::size_t count_a, const CircleRows& b, float dx, float dy, float eps) {
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

struct LossAtNodes {
  LossAtNodes(const TableFrame& frame, const Shape& a_, const CircleRows& rows_a_, const Shape& b_, const CircleRows& rows_b_)
      : f(frame), a(a_), b(b_), rows_a(rows_a_), rows_b(rows_b_), eps(0.01 * std::max(a_.diameter, b_.diameter)),
        scale(std::sqrt(std::sqrt(a_.hull_area * b_.hull_area))) {}
  float operator()(int i, int j) const {
    const float dx = static_cast<float>(f.x0 + i / f.per_x + b.width / 2.0 - a.width / 2.0);
    const float dy = static_cast<float>(f.y0 + j / f.per_y + b.height / 2.0 - a.height / 2.0);
    const double sum = 3.141592653589793 * circle_sum(rows_a, a.circles.size(), rows_b, dx, dy, static_cast<float>(eps));
    return static_cast<float>(std::sqrt(sum + eps * eps) * scale * 1e-9);
  }
  const TableFrame& f;
  const Shape &a, &b;
  const CircleRows &rows_a, &rows_b;
  double eps, scale;
};

bool side_apart(const Ring& a, const Ring& b, std::int64_t dx, std::int64_t dy) {  // some edge of a has all of b beyond it
  for (std::size_t i = 0, j = a.size() - 1; i < a.size(); j = i++) {
    const std::int64_t ux = static_cast<std::int64_t>(a[i].x) - a[j].x, uy = static_cast<std::int64_t>(a[i].y) - a[j].y;
    const std::int64_t most = ux * (a[j].y - dy) - uy * (a[j].x - dx);
    bool beyond = true;
    for (std::size_t k = 0; k < b.size() && beyond; ++k) beyond = ux * b[k].y - uy * b[k].x <= most;
    if (beyond) return true;
  }
  return false;
}

bool overlap_at(const Shape& a, const Shape& b, int dx, int dy) {
  for (std::size_t p = 0; p < a.convex.size(); ++p) {
    const Corner low{a.convex_low[p].x - dx, a.convex_low[p].y - dy}, high{a.convex_high[p].x - dx, a.convex_high[p].y - dy};
    if (low.x >= b.high.x || high.x <= b.low.x || low.y >= b.high.y || high.y <= b.low.y) continue;
    for (std::size_t q = 0; q < b.convex.size(); ++q) {
      if (low.x >= b.convex_high[q].x || high.x <= b.convex_low[q].x || low.y >= b.convex_high[q].y || high.y <= b.convex_low[q].y) continue;
      if (!side_apart(a.convex[p], b.convex[q], dx, dy) && !side_apart(b.convex[q], a.convex[p], -static_cast<std::int64_t>(dx), -static_cast<std::int64_t>(dy))) return true;
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

TableFrame::TableFrame(const Shape& a, const Shape& b, int gap, int cells)
    : n(cells), x0(a.low.x - b.high.x - gap), y0(a.low.y - b.high.y - gap), width(a.high.x - b.low.x + gap - x0),
      height(a.high.y - b.low.y + gap - y0), per_x(static_cast<double>(n) / width), per_y(static_cast<double>(n) / height) {}

double loss_without_table(const Shape& a, const Shape& b, int cells, int dx, int dy) {
  const TableFrame f(a, b, 0, cells);
  const std::int64_t u = static_cast<std::int64_t>(dx) - f.x0, v = static_cast<std::int64_t>(dy) - f.y0;
  if (u <= 0 || v <= 0 || u >= f.width || v >= f.height || !overlap_at(a, b, dx, dy)) return 0;
  const double fu = static_cast<double>(u) * f.per_x, fv = static_cast<double>(v) * f.per_y;
  const int i = static_cast<int>(fu), j = static_cast<int>(fv);
  const LossAtNodes at(f, a, a.rows, b, b.rows);
  const float n0 = at(i, j), n1 = at(i + 1, j), n2 = at(i, j + 1), n3 = at(i + 1, j + 1);
  const double x = fu - i, y = fv - j;
  const double low = n0 + x * (n1 - n0);
  const double high = n2 + x * (n3 - n2);
  return low + y * (high - low);
}

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

// Sorts the cells of a table: from the whole box down by halving, leaving out at each step the no-fit pieces that do not
// reach into the square, the lines that no longer cut it, and the pieces that lie within another there.
class TableMaker {
 public:
  TableMaker(PairTable& table, const Shape& a, const Shape& b, int gap) : t_(table) {
    const Ring circle = gap > 0 ? around_circle(gap) : Ring{};
    Kept& all = kept_[0];
    for (const Ring& p : a.convex) {
      for (const Ring& q : b.convex) {
        Ring sum = minkowski_sum(p, turned_half(q));
        if (gap > 0) sum = minkowski_sum(sum, circle);
        for (std::size_t i = 0; i < sum.size(); ++i) {
          const Corner& n = sum[(i + 1) % sum.size()];
          const std::int64_t ax = static_cast<std::int64_t>(sum[i].x) - t_.x0_, ay = static_cast<std::int64_t>(sum[i].y) - t_.y0_;
          const std::int64_t ux = static_cast<std::int64_t>(n.x) - sum[i].x, uy = static_cast<std::int64_t>(n.y) - sum[i].y;
          const Line line{static_cast<double>(-uy), static_cast<double>(ux), static_cast<double>(uy * ax - ux * ay),
                          std::sqrt(static_cast<double>(ux * ux + uy * uy)), -1};
          all.ids.push_back(static_cast<int>(lines_.size()));
          lines_.push_back(line);
        }
        all.ends.push_back(static_cast<int>(all.ids.size()));
      }
    }
    visit(0, 0, t_.n_, 0);
    t_.leaf_at_.shrink_to_fit();
    t_.leaves_.shrink_to_fit();
    t_.lines_.shrink_to_fit();
  }

 private:
  struct Line { double a, b, c, size; int stored; };
  struct Kept { std::vector<int> ids, ends; };  // pieces as runs of line numbers
  struct Spot { double x, y; };
  static constexpr std::size_t kTried = 6;       // of the largest pieces, to cover a smaller one
  static constexpr double kMargin = 1e-3;        // ticks; far above rounding, far below what matters

  double at(const Line& l, const Spot& p) const { return l.a * p.x + l.b * p.y + l.c; }

  void visit(int i, int j, int size, int depth) {
    // A tick more on every side: which cell a place falls into is rounded.
    const double xl = i / t_.per_x_ - 1, xh = (i + size) / t_.per_x_ + 1, yl = j / t_.per_y_ - 1, yh = (j + size) / t_.per_y_ + 1;
    const Kept& from = kept_[static_cast<std::size_t>(depth)];
    Kept& to = kept_[static_cast<std::size_t>(depth) + 1];
    to.ids.clear();
    to.ends.clear();
    int begin = 0;
    for (const int end : from.ends) {
      const std::size_t before = to.ids.size();
      bool out = false;
      for (int k = begin; k < end && !out; ++k) {
        const Line& l = lines_[static_cast<std::size_t>(from.ids[static_cast<std::size_t>(k)])];
        out = l.a * (l.a > 0 ? xh : xl) + l.b * (l.b > 0 ? yh : yl) + l.c <= 0;
        if (!out && l.a * (l.a > 0 ? xl : xh) + l.b * (l.b > 0 ? yl : yh) + l.c <= 0) to.ids.push_back(from.ids[static_cast<std::size_t>(k)]);
      }
      begin = end;
      if (out) {
        to.ids.resize(before);
      } else if (to.ids.size() == before) {  // nothing cuts it: all of the square overlaps
        for (int y = j; y < j + size; ++y) std::fill_n(t_.cells_.begin() + y * t_.n_ + i, size, std::uint16_t{1});
        return;
      } else {
        to.ends.push_back(static_cast<int>(to.ids.size()));
      }
    }
    if (to.ends.empty()) return;
    if ((size == 1 || size == 4) && to.ends.size() > 1) leave_out_covered(to, xl, xh, yl, yh);
    if (to.ends.empty()) return;
    if (size == 1) {
      keep_leaf(to, i, j);
      return;
    }
    const int half = size / 2;
    for (const int y : {0, half}) {
      for (const int x : {0, half}) visit(i + x, j + y, half, depth + 1);
    }
  }

  void leave_out_covered(Kept& kept, double xl, double xh, double yl, double yh) {
    const std::size_t pieces = kept.ends.size();
    corners_.resize(pieces);
    gone_.assign(pieces, false);
    by_area_.clear();
    const auto first = [&](std::size_t p) { return p == 0 ? 0 : kept.ends[p - 1]; };
    for (std::size_t p = 0; p < pieces; ++p) {
      std::vector<Spot>& poly = corners_[p];
      poly = {{xl, yl}, {xh, yl}, {xh, yh}, {xl, yh}};
      for (int k = first(p); k < kept.ends[p] && !poly.empty(); ++k) {
        const Line& l = lines_[static_cast<std::size_t>(kept.ids[static_cast<std::size_t>(k)])];
        const double slack = kMargin * l.size;
        clipped_.clear();
        for (std::size_t c = 0; c < poly.size(); ++c) {
          const Spot &a = poly[c], &b = poly[c + 1 == poly.size() ? 0 : c + 1];
          const double va = at(l, a) + slack, vb = at(l, b) + slack;
          if (va >= 0) clipped_.push_back(a);
          if ((va < 0) != (vb < 0)) {
            const double t = va / (va - vb);
            clipped_.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
          }
        }
        poly.swap(clipped_);
      }
      gone_[p] = poly.empty();
      double area = 0;
      for (std::size_t c = 2; c < poly.size(); ++c) {
        area += (poly[c - 1].x - poly[0].x) * (poly[c].y - poly[0].y) - (poly[c - 1].y - poly[0].y) * (poly[c].x - poly[0].x);
      }
      if (!gone_[p]) by_area_.emplace_back(-area, p);
    }
    std::sort(by_area_.begin(), by_area_.end());
    for (std::size_t larger = 0; larger < by_area_.size(); ++larger) {
      const std::size_t p = by_area_[larger].second;
      std::size_t tried = 0;
      for (std::size_t other = 0; other < larger && tried < kTried && !gone_[p]; ++other) {
        const std::size_t q = by_area_[other].second;
        if (gone_[q]) continue;
        ++tried;
        bool within = true;
        for (int k = first(q); k < kept.ends[q] && within; ++k) {
          const Line& l = lines_[static_cast<std::size_t>(kept.ids[static_cast<std::size_t>(k)])];
          bool own = false;
          for (int m = first(p); m < kept.ends[p] && !own; ++m) {
            const Line& o = lines_[static_cast<std::size_t>(kept.ids[static_cast<std::size_t>(m)])];
            own = o.a == l.a && o.b == l.b && o.c == l.c;
          }
          if (own) continue;
          for (const Spot& s : corners_[p]) {
            if (at(l, s) < kMargin * l.size) {
              within = false;
              break;
            }
          }
        }
        gone_[p] = within;
      }
    }
    std::size_t ids = 0, ends = 0;
    int begin = 0;
    for (std::size_t p = 0; p < pieces; ++p) {
      const int end = kept.ends[p];
      if (!gone_[p]) {
        for (int k = begin; k < end; ++k) kept.ids[ids++] = kept.ids[static_cast<std::size_t>(k)];
        kept.ends[ends++] = static_cast<int>(ids);
      }
      begin = end;
    }
    kept.ids.resize(ids);
    kept.ends.resize(ends);
  }

  void keep_leaf(const Kept& kept, int i, int j) {
    t_.cells_[static_cast<std::size_t>(j * t_.n_ + i)] = static_cast<std::uint16_t>(t_.leaf_at_.size() + 2);
    t_.leaf_at_.push_back(static_cast<std::uint32_t>(t_.leaves_.size()));
    t_.leaves_.push_back(static_cast<std::uint16_t>(kept.ends.size()));
    int begin = 0;
    for (const int end : kept.ends) {
      t_.leaves_.push_back(static_cast<std::uint16_t>(end - begin));
      for (; begin < end; ++begin) {
        Line& l = lines_[static_cast<std::size_t>(kept.ids[static_cast<std::size_t>(begin)])];
        if (l.stored < 0) {
          l.stored = static_cast<int>(t_.lines_.size());
          t_.lines_.push_back({static_cast<std::int32_t>(l.a), static_cast<std::int32_t>(l.b), static_cast<std::int64_t>(l.c)});
        }
        t_.leaves_.push_back(static_cast<std::uint16_t>(l.stored));
      }
    }
  }

  PairTable& t_;
  std::vector<Line> lines_;
  std::vector<Kept> kept_ = std::vector<Kept>(8);  // one for each halving
  std::vector<std::vector<Spot>> corners_;
  std::vector<Spot> clipped_;
  std::vector<bool> gone_;
  std::vector<std::pair<double, std::size_t>> by_area_;
};

PairTable::PairTable(const Shape& a, const Shape& b, int gap, int cells) : n_(cells) {
  const TableFrame f(a, b, gap, cells);
  x0_ = f.x0;
  y0_ = f.y0;
  width_ = f.width;
  height_ = f.height;
  per_x_ = f.per_x;
  per_y_ = f.per_y;
  cells_.assign(static_cast<std::size_t>(n_) * static_cast<std::size_t>(n_), 0);
  TableMaker(*this, a, b, gap);
  work_out_losses(a, b, gap);
}

void PairTable::work_out_losses(const Shape& a, const Shape& b, int gap) {
  const int nodes = n_ + 1;
  std::vector<bool> wanted(static_cast<std::size_t>(nodes * nodes), false);
  for (int j = 0; j < n_; ++j) {
    for (int i = 0; i < n_; ++i) {
      if (cells_[static_cast<std::size_t>(j * n_ + i)] == 0) continue;
      for (const int k : {0, 1, nodes, nodes + 1}) wanted[static_cast<std::size_t>(j * nodes + i + k)] = true;
    }
  }
  const TableFrame frame(a, b, gap, n_);
  const CircleRows rows_a = rows_of(a, gap / 2.0), rows_b = rows_of(b, gap / 2.0);
  const LossAtNodes at(frame, a, rows_a, b, rows_b);
  nodes_.assign(static_cast<std::size_t>(nodes * nodes), 0.0F);
  for (int j = 0; j < nodes; ++j) {
    for (int i = 0; i < nodes; ++i) {
      if (wanted[static_cast<std::size_t>(j * nodes + i)]) nodes_[static_cast<std::size_t>(j * nodes + i)] = at(i, j);
    }
  }
}

std::size_t PairTable::bytes() const {
  return sizeof *this + cells_.capacity() * 2 + nodes_.capacity() * 4 + leaf_at_.capacity() * 4 + leaves_.capacity() * 2 +
         lines_.capacity() * sizeof(Line);
}

}  // namespace gownsheaf::nest
