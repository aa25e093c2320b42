// What is missing where the pieces do not all go on what there is: how much longer the longest of the bought lengths would have
// to be for a piece to go as well, and how much of new cloth it takes by itself. Internal to the lays.
//
//   more  = lay of what goes and of this piece, with that length left open, less the length
//   alone = lay of this piece on an open length
// Each is a lay that was found, so that with so much it goes; with less it may, seldom.
#pragma once
#include "calculate/lay_strips.h"

namespace gownsheaf {

struct Missing {
  std::size_t cut = 0;
  std::vector<int> copies;     // those of it that find no room
  Length alone;                // of laid cloth
  std::optional<Length> more;  // of laid cloth, on the length `on`; nothing where lengthening that one does not do
  std::string on;
};

struct WithOneOpen {
  LaidOut laid;
  Length more;
  std::string on;
};
// The pieces on the shelf, its longest bought length as long as they need. more: below nothing where they go as it is; then the
// strips are the shelf's. Nothing where no bought length may be left open: none there, or folded ones beside flat remnants.
std::optional<WithOneOpen> lay_with_one_open(const Cloth& cloth, const std::vector<Cut>& cuts,
                                             const std::vector<std::vector<int>>& copies, const LayAsked& asked);

// Of each piece that `laid` leaves out, at most so many. Where one is found to go after all, `laid` is that lay.
std::vector<Missing> what_is_missing(const Cloth& cloth, const std::vector<Cut>& cuts, LaidOut& laid, const LayAsked& asked,
                                     std::size_t at_most);

}  // namespace gownsheaf
