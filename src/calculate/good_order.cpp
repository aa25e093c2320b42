#include "calculate/good_order.h"

#include <algorithm>
#include <limits>
#include <stdexcept>

namespace gownsheaf {
namespace {

constexpr std::int64_t kOtherSetUp = 180, kOtherItem = 30, kOtherAct = 15, kPartedSitting = 240, kSmallFirst = 900;
constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::max() / 4;
constexpr std::size_t kLongestMove = 8;
using Order = std::vector<std::size_t>;

bool same_sitting(const SewStep& a, const SewStep& b) { return a.sitting >= 0 && a.sitting == b.sitting; }

std::int64_t between(const SewStep& a, const SewStep& b) {
  if (same_sitting(a, b)) return -kPartedSitting;
  if (a.set_up != b.set_up) return kOtherSetUp;
  return (a.item != b.item ? kOtherItem : 0) + (a.act != b.act ? kOtherAct : 0);
}
std::int64_t wrong_way(const SewStep& first, const SewStep& then) {
  const bool one_cloth = first.item < 0 || then.item < 0 || first.item == then.item;
  return first.cut >= 0 && then.cut >= 0 && one_cloth && first.cut > then.cut ? kSmallFirst : 0;
}
// What it costs that all of `a` comes before all of `b`, but for their touching.
std::int64_t before(const SewStep& a, const SewStep& b) { return (b.fitting ? a.minutes : 0) + wrong_way(a, b); }

// Betters an order by moving stretches of it.
class Mover {
 public:
  Mover(const std::vector<SewStep>& steps, Order order, std::int64_t& effort)
      : steps_(steps), order_(std::move(order)), effort_(effort), waits_(steps.size()) {
    for (std::size_t i = 0; i < steps.size(); ++i)
      for (const std::size_t a : steps[i].after) waits_[a].push_back(i);
    place_.resize(steps.size());
    note_places(0, order_.size());
  }

  Order bettered() {
    for (bool found = true; found && effort_ > 0;) {
      found = false;
      for (std::size_t at = 0; at < order_.size() && effort_ > 0; ++at)
        for (std::size_t length = 1; length <= kLongestMove && at + length <= order_.size(); ++length)
          if (move_best(at, length)) found = true;
    }
    return std::move(order_);
  }

 private:
  const SewStep& step(std::size_t place) const { return steps_[order_[place]]; }
  std::int64_t touch(std::size_t a, std::size_t b) const {  // places; one past an end touches nothing
    return a >= order_.size() || b >= order_.size() ? 0 : between(step(a), step(b));
  }
  void note_places(std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) place_[order_[i]] = i;
  }

  // The stretch may go no further left than after all it waits for, no further right than before all that wait for it.
  std::pair<std::size_t, std::size_t> room(std::size_t at, std::size_t length) const {
    std::size_t least = 0, most = order_.size();
    for (std::size_t i = at; i < at + length; ++i) {
      for (const std::size_t a : step(i).after)
        if (place_[a] < at) least = std::max(least, place_[a] + 1);
      for (const std::size_t w : waits_[order_[i]])
        if (place_[w] >= at + length) most = std::min(most, place_[w]);
    }
    return {least, most};
  }

  bool move_best(std::size_t at, std::size_t length) {
    const auto [least, most] = room(at, length);
    if (least == at && most == at + length) return false;
    const std::size_t end = at + length;
    std::int64_t minutes = 0, fittings = 0;
    bool cuts = false;
    for (std::size_t i = at; i < end; ++i) {
      minutes += step(i).minutes;
      fittings += step(i).fitting ? 1 : 0;
      cuts = cuts || step(i).cut >= 0;
    }
    const std::size_t none = order_.size();
    const std::int64_t closing = touch(at == 0 ? none : at - 1, end) - touch(at == 0 ? none : at - 1, at) - touch(end - 1, end);
    std::int64_t best = 0, passed = 0;
    std::size_t target = at;
    // Passing one step p to the right: p now comes before the stretch, and to the left the other way round.
    const auto pass = [&](std::size_t p, bool right) {
      const SewStep& other = step(p);
      std::int64_t change = fittings * other.minutes - (other.fitting ? minutes : 0);
      if (cuts && other.cut >= 0)
        for (std::size_t i = at; i < end; ++i) change += wrong_way(other, step(i)) - wrong_way(step(i), other);
      passed += right ? change : -change;
      --effort_;
    };
    for (std::size_t p = end; p < most; ++p) {
      pass(p, true);
      const std::int64_t cost = passed + closing - touch(p, p + 1) + touch(p, at) + touch(end - 1, p + 1);
      if (cost < best) best = cost, target = p + 1;
    }
    passed = 0;
    for (std::size_t p = at; p-- > least;) {
      pass(p, false);
      const std::size_t left = p == 0 ? none : p - 1;
      const std::int64_t cost = passed + closing - touch(left, p) + touch(left, at) + touch(end - 1, p);
      if (cost < best) best = cost, target = p;
    }
    if (best >= 0) return false;
    const auto begin = order_.begin();
    const auto offset = [](std::size_t n) { return static_cast<std::ptrdiff_t>(n); };
    if (target > at) {
      std::rotate(begin + offset(at), begin + offset(end), begin + offset(target));
      note_places(at, target);
    } else {
      std::rotate(begin + offset(target), begin + offset(at), begin + offset(end));
      note_places(target, end);
    }
    return true;
  }

