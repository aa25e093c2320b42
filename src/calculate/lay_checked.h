// The lays as `check` has them: no search in outlines, so that it answers at once. Internal to the calculators.
#pragma once
#include <string>

#include "calculate/lay.h"

namespace gownsheaf {

// A shelf lay stands where it finds nothing wrong. Where it does, rectangles are searched as in the packet, and what one command
// says of such a cloth the other says too. A cloth with outlines is not searched: where they do not go as their boxes, a hold says
// so if no lay can hold them (their area, or a piece longer than the cloth), else the note `lay-unsearched`.
LayPlan lay_checked(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag);

// Whether a message of this name comes from the search for a lay.
bool of_the_search(const std::string& code);

}  // namespace gownsheaf
