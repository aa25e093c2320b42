// The edge of a closing drawn to scale: every fastener at its height with its distance from the top, named levels, insets,
// the meeting line, the lap and what is turned back. All numbers in it are figures.
#pragma once
#include "figures/plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"

namespace gownsheaf {

Drawing draw_closing(const ClosingPlan& plan, const FigureText& figure_text, const Typesetter& typesetter, bool small = false);

}  // namespace gownsheaf
