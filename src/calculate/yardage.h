// Cloth for rectangles and full-width breadths.
//
//   cut length   = finished length + top + hem          (skirt, petticoat pieces; else + 2 seam)
//   cut width    = finished width + 2 seam
//   usable width = (cloth width - 2 selvage), less shrinkage across when the cloth is shrunk after cutting is measured
//   joined round = n width - 2 n max(seam, selvage)
//   with a repeat R along: each breadth takes ceil(cut / R) R
//   to buy       = lay length / (1 - shrinkage along) + 2 straighten, up to the shop step
//
// The lay is a real one (nest/), never area / width. Sources: docs/formulas.md#yardage.
#pragma once
#include <optional>
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

Length joined_round(std::int64_t breadths, Length cloth_width, Length seam, Length selvage);
std::int64_t breadths_for(Length joined, Length cloth_width, Length seam, Length selvage);  // least n that reaches
Length up_to_repeat(Length cut, Length repeat);
// Cloth to buy for a lay of this length: shrinkage, straightening, shop step (up).
Length length_to_buy(Length lay, Ratio shrinks_along, Length straighten_each_end, Length sold_by);

}  // namespace gownsheaf
