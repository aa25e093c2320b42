// Plans without proof: first fit and best fit decreasing, and the relaxation rounded again and again.
#include <algorithm>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

struct Open {
  std::size_t kind;
  std::int64_t room;
  std::vector<std::int64_t> count;
};

// Bars of a limited number that cost less than the one that is opened are opened before it.
Patterns fitted(const CutProblem& p, std::size_t opener, bool best_fit) {
  std::vector<Open> open;
  for (std::size_t j = 0; j < p.kinds.size(); ++j)
    for (std::int64_t n = 0; n < p.kinds[j].number; ++n)
      open.push_back({j, p.kinds[j].room, std::vector<std::int64_t>(p.size.size(), 0)});
  for (std::size_t i = 0; i < p.size.size(); ++i)
    for (std::int64_t n = 0; n < p.wanted[i]; ++n) {
      std::size_t into = open.size();
      for (std::size_t k = 0; k < open.size(); ++k) {
        if (open[k].room < p.size[i]) continue;
        if (into == open.size() || (best_fit && open[k].room < open[into].room)) into = k;
        if (!best_fit) break;
      }
      if (into == open.size()) {
        std::size_t kind = opener;
        if (p.kinds[kind].single || p.kinds[kind].room < p.size[i])  // it does not hold this one: the cheapest that does
          for (std::size_t j = 0, best = p.kinds.size(); j < p.kinds.size(); ++j)
            if (p.kinds[j].number < 0 && (p.kinds[j].single || p.kinds[j].room >= p.size[i]) &&
                (best == p.kinds.size() || p.kinds[j].cost < p.kinds[best].cost))
              kind = best = j;
        open.push_back(
            {kind, p.kinds[kind].single ? p.size[i] : p.kinds[kind].room, std::vector<std::int64_t>(p.size.size(), 0)});
      }
      open[into].room -= p.size[i];
      ++open[into].count[i];
    }
  Patterns plan;
  for (Open& bar : open)
    if (std::any_of(bar.count.begin(), bar.count.end(), [](std::int64_t n) { return n > 0; }))
      plan.push_back({static_cast<int>(bar.kind), std::move(bar.count)});
  return plan;
}

}  // namespace

std::int64_t cost_of(const CutProblem& problem, const Patterns& plan) {
  std::int64_t cost = 0;
  for (const Pattern& bar : plan) cost += problem.kinds[static_cast<std::size_t>(bar.kind)].cost;
  return cost;
}

void take_cheapest(const CutProblem& p, Patterns& plan) {
  std::vector<std::int64_t> number;
  for (const CutKind& kind : p.kinds) number.push_back(kind.number);
  for (const Pattern& bar : plan)
    if (auto& n = number[static_cast<std::size_t>(bar.kind)]; n > 0) --n;
  for (Pattern& bar : plan) {
    std::int64_t used = 0;
    for (std::size_t i = 0; i < p.size.size(); ++i) used += bar.count[i] * p.size[i];
    auto now = static_cast<std::size_t>(bar.kind);
    if (p.kinds[now].single) continue;
    for (std::size_t j = 0; j < p.kinds.size(); ++j) {
      if (p.kinds[j].single || number[j] == 0 || p.kinds[j].room < used || p.kinds[j].cost >= p.kinds[now].cost) continue;
      if (number[j] > 0) --number[j];
      if (p.kinds[now].number >= 0) ++number[now];
      now = j;
    }
    bar.kind = static_cast<int>(now);
  }
}

Patterns fitted_plan(const CutProblem& p) {
  Patterns best;
  for (std::size_t j = 0; j < p.kinds.size(); ++j) {
    if (p.kinds[j].number >= 0) continue;
    for (const bool best_fit : {false, true}) {
      Patterns plan = fitted(p, j, best_fit);
      take_cheapest(p, plan);
      if (best.empty() || cost_of(p, plan) < cost_of(p, best)) best = std::move(plan);
    }
  }
  return best;
}

