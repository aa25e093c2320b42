// Uneven pleats: some take up more cloth than others, or the run is narrower at the waist than at the hip and the hem.
//
//   to take up     flat - plus - finished, at each level; flat is that of the seam where no other is said (straight breadths)
//   takes          what the first pleats take up, the same at every level; the others share the rest alike
//   visible        finished / count at each level
//
// Source: Conover, docs/formulas.md#uneven-pleats. Tests: tests/calculate/uneven_pleats_test.cpp.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/pleats.h"

namespace gownsheaf {

struct PleatLevelSum {
  std::string name;
  PleatSolution sum;
};  // "hip", "hem"; in the measure that is marked

// What the maker said against the run itself, which may be settled or not: `depth` makes all pleats alike, gathers have
// no pleats, two keys say the same thing twice. Nothing when all is well.
std::optional<PleatFault> uneven_contradiction(const PleatRun& run, ShownIn in);

struct UnevenSum {
  std::vector<Length> takes;
  std::vector<PleatLevelSum> levels;
};
// marked: the run or the half of it that is marked; halved: sizes of the levels are of both halves and are divided here.
// Fault: pleats-contradict, no-take-up or pleats-too-few.
std::variant<UnevenSum, PleatFault> settle_uneven(const PleatRun& run, const PleatSolution& marked, bool halved, ShownIn in);

// What pleat k, counted from 1, takes up.
Length taken_by(const PleatSolution& s, const std::vector<Length>& takes, std::int64_t k);

}  // namespace gownsheaf
