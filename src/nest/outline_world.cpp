#include "nest/outline_world.h"

#include <algorithm>
#include <map>

#include "nest/request.h"

namespace gownsheaf::nest {
namespace {

constexpr std::size_t kEnoughCorners = 22;
constexpr std::int64_t kRoom = 1'000'000'000;  // ticks for all strips together

int ticks(Length l) { return static_cast<int>(l.in_ticks()); }

class ShapeBook {
 public:
  explicit ShapeBook(std::vector<Shape>& shapes) : shapes_(shapes) {}
  // The shape of this outline in this pose; -1 where it cannot be cut up.
  int shape(const Ring& exact, const Ring& base, int turns) {
    const auto known = by_ring_.find(exact);
    if (known != by_ring_.end()) return known->second;
    auto straight = straight_.find(base);
    if (straight == straight_.end()) straight = straight_.emplace(base, prepared(base)).first;
    if (straight->second.convex.empty()) return -1;
    Shape s = straight->second;
    for (int t = 0; t < turns; ++t) {  // by a quarter, within the exact outline's bounds
      const int height = s.height;
      const auto turn = [height](Corner& c) { c = {height - c.y, c.x}; };
      for (Corner& c : s.cover) turn(c);
      for (Ring& piece : s.convex) {
        for (Corner& c : piece) turn(c);
      }
      for (Circle& c : s.circles) c = {height - c.y, c.x, c.r};
      s.height = s.width;
      s.width = height;
    }
    s.outline = exact;
    bounds_of(s.cover, s.low, s.high);
    s.convex_low.resize(s.convex.size());
    s.convex_high.resize(s.convex.size());
    for (std::size_t i = 0; i < s.convex.size(); ++i) bounds_of(s.convex[i], s.convex_low[i], s.convex_high[i]);
    s.rows = rows_of(s, 0);
    const int at = static_cast<int>(shapes_.size());
    shapes_.push_back(std::move(s));
    by_ring_.emplace(exact, at);
    return at;
  }
  void find_turned() {
    for (Shape& s : shapes_) {
      for (int t = 0; t < 4; ++t) {
        const auto other = by_ring_.find(with_quarter_turns(s.outline, t));
        if (other != by_ring_.end()) s.turned[t] = other->second;
      }
    }
  }

