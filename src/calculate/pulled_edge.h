// One closing that is pulled, as a sum that can be done again with one input changed: what each fastener takes, what its
// neighbours take when it gives way, what eases it, which input matters most. Pure; the formulas are those of load.h.
#pragma once
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "calculate/load.h"

namespace gownsheaf {

// A stretch of the edge, from `starts` to `ends` down from its top, that goes round one girth.
struct PulledZone {
  Length starts, ends, girth;
  Length shortfall;                  // how much smaller than the girth; negative: looser
  std::optional<Pressure> pressure;  // written; the shortfall is then not asked
  double factor = 1;                 // the largest of breath, posture and movement
};
struct PulledEdge {
  Length edge;
  std::vector<Length> places;  // from the top down, at least one
  std::int64_t rows = 1;
  std::vector<PulledZone> zones;  // rising, together the whole edge
  bool over_corset = false;
  double each_percent = kPressureEachPercent;
  Mass hung;         // nothing when no skirt hangs from it
  Length seam;       // along which it hangs
  double share = 0;  // of `hung` that a stay, a band or straps take
};
struct ZonePull {
  Pressure pressure;
  LoadPerLength at_rest, moving;
};
struct EdgePull {
  std::vector<ZonePull> zones;  // as PulledEdge::zones
  std::vector<Force> across;    // one a place, without what hangs
  std::vector<Force> pulls;     // with it, at the lowest
  Force hanging;
  std::size_t most = 0;      // the place that takes most; the upper of two alike
  std::size_t heaviest = 0;  // the zone with the greatest moving load; the upper of two alike
  std::string_view band;
  Force greatest() const { return pulls[most]; }
};
EdgePull pull_of(const PulledEdge& edge);

// Place `fastener` gives way and its neighbours share what it held. With several rows, one of those at the place.
struct GivesWay {
  std::size_t fastener = 0, neighbour = 0;
  Force takes;
};
// The worst of all that may give way; nothing where only one stands.
std::optional<GivesWay> worst_failure(const PulledEdge& edge);

// The least that must be let out all round, in whole steps, until the band is a lower one; nothing within `at_most`.
std::optional<Length> let_out_to_lower_band(const PulledEdge& edge, Length step, Length at_most);

// One input between its plausible ends, all others as they are.
struct Varied {
  std::string input;
  Force low, high;
};  // of the greatest pull
struct Variation {
  std::string input;
  std::function<void(PulledEdge&)> least, most;
};
// Sorted by how far apart the ends lie, the farthest first, then by name.
std::vector<Varied> sensitivity(const PulledEdge& edge, const std::vector<Variation>& variations);

}  // namespace gownsheaf
