// The project's strained closings: line load, what each fastener takes, the band of strength, and whether what carries the
// skirt can carry it. Estimates; see load.h.
#pragma once
#include <optional>
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Adds figures closures/NAME/{girth, shortfall, pressure, line load at rest, line load, per fastener, fastener holds, load
// band, hanging pull, band tension}. Holds: skirt-on-hooks, fastener-overloaded, too-tight; warning: pitch-too-wide.
std::vector<LoadPlan> add_loads(const Project& project, const Plans& plans, std::optional<Mass> skirt, Figures& figures,
                                Diagnostics& diag);

// The pitch that a band asks for, at most; common practice.
Length band_pitch(std::string_view band);

}  // namespace gownsheaf
