// The order of work laid on the days that are left: forward from `today`, backward from the day it is worn; deliveries,
// deadlines, what could give way. Without hours nothing is laid on days; without `today` only the latest days are known;
// without the day it is worn, only the planned ones.
//
// The last day for work is the eve of the day it is worn, less the buffer (3 days, common practice, no source). The dress
// rehearsal is on its own day, 7 days before (common practice), never later than the last day for work. A bare `hours a week`
// is spread over the seven days, whole minutes: those of Monday to a day are the week's times that day's number over 7.
#pragma once
#include <optional>

#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Fills the days of each step in plans.work, and holds and warnings: days-short, arrives-late, order-late, due-late.
std::optional<WorkPlan> days_left(const Project& project, Plans& plans, Diagnostics& diag);

}  // namespace gownsheaf
