#include <algorithm>
#include <tuple>

#include "nest/nest.h"

namespace gownsheaf::nest {
namespace {

struct Stretch {
  Length from, to;
};  // free along the strip

// The largest empty rectangle touches something on each side: it begins across at the strip's edge or where a box ends, and goes
// on until a box begins in it or the strip ends. From each such beginning the free stretches along are followed across; boxes
// take from them, and what a box cuts is a rectangle that goes no further. taken: sorted by y.
class LargestEmpty {
 public:
  LargestEmpty(Length width, Length length, const std::vector<Box>& taken, Length least)
      : width_(width), length_(length), taken_(taken), least_(least) {}

  Box largest() {
    std::vector<Length> begins{Length()};
    for (const Box& b : taken_)
      if (b.bottom() > Length() && b.bottom() <= width_ - least_) begins.push_back(b.bottom());
    std::sort(begins.begin(), begins.end());
    begins.erase(std::unique(begins.begin(), begins.end()), begins.end());
    for (const Length y : begins) follow(y);
    return best_;
  }

 private:
  void follow(Length y0) {
    free_.clear();
    free_.push_back({Length(), length_});
    for (const Box& b : taken_) {
      if (b.bottom() <= y0) continue;
      if (b.y >= width_ || free_.empty()) break;
      take(b, y0);
    }
    for (const Stretch& s : free_) offer(s, y0, width_);
  }

  void take(const Box& b, Length y0) {
    rest_.clear();
    for (const Stretch& s : free_) {
      if (b.x >= s.to || b.right() <= s.from) {
        rest_.push_back(s);
        continue;
      }
      if (b.y > y0) offer(s, y0, b.y);
      if (b.x - s.from >= least_) rest_.push_back({s.from, b.x});
      if (s.to - b.right() >= least_) rest_.push_back({b.right(), s.to});
    }
    free_.swap(rest_);
  }

  void offer(const Stretch& s, Length y0, Length y1) {
    const Box box{s.from, y0, s.to - s.from, y1 - y0};
    if (box.width < least_ || box.height < least_) return;
    if (box.area() > best_.area() || (box.area() == best_.area() && std::tie(box.x, box.y) < std::tie(best_.x, best_.y)))
      best_ = box;
  }

  Length width_, length_;
  const std::vector<Box>& taken_;
  Length least_;
  std::vector<Stretch> free_, rest_;
  Box best_;
};

}  // namespace

std::vector<Box> left_over(Length width, Length length, const std::vector<Box>& taken, Length least, int at_most) {
  std::vector<Box> blocked = taken, found;
  const Length smallest = std::max(least, Length::ticks(1));
  while (static_cast<int>(found.size()) < at_most) {
    std::sort(blocked.begin(), blocked.end(), [](const Box& a, const Box& b) { return std::tie(a.y, a.x) < std::tie(b.y, b.x); });
    const Box box = LargestEmpty(width, length, blocked, smallest).largest();
    if (box.width < smallest) break;
    found.push_back(box);
    blocked.push_back(box);
  }
  return found;
}

}  // namespace gownsheaf::nest
