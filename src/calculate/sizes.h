// Figures of sizes and girths: which size is made and why, every row of the table, how each row differs from the girth
// that decides, how far that girth lies between two rows; and of each girth body + ease = finished. Rules and sources:
// docs/formulas.md, between-sizes, finished-girth.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// After the measures: it reads their figures. Without a size table only what the ease gives.
void add_sizes(const Project& project, Figures& figures);

}  // namespace gownsheaf
