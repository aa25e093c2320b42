// What the maker asks of the order: may one step come before another, and what goes wrong if not.
#pragma once
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// One note (order-answer) for each question under `may come before`.
void answer_order_questions(const Project& project, const std::vector<PlannedStep>& work, Diagnostics& diag);

}  // namespace gownsheaf
