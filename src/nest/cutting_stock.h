// Lengths cut from bars: which bars to take and what to cut from each, so that least length of bar is taken. Knows
// lengths and bars, no garment words. The same request gives the same plan on every machine: no floating point, and
// effort is counted in steps.
//
// Method: first fit and best fit decreasing for a first plan; the linear relaxation over cutting patterns (Gilmore and
// Gomory 1961) for the bound, raised to the next sum that bars can come to; rounding it again and again for a better plan;
// then for each such sum branch and bound over the bars, one bar at a time, filled so that no exchange would fill it better
// (bin completion), pruned by the relaxation's prices, by the costs that bars can come to, and by what has
// failed before.
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "units/length.h"

namespace gownsheaf::nest {

struct BarKind {
  Length length;
  std::optional<std::int64_t> number;  // absent = as many as are wanted
  bool on_shelf = false;               // already there: taking it costs nothing
};

struct CutRequest {
  std::vector<Length> items;  // each above nothing
  std::vector<BarKind> bars;
  Length kerf;                     // lost at each cut; none is lost behind the last item of a bar
  std::int64_t work = 10'000'000;  // steps
};

struct CutBar {
  int kind = 0;            // index into CutRequest::bars
  std::vector<int> items;  // indices into CutRequest::items, longest first
  Length left;             // behind the last cut, 0 when the kerf takes the rest
};

struct CutPlan {
  std::vector<CutBar> bars;   // shelf first, then by kind as requested; fullest first
  std::vector<int> left_out;  // items for which there was no bar
  Length taken;               // length of all bars that are not on the shelf
  Length bound;               // no plan that leaves nothing out takes less
  bool proven = false;        // nothing left out, and no plan takes less
  std::int64_t work = 0;      // steps done
};

// Throws std::invalid_argument for a length of nothing or less, or a negative kerf or number.
CutPlan cut_from_stock(const CutRequest& request);

}  // namespace gownsheaf::nest
