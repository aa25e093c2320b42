#include "geometry/allowance.h"

#include <algorithm>
#include <cmath>

#include "geometry/exact_points.h"

namespace gownsheaf {
namespace {

struct Vector {
  double x = 0, y = 0;
};
Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y}; }
Vector operator*(double k, Vector a) { return {k * a.x, k * a.y}; }
double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y; }
double cross(Vector a, Vector b) { return a.x * b.y - a.y * b.x; }
double length(Vector a) { return std::sqrt(dot(a, a)); }

// In ticks. The outside lies at the right hand of an edge (x right, y up), as the inside of a ring lies at its left.
struct Edge {
  Point from, to;
  Vector along, out;
  double depth;
};

Point moved(Point p, Vector by) { return {p.x + Length::ticks(std::llround(by.x)), p.y + Length::ticks(std::llround(by.y))}; }

// What fills the corner at the end of `a`, from a's outer line to b's. Turning outward only.
void add_corner(const Edge& a, const Edge& b, double mitre, Polygon& line) {
  const Point corner = a.to;
  const Vector end = a.depth * a.out, start = b.depth * b.out;
  const double limit = mitre * std::max(a.depth, b.depth);
  const double sine = cross(a.along, b.along), cosine = dot(a.along, b.along);
  line.push_back(moved(corner, end));
  if (sine < 1e-9 && cosine < 0) {  // back on itself: square across, past the point
    line.push_back(moved(corner, end + limit * a.along));
    line.push_back(moved(corner, start + -limit * b.along));
  } else if (sine >= 1e-9) {
    const double past_a = (b.depth - a.depth * cosine) / sine, past_b = (a.depth - b.depth * cosine) / sine;
    if (past_a < 0 || past_b < 0) {  // a deep strip crosses the shallow one's line before its end: a step
      line.push_back(moved(corner, start));
      return;
    }
    const Vector meet = end + past_a * a.along;
    const double far = length(meet);
    if (far <= limit) {
      line.push_back(moved(corner, meet));
    } else {
      const Vector toward = (1 / far) * meet;
      const double end_at = dot(end, toward), start_at = dot(start, toward);
      const auto cut = [&](Vector from, double from_at) {
        return from + ((limit - from_at) / (far - from_at)) * (meet + -1.0 * from);
      };
      line.push_back(moved(corner, cut(end, end_at)));
      line.push_back(moved(corner, cut(start, start_at)));
    }
  }
  line.push_back(moved(corner, start));
}

std::vector<Edge> edges_of(const Polygon& ring, const std::vector<Length>& depths) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()];
    const Vector run{static_cast<double>((b.x - a.x).in_ticks()), static_cast<double>((b.y - a.y).in_ticks())};
    const double size = length(run);
    if (size == 0) continue;
    const Vector along = (1 / size) * run;
    edges.push_back({a, b, along, {along.y, -along.x}, static_cast<double>(depths[i].in_ticks())});
  }
  return edges;
}

// The line round the strips; its winding number counts the ring, each strip and each corner once.
Polygon round_line(const Polygon& ring, const Allowances& allowances) {
  const std::vector<Edge> edges = edges_of(ring, allowances.of_edges);
  Polygon line;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Edge &a = edges[i], &b = edges[(i + 1) % edges.size()];
    line.push_back(moved(a.from, a.depth * a.out));
    const Int128 turns = exact::turn(a.from, a.to, b.to);
    if (turns > 0 || (turns == 0 && dot(a.along, b.along) < 0)) {
      add_corner(a, b, allowances.mitre, line);
    } else {
      line.push_back(moved(a.to, a.depth * a.out));
      line.push_back(a.to);  // turning inward: the strips overlap, or step at the corner itself
    }
  }
  return line;
}

bool usable(const Polygon& ring, const Allowances& allowances) {
  if (ring.size() < 3 || allowances.of_edges.size() != ring.size() || !(allowances.mitre >= 1)) return false;
  for (const Length depth : allowances.of_edges)
    if (depth < Length()) return false;
  return true;
}

}  // namespace

std::optional<Region> with_allowances(const Polygon& seam_line, const Allowances& allowances) {
  if (!usable(seam_line, allowances) || !(area(seam_line) > Area())) return {};
  // The ring itself once more: rounding could leave a sliver of it out.
  Resolved found = resolve({round_line(seam_line, allowances), seam_line}, FillRule::positive);
  if (found.refused || found.region.rings.empty()) return {};
  return std::move(found.region);
}

std::optional<Region> within_allowances(const Polygon& cut_line, const Allowances& allowances) {
  if (!usable(cut_line, allowances) || !(area(cut_line) > Area())) return {};
  // The strips round the outside of the ring turned round, taken off a frame.
  Polygon turned(cut_line.rbegin(), cut_line.rend());
  Allowances round = allowances;
  for (std::size_t i = 0; i < cut_line.size(); ++i)  // the edge from turned[i] is that from the corner after it in cut_line
    round.of_edges[i] = allowances.of_edges[(2 * cut_line.size() - 2 - i) % cut_line.size()];
  const Box box = bounds(cut_line);
  const Length edge = Length::mm(1);
  const Point low{box.x - edge, box.y - edge}, high{box.right() + edge, box.bottom() + edge};
  const Polygon frame = {low, {high.x, low.y}, high, {low.x, high.y}};
  const Resolved found = resolve({frame, round_line(turned, round)}, FillRule::positive);
  if (found.refused) return {};
  Region out;
  for (const Polygon& ring : found.region.rings) {
    // Each hole is a part of what is left.
    if (area(ring) < Area()) {
      Polygon part(ring.rbegin(), ring.rend());
      std::rotate(part.begin(), std::min_element(part.begin(), part.end()), part.end());
      out.rings.push_back(std::move(part));
    }
  }
  std::sort(out.rings.begin(), out.rings.end());
  return out;
}

}  // namespace gownsheaf
