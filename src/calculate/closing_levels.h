// The levels of a closing that want a fastener: the waist, and the fullest bust; and the bone that eyelets want.
#pragma once
#include "diagnostics/diagnostics.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// A fastener within 1/2 in of a level holds it; common practice, no source.
inline constexpr Length kHoldsLevel = Length::sixty_fourths(32);

// Warnings: no-hook-at-waist, bust-gapes. The plan has a fastener at least. Where they stand closer than 1 in half of their
// pitch is near enough no more: the level then lies past the end of the row.
void judge_levels(const Closure& closure, const ClosingPlan& plan, ShownIn in, Diagnostics& diag);
// Warning eyelets-unboned, of a laced edge without a bone whose pull nobody wrote; where a strain is written the pull decides
// (calculate/loads.h).
void judge_eyelets(const Project& project, const Closure& closure, Diagnostics& diag);

}  // namespace gownsheaf
