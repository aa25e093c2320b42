#include "geometry/region.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "geometry/exact_points.h"
#include "geometry/planar.h"

namespace gownsheaf {
namespace {

using exact::sign;
using exact::turn;

// Below, as x is right and y up; both edges are cut by one upright line and do not cross.
bool below(const PlanarEdge& a, const PlanarEdge& b) {
  if (a.from == b.from) return turn(a.from, a.to, b.to) > 0;
  if (a.from < b.from) {
    const int side = sign(turn(a.from, a.to, b.from));
    return side != 0 ? side > 0 : turn(a.from, a.to, b.to) > 0;
  }
  const int side = sign(turn(b.from, b.to, a.from));
  return side != 0 ? side < 0 : turn(b.from, b.to, a.to) < 0;
}

// For each edge how often the lines wind round the place just below it.
std::vector<int> winding_below(const std::vector<PlanarEdge>& edges) {
  const auto less = [&](std::size_t a, std::size_t b) { return a != b && below(edges[a], edges[b]); };
  std::set<std::size_t, decltype(less)> status(less);
  std::vector<std::set<std::size_t, decltype(less)>::iterator> places(edges.size());
  std::vector<std::size_t> ending(edges.size());
  for (std::size_t i = 0; i < edges.size(); ++i) ending[i] = i;
  std::sort(ending.begin(), ending.end(),
            [&](std::size_t a, std::size_t b) { return edges[a].to != edges[b].to ? edges[a].to < edges[b].to : a < b; });
  std::vector<int> out(edges.size());
  std::size_t ended = 0;
  for (std::size_t i = 0; i < edges.size();) {
    const Point at = edges[i].from;
    for (; ended < ending.size() && edges[ending[ended]].to <= at; ++ended) status.erase(places[ending[ended]]);
    std::size_t last = i;
    for (; last < edges.size() && edges[last].from == at; ++last) places[last] = status.insert(last).first;
    auto lowest = places[i];
    for (std::size_t k = i + 1; k < last; ++k)
      if (below(edges[k], edges[*lowest])) lowest = places[k];
    int wind = 0;
    if (lowest != status.begin()) {
      const std::size_t under = *std::prev(lowest);
      wind = out[under] + edges[under].wind;
    }
    for (auto place = lowest; place != status.end() && edges[*place].from == at; ++place) {
      out[*place] = wind;
      wind += edges[*place].wind;
    }
    i = last;
  }
  return out;
}

bool is_inside(int wind, FillRule rule) {
  switch (rule) {
    case FillRule::nonzero: return wind != 0;
    case FillRule::even_odd: return wind % 2 != 0;
    case FillRule::positive: return wind > 0;
  }
  return false;
}

struct Way {
  Point from, to;
  bool used = false;
};

// Whether `a` turns further to the inside's hand than `b`, coming from `before` to `at`.
bool turns_more(Point before, Point at, Point a, Point b) {
  const Point ahead{at.x + (at.x - before.x), at.y + (at.y - before.y)};
  const int rank_a = sign(turn(at, ahead, a)), rank_b = sign(turn(at, ahead, b));
  return rank_a != rank_b ? rank_a > rank_b : turn(at, b, a) > 0;
}

Polygon without_straight_corners(const Polygon& ring) {
  Polygon out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point before = out.empty() ? ring[(i + ring.size() - 1) % ring.size()] : out.back();
    if (turn(before, ring[i], ring[(i + 1) % ring.size()]) != 0) out.push_back(ring[i]);
  }
  return out;
}

void add_ring(std::vector<Polygon>& rings, Polygon ring) {
  std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end()), ring.end());  // a least corner is never straight
  ring = without_straight_corners(ring);
  if (ring.size() >= 3) rings.push_back(std::move(ring));
}

