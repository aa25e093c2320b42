// `accept` in the project turns a hold or a warning into a recorded decision: it is printed with its reason and stops
// nothing. Arithmetic cannot be accepted.
#pragma once
#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// Marks the matching holds and warnings (same code, and the item named by `at` when one is). Adds accept-unused
// (warning) for a line that matches nothing, accept-error for one that names an error.
void apply_accepted(const Project& project, Diagnostics& diag);

}  // namespace gownsheaf
