// A gathered run: the flat cloth and the edge it is drawn up to, at one scale, quarter to quarter; and of gauging the
// stitches and the ridges at full size.
#pragma once
#include "figures/plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"

namespace gownsheaf {

Drawing draw_gathered_run(const PleatPlan& plan, const FigureText& text, const Typesetter& typesetter);
Drawing draw_ridges(const PleatPlan& plan, const FigureText& text, const Typesetter& typesetter);

}  // namespace gownsheaf
