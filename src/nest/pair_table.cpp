#include "nest/pair_table.h"

#include <algorithm>
#include <cmath>

namespace gownsheaf::nest {
namespace {

std::size_t lowest(const Ring& ring) {
  std::size_t at = 0;
  for (std::size_t i = 1; i < ring.size(); ++i) {
    if (ring[i].y < ring[at].y || (ring[i].y == ring[at].y && ring[i].x < ring[at].x)) at = i;
  }
  return at;
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
  return {{r, -t}, {r, t},   {u, v},   {v, u},   {t, r},   {-t, r}, {-v, u}, {-u, v},
          {-r, t}, {-r, -t}, {-u, -v}, {-v, -u}, {-t, -r}, {t, -r}, {v, -u}, {u, -v}};
}

// Sorts the cells of a table: from the whole box down by halving, leaving out at each step the no-fit pieces that do not
// reach into the square, the lines that no longer cut it, and the pieces that lie within another there.
class TableMaker {
 public:
  TableMaker(PairTable& table, const Shape& a, const Shape& b, int gap)
      : t_(table), n_(table.grid_.cells()), cell_width_(table.grid_.cell_width()), cell_height_(table.grid_.cell_height()) {
    const Corner least = least_offset(a, b, gap);
    const Ring circle = gap > 0 ? around_circle(gap) : Ring{};
    Kept& all = kept_[0];
    for (const Ring& p : a.convex) {
      for (const Ring& q : b.convex) {
        Ring sum = minkowski_sum(p, turned_half(q));
        if (gap > 0) sum = minkowski_sum(sum, circle);
        for (std::size_t i = 0; i < sum.size(); ++i) {
          const Corner& n = sum[(i + 1) % sum.size()];
          const std::int64_t ax = static_cast<std::int64_t>(sum[i].x) - least.x,
                             ay = static_cast<std::int64_t>(sum[i].y) - least.y;
          const std::int64_t ux = static_cast<std::int64_t>(n.x) - sum[i].x, uy = static_cast<std::int64_t>(n.y) - sum[i].y;
          const Line line{static_cast<double>(-uy), static_cast<double>(ux), static_cast<double>(uy * ax - ux * ay),
                          std::sqrt(static_cast<double>(ux * ux + uy * uy)), -1};
          all.ids.push_back(static_cast<int>(lines_.size()));
          lines_.push_back(line);
        }
        all.ends.push_back(static_cast<int>(all.ids.size()));
      }
    }
    visit(0, 0, n_, 0);
    t_.leaves_.shrink_to_fit();
    t_.further_.shrink_to_fit();
    t_.lines_.shrink_to_fit();
  }

 private:
  struct Line {
    double a, b, c, size;
    int stored;
  };
  struct Kept {
    std::vector<int> ids, ends;
  };  // pieces as runs of line numbers
  struct Spot {
    double x, y;
  };
  static constexpr std::size_t kTried = 6;  // of the largest pieces, to cover a smaller one
  static constexpr double kMargin = 1e-3;   // ticks; far above rounding, far below what matters

  double at(const Line& l, const Spot& p) const { return l.a * p.x + l.b * p.y + l.c; }

  void visit(int i, int j, int size, int depth) {
    // A tick more on every side: which cell a place falls into is rounded.
    const double xl = i * cell_width_ - 1, xh = (i + size) * cell_width_ + 1, yl = j * cell_height_ - 1,
                 yh = (j + size) * cell_height_ + 1;
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
        if (!out && l.a * (l.a > 0 ? xl : xh) + l.b * (l.b > 0 ? yl : yh) + l.c <= 0)
          to.ids.push_back(from.ids[static_cast<std::size_t>(k)]);
      }
      begin = end;
      if (out) {
        to.ids.resize(before);
      } else if (to.ids.size() == before) {  // nothing cuts it: all of the square overlaps
        for (int y = j; y < j + size; ++y) std::fill_n(t_.cells_.begin() + y * n_ + i, size, std::uint16_t{1});
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
    t_.cells_[static_cast<std::size_t>(j * n_ + i)] = static_cast<std::uint16_t>(t_.leaves_.size());
    const auto line = [&](int k) -> Line& { return lines_[static_cast<std::size_t>(kept.ids[static_cast<std::size_t>(k)])]; };
    PairTable::Leaf leaf{
        {static_cast<std::int32_t>(line(0).a), static_cast<std::int32_t>(line(0).b), static_cast<std::int64_t>(line(0).c)},
        -1,
        static_cast<int>(kept.ends.size())};
    if (kept.ids.size() > 1) {
      leaf.further = static_cast<int>(t_.further_.size());
      int begin = 0;
      for (const int end : kept.ends) {
        const int from = begin == 0 ? 1 : begin;  // the first line of all stands in the leaf
        t_.further_.push_back(static_cast<std::uint16_t>(end - from));
        for (int k = from; k < end; ++k) {
          Line& l = line(k);
          if (l.stored < 0) {
            l.stored = static_cast<int>(t_.lines_.size());
            t_.lines_.push_back({static_cast<std::int32_t>(l.a), static_cast<std::int32_t>(l.b), static_cast<std::int64_t>(l.c)});
          }
          t_.further_.push_back(static_cast<std::uint16_t>(l.stored));
        }
        begin = end;
      }
    }
    t_.leaves_.push_back(leaf);
  }

  PairTable& t_;
  int n_;
  double cell_width_, cell_height_;
  std::vector<Line> lines_;
  std::vector<Kept> kept_ = std::vector<Kept>(8);  // one for each halving
  std::vector<std::vector<Spot>> corners_;
  std::vector<Spot> clipped_;
  std::vector<bool> gone_;
  std::vector<std::pair<double, std::size_t>> by_area_;
};

PairTable::PairTable(const Shape& a, const Shape& b, int gap, int cells) : grid_(a, b, gap, cells) {
  cells_.assign(static_cast<std::size_t>(cells) * static_cast<std::size_t>(cells), 0);
  leaves_.assign(kDecided, kDecided + 2);
  TableMaker(*this, a, b, gap);
  leaf_of_[1] = leaves_.data();
  work_out_losses(a, b, gap);
}

void PairTable::work_out_losses(const Shape& a, const Shape& b, int gap) {
  const int n = grid_.cells(), nodes = n + 1;
  std::vector<bool> wanted(static_cast<std::size_t>(grid_.nodes()), false);
  for (int j = 0; j < n; ++j) {
    for (int i = 0; i < n; ++i) {
      if (cells_[static_cast<std::size_t>(j * n + i)] == 0) continue;
      for (const int k : {0, 1, nodes, nodes + 1}) wanted[static_cast<std::size_t>(j * nodes + i + k)] = true;
    }
  }
  const CircleRows rows_a = rows_of(a, gap / 2.0), rows_b = rows_of(b, gap / 2.0);
  const LossAtNodes at(a, rows_a, b, rows_b, grid_, least_offset(a, b, gap));
  nodes_.assign(wanted.size(), 0.0F);
  for (int j = 0; j < nodes; ++j) {
    for (int i = 0; i < nodes; ++i) {
      if (wanted[static_cast<std::size_t>(j * nodes + i)]) nodes_[static_cast<std::size_t>(j * nodes + i)] = at(i, j);
    }
  }
}

std::size_t PairTable::bytes() const {
  return sizeof *this + cells_.capacity() * 2 + nodes_.capacity() * 4 + leaves_.capacity() * sizeof(Leaf) +
         further_.capacity() * 2 + lines_.capacity() * sizeof(Line);
}

}  // namespace gownsheaf::nest
