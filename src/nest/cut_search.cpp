// Branch and bound over bars. The longest item left lies in some bar: every bar kind and every fill with that item is tried
// that no exchange of items makes fuller, cheapest first by the relaxation's prices. What a fill costs more than its items
// are worth comes out of a budget, and so does what no bars can cost together; a state that once failed with as much to
// spend is not tried again. A fill that a cheaper kind of bar holds too is left to that kind.
//
// Exchanges (they never cost more, because only a smaller length comes into another bar's place): one item of the fill, or
// two of them, for one longer item that is left and still fits.
#include <algorithm>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

constexpr std::size_t kMostRemembered = 400'000;
constexpr std::size_t kMostFills = 4'000;  // of one bar; more are not looked at, and then nothing is proven

// What is left, packed: of each size and of each limited kind as many bits as it needs.
__extension__ typedef unsigned __int128 State;

// States that failed, and with how much to spend. Looked up only, never gone through.
class Failed {
 public:
  Failed() : slots_(1024) {}
  bool with(State state, std::int64_t cost) const {
    const Slot& slot = slots_[place_of(state)];
    return slot.cost >= cost;
  }
  void add(State state, std::int64_t cost) {
    if (held_ >= kMostRemembered) return;
    if (held_ * 2 >= slots_.size()) grow();
    put(state, cost);
  }

 private:
  struct Slot {
    State state = 0;
    std::int64_t cost = -1;
  };  // cost -1: nothing here
  std::size_t place_of(State state) const {
    std::uint64_t h =
        static_cast<std::uint64_t>(state) * 0x9e3779b97f4a7c15U ^ static_cast<std::uint64_t>(state >> 64) * 0xc2b2ae3d27d4eb4fU;
    h = (h ^ (h >> 29)) * 0xbf58476d1ce4e5b9U;
    std::size_t at = (h ^ (h >> 32)) & (slots_.size() - 1);
    while (slots_[at].cost >= 0 && slots_[at].state != state) at = (at + 1) & (slots_.size() - 1);
    return at;
  }
  void put(State state, std::int64_t cost) {
    Slot& slot = slots_[place_of(state)];
    if (slot.cost < 0) ++held_;
    slot = {state, std::max(slot.cost, cost)};
  }
  void grow() {
    std::vector<Slot> old(slots_.size() * 2);
    old.swap(slots_);
    held_ = 0;
    for (const Slot& slot : old)
      if (slot.cost >= 0) put(slot.state, slot.cost);
  }
  std::vector<Slot> slots_;
  std::size_t held_ = 0;
};

class Search {
 public:
  Search(const CutProblem& problem, const Relaxed& relaxed, const ReachableCosts& reachable, bool exactly, Effort& effort)
      : p_(problem), r_(relaxed), reachable_(reachable), exactly_(exactly), effort_(effort), left_(problem.wanted),
        now_(problem.size.size(), 0) {
    int bits = 0;
    const auto place = [&](std::int64_t most) {
      place_.push_back(bits);
      while (most > 0) {
        ++bits;
        most /= 2;
      }
    };
    for (const std::int64_t n : left_) place(n);
    for (const CutKind& kind : p_.kinds) {
      number_.push_back(kind.number);
      place(std::max<std::int64_t>(0, kind.number));
    }
    remembers_ = bits <= 128;
    for (std::size_t i = 0; i < left_.size(); ++i)
      own_ratio_.push_back(((r_.price[i] << kRatioBits) + p_.size[i] - 1) / p_.size[i]);
    ratio_.assign(left_.size() + 1, 0);
    for (const CutKind& kind : p_.kinds) {
      std::int64_t roomy = kind.room;
      for (const CutKind& other : p_.kinds)
        if (!other.single && other.number < 0 && other.cost < kind.cost) roomy = std::min(roomy, kind.room - other.room);
      most_left_.push_back(roomy);
    }
  }

  FoundPlan find(std::int64_t cost) {
    FoundPlan found;
    const bool yes = go(cost, (static_cast<Int128>(cost) << r_.bits) - r_.scaled_bound);
    found.answer = yes ? FoundPlan::Answer::yes : spoilt_ || effort_.spent() ? FoundPlan::Answer::gave_up : FoundPlan::Answer::no;
    if (yes) found.plan = plan_;
    return found;
  }

 private:
  static constexpr int kRatioBits = 16;
  struct Fill {
    Pattern pattern;
    Int128 loss = 0;
    std::int64_t left = 0;
  };

  // What a pattern costs beyond the worth of its items.
  Int128 loss_of(std::size_t kind, std::int64_t worth) const {
    return (static_cast<Int128>(p_.kinds[kind].cost) << r_.bits) + r_.rent[kind] - worth;
  }

