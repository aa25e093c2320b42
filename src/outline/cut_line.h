// Seam line and cut line of a picked outline, with the allowance of each side: none on a fold, the hem's at the hem, the seam's
// elsewhere.
#pragma once
#include <optional>
#include <vector>

#include "geometry/allowance.h"
#include "outline/pick.h"

namespace gownsheaf {

// A run of edges between two corners: from the corner at `first`, `count` edges on. A corner turns by 30 degrees or more over
// half a millimetre (common practice, no source); a curve's chords are one side.
struct OutlineSide {
  std::size_t first = 0, count = 0;
};
std::vector<OutlineSide> sides_of(const Polygon& edge);  // from its first corner on; the whole edge where there is none

struct SideWidths {
  Length seam, hem;
};
struct SideAllowances {
  Allowances allowances;
  bool hem_guessed = false;  // no line of the kind `hem` is drawn: the lowest side was taken
};
// Edges that run within 1 mm of a mark of the kind `fold` get none, of the kind `hem` the hem's. Where a hem is asked for and
// none is drawn, the side with the lowest place gets it; of two that meet there the more level one.
SideAllowances side_allowances(const PickedOutline& piece, const SideWidths& widths);

enum class OutlineIs { seam_line, cut_line };
struct CutAndSeam {
  Polygon cut;                // where the scissors go
  std::vector<Polygon> seam;  // where it is sewn; several parts or none only when allowances meet (said)
  bool hem_guessed = false;
};
// Nothing, and an error at `at`, when nothing would be left between the allowances of a cut line.
std::optional<CutAndSeam> cut_and_seam(const PickedOutline& piece, OutlineIs is, const SideWidths& widths, const SourceSpan& at,
                                       Diagnostics& diag);

}  // namespace gownsheaf
