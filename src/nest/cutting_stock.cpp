#include "nest/cutting_stock.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

void refuse_bad(const CutRequest& request) {
  if (request.kerf < Length{}) throw std::invalid_argument("cut_from_stock: the kerf is negative");
  for (const Length item : request.items)
    if (item <= Length{}) throw std::invalid_argument("cut_from_stock: an item has no length");
  for (const BarKind& bar : request.bars)
    if (bar.length <= Length{} || bar.number.value_or(0) < 0)
      throw std::invalid_argument("cut_from_stock: a bar has no length or a negative number");
}

// Lengths in units that all are whole in, so that the relaxation's knapsack has a small table.
struct Posed {
  CutProblem problem;
  std::int64_t cost_unit = 1;           // ticks
  std::vector<std::vector<int>> items;  // of each size
  std::vector<int> too_long;
};

Posed pose(const CutRequest& request) {
  Posed posed;
  std::int64_t unit = request.kerf.in_ticks(), cost_unit = 0;
  for (const Length item : request.items) unit = std::gcd(unit, item.in_ticks());
  for (const BarKind& bar : request.bars) {
    unit = std::gcd(unit, bar.length.in_ticks());
    if (!bar.on_shelf) cost_unit = std::gcd(cost_unit, bar.length.in_ticks());
  }
  posed.cost_unit = std::max<std::int64_t>(1, cost_unit);
  Length longest;
  bool endless = true;
  std::int64_t all = 1;
  for (const BarKind& bar : request.bars) {
    longest = std::max(longest, bar.length);
    const std::int64_t cost = bar.on_shelf ? 0 : bar.length.in_ticks() / posed.cost_unit;
    posed.problem.kinds.push_back({(bar.length + request.kerf).in_ticks() / unit, cost, bar.number.value_or(-1), false});
    endless = endless && bar.number.has_value();
    all += cost * bar.number.value_or(static_cast<std::int64_t>(request.items.size()));
  }
  Length longest_endless;
  for (const BarKind& bar : request.bars)
    if (!bar.number) longest_endless = std::max(longest_endless, bar.length);
  std::vector<int> order(request.items.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return request.items[static_cast<std::size_t>(a)] > request.items[static_cast<std::size_t>(b)];
  });
  bool only_limited = endless;
  for (const int i : order) {
    const Length item = request.items[static_cast<std::size_t>(i)];
    if (item > longest) {
      posed.too_long.push_back(i);
      continue;
    }
    only_limited = only_limited || item > longest_endless;
    const std::int64_t size = (item + request.kerf).in_ticks() / unit;
    if (posed.problem.size.empty() || posed.problem.size.back() != size) {
      posed.problem.size.push_back(size);
      posed.problem.wanted.push_back(0);
      posed.items.emplace_back();
    }
    ++posed.problem.wanted.back();
    posed.items.back().push_back(i);
  }
  if (only_limited) posed.problem.kinds.push_back({0, all, -1, true});  // leaving one out is worse than any bars
  return posed;
}

CutPlan told(const CutRequest& request, const Posed& posed, const Patterns& patterns) {
  CutPlan plan;
  auto items = posed.items;
  for (const Pattern& pattern : patterns) {
    const bool out = posed.problem.kinds[static_cast<std::size_t>(pattern.kind)].single;
    CutBar bar;
    bar.kind = pattern.kind;
    Length used;
    for (std::size_t i = 0; i < pattern.count.size(); ++i)
      for (std::int64_t n = 0; n < pattern.count[i]; ++n) {
        const int item = items[i].front();
        items[i].erase(items[i].begin());
        if (out) {
          plan.left_out.push_back(item);
          continue;
        }
        used += request.items[static_cast<std::size_t>(item)] + request.kerf;
        bar.items.push_back(item);
      }
    if (out || bar.items.empty()) continue;
    const BarKind& kind = request.bars[static_cast<std::size_t>(bar.kind)];
    bar.left = std::max(Length{}, kind.length - used);
    if (!kind.on_shelf) plan.taken += kind.length;
    plan.bars.push_back(std::move(bar));
  }
  std::stable_sort(plan.bars.begin(), plan.bars.end(), [&](const CutBar& a, const CutBar& b) {
    const bool shelf_a = request.bars[static_cast<std::size_t>(a.kind)].on_shelf,
               shelf_b = request.bars[static_cast<std::size_t>(b.kind)].on_shelf;
    if (shelf_a != shelf_b) return shelf_a;
    return a.kind != b.kind ? a.kind < b.kind : a.left < b.left;
  });
  plan.left_out.insert(plan.left_out.end(), posed.too_long.begin(), posed.too_long.end());
  std::sort(plan.left_out.begin(), plan.left_out.end());
  return plan;
}

