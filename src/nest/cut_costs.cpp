// Costs that bars can add up to.
#include <algorithm>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {

constexpr std::size_t kMostSums = 50'000;

ReachableCosts::ReachableCosts(const CutProblem& p, std::int64_t most) : sums_{0} {
  for (const CutKind& kind : p.kinds) {
    if (kind.cost == 0) continue;
    std::vector<std::int64_t> next;
    for (const std::int64_t sum : sums_)
      for (std::int64_t n = 0, all = sum; all <= most && (kind.number < 0 || n <= kind.number); ++n, all += kind.cost)
        next.push_back(all);
    std::sort(next.begin(), next.end());
    next.erase(std::unique(next.begin(), next.end()), next.end());
    sums_ = std::move(next);
    if (sums_.size() > kMostSums) {
      sums_.clear();
      return;
    }
  }
}

std::int64_t ReachableCosts::from(std::int64_t cost) const {
  const auto at = std::lower_bound(sums_.begin(), sums_.end(), cost);
  return at == sums_.end() ? cost : *at;
}

std::int64_t ReachableCosts::up_to(std::int64_t cost) const {
  const auto at = std::upper_bound(sums_.begin(), sums_.end(), cost);
  return at == sums_.begin() ? cost : *(at - 1);
}

}  // namespace gownsheaf::nest
