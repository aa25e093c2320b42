// Which rule was used where published sources disagree: one figure each, for the packet to print. A rule is named only in
// a project that it concerns. Sources: docs/sources.md#where-sources-disagree.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

void add_rules(const Project& project, Figures& figures);

}  // namespace gownsheaf
