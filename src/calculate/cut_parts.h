// A panel that is joined of several widths, as the parts that are cut: "sash middle", "sash side". Adds their figures and
// the joins; repeats on full breadths likewise, for the breadth diagram.
#pragma once
#include "calculate/cut_list.h"
#include "calculate/piecing.h"

namespace gownsheaf {

// What the maker allows at the joins of a piece, for this cloth. `seam`: allowed at each join.
PanelInput panel_of(const Project& project, const Piece& piece, Length width, Length usable, Length seam);

// Figures of the joins, `parts` and `join K`, and the diagram that shows them.
BreadthPlan add_joins(const Project& project, const Cut& whole, const PiecedPanel& panel, Figures& figures);

// One cut for all parts of the same width; the whole keeps its diagram.
std::vector<Cut> parts_of_panel(const Project& project, const Cut& whole, const PiecedPanel& panel, Figures& figures);

// `repeat along`, `repeats`, `taken` and the diagram of a cut that begins at whole repeats.
void add_repeats(const Project& project, Cut& cut, Length repeat, Figures& figures);

}  // namespace gownsheaf
