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
  Length from_top;         // exact, to its middle; figure closures/NAME/fastener K, K from 1 at the top
  std::string level;       // "fullest bust" where it was forced to a level, else ""
  bool other_way = false;  // alternate: the hook sits on the other side
  bool fixed = false;      // a stretch of even pitch ends here: first, last, a level, or an end of a closer part
};
struct ClosingPlan {
  std::string closure, fasten, with, edge;  // words and names
  Length edge_length;
  std::vector<Fastener> fasteners;  // one row, from the top down
  std::int64_t rows = 1;
  std::int64_t fasteners_in_all = 0;  // rows counted, and both wrists
  std::int64_t times = 1;             // how often it is made: at each wrist
  std::vector<Length> gaps;           // pitch of each stretch between forced places, exact
  Length widest_gap;
  std::vector<Length> other_side;      // staggered lacing: eyelets of the other side; figures …/other side K
  std::vector<std::string> cut_sides;  // SIDE of the figures …/cut past meeting line/SIDE
  std::vector<std::string> compared;   // KIND of the figures …/compare KIND/pieces, the chosen kind first
  std::vector<std::pair<std::string, Length>> levels;
  std::vector<std::pair<std::string, std::pair<Length, Length>>> closer;  // level; from, to down the edge, where they come closer
  bool overlapping = false;
  Length lap, underlap, set_back;
  SourceSpan at;
};

struct CutBone {
  std::string channel;
  int copy = 1;
  Length length;
};  // copy counts within the channel's number
struct BarOfBones {
  Length stock_length;
  std::vector<CutBone> cut;
  Length left;
};
struct BonePlan {  // one stock
  std::string stock, kind;
  std::vector<BarOfBones> bars;                         // which stock lengths, and what to cut from each, in the order of cutting
  std::vector<std::pair<Length, std::int64_t>> to_buy;  // stock length and how many, beyond what is bought
  bool proven = false;                                  // no plan takes less length of stock
  Length bound;                                         // no plan can take less
  SourceSpan at;
};

struct LoadZone {
  std::string name;
  Length starts, ends;
  LoadPerLength moving;
};                  // figures closures/NAME/zone ZONE/…
struct WayToEase {  // figures closures/NAME/eased WAY/{per fastener, may hold, load band, by, apart}
  std::string way;  // "own band", "waist stay", "closer", "second row", "lacing", "let out", "let out a band"
  std::string band;
  bool enough = false;  // no fastener takes more than it may be asked for
};
struct InputThatMatters {    // figures closures/NAME/varied INPUT/{low, high}: of the most that one fastener takes
  std::string input, range;  // "breath, posture and movement", "1.3 to 3.2 times"
};
struct BandHold {       // the skirt's own band; figures closures/NAME/{band tension, band pressure, comfort line}
  bool slides = false;  // no tension holds it: the hip gives it nothing to lie on
  Force tension;
  Pressure pressure;
  std::optional<Pressure> comfort;  // where the wearer's age is written
  double slope = 0;                 // tangent of the hip's slope from the vertical
};
struct LoadPlan {  // one strained closing; figures closures/NAME/line load, …/per fastener, …/load band
  std::string closure;
  LoadPerLength at_rest, moving;  // along the edge where it pulls most; moving: with breath, posture or movement
  Force fastener, holds;          // the most that one fastener takes; what one may be asked to hold
  Force capacity;                 // what one holds, untested
  std::string band;               // R0 … R4
  std::vector<Force> pulls;       // one a fastener, as ClosingPlan::fasteners, for the drawing
  std::vector<LoadZone> zones;    // from the top; one when none is written
  std::size_t most = 0;           // the fastener that takes most
  std::optional<std::size_t> gives_way, neighbour;  // worst: this one opens, that one then takes …/if one opens
  Force neighbour_takes;
  bool by_study = false;  // pressure by `rules: corset pressure`, nothing else being written
  std::vector<WayToEase> eased;
  std::vector<InputThatMatters> matters;  // what matters most comes first
  std::optional<BandHold> band_hold;
  SourceSpan at;
};

}  // namespace gownsheaf
