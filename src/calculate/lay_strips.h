// Cuts and lengths of cloth as parts and strips for nest/, and back. Internal to the lays.
//
// On cloth folded lengthwise a piece on the fold is laid as its half, against the fold; two pieces that are each other's
// mirror image, or alike and symmetric, are cut double; a full breadth lies as its half. What is left (an odd one, two alike
// that are not symmetric, a panel to be kept) is laid in one layer on the same cloth, opened out behind the folded part.
// Where an outline is laid, full breadths come first, end to end: that is the least they can take, and no other piece can
// lie beside them.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/cut_list.h"
#include "calculate/lay_watch.h"
#include "nest/lay_store.h"
#include "nest/nest.h"

namespace gownsheaf {

// Steps of search, where every piece is a rectangle and where one is not. outlines 0: they lie as their boxes.
// store: lays kept from earlier; every lay is the same with and without it.
// What threads and `watch` change is the time a search takes, and whether it is stopped before its end; never a lay that is not.
struct LayWork {
  std::int64_t rectangles = 0, outlines = 0;
  int threads = 1;
  const LayWatch* watch = nullptr;
  nest::LayStore* store = nullptr;
  bool stopped() const { return watch != nullptr && watch->stop != nullptr && watch->stop->load(std::memory_order_relaxed); }
};

struct LayAsked {
  Length breadth_usable;  // of a full breadth, without selvages
  Length gap;
  LayWork work;
  std::optional<Repeat> repeat;  // pieces that are matched lie by it
};

struct LaidOut {
  std::vector<LaidStrip> strips;  // as asked, placed filled in; folded ones are followed by their rest in one layer
  std::vector<std::pair<std::size_t, int>> left_out;  // index of the cut, copy from 0
  Length bound;                                       // of the cloth's length
  std::string unsupported;
  bool cut_short = false;  // a search was stopped before its end
};

// copies[i]: which copies of cuts[i] are to be laid (0-based numbers), so that a rest can be laid by itself.
LaidOut lay_on(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, std::vector<LaidStrip> strips,
               const LayAsked& asked);

std::vector<std::vector<int>> all_copies(const std::vector<Cut>& cuts);
LaidStrip open_strip(const Cloth& cloth);
// What lies on the shelf: bought lengths and remnants, longest first. Remnants are never folded.
std::vector<LaidStrip> shelf(const Cloth& cloth);
// What the strips of one length of cloth, folded part and rest, take of it.
Length taken(const LaidStrip& strip, const LaidStrip* opened);

}  // namespace gownsheaf
