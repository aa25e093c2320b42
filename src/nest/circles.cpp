// Circles that fill a ring: each the greatest that lies inside it and outside those before. Found by splitting squares, the
// most promising first (the way of finding a polygon's pole of inaccessibility).
#include <algorithm>
#include <cmath>
#include <limits>

#include "nest/shape.h"

namespace gownsheaf::nest {
namespace {

// Distance from the nearest edge, negative outside.
double depth_in(const Ring& ring, double x, double y) {
  double least = std::numeric_limits<double>::infinity();
  bool inside = false;
  const std::size_t n = ring.size();
  for (std::size_t i = 0, j = n - 1; i < n; j = i++) {
    const double ax = ring[j].x, ay = ring[j].y, bx = ring[i].x, by = ring[i].y;
    if ((ay > y) != (by > y) && x < ax + (bx - ax) * ((y - ay) / (by - ay))) inside = !inside;
    const double ux = bx - ax, uy = by - ay;
    double t = ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy);
    t = t < 0 ? 0 : t > 1 ? 1 : t;
    const double dx = x - ax - t * ux, dy = y - ay - t * uy;
    least = std::min(least, dx * dx + dy * dy);
  }
  return inside ? std::sqrt(least) : -std::sqrt(least);
}

struct Cell {
  double x, y, half, depth, most;
};
bool less_promising(const Cell& a, const Cell& b) {
  if (a.most != b.most) return a.most < b.most;
  if (a.x != b.x) return a.x < b.x;
  return a.y < b.y;
}

}  // namespace

std::vector<Circle> circles_in(const Ring& ring) {
  std::vector<Circle> circles;
  double width = 0, height = 0, x0 = ring[0].x, y0 = ring[0].y;
  for (const Corner& c : ring) {
    x0 = std::min<double>(x0, c.x);
    y0 = std::min<double>(y0, c.y);
  }
  for (const Corner& c : ring) {
    width = std::max(width, c.x - x0);
    height = std::max(height, c.y - y0);
  }
  const double area = 0.5 * static_cast<double>(twice_area(ring)),
               side = std::max(std::min(width, height), std::max(width, height) / 64);
  const auto cell = [&](double x, double y, double half) {
    double depth = depth_in(ring, x, y);
    for (const Circle& c : circles) depth = std::min(depth, std::sqrt((x - c.x) * (x - c.x) + (y - c.y) * (y - c.y)) - c.r);
    return Cell{x, y, half, depth, depth + half * 1.4142135623730951};
  };
  double covered = 0;
  while (circles.size() < 32) {
    std::vector<Cell> heap;
    for (double x = 0; x < width; x += side) {
      for (double y = 0; y < height; y += side) heap.push_back(cell(x0 + x + side / 2, y0 + y + side / 2, side / 2));
    }
    std::make_heap(heap.begin(), heap.end(), less_promising);
    Cell best{0, 0, 0, 0, 0};
    const double fine = side * 0.01;
    for (int tries = 0; !heap.empty() && tries < 400; ++tries) {
      std::pop_heap(heap.begin(), heap.end(), less_promising);
      const Cell c = heap.back();
      heap.pop_back();
      if (c.depth > best.depth) best = c;
      if (c.most <= best.depth + std::max(fine, 0.02 * best.depth)) break;
      const double h = c.half / 2;
      for (const double dx : {-h, h}) {
        for (const double dy : {-h, h}) {
          const Cell part = cell(c.x + dx, c.y + dy, h);
          if (part.most <= best.depth) continue;
          heap.push_back(part);
          std::push_heap(heap.begin(), heap.end(), less_promising);
        }
      }
    }
    if (best.depth <= 0) break;
    circles.push_back({best.x, best.y, best.depth});
    covered += 3.141592653589793 * best.depth * best.depth;
    const std::size_t n = circles.size();
    if ((n >= 8 && covered > 0.9 * area) || (n >= 16 && covered > 0.8 * area) || (n >= 2 && best.depth < 0.02 * side)) break;
  }
  if (circles.empty()) circles.push_back({static_cast<double>(ring[0].x), static_cast<double>(ring[0].y), 0.5});
  return circles;
}

}  // namespace gownsheaf::nest
