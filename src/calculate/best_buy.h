// Which of the widths that a shop offers is the best buy: the pieces are listed and laid anew for each, since the number of full
// breadths follows the width.
//   cost = price for a length x needed;  the best costs least; without prices the least cloth is said, by area
#pragma once
#include "calculate/lay_strips.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

// Adds the figures `offered K/...` and `best buy` of every cloth with `offered`, and what the layout sheet says of them.
void add_offers(const Project& project, const LayWork& work, Plans& plans, Figures& figures, Diagnostics& diag);

Money cost_of(const Money& price, Length length);  // up to a whole hundredth

}  // namespace gownsheaf
