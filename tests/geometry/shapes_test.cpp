#include "geometry/shapes.h"

#include <random>

#include "support/catch.h"

using namespace gownsheaf;

namespace {
Box inches(int x, int y, int w, int h) { return {Length::inches(x), Length::inches(y), Length::inches(w), Length::inches(h)}; }
Polygon corners(std::initializer_list<std::pair<int, int>> list) {
  Polygon p;
  for (const auto& [x, y] : list) p.push_back({Length::inches(x), Length::inches(y)});
  return p;
}
}  // namespace

TEST_CASE("boxes that share an edge or a corner do not overlap") {
  const Box a = inches(0, 0, 4, 3);
  CHECK_FALSE(overlap(a, inches(4, 0, 2, 3)));
  CHECK_FALSE(overlap(a, inches(0, 3, 4, 1)));
  CHECK_FALSE(overlap(a, inches(4, 3, 1, 1)));
  CHECK(overlap(a, inches(3, 2, 5, 5)));
  CHECK(overlap(a, inches(1, 1, 1, 1)));
  CHECK(overlap(a, a));
  CHECK_FALSE(overlap(a, inches(1, 1, 0, 1)));  // no area, nothing shared
  const Box one_tick_in{Length::inches(4) - Length::ticks(1), Length::inches(0), Length::inches(1), Length::inches(1)};
  CHECK(overlap(a, one_tick_in));
}

TEST_CASE("a box contains itself and what touches its edges from inside") {
  const Box a = inches(0, 0, 4, 3);
  CHECK(contains(a, a));
  CHECK(contains(a, inches(3, 2, 1, 1)));
  CHECK_FALSE(contains(a, inches(3, 2, 2, 1)));
  CHECK_FALSE(contains(a, inches(-1, 0, 2, 1)));
}

TEST_CASE("right, bottom and area of a box: 2 + 5 = 7 in, 3 + 4 = 7 in, 5 x 4 = 20 square inches") {
  const Box b = inches(2, 3, 5, 4);
  CHECK(b.right() == Length::inches(7));
  CHECK(b.bottom() == Length::inches(7));
  CHECK(b.area() == Area::of(Length::inches(20), Length::inches(1)));
}

TEST_CASE("rectangles are known from whichever corner and way round they are written") {
  CHECK(is_rectangle(rectangle(Length::inches(3), Length::inches(2))));
  CHECK(is_rectangle(corners({{1, 1}, {1, 5}, {4, 5}, {4, 1}})));
  CHECK(is_rectangle(corners({{4, 5}, {4, 1}, {1, 1}, {1, 5}})));
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {4, 0}, {4, 3}})));
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {4, 0}, {5, 3}, {1, 3}})));          // leans
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {4, 3}, {4, 0}, {0, 3}})));          // crosses itself
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {4, 0}, {0, 0}, {0, 3}})));          // there and back
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {2, 0}, {4, 0}, {4, 3}, {0, 3}})));  // five corners
  CHECK_FALSE(is_rectangle(corners({{0, 0}, {4, 0}, {4, 0}, {0, 0}})));          // no height
  CHECK_FALSE(is_rectangle({}));
}

TEST_CASE("bounds are the least box") {
  CHECK(bounds(corners({{2, -1}, {5, 3}, {-4, 0}})) == inches(-4, -1, 9, 4));
  CHECK(bounds({}) == Box{});
}

TEST_CASE("law: overlap is the same both ways, and agrees with counting unit squares") {
#ifdef GOWNSHEAF_SANITIZED
  const int rounds = 500;
#else
  const int rounds = 10000;
#endif
  std::mt19937 draw(7);
  const auto upto = [&](int n) { return static_cast<int>(draw() % static_cast<std::uint32_t>(n)); };
  for (int i = 0; i < rounds; ++i) {
    int a[4] = {upto(6), upto(6), upto(5), upto(5)}, b[4] = {upto(6), upto(6), upto(5), upto(5)};
    bool shared = false;
    bool inside = true;
    for (int x = 0; x < 12; ++x)
      for (int y = 0; y < 12; ++y) {
        const bool in_a = x >= a[0] && x < a[0] + a[2] && y >= a[1] && y < a[1] + a[3];
        const bool in_b = x >= b[0] && x < b[0] + b[2] && y >= b[1] && y < b[1] + b[3];
        shared = shared || (in_a && in_b);
        inside = inside && (!in_b || in_a);
      }
    const Box first = inches(a[0], a[1], a[2], a[3]), second = inches(b[0], b[1], b[2], b[3]);
    CHECK(overlap(first, second) == shared);
    CHECK(overlap(second, first) == shared);
    if (b[2] > 0 && b[3] > 0) CHECK(contains(first, second) == inside);
  }
}
