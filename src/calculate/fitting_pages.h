// The pages of fittings and the cautions: which of the templates' lines this garment has, with its figures set in.
#pragma once
#include <vector>

#include "figures/figures.h"
#include "figures/fitting_plans.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

// One page for each gate of the order of work that is not passed, and for each stage without a step whose condition holds.
std::vector<FittingPlan> fitting_pages(const Project& project, const Templates& templates, const Figures& figures,
                                       const FactLookup& facts, const std::vector<PlannedStep>& work,
                                       const std::vector<FittingChange>& changes);
// Those whose condition holds or cannot be told.
std::vector<CautionPlan> cautions_called_for(const Project& project, const Templates& templates, const FactLookup& facts);

}  // namespace gownsheaf
