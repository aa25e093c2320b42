// What the parts of the cutting-stock search share: lengths in whole units, bars by kind, patterns. Internal to nest/.
#pragma once
#include <cstdint>
#include <vector>

#include "units/length.h"

namespace gownsheaf::nest {

struct CutKind {
  std::int64_t room = 0;     // sizes have the kerf added, so has the room
  std::int64_t cost = 0;     // in units that all costs are multiples of
  std::int64_t number = -1;  // -1: as many as are wanted
  bool single = false;       // stands for an item that is left out: holds any one item
};

struct CutProblem {
  std::vector<std::int64_t> size;    // distinct, falling
  std::vector<std::int64_t> wanted;  // of each size
  std::vector<CutKind> kinds;
};

struct Pattern {
  int kind = 0;
  std::vector<std::int64_t> count;  // of each size
};
using Patterns = std::vector<Pattern>;

struct Effort {
  std::int64_t done = 0, limit = 0;
  bool spent() const { return done >= limit; }
};

std::int64_t cost_of(const CutProblem& problem, const Patterns& plan);

// The worth of the best pattern of each kind under these prices, or a number that it cannot pass, and a pattern of the
// best worth found.
struct Worth {
  std::int64_t at_most = 0;
  std::int64_t found = 0;
  std::vector<std::int64_t> count;
};
std::vector<Worth> best_patterns(const CutProblem& problem, const std::vector<std::int64_t>& price, Effort& effort);

// Prices of the linear relaxation. For every pattern of kind j: sum of price * count <= (cost of j << bits) + rent of j,
// rent only on kinds of a limited number. So no plan costs less than `bound`.
struct Relaxed {
  int bits = 0;
  std::vector<std::int64_t> price;                     // of each size
  std::vector<std::int64_t> rent;                      // of each kind
  Int128 scaled_bound = 0;                             // cost << bits
  std::int64_t bound = 0;                              // in units of cost, rounded up
  std::vector<std::pair<Pattern, std::int64_t>> used;  // how often, in parts of 1 << kPartBits
};
inline constexpr int kPartBits = 40;
// pool: patterns that are looked at before new ones are searched. Stops as soon as the bound passes `enough`, when given.
Relaxed relax(const CutProblem& problem, Effort& effort, const Patterns* pool = nullptr, std::int64_t enough = -1);

// Costs up to `most` that bars of these kinds can add up to. Where they would be too many to list, every cost counts.
class ReachableCosts {
 public:
  ReachableCosts(const CutProblem& problem, std::int64_t most);
  std::int64_t from(std::int64_t cost) const;   // the least that is not below this
  std::int64_t up_to(std::int64_t cost) const;  // the greatest that is not above this, 0 <= cost <= most

 private:
  std::vector<std::int64_t> sums_;
};

// Is there a plan that costs at most `cost`? Exhaustive within the effort. none_cheaper: it is known that none costs less.
struct FoundPlan {
  enum class Answer { yes, no, gave_up } answer = Answer::gave_up;
  Patterns plan;
};
FoundPlan find_plan(const CutProblem& problem, const Relaxed& relaxed, const ReachableCosts& reachable, std::int64_t cost,
                    bool none_cheaper, Effort& effort);

// The whole bars of the relaxation, what they do not hold fitted behind them.
Patterns floored_plan(const CutProblem& problem, const Relaxed& relaxed);
// Rounds the relaxation of what is still wanted again and again until all is cut.
Patterns rounded_plan(const CutProblem& problem, Relaxed relaxed, Effort& effort);
// Fills bar after bar as full as a short search can, passing over items by chance, again and again until a plan costs no
// more than `wanted` or the effort is spent. The draws are the same on every machine.
Patterns filled_plan(const CutProblem& problem, const Relaxed& relaxed, std::int64_t wanted, Effort& effort);
// The cheapest of first fit and best fit decreasing with every kind as the one that is opened; bars of a limited number
// come first.
Patterns fitted_plan(const CutProblem& problem);
// Each bar exchanged for the cheapest kind that still holds what is cut from it.
void take_cheapest(const CutProblem& problem, Patterns& plan);

}  // namespace gownsheaf::nest
