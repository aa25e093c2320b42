#include "calculate/closing_levels.h"

#include <algorithm>

#include "calculate/closures.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {

void judge_levels(const Closure& closure, const ClosingPlan& plan, ShownIn in, Diagnostics& diag) {
  const std::string one = fastener_words(closure.fasten).one;
  const Length near = plan.widest_gap.is_zero() ? kHoldsLevel : std::min(kHoldsLevel, plan.widest_gap.times(1, 2));
  const auto warn = [&](const Level& level, const char* code, std::string sentence) {
    diag.add(message({closure.named.name, "closures", "closures"}, Severity::warning, code, level.at, std::move(sentence),
                     "`one at: [" + level.name + "]`"));
  };
  for (const Level& level : closure.levels) {
    const bool waist = level.name.find("waist") != std::string::npos, bust = level.name.find("bust") != std::string::npos;
    if (!waist && !bust) continue;
    const auto away = [&](const Fastener& f) {
      return f.from_top < level.from_top ? level.from_top - f.from_top : f.from_top - level.from_top;
    };
    const Fastener& nearest = *std::min_element(plan.fasteners.begin(), plan.fasteners.end(),
                                                [&](const Fastener& a, const Fastener& b) { return away(a) < away(b); });
    if (away(nearest) <= near) continue;
    const bool above = nearest.from_top < level.from_top, last = &nearest == &plan.fasteners.back() && above;
    if (waist)
      warn(level, "no-hook-at-waist",
           capital((last ? "the last " : "the nearest ") + one) + " is " + worked(away(nearest), in) +
               (above ? " above the " : " below the ") + level.name + ".");
    else warn(level, "bust-gapes", "No " + one + " within " + worked(near, in) + " of the " + level.name + ".");
  }
}

void judge_eyelets(const Project& project, const Closure& closure, Diagnostics& diag) {
  if (closure.fasten != Fasten::lacing || closure.edge.empty() || project.failed_sections.count("bones") > 0) return;
  const bool boned =
      std::any_of(project.bones.begin(), project.bones.end(), [&](const Bone& b) { return same_name(b.on_edge, closure.edge); });
  const bool strained = std::any_of(project.strain.begin(), project.strain.end(),
                                    [&](const Strain& s) { return same_name(s.closure, closure.named.name); });
  const bool on_a_band =
      !closure.sides.empty() && std::all_of(closure.sides.begin(), closure.sides.end(), [&](const std::string& side) {
        const Piece* piece = project.piece(side);
        return piece != nullptr && piece->part_of.known() && *piece->part_of == PartOf::band;
      });
  if (boned || strained || on_a_band) return;
  diag.add(message({closure.named.name, "closures", "closures"}, Severity::warning, "eyelets-unboned",
                   closure.fasten_at.line > 0 ? closure.fasten_at : closure.named.at,
                   "No bone stands beside the eyelets of " + closure.edge + ".",
                   "a bone `on edge: " + closure.edge + "`, one to each side; an article of 1894"));
}

}  // namespace gownsheaf