Patterns floored_plan(const CutProblem& problem, const Relaxed& relaxed) {
  CutProblem rest = problem;
  Patterns plan;
  for (const auto& [pattern, level] : relaxed.used)
    for (std::int64_t n = (level + (std::int64_t{1} << (kPartBits / 2))) >> kPartBits; n > 0; --n) {
      auto& number = rest.kinds[static_cast<std::size_t>(pattern.kind)].number;
      bool holds = number != 0;
      for (std::size_t i = 0; i < pattern.count.size(); ++i) holds = holds && pattern.count[i] <= rest.wanted[i];
      if (!holds) break;
      if (number > 0) --number;
      for (std::size_t i = 0; i < pattern.count.size(); ++i) rest.wanted[i] -= pattern.count[i];
      plan.push_back(pattern);
    }
  Patterns tail = fitted_plan(rest);
  plan.insert(plan.end(), tail.begin(), tail.end());
  take_cheapest(problem, plan);
  return plan;
}

Patterns rounded_plan(const CutProblem& problem, Relaxed relaxed, Effort& effort) {
  CutProblem rest = problem;
  Patterns plan;
  const auto is_left = [&] { return std::any_of(rest.wanted.begin(), rest.wanted.end(), [](std::int64_t n) { return n > 0; }); };
  while (is_left() && !effort.spent() && !relaxed.used.empty()) {
    bool any = false;
    const auto take = [&](const Pattern& pattern) {
      Pattern bar = pattern;
      bool holds = false;
      for (std::size_t i = 0; i < bar.count.size(); ++i) {
        bar.count[i] = std::min(bar.count[i], rest.wanted[i]);
        holds = holds || bar.count[i] > 0;
      }
      auto& number = rest.kinds[static_cast<std::size_t>(bar.kind)].number;
      if (!holds || number == 0) return;
      if (number > 0) --number;
      for (std::size_t i = 0; i < bar.count.size(); ++i) rest.wanted[i] -= bar.count[i];
      plan.push_back(std::move(bar));
      any = true;
    };
    const auto& largest = *std::max_element(relaxed.used.begin(), relaxed.used.end(),
                                            [](const auto& a, const auto& b) { return a.second < b.second; });
    for (const auto& [pattern, level] : relaxed.used)
      for (std::int64_t n = level >> kPartBits; n > 0; --n) take(pattern);
    if (!any) take(largest.first);
    if (!any) break;
    // Sizes of which nothing is left go out of the next relaxation.
    CutProblem smaller{{}, {}, rest.kinds};
    std::vector<std::size_t> of;
    for (std::size_t i = 0; i < rest.size.size(); ++i)
      if (rest.wanted[i] > 0) {
        smaller.size.push_back(rest.size[i]);
        smaller.wanted.push_back(rest.wanted[i]);
        of.push_back(i);
      }
    if (of.empty()) break;
    Patterns pool;
    for (const auto& [pattern, level] : relaxed.used) {
      bool fits = true;
      for (std::size_t i = 0; i < rest.size.size(); ++i) fits = fits && pattern.count[i] <= rest.wanted[i];
      if (!fits) continue;
      pool.push_back({pattern.kind, {}});
      for (const std::size_t i : of) pool.back().count.push_back(pattern.count[i]);
    }
    relaxed = relax(smaller, effort, &pool);
    for (auto& [pattern, level] : relaxed.used) {
      std::vector<std::int64_t> count(rest.size.size(), 0);
      for (std::size_t k = 0; k < of.size(); ++k) count[of[k]] = pattern.count[k];
      pattern.count = std::move(count);
    }
  }
  if (is_left()) {
    Patterns tail = fitted_plan(rest);
    plan.insert(plan.end(), tail.begin(), tail.end());
  }
  take_cheapest(problem, plan);
  return plan;
}

}  // namespace gownsheaf::nest
