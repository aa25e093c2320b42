// Rows of the table of figure kinds: joins, repeats, layers joined of narrower cloth, the width chart, what runs use.
#pragma once
#include <vector>

#include "figures/figures.h"

namespace gownsheaf {

std::vector<FigureKind> yardage_figure_kinds();

}  // namespace gownsheaf
