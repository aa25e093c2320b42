// Bones: how long each is cut for its channel, what casing the channels take, and which stock lengths to cut them from.
//
//   bone = channel − 2 × end clear        end clear: written, or the rule of its kind
//   whalebone, synthetic whalebone, cane, cord   1/2 in less in all (Baldt 1916: it stops 1/2 in short of the casing's top)
//   featherbone                                  1/2 in more in all, turned in (Ingalls, about 1911)
//   steel                                        1/4 in clear at each end (common practice)
//   casing = number × (channel + casing ends)
//
// Sources: docs/formulas.md#bones. The plan of cutting is nest/cutting_stock.h.
#pragma once
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

// What the bone is longer (+) or shorter (−) than its channel where nothing else is written: by its kind, or by the
// maker's rule for all kinds.
Length usual_difference(BoneKind kind, BoneLengthIs rule = BoneLengthIs::by_its_kind);

// Figures bones/CHANNEL/…, bone stock/NAME/…, notions/NAME/casing needed, and a plan for each stock. Errors: bone-too-long,
// no-stock-so-long, no-stock-so-short; hold: casing-short; warnings: bone-in-waist-seam, bone-ends-tight,
// bone-channel-tight, bone-channel-loose.
std::vector<BonePlan> add_bones(const Project& project, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
