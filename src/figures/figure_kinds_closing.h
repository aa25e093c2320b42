// Rows of the table of figure kinds that closings add.
#pragma once
#include <vector>

#include "figures/figures.h"

namespace gownsheaf {
const std::vector<FigureKind>& closing_figure_kinds();
}  // namespace gownsheaf
