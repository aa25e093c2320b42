// What a search for a lay knows and never changes: shapes, kinds of item, places where they may lie, pair tables.
// All strips lie in one plane, one behind another along x, far enough apart that their items never meet.
#pragma once
#include <atomic>
#include <limits>
#include <memory>
#include <mutex>
#include <vector>

#include "nest/nest.h"
#include "nest/pair_table.h"
#include "nest/seldom_table.h"
#include "nest/shape.h"

namespace gownsheaf::nest {

struct Region {
  int x0 = 0, width = 0, length = 0;
};  // the last is open: its length is the search's to choose

struct Kind {                   // what the copies of one part share
  std::vector<int> shapes;      // ways to lie, without doubles
  std::vector<Pose> poses;      // of each
  std::vector<int> regions;     // where it may lie
  int fixed_y = -1;             // -1: free
  int step = 0, phase = 0;      // x within its strip is phase + k * step; 0: free
  int step_y = 0, phase_y = 0;  // y likewise
  int clear = 0;                // least y
  double size = 0;              // hull area x diameter: how hard it is to place
};

struct Item {
  int kind = 0, part = 0, copy = 0;
};
struct Fixed {
  int shape = 0, x = 0, y = 0;
};  // an obstacle

struct Place {
  int x = 0, y = 0, shape = 0, region = 0;
};

class World {
 public:
  World() = default;
  World(const World&) = delete;
  World& operator=(const World&) = delete;

  std::vector<Shape> shapes;
  std::vector<Kind> kinds;
  std::vector<Item> items;
  std::vector<Fixed> obstacles;
  std::vector<Region> regions;
  int gap = 0;

  void prepare();  // after all of the above are there
  int open_region() const { return static_cast<int>(regions.size()) - 1; }
  bool many_tables() const { return many_; }
  int gap_of(int a, int b) const {
    return shapes[static_cast<std::size_t>(a)].obstacle || shapes[static_cast<std::size_t>(b)].obstacle ? 0 : gap;
  }
  // How bad it is when b lies at this offset from a; 0 = not at all. Tables are made when asked for, where they would be
  // many, after being asked for often; that makes no difference to the answer.
  double loss(int a, int b, int dx, int dy) const {
    const View from = view(a, b, dx, dy);
    return from.loss(*this, 0, 0);
  }
  // The same, b's place being known beforehand: u and v less those of the place of a, turned.
  struct View {
    const PairTable* table;
    const SeldomTable* seldom;
    int slot, u, v;
    std::int16_t c, s;
    double loss(const World& world, int x, int y) const {
      const int at_u = u - (c * x - s * y), at_v = v - (s * x + c * y);
      return table != nullptr ? table->loss(at_u, at_v) : world.seldom_loss(*this, at_u, at_v);
    }
  };
  View view(int a, int b, int x, int y) const {
    const Ref& ref = refs_[static_cast<std::size_t>(a) * shapes.size() + static_cast<std::size_t>(b)];
    const Slot& slot = slots_[static_cast<std::size_t>(ref.slot)];
    return {slot.table.load(std::memory_order_acquire),
            slot.seldom.load(std::memory_order_acquire),
            ref.slot,
            ref.u + ref.c * x - ref.s * y,
            ref.v + ref.s * x + ref.c * y,
            ref.c,
            ref.s};
  }
  // The least length of the open strip in which every kind has a way to lie somewhere.
  int least_length() const;

 private:
  struct Ref {
    int slot, u, v;
    std::int16_t c, s;
  };  // in the table: turned by c, s, then + u, v
  struct Slot {
    std::atomic<const PairTable*> table{};
    std::atomic<const SeldomTable*> seldom{};
    int a = 0, b = 0;
  };
  double seldom_loss(const View& view, int u, int v) const;
  const PairTable& make(int slot) const;
  const SeldomTable& make_seldom(int slot) const;
  bool many_ = false;
  std::vector<Ref> refs_;
  mutable std::vector<Slot> slots_;
  mutable std::vector<std::unique_ptr<PairTable>> tables_;
  mutable std::vector<std::unique_ptr<SeldomTable>> seldom_;
  mutable std::atomic<int> made_{0};
  mutable std::mutex making_;
};

// Where an item may lie in one strip in one pose: x and y of its least corner, least and greatest.
struct Range {
  int shape = 0, region = 0, x0 = 0, x1 = 0, y0 = 0, y1 = 0;
};
// All of them for a kind, by region; length: of the open strip.
std::vector<Range> ranges_of(const World& world, const Kind& kind, int length);
// The nearest x that the kind allows in this range.
inline int allowed_x(const Kind& kind, const Range& range, double x) {
  if (x < range.x0) x = range.x0;
  if (x > range.x1) x = range.x1;
  if (kind.step == 0) return static_cast<int>(x);
  return range.x0 + static_cast<int>((x - range.x0) / kind.step + 0.5) * kind.step;
}
// The same for y.
inline int allowed_y(const Kind& kind, const Range& range, double y) {
  if (y < range.y0) y = range.y0;
  if (y > range.y1) y = range.y1;
  if (kind.step_y == 0) return static_cast<int>(y);
  return range.y0 + static_cast<int>((y - range.y0) / kind.step_y + 0.5) * kind.step_y;
}

}  // namespace gownsheaf::nest
