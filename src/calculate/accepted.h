// `accept` of the project: holds and warnings that the maker has decided become recorded decisions.
#pragma once
#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// Sets accepted_because. Says when an acceptance meets nothing (accept-unused) or an error (accept-error). Runs after all
// calculators, so that every hold is there, and before the order of work, which the open ones gate. `compared`: with an older project; else already-cut is never found, nor
// missed when it is accepted.
void apply_accepted(const Project& project, bool compared, Diagnostics& diag);

}  // namespace gownsheaf
