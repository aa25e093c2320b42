#include "geometry/planar.h"

#include <algorithm>

#include "geometry/exact_points.h"

namespace gownsheaf {
namespace {

using exact::sign;
using exact::turn;

constexpr std::size_t kMostPairs = 400'000'000;  // looked at in one round: some seconds
constexpr int kMostRounds = 40;

struct Cut { std::size_t edge; Point at; };

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
  std::sort(edges.begin(), edges.end(), [](const PlanarEdge& a, const PlanarEdge& b) {
    return a.from != b.from ? a.from < b.from : a.to < b.to;
  });
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
  const auto along = [&](Length from, Length to) {
    return from + Length::ticks(exact::nearest(exact::wide(to - from) * n, d));
  };
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

// All cuts of one round; false when there is too much of it. Edges come sorted by their left ends.
bool all_cuts(const std::vector<PlanarEdge>& edges, std::size_t most, std::vector<Cut>& cuts) {
  std::vector<std::size_t> open;
  std::size_t pairs = 0;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Length low = std::min(edges[i].from.y, edges[i].to.y), high = std::max(edges[i].from.y, edges[i].to.y);
    std::size_t kept = 0;
    for (const std::size_t j : open) {
      const PlanarEdge& other = edges[j];
      if (other.to.x < edges[i].from.x) continue;
      open[kept++] = j;
      if (std::max(other.from.y, other.to.y) < low || high < std::min(other.from.y, other.to.y)) continue;
      meet(edges, j, i, cuts);
    }
    pairs += open.size();
    open.resize(kept);
    open.push_back(i);
    if (cuts.size() > 4 * most || pairs > kMostPairs) return false;
  }
  return true;
}

// A crossing rounded to a tick need not lie on the segment: the parts then bend there, and are ordered along it.
void split(std::vector<PlanarEdge>& edges, std::vector<Cut>& cuts) {
  std::sort(cuts.begin(), cuts.end(), [&](const Cut& a, const Cut& b) {
    if (a.edge != b.edge) return a.edge < b.edge;
    const PlanarEdge& e = edges[a.edge];
    const auto along = [&](Point p) {
      return exact::wide(p.x - e.from.x) * exact::wide(e.to.x - e.from.x) + exact::wide(p.y - e.from.y) * exact::wide(e.to.y - e.from.y);
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
    // A cut that rounds to the end of its own segment splits nothing there.
    if (round == 0) {
      for (const Cut& cut : cuts) out.crossings.push_back(cut.at);
      std::sort(out.crossings.begin(), out.crossings.end());
      out.crossings.erase(std::unique(out.crossings.begin(), out.crossings.end()), out.crossings.end());
    }
    if (cuts.empty()) return out;
    split(out.edges, cuts);
  }
  return {};
}

}  // namespace gownsheaf
