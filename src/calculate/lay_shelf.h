// Does it go on what there is? The lay on the lengths of the shelf, what gives way when not all goes, and what else would
// make it go. Internal to the lays.
//
// In this order: as asked; without the panels that were to be kept; with pieces joined that may be pieced (a last resort, and
// said). Then, where it still does not go: by how much (lay_missing.h); and by itself each: in one layer in place of folded; turned end for end where the cloth
// is laid one way; with a facing pieced that may not be.
#pragma once
#include <functional>

#include "calculate/lay_missing.h"
#include "calculate/lay_strips.h"

namespace gownsheaf {

struct OnShelf {
  std::vector<LaidStrip> strips;
  std::vector<std::pair<std::size_t, int>> left_out;  // of `cuts`
  std::string unsupported;
  std::vector<Cut> cuts;              // as laid: pieces may have become parts
  std::vector<std::string> not_kept;  // panels
  std::vector<std::string> pieced;    // cuts that became parts
  std::vector<Missing> missing;       // of what is left out, cut by cut
  std::vector<OtherWay> other_ways;
  bool cut_short = false;
};

// open: the lay on an open length, taken where one length of the shelf holds it.
OnShelf lay_on_shelf(const Cloth& cloth, const std::vector<Cut>& cuts, const LaidOut& open, const LayAsked& asked,
                     Figures& figures, const Project& project);

// The panels to be kept, as cuts that lie in the lay and are not cut.
std::vector<Cut> panels_to_keep(const Cloth& cloth, Length usable);

// Area of what is laid for one copy.
Area area_of(const Cut& cut, Length breadth_usable);

}  // namespace gownsheaf
