// Bars filled as full as can be, many times over with other items passed over (after the least-slack rule of Gupta and Ho,
// 1999). Finds plans that no rule for one bar finds; proves nothing.
#include <algorithm>
#include <random>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

constexpr int kMostNodes = 150;         // of one fill
constexpr std::uint32_t kPassOver = 5;  // one size in five is passed over

class Filling {
 public:
  Filling(const CutProblem& problem, const Relaxed& relaxed, Effort& effort)
      : p_(problem), r_(relaxed), effort_(effort), random_(1), passed_(problem.size.size()) {}

  Patterns once(bool by_chance) {
    left_ = p_.wanted;
    number_.clear();
    for (const CutKind& kind : p_.kinds) number_.push_back(kind.number);
    Patterns plan;
    for (std::size_t longest = 0; longest < left_.size();) {
      if (left_[longest] == 0) {
        ++longest;
        continue;
      }
      for (std::size_t i = 0; i < passed_.size(); ++i) passed_[i] = by_chance && random_() % kPassOver == 0;
      if (!add_bar(longest, plan)) return {};
    }
    return plan;
  }

 private:
  // The bar kind whose fullest fill loses least against the prices.
  bool add_bar(std::size_t longest, Patterns& plan) {
    Pattern best;
    Int128 best_loss = 0;
    std::int64_t best_left = 0;
    for (std::size_t kind = 0; kind < p_.kinds.size(); ++kind) {
      const CutKind& k = p_.kinds[kind];
      if (number_[kind] == 0 || (!k.single && k.room < p_.size[longest])) continue;
      now_.assign(left_.size(), 0);
      now_[longest] = 1;
      fullest_ = now_;
      least_ = k.single ? 0 : k.room - p_.size[longest];
      nodes_ = 0;
      if (!k.single) fill(longest, least_);
      Int128 loss = (static_cast<Int128>(k.cost) << r_.bits) + r_.rent[kind];
      for (std::size_t i = 0; i < left_.size(); ++i) loss -= static_cast<Int128>(fullest_[i]) * r_.price[i];
      if (!best.count.empty() && (loss > best_loss || (loss == best_loss && least_ >= best_left))) continue;
      best = {static_cast<int>(kind), fullest_};
      best_loss = loss;
      best_left = least_;
    }
    if (best.count.empty()) return false;
    if (auto& n = number_[static_cast<std::size_t>(best.kind)]; n > 0) --n;
    for (std::size_t i = 0; i < left_.size(); ++i) left_[i] -= best.count[i];
    plan.push_back(std::move(best));
    return true;
  }

  void fill(std::size_t size, std::int64_t room) {
    if (room < least_) {
      least_ = room;
      fullest_ = now_;
    }
    ++nodes_;
    ++effort_.done;
    for (std::size_t i = size; i < left_.size() && least_ > 0 && nodes_ < kMostNodes; ++i) {
      if (passed_[i] || left_[i] <= now_[i] || p_.size[i] > room) continue;
      ++now_[i];
      fill(i, room - p_.size[i]);
      --now_[i];
    }
  }

  const CutProblem& p_;
  const Relaxed& r_;
  Effort& effort_;
  std::mt19937 random_;
  std::vector<bool> passed_;
  std::vector<std::int64_t> left_, number_, now_, fullest_;
  std::int64_t least_ = 0;
  int nodes_ = 0;
};

}  // namespace

Patterns filled_plan(const CutProblem& problem, const Relaxed& relaxed, std::int64_t wanted, Effort& effort) {
  Filling filling(problem, relaxed, effort);
  Patterns best;
  for (bool by_chance = false; !effort.spent(); by_chance = true) {
    ++effort.done;
    Patterns plan = filling.once(by_chance);
    take_cheapest(problem, plan);
    if (!plan.empty() && (best.empty() || cost_of(problem, plan) < cost_of(problem, best))) best = std::move(plan);
    if (!best.empty() && cost_of(problem, best) <= wanted) break;
  }
  return best;
}

}  // namespace gownsheaf::nest
