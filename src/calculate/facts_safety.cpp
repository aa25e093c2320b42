// Facts of what can hurt, and of the mock-up that is tried again.
#include "calculate/fact_values.h"
#include "calculate/fitting.h"
#include "calculate/safety.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

// Written yes of one cloth: yes; else no, for a maker writes what is out of the way.
FactValue some_cloth(K k, Given<bool> Cloth::*what) {
  if (failed(k, "cloths")) return kUnknown;
  return std::any_of(k.project.cloths.begin(), k.project.cloths.end(),
                     [&](const Cloth& c) { return (c.*what).known() && *(c.*what); });
}

FactValue raised_surface(K k, S item) {
  const Cloth* cloth = k.project.cloth(item);
  return cloth != nullptr && cloth->surface.known() ? FactValue(*cloth->surface == "raised") : kUnknown;
}

FactValue burns_fast(K k, S) {
  if (failed(k, "cloths")) return kUnknown;
  for (const Cloth& c : k.project.cloths)
    if (const auto of = burn_class(c); of && *of >= 2) return true;
  return false;
}

FactValue drawstring(K k, S) {
  if (failed(k, "closures")) return kUnknown;
  return std::any_of(k.project.closures.begin(), k.project.closures.end(),
                     [](const Closure& c) { return c.fasten == Fasten::drawstring; });
}

FactValue metal_eyelets(K k, S) {
  if (failed(k, "closures")) return kUnknown;
  return std::any_of(k.project.closures.begin(), k.project.closures.end(),
                     [](const Closure& c) { return c.fasten == Fasten::lacing && c.eyelets_metal; });
}

FactValue steel_bones(K k, S) {
  if (failed(k, "bone stock")) return kUnknown;
  const bool busk = std::any_of(k.project.closures.begin(), k.project.closures.end(),
                                [](const Closure& c) { return c.fasten == Fasten::busk; });
  return busk || std::any_of(k.project.bone_stock.begin(), k.project.bone_stock.end(), [](const BoneStock& b) {
           return b.kind == BoneKind::flat_steel || b.kind == BoneKind::spiral_steel;
         });
}

FactValue made_tight(K k, S) {
  if (failed(k, "ease") || k.project.ease.empty()) return kUnknown;
  return std::any_of(k.project.ease.begin(), k.project.ease.end(),
                     [](const auto& e) { return e.second.known() && *e.second < Length{}; });
}

FactValue second_mock_up(K k, S) {
  return failed(k, "fittings") || failed(k, "seams") ? kUnknown : FactValue(needs_second_mock_up(k.project));
}

}  // namespace

std::vector<FactRow> safety_facts() {
  return {
      {"sheer", [](K k, S) { return some_cloth(k, &Cloth::sheer); }},
      {"old cloth", [](K k, S) { return some_cloth(k, &Cloth::old); }},
      {"raised surface", raised_surface},
      {"burns fast", burns_fast},
      {"drawstring", drawstring},
      {"metal eyelets", metal_eyelets},
      {"steel bones", steel_bones},
      {"made tight", made_tight},
      {"second mock-up", second_mock_up},
  };
}

}  // namespace gownsheaf
