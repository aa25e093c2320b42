// Figure kinds of bones, their stock and their casing.
#pragma once
#include "figures/figures.h"

namespace gownsheaf {

const std::vector<FigureKind>& bone_figure_kinds();

}  // namespace gownsheaf
