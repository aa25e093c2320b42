// Branch and bound over bars. The longest item left lies in some bar: every bar kind and every fill with that item, into
// which nothing left would still go, is tried, cheapest by the relaxation's prices first. What a fill costs more than its
// items are worth comes out of a budget; a state that once failed with as much budget is not tried again.
#include <algorithm>
#include <map>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

constexpr std::size_t kMostRemembered = 200'000;
constexpr std::size_t kMostFills = 4'000;  // of one bar; more are not looked at, and then nothing is proven

class Search {
 public:
  Search(const CutProblem& problem, const Relaxed& relaxed, Effort& effort)
      : p_(problem), r_(relaxed), effort_(effort), left_(problem.wanted) {
    for (const CutKind& kind : p_.kinds) number_.push_back(kind.number);
  }

  Found find(std::int64_t cost) {
    Int128 slack = (static_cast<Int128>(cost) << r_.bits) - r_.scaled_bound;
    Found found;
    if (slack < 0) {
      found.answer = Found::Answer::no;
      return found;
    }
    const bool yes = go(cost, slack);
    found.answer = yes ? Found::Answer::yes : spoilt_ || effort_.spent() ? Found::Answer::gave_up : Found::Answer::no;
    if (yes) found.plan = plan_;
    return found;
  }

 private:
  struct Fill { Pattern pattern; Int128 loss = 0; std::int64_t left = 0; };

  // What a pattern costs beyond the worth of its items.
  Int128 loss_of(std::size_t kind, Int128 worth) const {
    return (static_cast<Int128>(p_.kinds[kind].cost) << r_.bits) + r_.rent[kind] - worth;
  }

  void fill(std::size_t kind, std::size_t size, std::int64_t room, Int128 worth, Int128 slack, std::vector<Fill>& fills) {
    if (fills.size() >= kMostFills) {
      spoilt_ = true;
      return;
    }
    while (size < left_.size() && (left_[size] == 0 || p_.size[size] > room)) ++size;
    if (size == left_.size()) {
      for (std::size_t i = 0; i < left_.size(); ++i)  // something left would still go in: another fill holds this one
        if (left_[i] > now_[i] && p_.size[i] <= room) return;
      const Int128 loss = loss_of(kind, worth);
      if (loss <= slack) fills.push_back({{static_cast<int>(kind), now_}, loss, room});
      return;
    }
    if (loss_of(kind, worth + best_worth(size, room)) > slack) return;
    ++effort_.done;
    for (std::int64_t n = std::min(left_[size] - now_[size], room / p_.size[size]); n >= 0; --n) {
      now_[size] += n;
      fill(kind, size + 1, room - n * p_.size[size], worth + static_cast<Int128>(n) * r_.price[size], slack, fills);
      now_[size] -= n;
    }
  }
  // No items from `size` on are worth more in this room.
  Int128 best_worth(std::size_t size, std::int64_t room) const {
    Int128 best = 0;
    for (std::size_t i = size; i < left_.size(); ++i)
      if (left_[i] > 0) best = std::max(best, static_cast<Int128>(room) * r_.price[i] / p_.size[i] + 1);
    return best;
  }

  std::vector<Fill> fills_with(std::size_t longest, std::int64_t cost, Int128 slack) {
    std::vector<Fill> fills;
    for (std::size_t kind = 0; kind < p_.kinds.size(); ++kind) {
      const CutKind& k = p_.kinds[kind];
      if (number_[kind] == 0 || k.cost > cost || (!k.single && k.room < p_.size[longest])) continue;
      now_.assign(left_.size(), 0);
      now_[longest] = 1;
      if (k.single) {
        const Int128 loss = loss_of(kind, r_.price[longest]);
        if (loss <= slack) fills.push_back({{static_cast<int>(kind), now_}, loss, 0});
        continue;
      }
      fill(kind, longest, k.room - p_.size[longest], r_.price[longest], slack, fills);
    }
    std::stable_sort(fills.begin(), fills.end(), [](const Fill& a, const Fill& b) { return a.loss != b.loss ? a.loss < b.loss : a.left < b.left; });
    return fills;
  }

  bool go(std::int64_t cost, Int128 slack) {
    const auto longest = static_cast<std::size_t>(
        std::find_if(left_.begin(), left_.end(), [](std::int64_t n) { return n > 0; }) - left_.begin());
    if (longest == left_.size()) return true;
    if (effort_.spent()) return false;
    ++effort_.done;
    std::vector<std::int64_t> state = left_;
    state.insert(state.end(), number_.begin(), number_.end());
    if (const auto at = failed_.find(state); at != failed_.end() && at->second >= cost) return false;
    for (const Fill& f : fills_with(longest, cost, slack)) {
      const auto kind = static_cast<std::size_t>(f.pattern.kind);
      for (std::size_t i = 0; i < left_.size(); ++i) left_[i] -= f.pattern.count[i];
      if (number_[kind] > 0) --number_[kind];
      plan_.push_back(f.pattern);
      if (go(cost - p_.kinds[kind].cost, slack - f.loss)) return true;
      plan_.pop_back();
      if (p_.kinds[kind].number >= 0) ++number_[kind];
      for (std::size_t i = 0; i < left_.size(); ++i) left_[i] += f.pattern.count[i];
      if (effort_.spent()) return false;
    }
    if (failed_.size() < kMostRemembered) {
      auto& remembered = failed_[std::move(state)];
      remembered = std::max(remembered, cost);
    }
    return false;
  }

  const CutProblem& p_;
  const Relaxed& r_;
  Effort& effort_;
  std::vector<std::int64_t> left_, number_, now_;
  Patterns plan_;
  std::map<std::vector<std::int64_t>, std::int64_t> failed_;
  bool spoilt_ = false;
};

}  // namespace

Found find_plan(const CutProblem& problem, const Relaxed& relaxed, std::int64_t cost, Effort& effort) {
  return Search(problem, relaxed, effort).find(cost);
}

}  // namespace gownsheaf::nest
