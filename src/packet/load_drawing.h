// The closing edge with what each fastener takes: bars from nought, one scale, at the fasteners' true heights.
#pragma once
#include "figures/plans.h"
#include "layout/block.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"

namespace gownsheaf {

Drawing draw_load(const ClosingPlan& plan, const LoadPlan& load, const FigureText& text, const Typesetter& typesetter);

}  // namespace gownsheaf
