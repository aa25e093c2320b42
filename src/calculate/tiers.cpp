#include "calculate/tiers.h"

#include "calculate/new_figure.h"

namespace gownsheaf {

std::variant<std::vector<TierSum>, PleatFault> settle_tiers(const PleatRun& run, Length edge, ShownIn in) {
  std::vector<TierSum> out;
  for (const Tier& tier : run.tiers) {
    const std::string name = "Tier " + tier.named.name + " of " + run.named.name;
    TierSum sum{tier.named.name, edge, {}, {}};
    if (!tier.fullness.known() && !tier.flat.known())
      return PleatFault{"pleats-too-few", name + " needs fullness or flat.",
                        "`fullness: 1 1/2`, say: half as much again as the edge above it", "tiers"};
    sum.flat = tier.flat.known() ? *tier.flat : edge.times(tier.fullness->n, tier.fullness->d);
    if (tier.fullness.known() && tier.flat.known()) {
      const Length by_fullness = edge.times(tier.fullness->n, tier.fullness->d),
                   off = by_fullness < sum.flat ? sum.flat - by_fullness : by_fullness - sum.flat;
      if (off > mark_step(in).times(1, 2))
        return PleatFault{"pleats-contradict",
                          name + " is " + worked(sum.flat, in) + " flat; fullness " + text_of(*tier.fullness) + " of " +
                              worked(edge, in) + " makes " + worked(by_fullness, in) + ".",
                          "drop `fullness` or `flat`", "tiers"};
    }
    if (sum.flat <= edge)
      return PleatFault{"no-take-up",
                        name + " is " + worked(sum.flat, in) + " flat; the edge above it is " + worked(edge, in) + ".",
                        "a gathered edge is shorter than its cloth: more `flat`, or another order of tiers", "tiers"};
    sum.fullness = Ratio::of(sum.flat.in_ticks(), edge.in_ticks());
    edge = sum.flat;
    out.push_back(sum);
  }
  return out;
}

}  // namespace gownsheaf
