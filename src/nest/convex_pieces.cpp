// A ring in convex pieces: cut off ears, then join pieces across the longest diagonals while they stay convex
// (Hertel and Mehlhorn 1983).
#include <algorithm>
#include <cmath>

#include "nest/shape.h"

namespace gownsheaf::nest {
namespace {

bool inside_or_on(Corner a, Corner b, Corner c, Corner p) {
  return turn_of(a, b, p) >= 0 && turn_of(b, c, p) >= 0 && turn_of(c, a, p) >= 0;
}

std::vector<Ring> triangles(Ring rest) {
  std::vector<Ring> out;
  while (rest.size() > 3) {
    const std::size_t n = rest.size();
    std::size_t best = n;
    double best_length = 0;
    for (std::size_t i = 0; i < n; ++i) {
      const Corner p = rest[(i + n - 1) % n], a = rest[i], b = rest[(i + 1) % n];
      if (turn_of(p, a, b) <= 0) continue;
      bool ear = true;
      for (std::size_t k = 2; k + 1 < n && ear; ++k) {
        const Corner c = rest[(i + k) % n];
        if (c != p && c != a && c != b && inside_or_on(p, a, b, c)) ear = false;
      }
      if (!ear) continue;
      const double dx = static_cast<double>(b.x) - p.x, dy = static_cast<double>(b.y) - p.y, length = dx * dx + dy * dy;
      if (best == n || length < best_length) {
        best = i;
        best_length = length;
      }
    }
    if (best == n) {  // corners in a line may be left over
      bool dropped = false;
      for (std::size_t i = 0; i < n && !dropped; ++i) {
        if (turn_of(rest[(i + n - 1) % n], rest[i], rest[(i + 1) % n]) == 0) {
          rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
          dropped = true;
        }
      }
      if (!dropped) return {};
      continue;
    }
    out.push_back({rest[(best + n - 1) % n], rest[best], rest[(best + 1) % n]});
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(best));
  }
  if (rest.size() == 3 && turn_of(rest[0], rest[1], rest[2]) > 0) out.push_back(rest);
  return out;
}

// a and b share the edge from corner i of a to the next; joined across it, if that is convex.
bool joined(const Ring& a, const Ring& b, std::size_t i, Ring& out) {
  const std::size_t n = a.size(), m = b.size();
  const Corner p = a[i], q = a[(i + 1) % n];
  for (std::size_t j = 0; j < m; ++j) {
    if (b[j] != q || b[(j + 1) % m] != p) continue;
    out.clear();
    for (std::size_t k = 1; k <= n; ++k) out.push_back(a[(i + k) % n]);  // q … p
    for (std::size_t k = 2; k < m; ++k) out.push_back(b[(j + k) % m]);   // after p … before q
    for (std::size_t k = 0; k < out.size(); ++k) {
      if (turn_of(out[k], out[(k + 1) % out.size()], out[(k + 2) % out.size()]) < 0) return false;
    }
    return true;
  }
  return false;
}

}  // namespace

std::vector<Ring> convex_pieces(const Ring& ring) {
  std::vector<Ring> pieces = triangles(ring);
  for (;;) {
    double best = -1;
    std::size_t at_a = 0, at_b = 0;
    Ring best_ring, trial;
    for (std::size_t a = 0; a < pieces.size(); ++a) {
      for (std::size_t b = a + 1; b < pieces.size(); ++b) {
        for (std::size_t i = 0; i < pieces[a].size(); ++i) {
          const Corner p = pieces[a][i], q = pieces[a][(i + 1) % pieces[a].size()];
          const double dx = static_cast<double>(q.x) - p.x, dy = static_cast<double>(q.y) - p.y;
          if (dx * dx + dy * dy > best && joined(pieces[a], pieces[b], i, trial)) {
            best = dx * dx + dy * dy;
            at_a = a;
            at_b = b;
            best_ring = trial;
          }
        }
      }
    }
    if (best < 0) break;
    pieces[at_a] = best_ring;
    pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(at_b));
  }
  for (Ring& piece : pieces) piece = tidied(piece);
  return pieces;
}

double hull_area(const Ring& ring) {
  Ring sorted = ring, hull;
  std::sort(sorted.begin(), sorted.end());
  for (int side = 0; side < 2; ++side) {
    const std::size_t start = hull.size();
    for (const Corner& c : sorted) {
      while (hull.size() >= start + 2 && turn_of(hull[hull.size() - 2], hull.back(), c) <= 0) hull.pop_back();
      hull.push_back(c);
    }
    hull.pop_back();
    std::reverse(sorted.begin(), sorted.end());
  }
  return 0.5 * static_cast<double>(twice_area(hull));
}

double diameter(const Ring& ring) {
  double most = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double dx = static_cast<double>(ring[i].x) - ring[j].x, dy = static_cast<double>(ring[i].y) - ring[j].y;
      most = std::max(most, dx * dx + dy * dy);
    }
  }
  return std::sqrt(most);
}

}  // namespace gownsheaf::nest
