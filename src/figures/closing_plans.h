// What the sheets of closures, bones and strength need beyond single figures. Every printed number in them also stands as
// a Figure; where a figure's key is not obvious it is named here.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "units/length.h"
#include "units/quantities.h"

namespace gownsheaf {

struct Fastener {
  Length from_top;                // exact, to its middle; figure closures/NAME/fastener K, K from 1 at the top
  std::string level;              // "fullest bust" where it was forced to a level, else ""
  bool other_way = false;         // alternate: the hook sits on the other side
};
struct ClosingPlan {
  std::string closure, fasten, with, edge;   // words and names
  Length edge_length;
  std::vector<Fastener> fasteners;           // one row, from the top down
  std::int64_t rows = 1;
  std::int64_t fasteners_in_all = 0;         // rows counted
  std::vector<Length> gaps;                  // pitch of each stretch between forced places, exact
  Length widest_gap;
  std::vector<Length> other_side;            // staggered lacing: eyelets of the other side; figures …/other side K
  std::vector<std::string> cut_sides;        // SIDE of the figures …/cut past meeting line/SIDE
  std::vector<std::string> compared;         // KIND of the figures …/compare KIND/pieces, the chosen kind first
  std::vector<std::pair<std::string, Length>> levels;
  bool overlapping = false;
  Length lap, underlap, set_back;
  SourceSpan at;
};

struct CutBone { std::string channel; int copy = 1; Length length; };          // copy counts within the channel's number
struct BarOfBones { Length stock_length; std::vector<CutBone> cut; Length left; };
struct BonePlan {                 // one stock
  std::string stock, kind;
  std::vector<BarOfBones> bars;   // which stock lengths, and what to cut from each, in the order of cutting
  std::vector<std::pair<Length, std::int64_t>> to_buy;  // stock length and how many, beyond what is bought
  bool proven = false;            // no plan takes less length of stock
  Length bound;                   // no plan can take less
  SourceSpan at;
};

struct LoadPlan {                 // one strained closing; figures closures/NAME/line load, …/per fastener, …/load band
  std::string closure;
  LoadPerLength at_rest, moving;  // along the edge; moving: with breath or movement, whichever is more
  Force fastener, holds;          // the most that one fastener takes; what one may be asked to hold
  std::string band;               // R0 … R4
  std::vector<Force> pulls;       // one a fastener, as ClosingPlan::fasteners, for the drawing
  SourceSpan at;
};

}  // namespace gownsheaf
