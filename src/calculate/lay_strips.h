// Cuts and lengths of cloth as parts and strips for nest/, and back. Internal to the lays.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/cut_list.h"
#include "nest/nest.h"

namespace gownsheaf {

// Steps of search, where every piece is a rectangle and where one is not. outlines 0: they lie as their boxes.
struct LayWork { std::int64_t rectangles = 0, outlines = 0; };

struct LaidOut {
  std::vector<LaidStrip> strips;                    // as asked, placed filled in
  std::vector<std::pair<std::size_t, int>> left_out;  // index of the cut, copy from 0
  Length bound;
  std::string unsupported;
};

// copies[i]: which copies of cuts[i] are to be laid (0-based numbers), so that a rest can be laid by itself.
LaidOut lay_on(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, std::vector<LaidStrip> strips,
               Length breadth_usable, Length gap, const LayWork& work);

std::vector<std::vector<int>> all_copies(const std::vector<Cut>& cuts);
LaidStrip open_strip(const Cloth& cloth);
// What lies on the shelf: bought lengths and remnants, longest first.
std::vector<LaidStrip> shelf(const Cloth& cloth);

}  // namespace gownsheaf
