#include "geometry/planar.h"

#include <algorithm>

#include "geometry/exact_points.h"

namespace gownsheaf {
namespace {

using exact::sign;
using exact::turn;

constexpr std::size_t kMostPairs = 100'000'000;  // looked at in one round: less than a second
constexpr int kMostRounds = 40;

struct Cut {
  std::size_t edge;
  Point at;
};

std::vector<PlanarEdge> edges_of(const std::vector<Polygon>& polygons) {
  std::vector<PlanarEdge> edges;
  for (const Polygon& p : polygons) {
    if (p.size() < 3) continue;
    for (std::size_t i = 0; i < p.size(); ++i) {
      const Point a = p[i], b = p[(i + 1) % p.size()];
      if (a < b) edges.push_back({a, b, 1});
      if (b < a) edges.push_back({b, a, -1});
    }
  }
  return edges;
}

// Each pair of ends once.
void merge(std::vector<PlanarEdge>& edges) {
  std::sort(edges.begin(), edges.end(),
            [](const PlanarEdge& a, const PlanarEdge& b) { return a.from != b.from ? a.from < b.from : a.to < b.to; });
  std::size_t kept = 0;
  for (std::size_t i = 0; i < edges.size();) {
    PlanarEdge sum = edges[i];
    for (++i; i < edges.size() && edges[i].from == sum.from && edges[i].to == sum.to; ++i) sum.wind += edges[i].wind;
    if (sum.wind != 0) edges[kept++] = sum;
  }
  edges.resize(kept);
}

// Where two segments that are not parallel cross, to the nearest tick.
Point crossing(const PlanarEdge& a, const PlanarEdge& b) {
  const Int128 before = turn(b.from, b.to, a.from), after = turn(b.from, b.to, a.to);
  Int128 n = before, d = before - after;
  if (d < 0) n = -n, d = -d;
  const auto along = [&](Length from, Length to) { return from + Length::ticks(exact::nearest(exact::wide(to - from) * n, d)); };
  return {along(a.from.x, a.to.x), along(a.from.y, a.to.y)};
}

// Notes where a and b must be split so that they meet at ends only.
void meet(const std::vector<PlanarEdge>& edges, std::size_t i, std::size_t j, std::vector<Cut>& cuts) {
  const PlanarEdge &a = edges[i], &b = edges[j];
  const int from_side = sign(turn(a.from, a.to, b.from)), to_side = sign(turn(a.from, a.to, b.to));
  if (from_side * to_side > 0) return;
  const int a_from = sign(turn(b.from, b.to, a.from)), a_to = sign(turn(b.from, b.to, a.to));
  if (a_from * a_to > 0) return;
  const auto touch = [&](std::size_t edge, const PlanarEdge& e, Point p) {
    if (p != e.from && p != e.to && exact::within(e.from, e.to, p)) cuts.push_back({edge, p});
  };
  if (from_side * to_side < 0 && a_from * a_to < 0) {
    const Point p = crossing(a, b);
    cuts.push_back({i, p});
    cuts.push_back({j, p});
    return;
  }
  if (from_side == 0) touch(i, a, b.from);
  if (to_side == 0) touch(i, a, b.to);
  if (a_from == 0) touch(j, b, a.from);
  if (a_to == 0) touch(j, b, a.to);
}

// Which edges pass through which cells of a grid laid over all of them.
class Grid {
 public:
  explicit Grid(const std::vector<PlanarEdge>& edges) : edges_(edges) {
    if (edges.empty()) return;
    Point most = least_ = edges.front().from;
    for (const PlanarEdge& e : edges)
      for (const Point p : {e.from, e.to}) {
        least_ = {std::min(least_.x, p.x), std::min(least_.y, p.y)};
        most = {std::max(most.x, p.x), std::max(most.y, p.y)};
      }
    while (side_ < 512 && static_cast<std::size_t>(side_ * side_) < edges.size()) ++side_;
    cell_x_ = (most.x - least_.x).in_ticks() / side_ + 1;
    cell_y_ = (most.y - least_.y).in_ticks() / side_ + 1;
    for (std::size_t i = 0; i < edges.size() && entries_.size() <= kMostEntries; ++i) enter(i);
    std::sort(entries_.begin(), entries_.end());
  }
  bool too_many() const { return entries_.size() > kMostEntries; }
  struct Entry {
    std::uint32_t cell, edge;
    friend auto operator<=>(const Entry&, const Entry&) = default;
  };
  const std::vector<Entry>& entries() const { return entries_; }  // cell after cell

 private:
  static constexpr std::size_t kMostEntries = 8'000'000;
  std::int64_t row_of(std::int64_t y) const {
    return std::clamp<std::int64_t>((y - least_.y.in_ticks()) / cell_y_, 0, side_ - 1);
  }

