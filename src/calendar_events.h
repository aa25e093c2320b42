// The days of the work as events for a calendar program: fittings, the rehearsal, deliveries, order-by days, the last day
// for work, the day it is worn. Nothing of the body, no prices, no people.
#pragma once
#include <string>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// The file, or "" where no day is known.
std::string work_calendar(const Project& project, const Figures& figures, const Plans& plans);

}  // namespace gownsheaf
