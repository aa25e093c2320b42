// Rings in slabs, checked by counting crossings point by point.
#include "geometry/slabs.h"

#include <random>

#include "support/catch.h"
#include "support/random_draws.h"
#include "support/rounds.h"

using namespace gownsheaf;

namespace {

// A star-shaped ring about the middle of a square: simple, often hollowed.
Polygon star(std::mt19937& random) {
  std::uniform_int_distribution<int> corners(3, 24), reach(50, 1000);
  static constexpr int kCos[24] = {1000,  966,  866,  707,  500,  259,  0, -259, -500, -707, -866, -966,
                                   -1000, -966, -866, -707, -500, -259, 0, 259,  500,  707,  866,  966};
  const int n = corners(random);
  Polygon ring;
  for (int k = 0; k < n; ++k) {
    const int turn = k * 24 / n, r = reach(random);
    ring.push_back({Length::ticks(2'000'000 + r * kCos[turn]), Length::ticks(2'000'000 + r * kCos[(turn + 18) % 24])});
  }
  return ring;
}
bool inside(const Polygon& ring, Length x, Length y) {
  const std::vector<Length> ys = crossings_at(ring, x);
  for (std::size_t i = 0; i + 1 < ys.size(); i += 2)
    if (ys[i] <= y && y <= ys[i + 1]) return true;
  return false;
}
double ring_area(const Polygon& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
    sum += static_cast<double>(a.x.in_ticks()) * static_cast<double>(b.y.in_ticks()) -
           static_cast<double>(b.x.in_ticks()) * static_cast<double>(a.y.in_ticks());
  }
  return std::abs(sum) / 2;
}

}  // namespace

TEST_CASE("boxes over a ring cover it, a box inside lies inside, a ring cut in two keeps its area", "[slabs]") {
  std::mt19937 random(20271204);
  for (int round = 0; round < kLawRounds / 10; ++round) {
    const Polygon ring = star(random);
    const Box all = bounds(ring);
    CAPTURE(round);
    const std::vector<Box> over = boxes_over(ring, 16);
    const Box room = box_inside(ring, 16);
    std::uniform_int_distribution<int> place(0, 1000);
    for (int k = 0; k < 40; ++k) {
      const Length x = all.x + all.width.times(place(random), 1000), y = all.y + all.height.times(place(random), 1000);
      if (inside(ring, x, y))
        CHECK(std::any_of(over.begin(), over.end(),
                          [&](const Box& b) { return b.x <= x && x <= b.right() && b.y <= y && y <= b.bottom(); }));
      if (room.width.is_zero()) continue;
      const Length in_x = room.x + room.width.times(place(random), 1001), in_y = room.y + room.height.times(place(random), 1000);
      CHECK(inside(ring, in_x, in_y));
    }
    const Length cut = all.x + all.width.times(place(random), 1000);
    const double parts = ring_area(clipped_along(ring, all.x, cut)) + ring_area(clipped_along(ring, cut, all.right()));
    CHECK(std::abs(parts - ring_area(ring)) <= 1e-5 * ring_area(ring) + 1e7);
  }
}

TEST_CASE("a name's room in an L is its thicker arm", "[slabs]") {
  const auto at = [](int x, int y) { return Point{Length::mm(x), Length::mm(y)}; };
  const Polygon l{at(0, 0), at(200, 0), at(200, 40), at(60, 40), at(60, 160), at(0, 160)};
  const Box room = box_inside(l, 40);
  CHECK(room == Box{Length(), Length(), Length::mm(60), Length::mm(160)});
  CHECK(boxes_over(rectangle(Length::mm(10), Length::mm(4)), 2).size() == 2);
}
