// What can hurt and is a matter of arithmetic or of a published limit: drawstrings of children, cloth that burns fast,
// seams narrower than their cloth frays. Nothing here proves a garment safe.
#pragma once
#include <optional>
#include <string>

#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// Class that a burn time points to, 16 CFR 1610.4 (docs/sources.md#cfr-1610): plain surface 3.5 s or more is class 1, less
// is class 3; raised surface over 7 s is class 1, 4 to 7 s class 2, less class 3. The time is of the maker's own strip, which
// is not the standard's test.
int burn_class_of(Span burn_time, bool raised);
std::optional<int> burn_class(const Cloth& cloth);  // nothing without a burn time
// Plain cloth of 2.6 oz/yd² (88.2 g/m²) or more is exempt from the test of 16 CFR 1610.1(d).
bool exempt_from_burn_test(const Cloth& cloth);

// Where a drawstring runs: as written, else by the kind of its edge; "" when neither says.
std::string drawstring_runs_at(const Project& project, const Closure& closure);
// Holds child-drawstring (16 CFR 1120, ASTM F1816) and burns-fast; warning seam-frays; figures cloths/NAME/burn class.
void check_safety(const Project& project, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
