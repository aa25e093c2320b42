// Out of a place where separation is stuck: two large items of different size change places, and the small ones that the
// larger then covers move to the matching spot in the hole it left (Gardeyn, Vanden Berghe, Wauters 2025).
#include <algorithm>

#include "nest/separation.h"

namespace gownsheaf::nest {

void Separation::kick() {
  const auto shape_of = [&](int i) -> const Shape& {
    return world_.shapes[static_cast<std::size_t>(places_[static_cast<std::size_t>(i)].shape)];
  };
  const int a = large_[static_cast<std::size_t>(dice_.below(static_cast<int>(large_.size())))];
  std::vector<int> partners;
  for (const int i : large_) {
    const double r = shape_of(i).area / shape_of(a).area, d = shape_of(i).diameter / shape_of(a).diameter;
    if (r < 0.99 || r > 1.01 || d < 0.99 || d > 1.01) partners.push_back(i);
  }
  if (partners.empty()) {
    move(a, anywhere(kind_of_[static_cast<std::size_t>(a)]));
    refresh_all();
    return;
  }
  const int b = partners[static_cast<std::size_t>(dice_.below(static_cast<int>(partners.size())))];
  const Place old_a = places_[static_cast<std::size_t>(a)], old_b = places_[static_cast<std::size_t>(b)];
  // Put i with its middle where the other's was; items whose middle it covers go to the matching spot in the hole.
  const auto put = [&](int i, const Place& there, const Shape& other) {
    const int k = kind_of_[static_cast<std::size_t>(i)];
    const Place now = places_[static_cast<std::size_t>(i)];
    const Range* range = range_of(k, now.shape, there.region);
    if (range == nullptr) {
      places_[static_cast<std::size_t>(i)] = anywhere(k);
      return;
    }
    const Shape& own = world_.shapes[static_cast<std::size_t>(now.shape)];
    const double x = there.x + (other.width - own.width) / 2.0, y = there.y + (other.height - own.height) / 2.0;
    places_[static_cast<std::size_t>(i)] = {allowed_x(world_.kinds[static_cast<std::size_t>(k)], *range, x),
                                            allowed_y(world_.kinds[static_cast<std::size_t>(k)], *range, y), now.shape,
                                            there.region};
  };
  const Shape &sa = shape_of(a), &sb = shape_of(b);
  put(a, old_b, sb);
  put(b, old_a, sa);
  const bool a_larger = sa.hull_area > sb.hull_area;
  const int larger = a_larger ? a : b;
  const Place hole = a_larger ? old_a : old_b, now = places_[static_cast<std::size_t>(larger)];
  for (int i = 0; i < n_; ++i) {
    if (i == a || i == b) continue;
    Place& p = places_[static_cast<std::size_t>(i)];
    if (p.region != now.region) continue;
    const Shape& s = shape_of(i);
    const Circle& middle = s.circles[0];
    const double mx = p.x + middle.x - now.x, my = p.y + middle.y - now.y;
    const Shape& big = shape_of(larger);
    bool covered = false;
    for (const Circle& c : big.circles) covered = covered || (mx - c.x) * (mx - c.x) + (my - c.y) * (my - c.y) < c.r * c.r;
    if (!covered) continue;
    const int k = kind_of_[static_cast<std::size_t>(i)];
    const Range* range = range_of(k, p.shape, hole.region);
    if (range == nullptr) continue;
    p = {allowed_x(world_.kinds[static_cast<std::size_t>(k)], *range, static_cast<double>(p.x) - now.x + hole.x),
         allowed_y(world_.kinds[static_cast<std::size_t>(k)], *range, static_cast<double>(p.y) - now.y + hole.y), p.shape,
         hole.region};
  }
  refresh_all();
}

}  // namespace gownsheaf::nest
