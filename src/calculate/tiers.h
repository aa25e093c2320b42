// Tiers: the first is gathered to the run's finished edge, each next one to the tier above.
//
//   flat of a tier    fullness x the edge above it
//
// Source: a petticoat draft of 1907, docs/formulas.md#tiers. Tests: tests/calculate/tiers_test.cpp.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "calculate/pleats.h"

namespace gownsheaf {

struct TierSum {
  std::string name;
  Length above, flat;
  Ratio fullness;
};

// edge: what the first is gathered to, above 0. Fault: pleats-too-few, pleats-contradict or no-take-up; its key is "tiers".
std::variant<std::vector<TierSum>, PleatFault> settle_tiers(const PleatRun& run, Length edge, ShownIn in);

}  // namespace gownsheaf
