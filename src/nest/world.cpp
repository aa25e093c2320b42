#include "nest/world.h"

#include <algorithm>
#include <array>

namespace gownsheaf::nest {
namespace {

constexpr std::size_t kManyTables = 3000;  // beyond it they are coarse, for memory, and made late, for time
constexpr int kOften = 5000;
constexpr int kMostTables = 9000;

}  // namespace

void World::prepare() {
  const int n = static_cast<int>(shapes.size());
  refs_.assign(static_cast<std::size_t>(n) * static_cast<std::size_t>(n), Ref{});
  std::vector<int> slot_of(refs_.size(), -1);
  std::vector<std::pair<int, int>> pairs;
  const auto index = [&](int a, int b) {
    return static_cast<std::size_t>(a) * static_cast<std::size_t>(n) + static_cast<std::size_t>(b);
  };
  for (int a = 0; a < n; ++a) {
    for (int b = 0; b < n; ++b) {
      // One table serves b seen from a, a seen from b, and both turned alike by quarters.
      const Shape &sa = shapes[static_cast<std::size_t>(a)], &sb = shapes[static_cast<std::size_t>(b)];
      const int wx = sa.width - sb.width, wy = sa.height - sb.height;
      struct {
        int a, b, c, s, u, v;
      } best{a, b, 1, 0, 0, 0};
      const auto consider = [&](int p, int q, int cosine, int sine, int x, int y) {
        if (p < 0 || q < 0) return;
        if (p < best.a || (p == best.a && q < best.b)) best = {p, q, cosine, sine, x, y};
        if (q < best.a || (q == best.a && p < best.b)) best = {q, p, -cosine, -sine, -x, -y};
      };
      consider(a, b, 1, 0, 0, 0);
      consider(sa.turned[1], sb.turned[1], 0, 1, wy, 0);
      consider(sa.turned[2], sb.turned[2], -1, 0, wx, wy);
      consider(sa.turned[3], sb.turned[3], 0, -1, 0, wx);
      int& s = slot_of[index(best.a, best.b)];
      if (s < 0) {
        s = static_cast<int>(pairs.size());
        pairs.emplace_back(best.a, best.b);
      }
      const Corner least = least_offset(shapes[static_cast<std::size_t>(best.a)], shapes[static_cast<std::size_t>(best.b)],
                                        gap_of(best.a, best.b));
      refs_[index(a, b)] = {s, best.u - least.x, best.v - least.y, static_cast<std::int16_t>(best.c),
                            static_cast<std::int16_t>(best.s)};
    }
  }
  many_ = pairs.size() > kManyTables;
  slots_ = std::vector<Slot>(pairs.size());
  for (std::size_t k = 0; k < pairs.size(); ++k) {
    slots_[k].a = pairs[k].first;
    slots_[k].b = pairs[k].second;
  }
  tables_.resize(pairs.size());
  seldom_.resize(many_ ? pairs.size() : 0);
}

double World::seldom_loss(const View& view, int u, int v) const {
  const Slot& slot = slots_[static_cast<std::size_t>(view.slot)];
  if (many_ && gap_of(slot.a, slot.b) == 0) {
    const SeldomTable& seldom = view.seldom != nullptr ? *view.seldom : make_seldom(view.slot);
    if (!seldom.asked_often(kOften) || made_.load(std::memory_order_relaxed) >= kMostTables) return seldom.loss(u, v);
  }
  return make(view.slot).loss(u, v);
}

const PairTable& World::make(int number) const {
  Slot& slot = slots_[static_cast<std::size_t>(number)];
  if (const PairTable* made = slot.table.load(std::memory_order_acquire)) return *made;
  auto table = std::make_unique<PairTable>(shapes[static_cast<std::size_t>(slot.a)], shapes[static_cast<std::size_t>(slot.b)],
                                           gap_of(slot.a, slot.b), many_ ? PairTable::kCoarse : PairTable::kFine);
  const std::lock_guard lock(making_);
  std::unique_ptr<PairTable>& kept = tables_[static_cast<std::size_t>(number)];
  if (!kept) {
    kept = std::move(table);
    made_.fetch_add(1, std::memory_order_relaxed);
    slot.table.store(kept.get(), std::memory_order_release);
  }
  return *kept;
}

const SeldomTable& World::make_seldom(int number) const {
  Slot& slot = slots_[static_cast<std::size_t>(number)];
  if (const SeldomTable* made = slot.seldom.load(std::memory_order_acquire)) return *made;
  const std::lock_guard lock(making_);
  std::unique_ptr<SeldomTable>& kept = seldom_[static_cast<std::size_t>(number)];
  if (!kept) {
    kept = std::make_unique<SeldomTable>(shapes[static_cast<std::size_t>(slot.a)], shapes[static_cast<std::size_t>(slot.b)]);
    slot.seldom.store(kept.get(), std::memory_order_release);
  }
  return *kept;
}

namespace {

// The least y that the kind allows: clear of the first edge, on its lattice.
int first_y(const Kind& kind) {
  if (kind.step_y == 0) return kind.clear;
  return kind.phase_y + std::max(0, kind.clear - kind.phase_y + kind.step_y - 1) / kind.step_y * kind.step_y;
}

}  // namespace

std::vector<Range> ranges_of(const World& world, const Kind& kind, int length) {
  std::vector<Range> ranges;
  for (const int r : kind.regions) {
    const Region& region = world.regions[static_cast<std::size_t>(r)];
    const int along = r == world.open_region() ? length : region.length;
    for (const int s : kind.shapes) {
      const Shape& shape = world.shapes[static_cast<std::size_t>(s)];
      Range range{s, r, region.x0, region.x0 + along - shape.width, kind.clear, region.width - shape.height};
      if (kind.fixed_y >= 0) {
        if (kind.fixed_y > range.y1 || kind.fixed_y < range.y0) continue;
        range.y0 = range.y1 = kind.fixed_y;
      }
      if (kind.step_y > 0) {
        range.y0 = first_y(kind);
        if (range.y1 >= range.y0) range.y1 -= (range.y1 - range.y0) % kind.step_y;
      }
      if (kind.step > 0) {
        range.x0 += kind.phase;
        if (range.x1 >= range.x0) range.x1 -= (range.x1 - range.x0) % kind.step;
      }
      if (range.x1 >= range.x0 && range.y1 >= range.y0) ranges.push_back(range);
    }
  }
  return ranges;
}

int World::least_length() const {
  int least = 0;
  for (const Kind& kind : kinds) {
    if (kind.regions.empty() || !ranges_of(*this, kind, -1).empty()) continue;  // not wanted, or a closed strip takes it
    int own = std::numeric_limits<int>::max();
    const Region& open = regions.back();
    for (const int s : kind.shapes) {
      const Shape& shape = shapes[static_cast<std::size_t>(s)];
      const int y = kind.fixed_y >= 0 ? kind.fixed_y : first_y(kind);
      if (y >= kind.clear && y + shape.height <= open.width) own = std::min(own, kind.phase + shape.width);
    }
    least = std::max(least, own);
  }
  return least;
}

}  // namespace gownsheaf::nest
