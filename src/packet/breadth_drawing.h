// The breadth diagram: a panel joined of widths of cloth, seen across, with its joins; or a breadth seen along, with the
// places where the pattern comes again and, by a half drop, its neighbour half a repeat lower. To scale; every number
// comes from the figures.
#pragma once
#include <vector>

#include "figures/breadth_plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"
#include "packet/scale.h"

namespace gownsheaf {

bool seen_across(const BreadthPlan& plan);  // it has joins; else it is drawn for its repeats
DrawingScale breadth_scale(const BreadthPlan& plan, ShownIn shown_in);
// Where joins or repeats stand on paper, from the left: for the drawing itself and for tests.
std::vector<Length> breadth_marks(const BreadthPlan& plan, DrawingScale scale);

Drawing draw_breadth(const BreadthPlan& plan, const FigureText& figure_text, const Typesetter& typesetter);

}  // namespace gownsheaf
