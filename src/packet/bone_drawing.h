// The channels upright side by side with their bones in them, and the stock lengths with what is cut from each.
#pragma once
#include "figures/plans.h"
#include "layout/block.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"
#include "project/project.h"

namespace gownsheaf {

// `tallest_drawn`: the most that a channel may be on paper, points.
Drawing draw_channels(const Project& project, const FigureText& text, const Typesetter& typesetter, double tallest_drawn = 200);
Drawing draw_bars(const BonePlan& plan, const FigureText& text, const Typesetter& typesetter);

}  // namespace gownsheaf