// Numbers of bars of each kind that cost exactly this; false when there are more than kMostNumbers ways, or a kind that
// costs nothing.
constexpr std::size_t kMostNumbers = 12;
bool numbers_that_cost(const CutProblem& p, std::int64_t cost, std::size_t kind, std::vector<std::int64_t>& now,
                       std::vector<std::vector<std::int64_t>>& all) {
  const CutKind& k = p.kinds[kind];
  if (k.cost == 0 || k.number >= 0) return false;
  if (kind + 1 == p.kinds.size()) {
    now[kind] = cost / k.cost;
    if (cost % k.cost == 0) all.push_back(now);
    return all.size() <= kMostNumbers;
  }
  for (std::int64_t n = 0; n * k.cost <= cost; ++n) {
    now[kind] = n;
    if (!numbers_that_cost(p, cost - n * k.cost, kind + 1, now, all)) return false;
  }
  return true;
}

// With the number of bars of each kind settled the relaxation is narrower. True when it leaves no way to spend exactly this.
bool numbers_exclude(const CutProblem& p, const Relaxed& relaxed, std::int64_t cost, Effort& effort) {
  std::vector<std::vector<std::int64_t>> all;
  std::vector<std::int64_t> now(p.kinds.size(), 0);
  if (p.kinds.size() < 2 || !numbers_that_cost(p, cost, 0, now, all)) return false;
  Patterns pool;
  for (const auto& [pattern, level] : relaxed.used) pool.push_back(pattern);
  for (const std::vector<std::int64_t>& numbers : all) {
    CutProblem narrow = p;
    for (std::size_t j = 0; j < p.kinds.size(); ++j) narrow.kinds[j].number = numbers[j];
    narrow.kinds.push_back({0, cost + 1, -1, true});
    if (relax(narrow, effort, &pool, cost).bound <= cost || effort.spent()) return false;
  }
  return true;
}

}  // namespace

CutPlan cut_from_stock(const CutRequest& request) {
  refuse_bad(request);
  const Posed posed = pose(request);
  const CutProblem& p = posed.problem;
  Effort effort{0, request.work};
  Patterns best = fitted_plan(p);
  std::int64_t bound = 0;
  bool proven = p.size.empty();
  if (!p.size.empty()) {
    Effort relaxing{0, std::max<std::int64_t>(request.work, 200'000)};  // the bound is wanted whatever the effort
    const Relaxed relaxed = relax(p, relaxing);
    bound = relaxed.bound;
    const auto items = static_cast<std::int64_t>(request.items.size());
    const std::int64_t short_of_it = 100 * items * items;  // steps without proof: few for a short list, which the search settles
    const auto try_plan = [&](const auto& make, std::int64_t share) {
      if (cost_of(p, best) <= bound) return;
      Effort part{0, std::min(effort.limit / 10, share)};
      Patterns plan = make(part);
      effort.done += part.done;
      if (!plan.empty() && cost_of(p, plan) < cost_of(p, best)) best = std::move(plan);
    };
    try_plan([&](Effort& part) { return filled_plan(p, relaxed, bound, part); }, short_of_it);
    try_plan([&](Effort& part) { return rounded_plan(p, relaxed, part); }, short_of_it);
    bool gap = false;  // some cost between bound and best was given up on
    const ReachableCosts reachable(p, cost_of(p, best));
    bound = reachable.from(bound);
    for (std::int64_t cost = bound; cost < cost_of(p, best) && !effort.spent(); cost = reachable.from(cost + 1)) {
      // A cost that is hard to settle must not take all the effort from the next.
      const bool last = reachable.from(cost + 1) >= cost_of(p, best);
      Effort part{0, last ? effort.limit - effort.done : (effort.limit - effort.done) / 2};
      FoundPlan found;
      if (numbers_exclude(p, relaxed, cost, part)) found.answer = FoundPlan::Answer::no;
      else found = find_plan(p, relaxed, reachable, cost, !gap, part);
      effort.done += part.done;
      if (found.answer == FoundPlan::Answer::yes) best = std::move(found.plan);
      else if (found.answer == FoundPlan::Answer::no && !gap) bound = reachable.from(cost + 1);
      else if (found.answer == FoundPlan::Answer::gave_up) gap = true;
    }
    proven = cost_of(p, best) <= bound;
  }
  CutPlan plan = told(request, posed, best);
  plan.bound = Length::ticks(bound * posed.cost_unit);
  if (!plan.left_out.empty()) plan.bound = std::min(plan.bound, plan.taken);
  plan.proven = proven && plan.left_out.empty();
  plan.work = effort.done;
  return plan;
}

}  // namespace gownsheaf::nest
