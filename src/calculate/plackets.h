// The strips that finish a slit: The New Dressmaker (Butterick, 1921), pp. 100 to 102; docs/formulas.md#plackets.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

struct PlacketStrip {
  Length wide, long_;
};
// One strip sewn down one side of the slit and up the other: twice the slit long, 3 3/4 in wide; cut size.
PlacketStrip continuous_lap(Length slit);
// A separate underlap, finished: 1 1/2 in wide, 1 in longer than the slit.
PlacketStrip separate_underlap(Length slit);
// Each of two facings, finished: as wide and long as an underlap; common practice.
PlacketStrip placket_facing(Length slit);

// plackets/NAME/length, and by its finish strip wide, strip long, set back, or underlap wide, underlap
// long, or facing wide, facing long.
void add_plackets(const Project& project, Figures& figures);

}  // namespace gownsheaf