  void fill(std::size_t kind, std::size_t size, std::int64_t room, std::int64_t worth, Int128 least_worth, Int128 lost,
            std::vector<Fill>& fills) {
    if (fills.size() >= kMostFills) {
      spoilt_ = true;
      return;
    }
    while (size < left_.size() && (left_[size] == now_[size] || p_.size[size] > room)) ++size;
    if (size == left_.size()) {
      if (worth >= least_worth && room < most_left_[kind] && !can_be_fuller(room))
        fills.push_back({{static_cast<int>(kind), now_}, loss_of(kind, worth) + lost, room});
      return;
    }
    if (worth + ((static_cast<Int128>(room) * ratio_[size]) >> kRatioBits) + 1 < least_worth) return;
    ++effort_.done;
    const std::int64_t before = now_[size];
    while (now_[size] < left_[size] && room >= p_.size[size]) {
      ++now_[size];
      room -= p_.size[size];
      worth += r_.price[size];
    }
    for (;; --now_[size]) {
      fill(kind, size + 1, room, worth, least_worth, lost, fills);
      if (now_[size] == before) return;
      room += p_.size[size];
      worth -= r_.price[size];
    }
  }
  // The shortest item left that is longer than this; nothing: 0.
  std::int64_t next_longer(std::int64_t than) const {
    for (std::size_t i = p_.size.size(); i-- > 0;)
      if (p_.size[i] > than && left_[i] > now_[i]) return p_.size[i];
    return 0;
  }
  bool can_be_fuller(std::int64_t room) {
    ++effort_.done;
    held_.clear();
    held_.push_back(0);
    for (std::size_t i = 0; i < now_.size(); ++i) {
      if (now_[i] > 0) held_.push_back(p_.size[i]);
      if (now_[i] > 1) held_.push_back(p_.size[i]);
    }
    // A pair with "nothing" is an item by itself; nothing with nothing is an item added.
    for (std::size_t a = 0; a < held_.size(); ++a)
      for (std::size_t b = a; b < held_.size(); ++b) {
        if (b == a && a > 0) continue;
        const std::int64_t out = held_[a] + held_[b], in = next_longer(out);
        if (in > 0 && in - out <= room) return true;
      }
    return false;
  }

  std::vector<Fill> fills_with(std::size_t longest, std::int64_t cost, Int128 slack) {
    std::vector<Fill> fills;
    for (std::size_t i = left_.size(); i-- > longest;)
      ratio_[i] = left_[i] > 0 ? std::max(ratio_[i + 1], own_ratio_[i]) : ratio_[i + 1];
    for (std::size_t kind = 0; kind < p_.kinds.size(); ++kind) {
      const CutKind& k = p_.kinds[kind];
      if (number_[kind] == 0 || k.cost > cost || (!k.single && k.room < p_.size[longest])) continue;
      // What cannot be spent behind this bar is lost; nothing may be, when no plan costs less.
      const std::int64_t over = cost - k.cost - reachable_.up_to(cost - k.cost);
      if (over > 0 && exactly_) continue;
      const Int128 lost = static_cast<Int128>(over) << r_.bits;
      now_[longest] = 1;
      if (k.single) {
        const Int128 loss = loss_of(kind, r_.price[longest]) + lost;
        if (loss <= slack) fills.push_back({{static_cast<int>(kind), now_}, loss, 0});
      } else {
        fill(kind, longest, k.room - p_.size[longest], r_.price[longest], loss_of(kind, 0) + lost - slack, lost, fills);
      }
      now_[longest] = 0;
    }
    std::stable_sort(fills.begin(), fills.end(),
                     [](const Fill& a, const Fill& b) { return a.loss != b.loss ? a.loss < b.loss : a.left < b.left; });
    return fills;
  }

  State state() const {
    State s = 0;
    for (std::size_t i = 0; i < left_.size(); ++i) s |= static_cast<State>(left_[i]) << place_[i];
    for (std::size_t j = 0; j < number_.size(); ++j)
      if (number_[j] > 0) s |= static_cast<State>(number_[j]) << place_[left_.size() + j];
    return s;
  }

  bool go(std::int64_t cost, Int128 slack) {
    std::size_t longest = 0;
    while (longest < left_.size() && left_[longest] == 0) ++longest;
    if (longest == left_.size()) return true;
    if (slack < 0 || effort_.spent()) return false;
    effort_.done += 2;
    const State here = remembers_ ? state() : 0;
    if (remembers_ && failed_.with(here, cost)) return false;
    for (const Fill& f : fills_with(longest, cost, slack)) {
      const auto kind = static_cast<std::size_t>(f.pattern.kind);
      for (std::size_t i = 0; i < left_.size(); ++i) left_[i] -= f.pattern.count[i];
      if (number_[kind] > 0) --number_[kind];
      plan_.push_back(f.pattern);
      if (go(reachable_.up_to(cost - p_.kinds[kind].cost), slack - f.loss)) return true;
      plan_.pop_back();
      if (p_.kinds[kind].number >= 0) ++number_[kind];
      for (std::size_t i = 0; i < left_.size(); ++i) left_[i] += f.pattern.count[i];
      if (effort_.spent()) return false;
    }
    if (remembers_) failed_.add(here, cost);
    return false;
  }

  const CutProblem& p_;
  const Relaxed& r_;
  const ReachableCosts& reachable_;
  bool exactly_;
  Effort& effort_;
  std::vector<std::int64_t> left_, number_, now_, held_;
  std::vector<std::int64_t> own_ratio_, ratio_;  // price by length; the most of what is left from a size on
  std::vector<std::int64_t> most_left_;          // of each kind: with so much left a cheaper kind holds the same
  std::vector<int> place_;
  Patterns plan_;
  Failed failed_;
  bool spoilt_ = false, remembers_ = false;
};

}  // namespace

FoundPlan find_plan(const CutProblem& problem, const Relaxed& relaxed, const ReachableCosts& reachable, std::int64_t cost,
                    bool none_cheaper, Effort& effort) {
  return Search(problem, relaxed, reachable, none_cheaper, effort).find(cost);
}

}  // namespace gownsheaf::nest
