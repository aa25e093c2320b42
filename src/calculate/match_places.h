// Where a cloth's repeat lies in each drawn piece that is matched. Internal to the cut list.
//
// A piece lies with its first `match` mark on the lines of the repeat. Marks of one name in two pieces meet in a seam: the piece
// that comes later lies so that the design goes on over that seam, and its other marks hand it on to the next neighbour.
//   place of a mark = how far past a line it lies      a piece opened out on the fold: its middle on a line, both sides alike
// Across, a mark at the far side of its piece meets one at the near side of the next; where both are drawn at the same side, the
// one piece is drawn as the other's mirror image and the place counts from the other side (the design is taken to be its own
// mirror image). Arithmetic, no source.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "project/project.h"

namespace gownsheaf {

// A mark where the design is off although the piece is matched elsewhere.
struct MatchClash {
  std::string piece, mark;
  Length along, across;
};
struct MatchPlaces {
  std::map<std::string, Point> on_lines;  // by piece: a point of its cut outline that lies on the lines of the repeat
  std::vector<MatchClash> clashes;
};

MatchPlaces match_places(const Project& project, const Cloth& cloth);

// What pieces lie by: by a half drop every second column is as high.
Repeat laid_repeat(const Repeat& repeat);
// On the same place of the repeat, from nothing to `size`; the least there is where the repeat is wider than that.
Length within_repeat(Length at, Length size, const std::optional<Length>& repeat);
// How far from a whole repeat, to the nearest; nothing without a repeat.
Length off_repeat(Length apart, const std::optional<Length>& repeat);

}  // namespace gownsheaf
