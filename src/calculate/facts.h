// The values of all facts (templates/condition.h) for one project, computed in one place.
#pragma once
#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/condition.h"

namespace gownsheaf {

// Keeps references: project, figures and plans must outlive the lookup.
FactLookup facts_of(const Project& project, const Figures& figures, const Plans& plans);

}  // namespace gownsheaf
