// Weeks as a chart: a row a week, a cell a day, with the steps that are done on it.
#pragma once
#include <vector>

#include "figures/plans.h"
#include "layout/block.h"
#include "layout/lay_out.h"

namespace gownsheaf {

// The names of the days, then a drawing a week, so that a page may end between two. In a cell: the day, the numbers of its steps (bold: on the longest chain), words for a
// fitting or a delivery, and at its foot a bar as long as the part of the cell that the day's work takes of the longest day;
// 2.0 under it where a step of the longest chain is worked on. Days off and days past the last day for work are hatched.
std::vector<Drawing> draw_weeks(const Plans& plans, const Typesetter& typesetter);

}  // namespace gownsheaf
