// What the closure reinforcement sheet says beyond the pull itself: parts of the edge, one fastener that opens, what eases
// it, what matters most, whether the skirt's own band holds. All estimates.
#pragma once
#include <vector>

#include "figures/plans.h"
#include "layout/block.h"
#include "packet/figure_text.h"

namespace gownsheaf {

// Only for sets that print what is private.
std::vector<Block> load_blocks(const ClosingPlan& plan, const LoadPlan& load, const std::string& noun, const FigureText& text,
                               bool pinned_up);
std::vector<Block> band_hold_blocks(const ClosingPlan& plan, const LoadPlan& load, const FigureText& text);

}  // namespace gownsheaf
