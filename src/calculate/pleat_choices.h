// Five ways to lay the same run, to choose from (`show plans`): as it is, fewer and more pleats of the same cloth, one
// breadth of cloth less (or more, where less cannot be pleated), and another kind of pleat.
// Formula: docs/formulas.md#pleat-choices. Tests: tests/calculate/pleat_choices_test.cpp.
#pragma once
#include <optional>
#include <vector>

#include "calculate/rounds.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

struct PleatChoice {
  PleatKind kind = PleatKind::knife;
  Length flat, finished, depth, visible;
  std::int64_t count = 1;
};  // flat: less plus

// step: counts are multiples of it. breadth: what one breadth adds to the flat width; a quarter of the take-up where it is
// not known.
std::vector<PleatChoice> pleat_choices(PleatKind kind, const PleatSolution& as_is, std::int64_t step,
                                       std::optional<Length> breadth);

// For runs that ask for them; fills the plan's choices.
void add_pleat_choices(const Project& project, RoundSums& sums, std::vector<PleatPlan>& plans, Figures& figures);

}  // namespace gownsheaf
