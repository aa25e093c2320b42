// The marks of a run as figures, at its seam and, where it is uneven, at the hip and the hem; and what each pleat takes up.
// Formulas: docs/formulas.md#pleat-marks, #uneven-pleats. Tests: tests/calculate/uneven_pleats_test.cpp, pleats_figures_test.cpp.
#pragma once
#include "calculate/rounds.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

// Fills the plan's levels; its marks stand already.
void add_pleat_marks(const RunSum& s, ShownIn in, PleatPlan& plan, Figures& figures);

}  // namespace gownsheaf
