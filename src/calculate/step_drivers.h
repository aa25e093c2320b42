// What steps are timed by, beside the figures that sheets print anyway: pieces, bones, inches of seam, of edge, of gathering
// thread, bows, pockets. A sum that would leave something out is not made; the library's time for the whole stands then.
// docs/formulas.md, step times.
#pragma once
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// Of the skirt: a seam of its breadths, or one that joins an edge of one of its pieces ("side of skirt breadth").
bool of_the_skirt(const Seam& seam, const Project& project);
void add_step_drivers(const Project& project, Figures& figures);

}  // namespace gownsheaf
