// Facts of the wearer: who, over which layers, for what; measures private in themselves.
#include "calculate/fact_values.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

FactValue sides_differ(const Known& k, std::string_view) {
  if (failed(k, "measures")) return kUnknown;
  for (const auto& [name, m] : k.project.measures.girths_and_lengths)
    if (m.left.known() && m.right.known() && *m.left != *m.right) return true;
  return false;
}

constexpr std::int64_t kGrownUp = 16;
constexpr std::int32_t kStaleAfterDays = 56;

FactValue child(const Known& k, std::string_view) {
  return k.project.wearer.age.known() ? FactValue(*k.project.wearer.age < kGrownUp) : kUnknown;
}

FactValue over_corset(const Known& k, std::string_view) {
  if (failed(k, "taken") || !k.project.taken || k.project.taken->over.empty()) return kUnknown;
  return any_of_items(k.project.taken->over, [](const std::string& layer) {
    return truth_of(holds_word(layer, "corset") || holds_word(layer, "stays"));
  });
}

FactValue underlayers_to_make(const Known& k, std::string_view) {
  return failed(k, "still to make") ? kUnknown : FactValue(static_cast<std::int64_t>(k.project.still_to_make.size()));
}

// Eight weeks before today, or other layers at the last fitting than when the measures were taken.
FactValue measures_stale(const Known& k, std::string_view) {
  if (failed(k, "taken") || failed(k, "fittings") || !k.project.taken) return kUnknown;
  const Taken& taken = *k.project.taken;
  if (!k.project.fittings.empty() && !taken.over.empty() && !k.project.fittings.back().wore.empty()) {
    const auto in_order = [](std::vector<std::string> layers) {
      std::sort(layers.begin(), layers.end());
      return layers;
    };
    if (in_order(taken.over) != in_order(k.project.fittings.back().wore)) return true;
  }
  if (!taken.day.known() || !k.project.today.known()) return kUnknown;
  return k.project.today->serial - taken.day->serial >= kStaleAfterDays;
}

FactValue worn_for(const Known& k, const char* what) {
  if (failed(k, "worn for") || !given(k, "worn for")) return kUnknown;
  return k.project.worn_for.count(what) > 0;
}

}  // namespace

std::vector<FactRow> wearer_facts() {
  return {
      {"sides differ", sides_differ},
      {"age", [](K k, S) { return or_unknown(k.project.wearer.age); }},
      {"child", child},
      {"over corset", over_corset},
      {"underlayers to make", underlayers_to_make},
      {"measures stale", measures_stale},
      {"rehearsal day", [](K k, S) { return failed(k, "work") ? kUnknown : FactValue(k.project.work.rehearsal.known()); }},
      {"all by hand", [](K k, S) { return failed(k, "pace") ? kUnknown : FactValue(k.project.pace.all_by_hand); }},
      {"helper days",
       [](K k, S) {
         return k.project.work.helper_here ? FactValue(static_cast<std::int64_t>(k.project.work.helper_here->size())) : kUnknown;
       }},
      {"days left",
       [](K k, S) {
         if (!k.project.today.known() || !k.project.worn_on.known()) return kUnknown;
         return FactValue(static_cast<std::int64_t>(k.project.worn_on->serial - k.project.today->serial));
       }},
      {"hours short",
       [](K k, S) {
         if (!k.plans.days || !k.plans.days->from || !k.plans.days->last) return kUnknown;
         constexpr std::int64_t kHour = 3'600'000;
         return FactValue((k.plans.days->unfinished.milliseconds + kHour - 1) / kHour);
       }},
      {"worn for street", [](K k, S) { return worn_for(k, "street"); }},
      {"worn for dancing", [](K k, S) { return worn_for(k, "dancing"); }},
      {"worn for stairs", [](K k, S) { return worn_for(k, "stairs"); }},
      {"worn for stage", [](K k, S) { return worn_for(k, "stage"); }},
      {"worn for near flame", [](K k, S) { return worn_for(k, "near flame"); }},
  };
}

}  // namespace gownsheaf
