#include "geometry/slabs.h"

#include <algorithm>

namespace gownsheaf {
namespace {

struct Span {
  Length low, high;
};

Length y_at(const Point& a, const Point& b, Length x) {
  return a.y + (b.y - a.y).times((x - a.x).in_ticks(), (b.x - a.x).in_ticks());
}

// The widest stretch inside at x, or the widest that meets `other`.
Span widest_at(const Polygon& ring, Length x, const Span* other) {
  Span best{};
  const std::vector<Length> ys = crossings_at(ring, x);
  for (std::size_t i = 0; i + 1 < ys.size(); i += 2) {
    Span one{ys[i], ys[i + 1]};
    if (other != nullptr) one = {std::max(one.low, other->low), std::min(one.high, other->high)};
    if (one.high - one.low > best.high - best.low) best = one;
  }
  return best;
}

// A stretch that is inside all the way from one x to the other.
Span inside_between(const Polygon& ring, Length from, Length to) {
  Span span = widest_at(ring, (from + to).times(1, 2), nullptr);
  const Length just_before = to - Length::ticks(1);
  for (const Length x : {from, just_before}) span = widest_at(ring, x, &span);
  for (const Point& p : ring)
    if (from < p.x && p.x < just_before) {
      span = widest_at(ring, p.x, &span);
      span = widest_at(ring, p.x - Length::ticks(1), &span);
    }
  return span;
}

Polygon cut_at(const Polygon& ring, Length x, bool keep_right) {
  const auto kept = [&](const Point& p) { return keep_right ? p.x >= x : p.x <= x; };
  Polygon out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
    if (kept(a)) out.push_back(a);
    if (kept(a) != kept(b) && a.x != x && b.x != x) out.push_back({x, y_at(a, b, x)});
  }
  return out;
}

}  // namespace

std::vector<Length> crossings_at(const Polygon& ring, Length x) {
  std::vector<Length> ys;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
    if ((a.x <= x) != (b.x <= x)) ys.push_back(y_at(a, b, x));
  }
  std::sort(ys.begin(), ys.end());
  return ys;
}

std::vector<Box> boxes_over(const Polygon& ring, int slabs) {
  std::vector<Box> boxes;
  const Box all = bounds(ring);
  for (int k = 0; k < slabs; ++k) {
    const Length from = all.x + all.width.times(k, slabs), to = all.x + all.width.times(k + 1, slabs);
    bool any = false;
    Span span{};
    const auto add = [&](Length y) {
      span = any ? Span{std::min(span.low, y), std::max(span.high, y)} : Span{y, y};
      any = true;
    };
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
      if (from <= a.x && a.x <= to) add(a.y);
      for (const Length x : {from, to})
        if (std::min(a.x, b.x) < x && x < std::max(a.x, b.x)) add(y_at(a, b, x));
    }
    if (!any) continue;
    const Length tick = Length::ticks(1);
    boxes.push_back({from, span.low - tick, to - from, span.high - span.low + 2 * tick});
  }
  return boxes;
}

Box box_inside(const Polygon& ring, int slabs) {
  const Box all = bounds(ring);
  std::vector<Span> spans;
  const auto side = [&](int k) { return all.x + all.width.times(k, slabs); };
  for (int k = 0; k < slabs; ++k) spans.push_back(inside_between(ring, side(k), side(k + 1)));
  Box best{};
  for (int first = 0; first < slabs; ++first) {
    Span span = spans[static_cast<std::size_t>(first)];
    for (int last = first; last < slabs; ++last) {
      const Span& next = spans[static_cast<std::size_t>(last)];
      span = {std::max(span.low, next.low), std::min(span.high, next.high)};
      if (span.high <= span.low) break;
      const Box box{side(first), span.low, side(last + 1) - side(first), span.high - span.low};
      if (best.area() < box.area()) best = box;
    }
  }
  return best;
}

Polygon clipped_along(const Polygon& ring, Length from, Length to) { return cut_at(cut_at(ring, from, true), to, false); }

}  // namespace gownsheaf
