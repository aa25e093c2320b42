// Least length of bars by other means than nest/: no relaxation and no search tree. For tests.
#pragma once
#include <algorithm>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "nest/cutting_stock.h"

namespace gownsheaf::plain {

inline constexpr std::int64_t kNoPlan = std::numeric_limits<std::int64_t>::max() / 4;

// Ticks of bars to be bought, over every way to part the items into groups (a sum over subsets; up to some 12 items).
// Bars on the shelf cost nothing and are there as often as said; the others are not limited. Nothing: no plan holds all.
inline std::optional<std::int64_t> least_by_subsets(const nest::CutRequest& request) {
  const std::size_t n = request.items.size(), all = (std::size_t{1} << n) - 1;
  const std::int64_t kerf = request.kerf.in_ticks();
  std::vector<std::int64_t> length(all + 1, -kerf);  // of the group, with the cuts between
  for (std::size_t group = 1; group <= all; ++group)
    for (std::size_t i = 0; i < n; ++i)
      if (group >> i & 1) length[group] += request.items[i].in_ticks() + kerf;
  std::vector<char> free(all + 1, 0);
  free[0] = 1;
  for (const nest::BarKind& bar : request.bars) {
    if (!bar.on_shelf) continue;
    for (std::int64_t k = 0; k < bar.number.value_or(0); ++k) {
      std::vector<char> next = free;
      for (std::size_t group = 1; group <= all; ++group)
        for (std::size_t part = group; part > 0 && next[group] == 0; part = (part - 1) & group)
          if (length[part] <= bar.length.in_ticks() && free[group ^ part]) next[group] = 1;
      free = std::move(next);
    }
  }
  std::vector<std::int64_t> least(all + 1, kNoPlan), one(all + 1, kNoPlan);
  for (std::size_t group = 1; group <= all; ++group)
    for (const nest::BarKind& bar : request.bars)
      if (!bar.on_shelf && length[group] <= bar.length.in_ticks()) one[group] = std::min(one[group], bar.length.in_ticks());
  least[0] = 0;
  for (std::size_t group = 1; group <= all; ++group) {
    const std::size_t first = group & (~group + 1), others = group ^ first;
    for (std::size_t part = others;; part = (part - 1) & others) {
      least[group] = std::min(least[group], one[part | first] + least[group ^ (part | first)]);
      if (part == 0) break;
    }
  }
  std::int64_t best = kNoPlan;
  for (std::size_t group = 0; group <= all; ++group)
    if (free[group]) best = std::min(best, least[all ^ group]);
  if (best >= kNoPlan) return std::nullopt;
  return best;
}

// The same over how many of each length are left, for lists of few different lengths; nothing on the shelf.
class LeastByCounts {
 public:
  explicit LeastByCounts(const nest::CutRequest& request) {
    for (const Length item : request.items) {
      const std::int64_t size = (item + request.kerf).in_ticks();
      const auto at = std::find(size_.begin(), size_.end(), size);
      if (at == size_.end()) {
        size_.push_back(size);
        wanted_.push_back(1);
      } else {
        ++wanted_[static_cast<std::size_t>(at - size_.begin())];
      }
    }
    std::size_t states = 1;
    for (const std::int64_t n : wanted_) {
      step_.push_back(states);
      states *= static_cast<std::size_t>(n) + 1;
    }
    least_.assign(states, kNoPlan);
    least_[0] = 0;
    std::vector<std::int64_t> now(size_.size(), 0);
    for (const nest::BarKind& bar : request.bars)
      add_patterns(0, (bar.length + request.kerf).in_ticks(), bar.length.in_ticks(), 0, now);
    for (std::size_t state = 1; state < states; ++state)
      for (const Pattern& p : patterns_)
        if (holds(state, p)) least_[state] = std::min(least_[state], p.cost + least_[state - p.step]);
  }
  std::int64_t ticks() const { return least_.back(); }

 private:
  struct Pattern {
    std::vector<std::int64_t> count;
    std::size_t step;
    std::int64_t cost;
  };
  void add_patterns(std::size_t i, std::int64_t room, std::int64_t cost, std::size_t step, std::vector<std::int64_t>& now) {
    if (i == size_.size()) {
      if (step > 0) patterns_.push_back({now, step, cost});
      return;
    }
    for (std::int64_t n = 0; n <= wanted_[i] && n * size_[i] <= room; ++n) {
      now[i] = n;
      add_patterns(i + 1, room - n * size_[i], cost, step + static_cast<std::size_t>(n) * step_[i], now);
    }
    now[i] = 0;
  }
  bool holds(std::size_t state, const Pattern& p) const {
    for (std::size_t i = 0; i < size_.size(); ++i)
      if (static_cast<std::int64_t>(state / step_[i] % (static_cast<std::size_t>(wanted_[i]) + 1)) < p.count[i]) return false;
    return true;
  }
  std::vector<std::int64_t> size_, wanted_, least_;
  std::vector<std::size_t> step_;
  std::vector<Pattern> patterns_;
};

}  // namespace gownsheaf::plain
