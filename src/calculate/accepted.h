// `accept` of the project: holds and warnings that the maker has decided become recorded decisions.
#pragma once
#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// Sets accepted_because. Says when an acceptance meets nothing (accept-unused) or an error (accept-error). Runs after all
// calculators, so that every hold is there, and before the order of work, which the open ones gate.
void apply_accepted(const Project& project, Diagnostics& diag);

}  // namespace gownsheaf
