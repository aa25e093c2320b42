// Where each piece of a finished lay is placed, and the largest rectangles that are left over. Internal to the lays.
#pragma once
#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// Fills in the straight cuts and the left-over rectangles of every strip, and adds the placing distances of the lay that is
// printed as figures: on the lengths bought when everything lies there, else on the open one.
void add_places(const Cloth& cloth, LayPlan& plan, ShownIn in, Figures& figures);

// The longest strip at 45 degrees in a square of this side: its ends cut square, so that (length + wide) / sqrt 2 = side.
Length bias_strip_in(Length side, Length wide);

}  // namespace gownsheaf
