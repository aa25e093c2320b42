// What a pleated or gauged edge comes to in thickness, and whether gauging can be drawn up to its finished width.
//
//   cloths thick      flat / finished                    knife pleats: 1 + 2 depth / visible
//   waist thickness   (flat / finished) x sum of the layers' thicknesses; gauging is left out: its ridges stand outward
//   ridges            flat / (2 x stitch), to the nearest, a tie to fewer; the stitch is then re-divided
//   closes to         ridges x 2 x sum of the thicknesses: a ridge is cloth going up and coming down
//
// Limits are common practice: 5 cloths or 3 mm are much, 7 cloths (wool or interlined) or 5 mm too much for a waist seam.
// Source: docs/formulas.md#waist-thickness, #gauging. Tests: tests/calculate/pleat_waist_test.cpp.
#pragma once
#include <cstdint>

#include "calculate/rounds.h"
#include "diagnostics/diagnostics.h"
#include "figures/figures.h"

namespace gownsheaf {

// flat: less plus. layers: the thicknesses of all layers together. Every length above 0.
struct Gauging {
  std::int64_t ridges = 1;
  Length stitch, closes_to;
};
Gauging gauge(Length flat, Length stitch, Length layers);
bool will_not_close(const Gauging& g, Length finished);
bool looks_gathered(const Gauging& g, Length finished, Length layers);  // each ridge stands in over four times its own cloth

Length pleated_thickness(Length flat, Length finished, Length layers);

// The layers of a run at its top, one of each; nothing where a thickness is not known.
std::optional<Length> layers_at_top(const Project& project, const RoundSums& sums, const PleatRun& run);

void add_pleat_waist(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
