// What steps of the whole garment are timed by: pieces, bones, channels, seams. docs/formulas.md, step times.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

void add_step_drivers(const Project& project, Figures& figures);

}  // namespace gownsheaf
