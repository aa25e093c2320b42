// The values of all facts (templates/condition.h) for one project, computed in one place.
#pragma once
#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/condition.h"

namespace gownsheaf {

// Names of the facts that are worked out here, sorted: those that fact_kinds() calls computed.
std::vector<std::string_view> facts_worked_out();

// Keeps references: project, figures and plans must outlive the lookup.
FactLookup facts_of(const Project& project, const Figures& figures, const Plans& plans);

}  // namespace gownsheaf