// Follows the sides with the inside at the left hand; a ring is closed as soon as a corner comes again.
std::vector<Polygon> chain(std::vector<Way> ways) {
  std::sort(ways.begin(), ways.end(),
            [](const Way& a, const Way& b) { return a.from != b.from ? a.from < b.from : a.to < b.to; });
  const auto next_way = [&](Point before, Point at) {
    std::size_t best = ways.size();
    auto first = std::lower_bound(ways.begin(), ways.end(), at, [](const Way& w, Point p) { return w.from < p; });
    for (auto w = first; w != ways.end() && w->from == at; ++w) {
      if (w->used) continue;
      if (best == ways.size() || turns_more(before, at, w->to, ways[best].to)) best = static_cast<std::size_t>(w - ways.begin());
    }
    return best;
  };
  std::vector<Polygon> rings;
  for (std::size_t start = 0; start < ways.size(); ++start) {
    if (ways[start].used) continue;
    std::vector<Point> path;
    std::set<Point> on_path;
    for (std::size_t w = start; w < ways.size();) {
      ways[w].used = true;
      path.push_back(ways[w].from);
      on_path.insert(ways[w].from);
      const Point at = ways[w].to;
      const Point before = ways[w].from;
      if (on_path.count(at) == 1) {
        Polygon ring;
        while (true) {
          const Point corner = path.back();
          path.pop_back();
          on_path.erase(corner);
          ring.push_back(corner);
          if (corner == at) break;
        }
        std::reverse(ring.begin(), ring.end());
        add_ring(rings, std::move(ring));
        if (path.empty()) break;
      }
      w = next_way(before, at);
    }
  }
  return rings;
}

Int128 twice_area(const Polygon& ring) {
  Int128 sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()];
    sum += exact::wide(a.x) * exact::wide(b.y) - exact::wide(b.x) * exact::wide(a.y);
  }
  return sum;
}

bool too_far(const std::vector<Polygon>& polygons) {
  for (const Polygon& p : polygons)
    for (const Point& q : p)
      if (q.x > kFarthest || q.y > kFarthest || -q.x > kFarthest || -q.y > kFarthest) return true;
  return false;
}

}  // namespace

Resolved resolve(const std::vector<Polygon>& polygons, FillRule rule) {
  Resolved out;
  std::optional<Planar> planar;
  if (!too_far(polygons)) planar = split_crossings(polygons, kMostCrossings);
  if (!planar) {
    out.refused = true;
    return out;
  }
  out.crossings = std::move(planar->crossings);
  if (out.crossings.size() > 100) out.crossings.resize(100);
  const std::vector<int> under = winding_below(planar->edges);
  std::vector<Way> ways;
  for (std::size_t i = 0; i < planar->edges.size(); ++i) {
    const PlanarEdge& e = planar->edges[i];
    const bool low = is_inside(under[i], rule), high = is_inside(under[i] + e.wind, rule);
    if (low != high) ways.push_back(high ? Way{e.from, e.to} : Way{e.to, e.from});
  }
  out.region.rings = chain(std::move(ways));
  std::sort(out.region.rings.begin(), out.region.rings.end());
  return out;
}

Area area(const Polygon& ring) { return Area::square_ticks(twice_area(ring) / 2); }

Area area(const Region& region) {
  Int128 sum = 0;
  for (const Polygon& ring : region.rings) sum += twice_area(ring);
  return Area::square_ticks(sum / 2);
}

Box box_of(const Region& region) {
  Polygon all;
  for (const Polygon& ring : region.rings) all.insert(all.end(), ring.begin(), ring.end());
  return bounds(all);
}

Side side_of(const Region& region, Point p) {
  bool inside = false;
  for (const Polygon& ring : region.rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point a = ring[i], b = ring[(i + 1) % ring.size()];
      const Int128 side = turn(a, b, p);
      if (side == 0 && exact::within(a, b, p)) return Side::on;
      if ((a.y <= p.y) != (b.y <= p.y) && (side > 0) == (b.y > a.y)) inside = !inside;
    }
  }
  return inside ? Side::inside : Side::outside;
}

double distance_mm(Point p, Point a, Point b) {
  const double dx = (b.x - a.x).in_mm(), dy = (b.y - a.y).in_mm();
  const double px = (p.x - a.x).in_mm(), py = (p.y - a.y).in_mm();
  const double square = dx * dx + dy * dy;
  const double along = square > 0 ? std::clamp((px * dx + py * dy) / square, 0.0, 1.0) : 0.0;
  const double ex = px - along * dx, ey = py - along * dy;
  return std::sqrt(ex * ex + ey * ey);
}

bool reaches(const Region& region, Point p, Length reach) {
  if (side_of(region, p) != Side::outside) return true;
  for (const Polygon& ring : region.rings)
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (distance_mm(p, ring[i], ring[(i + 1) % ring.size()]) <= reach.in_mm()) return true;
  return false;
}

}  // namespace gownsheaf
