#include "nest/world.h"

#include <algorithm>
#include <array>

namespace gownsheaf::nest {
namespace {

constexpr int kManyTables = 3000;  // beyond it they are coarse, for memory, and made late, for time
constexpr int kOften = 500;
constexpr int kMostTables = 9000;

}  // namespace

void World::prepare() {
  const int n = static_cast<int>(shapes.size());
  refs_.assign(static_cast<std::size_t>(n) * static_cast<std::size_t>(n), Ref{});
  std::vector<int> slot_of(refs_.size(), -1);
  int slots = 0;
  const auto index = [&](int a, int b) { return static_cast<std::size_t>(a) * static_cast<std::size_t>(n) + static_cast<std::size_t>(b); };
  std::vector<int> slot(refs_.size());
  for (int a = 0; a < n; ++a) {
    for (int b = 0; b < n; ++b) {
      // One table serves b seen from a, a seen from b, and both turned alike by quarters.
      const Shape &sa = shapes[static_cast<std::size_t>(a)], &sb = shapes[static_cast<std::size_t>(b)];
      const int wx = sa.width - sb.width, wy = sa.height - sb.height;
      Ref best{nullptr, a, b, 1, 0, 0, 0};
      const auto consider = [&](int p, int q, int cosine, int sine, int x, int y) {
        if (p < 0 || q < 0) return;
        if (p < best.a || (p == best.a && q < best.b)) best = {nullptr, p, q, cosine, sine, x, y};
        if (q < best.a || (q == best.a && p < best.b)) best = {nullptr, q, p, -cosine, -sine, -x, -y};
      };
      consider(a, b, 1, 0, 0, 0);
      consider(sa.turned[1], sb.turned[1], 0, 1, wy, 0);
      consider(sa.turned[2], sb.turned[2], -1, 0, wx, wy);
      consider(sa.turned[3], sb.turned[3], 0, -1, 0, wx);
      int& s = slot_of[index(best.a, best.b)];
      if (s < 0) s = slots++;
      slot[index(a, b)] = s;
      refs_[index(a, b)] = best;
    }
  }
  if (slots > kManyTables) {
    cells_ = PairTable::kCoarse;
    asked_ = std::vector<std::atomic<int>>(static_cast<std::size_t>(slots));
  }
  slots_ = std::vector<std::atomic<const PairTable*>>(static_cast<std::size_t>(slots));
  tables_.resize(static_cast<std::size_t>(slots));
  for (std::size_t i = 0; i < refs_.size(); ++i) refs_[i].slot = &slots_[static_cast<std::size_t>(slot[i])];
}

double World::first_loss(const Ref& ref, int x, int y) const {
  if (!asked_.empty()) {
    const Shape &a = shapes[static_cast<std::size_t>(ref.a)], &b = shapes[static_cast<std::size_t>(ref.b)];
    if (gap_of(ref.a, ref.b) == 0) {
      const int times = asked_[static_cast<std::size_t>(ref.slot - slots_.data())].fetch_add(1, std::memory_order_relaxed);
      if (times < kOften || made_.load(std::memory_order_relaxed) >= kMostTables) return loss_without_table(a, b, cells_, x, y);
    }
  }
  return make(ref)->loss(x, y);
}

const PairTable* World::make(const Ref& ref) const {
  auto table = std::make_unique<PairTable>(shapes[static_cast<std::size_t>(ref.a)], shapes[static_cast<std::size_t>(ref.b)],
                                           gap_of(ref.a, ref.b), cells_);
  const std::lock_guard lock(making_);
  const PairTable* made = ref.slot->load(std::memory_order_acquire);
  if (made != nullptr) return made;
  std::unique_ptr<PairTable>& kept = tables_[static_cast<std::size_t>(ref.slot - slots_.data())];
  kept = std::move(table);
  made_.fetch_add(1, std::memory_order_relaxed);
  ref.slot->store(kept.get(), std::memory_order_release);
  return kept.get();
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
