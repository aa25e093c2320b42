// The pieces of one cloth laid out: on one open length, which says what must be bought, and on the lengths that lie on the
// shelf. Through nest/ alone; never area / width. Tests: tests/calculate/lay_test.cpp.
//
// Places count from the cloth as it is laid, straightened and shrunk: x from its first end, y from the edge of one selvage.
//   needed = lay / (1 - shrinkage along) + 2 straighten, up to the shop's step
// When everything lies on what was bought, the shop's step is not asked for a second time: needed is then never more
// than what was bought.
#pragma once
#include "calculate/cut_list.h"
#include "calculate/lay_strips.h"

namespace gownsheaf {

LayPlan lay_out_cloth(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag);

// How much of it would be bought in this width, for `offered`; nothing when its pieces do not all go on it.
std::optional<Length> needed_at_width(const Project& project, const Cloth& cloth, Length width, const LayWork& work);

// A lay that was stopped before its end is marked, and says so wherever messages stand.
void mark_cut_short(LayPlan& plan, const Cloth& cloth, Diagnostics& diag);

// Where the cloth may be cut straight across: right ends of pieces that no other piece crosses.
std::vector<Length> straight_cuts(const std::vector<LaidPiece>& placed);

}  // namespace gownsheaf
