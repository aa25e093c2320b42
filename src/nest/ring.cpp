// Rings of whole corners: tidying, turning, and a cover of few corners.
#include <algorithm>
#include <limits>

#include "nest/shape.h"

namespace gownsheaf::nest {
namespace {

Ring at_origin(Ring ring) {
  int x = std::numeric_limits<int>::max(), y = x;
  for (const Corner& c : ring) {
    x = std::min(x, c.x);
    y = std::min(y, c.y);
  }
  for (Corner& c : ring) {
    c.x -= x;
    c.y -= y;
  }
  if (!ring.empty()) std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end()), ring.end());
  return ring;
}

bool on_segment(Corner a, Corner b, Corner p) {
  return turn_of(a, b, p) == 0 && std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

int sign(std::int64_t v) { return (v > 0) - (v < 0); }

bool meet(Corner a, Corner b, Corner c, Corner d) {
  if (std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x) ||
      std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y))
    return false;
  const int p = sign(turn_of(a, b, c)), q = sign(turn_of(a, b, d)), r = sign(turn_of(c, d, a)), s = sign(turn_of(c, d, b));
  if (p * q < 0 && r * s < 0) return true;
  return on_segment(a, b, c) || on_segment(a, b, d) || on_segment(c, d, a) || on_segment(c, d, b);
}

// Is p in the closed triangle a, b, c (anticlockwise or flat)?
bool in_triangle(Corner a, Corner b, Corner c, Corner p) {
  const std::int64_t u = turn_of(a, b, p), v = turn_of(b, c, p), w = turn_of(c, a, p);
  return (u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0);
}

struct Step {  // one way to lose a corner
  double added = std::numeric_limits<double>::infinity();
  std::size_t at = 0;
  bool join = false;  // false: leave corner `at` out; true: put `to` for the corners at and at + 1
  Corner to;
};

class Cover {
 public:
  explicit Cover(Ring ring) : ring_(std::move(ring)), blocked_(2 * ring_.size(), false) {}
  Ring of(std::size_t enough, double allowed) {
    while (ring_.size() > std::max<std::size_t>(enough, 4)) {
      const Step step = cheapest();
      if (step.added > allowed) break;
      if (!free_way(step)) {
        blocked_[2 * step.at + (step.join ? 1 : 0)] = true;
        continue;
      }
      allowed -= step.added;
      apply(step);
    }
    return ring_;
  }

 private:
  std::size_t n() const { return ring_.size(); }
  Corner at(std::size_t i) const { return ring_[i % n()]; }

  Step cheapest() const {
    Step best;
    for (std::size_t i = 0; i < n(); ++i) {
      const Corner p = at(i + n() - 1), a = at(i), b = at(i + 1), q = at(i + 2);
      const std::int64_t here = turn_of(p, a, b);
      if (here <= 0 && !blocked_[2 * i]) {
        const double added = -0.5 * static_cast<double>(here);
        if (added < best.added) best = {added, i, false, {}};
      }
      if (here > 0 && turn_of(a, b, q) > 0 && !blocked_[2 * i + 1]) {
        const Step step = joined(i, p, a, b, q);
        if (step.added < best.added) best = step;
      }
    }
    return best;
  }

  // The whole corner just outside the meeting point of p -> a and q -> b.
  static Step joined(std::size_t i, Corner p, Corner a, Corner b, Corner q) {
    Step step{std::numeric_limits<double>::infinity(), i, true, {}};
    const double ux = a.x - p.x, uy = a.y - p.y, vx = b.x - q.x, vy = b.y - q.y;
    const double det = ux * vy - uy * vx;
    if (det >= 0) return step;  // the lines part
    const double t = ((static_cast<double>(q.x) - p.x) * vy - (static_cast<double>(q.y) - p.y) * vx) / det;
    const double mx = p.x + t * ux, my = p.y + t * uy;
    if (!(std::max(mx < 0 ? -mx : mx, my < 0 ? -my : my) < 1e9)) return step;
    const Corner near{static_cast<int>(mx), static_cast<int>(my)};
    for (int dx = -2; dx <= 2; ++dx) {
      for (int dy = -2; dy <= 2; ++dy) {
        const Corner m{near.x + dx, near.y + dy};
        if (turn_of(p, m, a) < 0 || turn_of(m, q, b) < 0 || turn_of(a, m, b) <= 0) continue;
        const double added = 0.5 * (static_cast<double>(turn_of(a, m, b)) + static_cast<double>(turn_of(p, m, a)) +
                                    static_cast<double>(turn_of(m, q, b)));
        if (added < step.added) {
          step.added = added;
          step.to = m;
        }
      }
    }
    return step;
  }

  bool free_way(const Step& step) const {
    const std::size_t i = step.at;
    const Corner p = at(i + n() - 1), a = at(i), b = at(i + 1), q = at(i + 2);
    for (std::size_t k = 2; k + 1 < n(); ++k) {
      const Corner c = at(i + k);
      if (!step.join) {
        if (in_triangle(p, a, b, c)) return false;
      } else if (k > 2 && (in_triangle(a, step.to, b, c) || in_triangle(p, step.to, a, c) || in_triangle(step.to, q, b, c))) {
        return false;
      }
    }
    return !step.join || !in_triangle(a, step.to, b, q);
  }

  void apply(const Step& step) {
    const std::size_t gone = step.join ? (step.at + 1) % n() : step.at;
    if (step.join) ring_[step.at] = step.to;
    ring_.erase(ring_.begin() + static_cast<std::ptrdiff_t>(gone));
    blocked_.assign(2 * ring_.size(), false);
  }

  Ring ring_;
  std::vector<bool> blocked_;
};

}  // namespace

std::int64_t twice_area(const Ring& ring) {
  std::int64_t sum = 0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i) sum += turn_of(ring[0], ring[i], ring[i + 1]);
  return sum;
}

Ring tidied(const Ring& given) {
  Ring ring = given;
  for (bool again = true; again && ring.size() > 2;) {
    again = false;
    for (std::size_t i = 0; i < ring.size() && ring.size() > 2;) {
      const Corner p = ring[(i + ring.size() - 1) % ring.size()], a = ring[i], b = ring[(i + 1) % ring.size()];
      if (turn_of(p, a, b) == 0) {
        ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(i));
        again = true;
      } else {
        ++i;
      }
    }
  }
  if (ring.size() < 3) return {};
  if (twice_area(ring) < 0) std::reverse(ring.begin(), ring.end());
  std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end()), ring.end());
  return ring;
}

bool touches_itself(const Ring& ring) {
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if ((j + 1) % n == i) continue;
      if (meet(ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n])) return true;
    }
  }
  return false;
}

Ring with_quarter_turns(const Ring& ring, int turns) {
  Ring out = ring;
  for (int t = ((turns % 4) + 4) % 4; t > 0; --t) {
    for (Corner& c : out) c = {-c.y, c.x};
  }
  return at_origin(std::move(out));
}

Ring ring_of(const Polygon& outline) {
  if (outline.empty()) return {};
  const Box box = bounds(outline);
  Ring ring;
  for (const Point& p : outline) {
    ring.push_back({static_cast<int>((p.x - box.x).in_ticks()), static_cast<int>((p.y - box.y).in_ticks())});
  }
  return at_origin(tidied(ring));
}

Ring simple_cover(const Ring& ring, std::size_t enough_corners) {
  const Ring cover = Cover(ring).of(enough_corners, 0.0005 * static_cast<double>(twice_area(ring)));
  const Ring tidy = tidied(cover);
  return tidy.size() < 3 || touches_itself(tidy) ? ring : tidy;
}

}  // namespace gownsheaf::nest