 private:
  static void bounds_of(const Ring& ring, Corner& low, Corner& high) {
    low = high = ring[0];
    for (const Corner& c : ring) {
      low = {std::min(low.x, c.x), std::min(low.y, c.y)};
      high = {std::max(high.x, c.x), std::max(high.y, c.y)};
    }
  }
  static Shape prepared(const Ring& ring) {  // no convex pieces: it could not be cut up
    Shape s;
    Corner low, high;
    bounds_of(ring, low, high);
    s.width = high.x;
    s.height = high.y;
    s.cover = simple_cover(ring, kEnoughCorners);
    s.convex = convex_pieces(s.cover);
    std::int64_t pieces_area = 0;
    for (const Ring& piece : s.convex) pieces_area += twice_area(piece);
    if (pieces_area != twice_area(s.cover)) s.convex.clear();
    s.circles = circles_in(s.cover);
    s.area = 0.5 * static_cast<double>(twice_area(s.cover));
    s.hull_area = hull_area(s.cover);
    s.diameter = diameter(s.cover);
    return s;
  }
  std::vector<Shape>& shapes_;
  std::map<Ring, int> by_ring_;
  std::map<Ring, Shape> straight_;
};

bool may_lie_on(const Part& part, int strip) {
  return part.strips.empty() || std::find(part.strips.begin(), part.strips.end(), strip) != part.strips.end();
}

}  // namespace

std::string unsupported_outlines(const Request& r) {
  if (std::string why = unsupported_request(r); !why.empty()) return why;
  for (const Part& part : r.parts) {
    if (part.outline.size() < 3) return "an outline with fewer than three corners";
    const Box box = bounds(part.outline);
    if (std::max(box.width, box.height).in_ticks() > kLongestPart) return "a part more than 16 m long";
  }
  std::int64_t room = 0;
  for (const Strip& strip : r.strips) {
    if (strip.length) room += strip.length->in_ticks() + 3 * kLongestPart;
    if (strip.width.in_ticks() > kRoom / 2) return "a strip more than 170 m wide";
  }
  if (room > kRoom) return "strips together more than 350 m long";
  if (r.strips.empty()) return "no strip";
  if (r.gap.in_ticks() > kLongestPart) return "a gap of more than 16 m";
  return "";
}

void prepare(const Request& request, Prepared& prepared) {
  World& world = prepared.world;
  world.gap = ticks(request.gap);
  int next = 0, widest = 0;
  for (const Strip& strip : request.strips) {
    const int length = strip.length ? ticks(*strip.length) : 0;
    world.regions.push_back({next, ticks(strip.width), length});
    next += length + 3 * static_cast<int>(kLongestPart);
    widest = std::max(widest, ticks(strip.width));
  }
  prepared.overflow = request.strips.back().length.has_value();
  if (prepared.overflow) world.regions.push_back({next, widest, 0});
  const int open = world.open_region();

  ShapeBook book(world.shapes);
  for (std::size_t p = 0; p < request.parts.size(); ++p) {
    const Part& part = request.parts[p];
    Kind kind;
    for (const Pose& pose : part.poses) {
      const int turns = ((pose.quarter_turns % 4) + 4) % 4;
      const Ring exact = ring_of(posed(part.outline, pose));
      if (exact.empty()) {
        prepared.unsupported = "an outline without area";
        return;
      }
      if (touches_itself(exact)) {
        prepared.unsupported = "an outline that crosses or touches itself";
        return;
      }
      const Ring base = ring_of(posed(part.outline, {0, pose.mirrored, pose.millidegrees}));
      const int s = book.shape(exact, base, turns);
      if (s < 0) {
        prepared.unsupported = "an outline that cannot be cut into convex pieces";
        return;
      }
      if (std::find(kind.shapes.begin(), kind.shapes.end(), s) != kind.shapes.end()) continue;
      kind.shapes.push_back(s);
      kind.poses.push_back(pose);
    }
    kind.fixed_y = part.fixed_y ? ticks(*part.fixed_y) : -1;
    if (part.fixed_y && *part.fixed_y < Length()) {
      prepared.unsupported = "a part fixed outside its strip";
      return;
    }
    kind.clear = ticks(part.clear_of_first_edge);
    if (part.lattice_across) {
      kind.step_y = ticks(part.lattice_across->step);
      kind.phase_y = ((ticks(part.lattice_across->phase) % kind.step_y) + kind.step_y) % kind.step_y;
    }
    if (part.lattice) {
      kind.step = ticks(part.lattice->step);
      kind.phase = ((ticks(part.lattice->phase) % kind.step) + kind.step) % kind.step;
    }
    for (int r = 0; r < static_cast<int>(request.strips.size()); ++r) {
      if (may_lie_on(part, r)) kind.regions.push_back(r);
    }
    const bool somewhere = !ranges_of(world, kind, prepared.overflow ? -1 : static_cast<int>(kRoom / 2)).empty();
    if (prepared.overflow) kind.regions.push_back(open);
    const Shape& first = world.shapes[static_cast<std::size_t>(kind.shapes[0])];
    kind.size = first.hull_area * first.diameter;
    for (int c = 0; c < part.copies; ++c) {
      if (somewhere) {
        world.items.push_back({static_cast<int>(world.kinds.size()), static_cast<int>(p), c});
      } else {
        prepared.nowhere.emplace_back(static_cast<int>(p), c);
      }
    }
    world.kinds.push_back(std::move(kind));
  }
  book.find_turned();
  for (std::size_t r = 0; r < request.strips.size(); ++r) {
    for (const Box& box : request.strips[r].obstacles) {
      const int x0 = std::max(0, ticks(box.x)), y0 = std::max(0, ticks(box.y));
      const int x1 = static_cast<int>(std::min<std::int64_t>(
          box.right().in_ticks(), request.strips[r].length ? request.strips[r].length->in_ticks() : kRoom / 4));
      const int y1 = static_cast<int>(std::min<std::int64_t>(box.bottom().in_ticks(), request.strips[r].width.in_ticks()));
      if (x1 <= x0 || y1 <= y0) continue;
      Shape s;
      s.outline = s.cover = {{0, 0}, {x1 - x0, 0}, {x1 - x0, y1 - y0}, {0, y1 - y0}};
      s.convex = {s.outline};
      s.circles = circles_in(s.outline);
      s.width = x1 - x0;
      s.height = y1 - y0;
      s.high = {s.width, s.height};
      s.convex_low = {s.low};
      s.convex_high = {s.high};
      s.area = s.hull_area = static_cast<double>(s.width) * s.height;
      s.diameter = diameter(s.outline);
      s.obstacle = true;
      s.rows = rows_of(s, 0);
      world.obstacles.push_back({static_cast<int>(world.shapes.size()), world.regions[r].x0 + x0, y0});
      world.shapes.push_back(std::move(s));
    }
  }
  // Kinds that go nowhere have no item and must not hold up the least length.
  for (std::size_t k = 0; k < world.kinds.size(); ++k) {
    const bool used =
        std::any_of(world.items.begin(), world.items.end(), [&](const Item& i) { return i.kind == static_cast<int>(k); });
    if (!used) world.kinds[k].regions.clear();
  }
  world.prepare();
}

Length bound_of_outlines(const Request& r) {
  Int128 twice = 0;
  Length width, longest;
  for (const Strip& s : r.strips) width = std::max(width, s.width);
  for (const Part& part : r.parts) {
    std::optional<Length> own;
    std::optional<Int128> least;
    for (const Pose& pose : part.poses) {
      const Polygon outline = posed(part.outline, pose);
      const Box box = bounds(outline);
      if (box.height <= width && (!own || box.width < *own)) own = box.width;
      Int128 sum = 0;
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point &a = outline[i], &b = outline[(i + 1) % outline.size()];
        sum += static_cast<Int128>(a.x.in_ticks()) * b.y.in_ticks() - static_cast<Int128>(b.x.in_ticks()) * a.y.in_ticks();
      }
      if (sum < 0) sum = -sum;
      if (!least || sum < *least) least = sum;
    }
    twice += *least * part.copies;
    if (part.copies > 0 && own) longest = std::max(longest, *own);
  }
  if (width <= Length()) return longest;
  return std::max(Area::square_ticks(twice / 2).over(width, Rounding::up), longest);
}

}  // namespace gownsheaf::nest
