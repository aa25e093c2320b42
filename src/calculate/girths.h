// Girths of the finished garment, and over which edges a change of each is shared.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// girths/NAME/ease, girths/NAME/finished = body + ease; sharing/NAME/edges; sharing/NAME/each edge: what 1 in (or 1 cm) of
// change comes to in each. Figures that another calculator added already are left as they are.
void add_girths(const Project& project, Figures& figures);

}  // namespace gownsheaf
