// A cut that is joined of parts: a panel or an outline cut at stitch lines, each part with what its joins take. Internal.
//
//   part k = what of the cut lies from join k-1 - seam to join k + seam      the ends: from its own edge
// So a part holds its side of the stitch lines and the seam on both sides of every join; nothing is lost between two parts.
#pragma once
#include <optional>
#include <vector>

#include "calculate/cut_list.h"
#include "calculate/piecing.h"

namespace gownsheaf {

// Where the piece's drawing holds `join` lines, joins come there and nowhere else.
//
// As a last resort, of so many parts, 2 or more: joins across its length, or along it where long edges are to be kept clear of
// joins. Nothing where the maker's rules leave no place for the joins, where it is too small to be joined, or where a part would
// fall apart (an outline with a hollow at the join).
// The repeat goes on over the joins where the piece is matched.
std::optional<std::vector<Cut>> joined_of(const Cut& cut, int parts, const std::optional<Repeat>& repeat = {});

// An outline wider than the cloth, joins along its length as `panel` has them, a little to one side where a part would fall apart
// else; `panel` is then as it was done. The repeat goes on over the joins where the piece is matched. Of an outline that is opened
// out on the fold the outer parts are pairs, and a middle one lies on the fold. Adds the figures of parts and joins.
std::optional<std::vector<Cut>> joined_outline(const Project& project, const Cut& whole, const PanelInput& input,
                                               PiecedPanel& panel, Figures& figures);

// Figures of parts: cut width, cut length, copies.
void add_part_figures(const Project& project, const Cut& whole, const std::vector<Cut>& parts, Figures& figures);

}  // namespace gownsheaf
