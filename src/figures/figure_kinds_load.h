// Figure kinds of what pulls at a closing, and of the skirt's weight.
#pragma once
#include "figures/figures.h"

namespace gownsheaf {

const std::vector<FigureKind>& load_figure_kinds();

}  // namespace gownsheaf
