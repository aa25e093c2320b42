// What the maker asks of the order: may one step come before another, and what goes wrong if not.
#pragma once
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// One note (order-answer) for each question under `may come before`.
void answer_order_questions(const Project& project, const std::vector<PlannedStep>& work, Diagnostics& diag);

// A hold (drapery-held) where something is draped over the bodice and nothing says how it is held: the order turns on it.
void ask_how_drapery_is_held(const Project& project, Diagnostics& diag);

}  // namespace gownsheaf
