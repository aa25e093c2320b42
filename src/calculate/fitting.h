// What a fitting showed, worked out on the pattern (docs/formulas.md, fitting-change). Lengths exact, to the tick.
#pragma once
#include <cstdint>
#include <vector>

#include "figures/figures.h"
#include "figures/fitting_plans.h"
#include "project/project.h"

namespace gownsheaf {

// The change of `whole` in `edges` steps, the same for each edge but for single ticks: their sum is `whole` exactly.
// edges > 0.
std::vector<Length> shared_out(Length whole, std::int64_t edges);

// What edges that take `at_most` each can take of a change, and what is left for a second mock-up. whole >= 0.
struct Shared {
  Length taken, each, left;
};  // each: the most that one edge takes
Shared share(Length whole, std::int64_t edges, Length at_most);

// A closing that stands open by `top` and `bottom` where `wanted` was meant: too much or too little all round, and what
// goes off each of the two edges along the way so that they stand parallel.
struct ClosingGap {
  Length all_round, taper_each;
};  // all_round: more than nothing when the garment is too small
ClosingGap closing_gap(Length top, Length bottom, Length wanted);

// What a layer of this thickness adds to the girth that goes round it: 2 pi t, to the tick.
Length girth_of_layer(Length thickness);

// Figures of every finding, and how the change is said. Warns where it takes a second mock-up, or where no seam is known
// to take it.
std::vector<FittingChange> add_fittings(const Project& project, Figures& figures, Diagnostics& diag);
// Whether some finding of the last fitting leaves more than its edges take.
bool needs_second_mock_up(const Project& project);
// Holds for fittings that are not signed, and a warning where one was held over other layers than the measures.
void check_fittings(const Project& project, const std::vector<std::string>& gates, Diagnostics& diag);

}  // namespace gownsheaf
