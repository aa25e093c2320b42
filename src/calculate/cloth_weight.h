// What the skirt weighs: for each layer, the area that is cut times the cloth's weight. Hems and allowances are in the
// cut sizes. A skirt that was weighed is not estimated.
#pragma once
#include <optional>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Adds skirt/weight and, where it is estimated, skirt/weight/CLOTH. Nothing when some layer's weight is not known and the
// skirt was not weighed.
std::optional<Mass> add_skirt_weight(const Project& project, const Plans& plans, Figures& figures);

}  // namespace gownsheaf
