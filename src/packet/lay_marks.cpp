#include "packet/lay_marks.h"

#include <algorithm>

namespace gownsheaf {
namespace {

// A notch of a few points is no more than a dot: it is drawn at least so long.
void lengthen(const Point& from, Point& to) {
  const Length dx = to.x - from.x, dy = to.y - from.y, least = pt(5);
  const Length most = std::max(dx < Length{} ? -dx : dx, dy < Length{} ? -dy : dy);
  if (most.is_zero() || most >= least) return;
  to = {from.x + dx.times(least.in_ticks(), most.in_ticks()), from.y + dy.times(least.in_ticks(), most.in_ticks())};
}

}  // namespace

void draw_match(std::vector<DrawingItem>& items, Point at) {
  items.push_back(line({at.x - pt(4), at.y - pt(4)}, {at.x + pt(4), at.y + pt(4)}, 1.4));
  items.push_back(line({at.x - pt(4), at.y + pt(4)}, {at.x + pt(4), at.y - pt(4)}, 1.4));
}

void draw_repeats(std::vector<DrawingItem>& items, const LaidStrip& strip, const LayPart& part, DrawingScale scale,
                  const Box& cloth) {
  const Length tick = pt(5);
  if (strip.repeat_along)
    for (Length x = part.from.to_step(*strip.repeat_along, Rounding::up); x <= part.to; x += *strip.repeat_along) {
      const Length at = cloth.x + scale.of(x - part.from);
      items.push_back(line({at, cloth.y}, {at, cloth.y + tick}, 1.4));
      items.push_back(line({at, cloth.bottom() - tick}, {at, cloth.bottom()}, 1.4));
    }
  if (!strip.repeat_across) return;
  Length y = strip.repeat_from;
  while (y >= *strip.repeat_across) y -= *strip.repeat_across;
  for (; y <= strip.width; y += *strip.repeat_across) {
    const Length at = cloth.bottom() - scale.of(y);
    items.push_back(line({cloth.x, at}, {cloth.x + tick, at}, 1.4));
    items.push_back(line({cloth.right() - tick, at}, {cloth.right(), at}, 1.4));
  }
}

void draw_lines(std::vector<DrawingItem>& items, const LaidPiece& laid, const LaidStrip& strip, const LayPart& part,
                DrawingScale scale) {
  for (const LineInPiece& drawn : laid.lines) {
    if (drawn.kind == "match" || drawn.kind == "join") continue;  // a cross; and where there is a join its stitch line is drawn
    Polygon on = ring_on_paper(drawn.points, strip, part, scale);
    if (drawn.kind == "notch" && on.size() == 2) lengthen(on[0], on[1]);
    const std::size_t n = drawn.closed ? on.size() : on.size() - 1;
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t k = (i + 1) % on.size();
      const Length a = drawn.points[i].x, b = drawn.points[k].x;
      if (std::min(a, b) < part.from || std::max(a, b) > part.to) continue;
      items.push_back(drawn.kind == "mark" ? line(on[i], on[k], 0.5, {2, 2})
                                           : line(on[i], on[k], drawn.kind == "notch" ? 1.4 : 0.7));
    }
  }
  if (laid.match && laid.match->x >= part.from && laid.match->x <= part.to)
    draw_match(items, ring_on_paper({*laid.match}, strip, part, scale).front());
}

}  // namespace gownsheaf
