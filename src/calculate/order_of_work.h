// Steps of the library and of the project, repeated for each item, conditions applied, put in a stable order.
//
// A step whose condition is false is contracted: its predecessors pass to its successors. Order: of all that keep the hard
// and soft edges the one with the fewest points (calculate/good_order.h); of equal ones the nearest to library order, then the
// project's order of items. A ring is an error that prints the ring (steps-ring).
#pragma once
#include "calculate/good_order.h"
#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

std::vector<PlannedStep> order_of_work(const Project& project, const Templates& templates, const Figures& figures,
                                       const FactLookup& facts, Diagnostics& diag, std::int64_t effort = kOrderEffort);
// Gives every step the open holds that stop it. Asked when all has been found, the fittings too, and it is known what was accepted.
void add_holds(std::vector<PlannedStep>& work, const Project& project, const Figures& figures, const Diagnostics& diag);
// Says for each outer cloth whether it may be cut now: yes, yes after earlier cuts, or no with the first reason.
// Holds in diag that name the cloth or one of its pieces stop it; an accepted hold is a recorded decision.
std::vector<CutVerdict> may_i_cut(const Project& project, const Plans& plans, const Figures& figures, const Diagnostics& diag);

}  // namespace gownsheaf
