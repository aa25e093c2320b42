#include <algorithm>
#include <tuple>

#include "nest/nest.h"

namespace gownsheaf::nest {
namespace {

// The largest empty rectangle: between every two lines across, the widest gap along.
Box largest_empty(Length width, Length length, const std::vector<Box>& taken, Length least) {
  std::vector<Length> ys{Length(), width};
  for (const Box& b : taken) {
    ys.push_back(b.y);
    ys.push_back(b.bottom());
  }
  std::sort(ys.begin(), ys.end());
  ys.erase(std::unique(ys.begin(), ys.end()), ys.end());
  Box best;
  const auto offer = [&](const Box& box) {
    if (box.width < least || box.height < least) return;
    if (box.area() > best.area() || (box.area() == best.area() && std::tie(box.x, box.y) < std::tie(best.x, best.y))) best = box;
  };
  for (std::size_t i = 0; i < ys.size(); ++i) {
    for (std::size_t j = i + 1; j < ys.size(); ++j) {
      const Length y0 = ys[i], y1 = ys[j];
      if (y0 < Length() || y1 > width || y1 - y0 < least) continue;
      Length x;  // taken is sorted by x
      for (const Box& b : taken) {
        if (b.bottom() <= y0 || b.y >= y1) continue;
        if (b.x > x) offer({x, y0, std::min(b.x, length) - x, y1 - y0});
        x = std::max(x, b.right());
      }
      if (x < length) offer({x, y0, length - x, y1 - y0});
    }
  }
  return best;
}

}  // namespace

std::vector<Box> left_over(Length width, Length length, const std::vector<Box>& taken, Length least, int at_most) {
  std::vector<Box> blocked = taken, found;
  const Length smallest = std::max(least, Length::ticks(1));
  while (static_cast<int>(found.size()) < at_most) {
    std::sort(blocked.begin(), blocked.end());
    const Box box = largest_empty(width, length, blocked, smallest);
    if (box.width < smallest) break;
    found.push_back(box);
    blocked.push_back(box);
  }
  return found;
}

}  // namespace gownsheaf::nest
