// What all closings take of each notion (hooks, buttons, laces), against what lies on the shelf.
#pragma once
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Figures notions/NAME/fasteners needed and lace needed, from the closings' own figures; holds fasteners-short and
// lace-short where too little was bought. A lace is always one piece.
void add_closing_notions(const Project& project, const std::vector<ClosingPlan>& plans, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
