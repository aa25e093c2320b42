#include "nest/proof.h"

#include <algorithm>

namespace gownsheaf::nest {
namespace {

struct At {
  Int128 x, y;
};
using Path = std::vector<At>;

Int128 turn(const At& a, const At& b, const At& c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }
int sign(Int128 v) { return (v > 0) - (v < 0); }

// Strictly inside; neither on an edge nor outside.
bool inside(const Path& ring, const At& p) {
  bool in = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const At &a = ring[j], &b = ring[i];
    const Int128 t = turn(a, b, p);
    if (t == 0 && std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
        p.y <= std::max(a.y, b.y))
      return false;
    if ((a.y > p.y) != (b.y > p.y) && ((b.y > a.y) == (t > 0))) in = !in;
  }
  return in;
}

// A point inside the ring: in the triangle at its least corner, or beside the corner that reaches deepest into it.
At point_within(const Path& ring) {
  const std::size_t n = ring.size();
  std::size_t low = 0;
  for (std::size_t i = 1; i < n; ++i) {
    if (ring[i].x < ring[low].x || (ring[i].x == ring[low].x && ring[i].y < ring[low].y)) low = i;
  }
  const At p = ring[(low + n - 1) % n], a = ring[low], b = ring[(low + 1) % n];
  const At* deepest = nullptr;
  Int128 depth = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const At& c = ring[i];
    if (i == low || i == (low + 1) % n || i == (low + n - 1) % n) continue;
    if (turn(p, a, c) < 0 || turn(a, b, c) < 0 || turn(b, p, c) < 0) continue;
    if (const Int128 d = turn(b, p, c); deepest == nullptr || d > depth) {
      deepest = &c;
      depth = d;
    }
  }
  if (deepest != nullptr) return {(a.x + deepest->x) / 2, (a.y + deepest->y) / 2};
  return {(p.x + a.x + b.x) / 3, (p.y + a.y + b.y) / 3};
}

// Does an edge of a run through the inside of b? Coordinates are multiples of 6; edges of the two do not cross.
bool enters(const Path& a, const Path& b) {
  for (std::size_t i = 0, j = a.size() - 1; i < a.size(); j = i++) {
    std::vector<At> cuts{a[j]};
    for (const At& c : b) {
      if (turn(a[j], a[i], c) == 0) cuts.push_back(c);
    }
    cuts.push_back(a[i]);
    const Int128 ux = a[i].x - a[j].x, uy = a[i].y - a[j].y;
    const auto along = [&](const At& p) { return (p.x - a[j].x) * ux + (p.y - a[j].y) * uy; };
    std::sort(cuts.begin(), cuts.end(), [&](const At& p, const At& q) { return along(p) < along(q); });
    const Int128 whole = ux * ux + uy * uy;
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
      if (along(cuts[k]) < 0 || along(cuts[k + 1]) > whole) continue;
      if (inside(b, {(cuts[k].x + cuts[k + 1].x) / 2, (cuts[k].y + cuts[k + 1].y) / 2})) return true;
    }
  }
  return false;
}

bool edges_cross(const Path& a, const Path& b) {
  for (std::size_t i = 0, j = a.size() - 1; i < a.size(); j = i++) {
    for (std::size_t k = 0, l = b.size() - 1; k < b.size(); l = k++) {
      if (sign(turn(a[j], a[i], b[l])) * sign(turn(a[j], a[i], b[k])) < 0 &&
          sign(turn(b[l], b[k], a[j])) * sign(turn(b[l], b[k], a[i])) < 0)
        return true;
    }
  }
  return false;
}

// Is p nearer than the gap to the segment from a to b?
bool near(const At& p, const At& a, const At& b, Int128 gap) {
  const Int128 ux = b.x - a.x, uy = b.y - a.y, vx = p.x - a.x, vy = p.y - a.y;
  const Int128 along = ux * vx + uy * vy, whole = ux * ux + uy * uy;
  if (along <= 0) return vx * vx + vy * vy < gap * gap;
  if (along >= whole) return (p.x - b.x) * (p.x - b.x) + (p.y - b.y) * (p.y - b.y) < gap * gap;
  const Int128 across = ux * vy - uy * vx;
  return across * across < gap * gap * whole;
}

}  // namespace

bool apart(const Ring& a, const Ring& b, std::int64_t dx, std::int64_t dy, std::int64_t gap) {
  Path p, q;
  for (const Corner& c : a) p.push_back({Int128{c.x} * 6, Int128{c.y} * 6});
  for (const Corner& c : b) q.push_back({(Int128{c.x} + dx) * 6, (Int128{c.y} + dy) * 6});
  if (edges_cross(p, q) || enters(p, q) || enters(q, p)) return false;
  if (inside(q, point_within(p)) || inside(p, point_within(q))) return false;
  if (gap == 0) return true;
  for (const Path* one : {&p, &q}) {
    const Path& other = one == &p ? q : p;
    for (const At& c : *one) {
      for (std::size_t i = 0, j = other.size() - 1; i < other.size(); j = i++) {
        if (near(c, other[j], other[i], Int128{gap} * 6)) return false;
      }
    }
  }
  return true;
}

}  // namespace gownsheaf::nest
