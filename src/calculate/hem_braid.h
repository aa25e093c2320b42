// Braid at the skirt's edge: how much of it, against what lies on the shelf.
#pragma once
#include "diagnostics/diagnostics.h"
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// Figure notions/NAME/braid needed: the length round the hem and 1 in turned under at each end (common practice, no
// source). Hold braid-short where no length bought holds it in one piece. Hold hem-round-unknown where the hem's length is not known.
void add_hem_braid(const Project& project, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