  const std::vector<SewStep>& steps_;
  Order order_;
  std::int64_t& effort_;
  std::vector<Order> waits_;
  std::vector<std::size_t> place_;
};

// For one fitting after the other: what it needs, then it; then the rest. Within each the start's order.
Order fittings_first(const std::vector<SewStep>& steps, const Order& start) {
  Order order;
  std::vector<bool> placed(steps.size());
  for (const std::size_t fitting : start) {
    if (!steps[fitting].fitting) continue;
    std::vector<bool> needed(steps.size());
    Order stack{fitting};
    needed[fitting] = true;
    while (!stack.empty()) {
      const std::size_t s = stack.back();
      stack.pop_back();
      for (const std::size_t a : steps[s].after)
        if (!needed[a]) {
          needed[a] = true;
          stack.push_back(a);
        }
    }
    for (const std::size_t s : start)
      if (needed[s] && !placed[s]) {
        placed[s] = true;
        order.push_back(s);
      }
  }
  for (const std::size_t s : start)
    if (!placed[s]) order.push_back(s);
  return order;
}

// Of the steps that are free always the one that costs least to go on with.
Order nearest_next(const std::vector<SewStep>& steps, const Order& start) {
  Order order, free;
  std::vector<std::size_t> waits(steps.size()), place(steps.size());
  std::vector<Order> next(steps.size());
  for (std::size_t i = 0; i < start.size(); ++i) place[start[i]] = i;
  for (const std::size_t s : start) {
    waits[s] = steps[s].after.size();
    for (const std::size_t a : steps[s].after) next[a].push_back(s);
    if (waits[s] == 0) free.push_back(s);
  }
  while (!free.empty()) {
    const auto cost = [&](std::size_t s) { return order.empty() ? 0 : between(steps[order.back()], steps[s]); };
    const auto at = std::min_element(free.begin(), free.end(), [&](std::size_t a, std::size_t b) {
      return std::pair(cost(a), place[a]) < std::pair(cost(b), place[b]);
    });
    const std::size_t s = *at;
    free.erase(at);
    order.push_back(s);
    for (const std::size_t n : next[s])
      if (--waits[n] == 0) free.push_back(n);
  }
  return order;
}

}  // namespace

std::int64_t points_of(const std::vector<SewStep>& steps, const std::vector<std::size_t>& order) {
  std::int64_t points = 0, minutes = 0;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const SewStep& s = steps[order[i]];
    if (i > 0) points += between(steps[order[i - 1]], s);
    if (s.fitting) points += minutes;
    minutes += s.minutes;
    if (s.cut >= 0)
      for (std::size_t k = 0; k < i; ++k) points += wrong_way(steps[order[k]], s);
  }
  return points;
}

Order exact_order(const std::vector<SewStep>& steps, const Order& start) {
  const std::size_t n = start.size();
  if (n > kExactSteps) throw std::length_error("too many steps to try every order");
  if (n < 2) return start;
  std::vector<std::size_t> place(steps.size());
  for (std::size_t i = 0; i < n; ++i) place[start[i]] = i;
  const auto step = [&](std::size_t i) -> const SewStep& { return steps[start[i]]; };
  std::vector<std::uint32_t> needs(n);
  for (std::size_t i = 0; i < n; ++i)
    for (const std::size_t a : step(i).after) needs[i] |= 1u << place[a];
  const std::uint32_t sets = 1u << n;
  // least[done][last]: points of all that still comes, when `done` is done and `last` was the last of it.
  std::vector<std::int64_t> least(static_cast<std::size_t>(sets) * n, kNever);
  const auto at = [&](std::uint32_t done, std::size_t last) -> std::int64_t& {
    return least[static_cast<std::size_t>(done) * n + last];
  };
  const auto placing = [&](std::uint32_t done, std::size_t next) {
    std::int64_t points = 0;
    for (std::size_t i = 0; i < n; ++i)
      if ((done >> i & 1u) != 0) points += before(step(i), step(next));
    return points;
  };
  for (std::size_t i = 0; i < n; ++i) at(sets - 1, i) = 0;
  for (std::uint32_t done = sets - 1; done-- > 1;)
    for (std::size_t next = 0; next < n; ++next) {
      if ((done >> next & 1u) != 0 || (needs[next] & ~done) != 0) continue;
      const std::int64_t rest = at(done | 1u << next, next);
      if (rest >= kNever) continue;
      const std::int64_t points = rest + placing(done, next);
      for (std::size_t last = 0; last < n; ++last)
        if ((done >> last & 1u) != 0) at(done, last) = std::min(at(done, last), points + between(step(last), step(next)));
    }
  Order order;
  std::uint32_t done = 0;
  for (std::size_t last = 0; order.size() < n;) {
    std::size_t chosen = n;
    std::int64_t best = kNever;
    for (std::size_t next = 0; next < n; ++next) {  // the first of several is the nearest to the start
      if ((done >> next & 1u) != 0 || (needs[next] & ~done) != 0) continue;
      const std::int64_t rest = at(done | 1u << next, next);
      const std::int64_t points = rest + placing(done, next) + (done == 0 ? 0 : between(step(last), step(next)));
      if (rest < kNever && points < best) best = points, chosen = next;
    }
    order.push_back(start[chosen]);
    done |= 1u << chosen;
    last = chosen;
  }
  return order;
}

Order searched_order(const std::vector<SewStep>& steps, const Order& start, std::int64_t effort) {
  Order best;
  std::int64_t least = 0;
  int left = 3;
  for (const Order& from : {start, fittings_first(steps, start), nearest_next(steps, start)}) {
    std::int64_t share = effort / left--;
    effort -= share;
    Order order = Mover(steps, from, share).bettered();
    effort += share;
    const std::int64_t points = points_of(steps, order);
    if (best.empty() || points < least) best = std::move(order), least = points;
  }
  return best;
}

Order good_order(const std::vector<SewStep>& steps, const Order& start, std::int64_t effort) {
  return start.size() <= kExactSteps ? exact_order(steps, start) : searched_order(steps, start, effort);
}

}  // namespace gownsheaf