  void enter(std::size_t i) {
    const PlanarEdge& e = edges_[i];
    const std::int64_t x0 = e.from.x.in_ticks(), x1 = e.to.x.in_ticks(), y0 = e.from.y.in_ticks(), y1 = e.to.y.in_ticks();
    const std::int64_t first = (x0 - least_.x.in_ticks()) / cell_x_, last = (x1 - least_.x.in_ticks()) / cell_x_;
    const auto y_at = [&](std::int64_t x) {
      return x1 == x0 ? y0 : y0 + static_cast<std::int64_t>(static_cast<Int128>(y1 - y0) * (x - x0) / (x1 - x0));
    };
    for (std::int64_t column = first; column <= last; ++column) {
      const std::int64_t left = least_.x.in_ticks() + column * cell_x_;
      std::int64_t a = column == first ? y0 : y_at(left), b = column == last ? y1 : y_at(left + cell_x_);
      if (a > b) std::swap(a, b);
      for (std::int64_t row = row_of(a - 1); row <= row_of(b + 1); ++row)  // y_at is rounded
        entries_.push_back({static_cast<std::uint32_t>(column * side_ + row), static_cast<std::uint32_t>(i)});
    }
  }

  const std::vector<PlanarEdge>& edges_;
  Point least_;
  std::int64_t side_ = 1, cell_x_ = 1, cell_y_ = 1;
  std::vector<Entry> entries_;
};

// All cuts of one round; false when there is too much of it.
bool all_cuts(const std::vector<PlanarEdge>& edges, std::size_t most, std::vector<Cut>& cuts) {
  const Grid grid(edges);
  if (grid.too_many()) return false;
  const std::vector<Grid::Entry>& entries = grid.entries();
  std::size_t pairs = 0;
  for (std::size_t from = 0; from < entries.size();) {
    std::size_t to = from;
    while (to < entries.size() && entries[to].cell == entries[from].cell) ++to;
    pairs += (to - from) * (to - from) / 2;
    if (pairs > kMostPairs) return false;
    for (std::size_t a = from; a < to; ++a) {
      const PlanarEdge& e = edges[entries[a].edge];
      const Length low = std::min(e.from.y, e.to.y), high = std::max(e.from.y, e.to.y);
      for (std::size_t b = a + 1; b < to; ++b) {
        const PlanarEdge& other = edges[entries[b].edge];
        if (other.from.x > e.to.x || e.from.x > other.to.x) continue;
        if (std::max(other.from.y, other.to.y) < low || high < std::min(other.from.y, other.to.y)) continue;
        meet(edges, entries[a].edge, entries[b].edge, cuts);
      }
      if (cuts.size() > 8 * most) return false;
    }
    from = to;
  }
  return true;
}

// A crossing rounded to a tick need not lie on the segment: the parts then bend there, and are ordered along it.
void split(std::vector<PlanarEdge>& edges, std::vector<Cut>& cuts) {
  std::sort(cuts.begin(), cuts.end(), [&](const Cut& a, const Cut& b) {
    if (a.edge != b.edge) return a.edge < b.edge;
    const PlanarEdge& e = edges[a.edge];
    const auto along = [&](Point p) {
      return exact::wide(p.x - e.from.x) * exact::wide(e.to.x - e.from.x) +
             exact::wide(p.y - e.from.y) * exact::wide(e.to.y - e.from.y);
    };
    const Int128 at_a = along(a.at), at_b = along(b.at);
    return at_a != at_b ? at_a < at_b : a.at < b.at;
  });
  std::vector<PlanarEdge> parts;
  parts.reserve(edges.size() + cuts.size());
  const auto add = [&](Point a, Point b, int wind) {
    if (a < b) parts.push_back({a, b, wind});
    if (b < a) parts.push_back({b, a, -wind});
  };
  std::size_t next = 0;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    Point at = edges[i].from;
    for (; next < cuts.size() && cuts[next].edge == i; ++next) {
      add(at, cuts[next].at, edges[i].wind);
      at = cuts[next].at;
    }
    add(at, edges[i].to, edges[i].wind);
  }
  edges = std::move(parts);
}

}  // namespace

std::optional<Planar> split_crossings(const std::vector<Polygon>& polygons, std::size_t most) {
  Planar out;
  out.edges = edges_of(polygons);
  for (int round = 0; round < kMostRounds; ++round) {
    merge(out.edges);
    std::vector<Cut> cuts;
    if (!all_cuts(out.edges, most, cuts)) return {};
    if (round == 0) {
      for (const Cut& cut : cuts) out.crossings.push_back(cut.at);
      std::sort(out.crossings.begin(), out.crossings.end());
      out.crossings.erase(std::unique(out.crossings.begin(), out.crossings.end()), out.crossings.end());
      if (out.crossings.size() > most) return {};
    }
    if (cuts.empty()) return out;
    split(out.edges, cuts);
  }
  return {};
}

}  // namespace gownsheaf
