// Panels wider than the cloth, joined of several widths. All widths are cut widths; w usable width of the cloth, s seam.
//
//   parts  = least n with n w >= W + (n - 1) k s     k = 2 (the seam of both edges is lost), 1 by the rule `one seam`
//   inner  = w - k s                                 net width of a part between two joins
//   outer  = (W - (n - 2) inner) / 2                 each, symmetric about the centre: joins at outer, outer + inner, ...
//   from an edge to be kept clear: whole widths from there, w - k s / 2 to the first join; both edges: the rest in the middle
// An odd number of parts where the centre is kept clear. Where an outer part would be under four seams wide, all parts are
// alike. With `one seam` a part has half the seam at each side of a join: s/2. Arithmetic, no source; x.
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "project/rules.h"
#include "units/length.h"

namespace gownsheaf {

struct PanelInput {
  Length width, usable, seam;
  StripsLose lose = StripsLose::both_seams;
  bool clear_of_centre = false, clear_of_first = false, clear_of_last = false;  // first, last: the long edges
  Length clear_from_edge;
};

struct PanelPart {
  Length from, to;
  Length cut;
};  // between stitch lines or the panel's own edges; cut width

struct PiecedPanel {
  std::vector<PanelPart> parts;  // from the first long edge
  std::vector<Length> joins;     // stitch lines, one less than parts
  bool kept_clear = true;        // false: no join could be kept as far off as was asked
};

// Nothing where a width holds no more than its seams. One part where the panel is no wider than the cloth.
std::optional<PiecedPanel> piece_panel(const PanelInput& input);

}  // namespace gownsheaf
