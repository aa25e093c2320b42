// The project's strained closings: line load, what each fastener takes, the band of strength, and whether what carries the
// skirt can carry it. Estimates; see load.h.
#pragma once
#include <optional>
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Adds the figures of figures/figure_kinds_load.cpp. Errors: zone-off-edge, zones-overlap. Holds: skirt-on-hooks,
// fastener-overloaded, too-tight, eyelets-unboned. Warnings: fastener-near-limit, neighbour-overloaded, pitch-too-wide,
// kind-too-weak, stay-on-lining, stay-hooked-last, band-slides, band-too-tight.
std::vector<LoadPlan> add_loads(const Project& project, const Plans& plans, std::optional<Mass> skirt, Figures& figures,
                                Diagnostics& diag);

// A corset's closing of which nothing says how close it is laced: `rules: corset pressure` says how hard it presses.
bool laced_by_study(const Project& project, const Strain& strain);

// The pitch that a band asks for, at most; common practice.
Length band_pitch(std::string_view band);

}  // namespace gownsheaf
