#include "calculate/facts_safety.h"

#include <algorithm>

#include "calculate/fact_values.h"
#include "calculate/fitting.h"
#include "calculate/safety.h"

namespace gownsheaf {
namespace {

using P = const Project&;
using S = std::string_view;

bool failed(P p, const char* section) { return p.failed_sections.count(section) > 0; }

// Written yes of one cloth: yes; else no, for a maker writes what is out of the way.
FactValue some_cloth(P p, Given<bool> Cloth::* what) {
  if (failed(p, "cloths")) return kUnknown;
  return std::any_of(p.cloths.begin(), p.cloths.end(), [&](const Cloth& c) { return (c.*what).known() && *(c.*what); });
}

FactValue raised_surface(P p, S item) {
  const Cloth* cloth = p.cloth(item);
  return cloth != nullptr && cloth->surface.known() ? FactValue(*cloth->surface == "raised") : kUnknown;
}

FactValue burns_fast(P p, S) {
  if (failed(p, "cloths")) return kUnknown;
  for (const Cloth& c : p.cloths)
    if (const auto of = burn_class(c); of && *of >= 2) return true;
  return false;
}

FactValue drawstring(P p, S) {
  if (failed(p, "closures")) return kUnknown;
  return std::any_of(p.closures.begin(), p.closures.end(), [](const Closure& c) { return c.fasten == Fasten::drawstring; });
}

FactValue metal_eyelets(P p, S) {
  if (failed(p, "closures")) return kUnknown;
  return std::any_of(p.closures.begin(), p.closures.end(), [](const Closure& c) { return c.fasten == Fasten::lacing && c.eyelets_metal; });
}

FactValue steel_bones(P p, S) {
  if (failed(p, "bone stock")) return kUnknown;
  const bool busk = std::any_of(p.closures.begin(), p.closures.end(), [](const Closure& c) { return c.fasten == Fasten::busk; });
  return busk || std::any_of(p.bone_stock.begin(), p.bone_stock.end(), [](const BoneStock& b) {
    return b.kind == BoneKind::flat_steel || b.kind == BoneKind::spiral_steel;
  });
}

FactValue made_tight(P p, S) {
  if (failed(p, "ease") || p.ease.empty()) return kUnknown;
  return std::any_of(p.ease.begin(), p.ease.end(), [](const auto& e) { return e.second.known() && *e.second < Length{}; });
}

FactValue second_mock_up(P p, S) { return failed(p, "fittings") || failed(p, "seams") ? kUnknown : FactValue(needs_second_mock_up(p)); }

}  // namespace

const std::map<std::string_view, SafetyFact>& safety_facts() {
  static const std::map<std::string_view, SafetyFact> facts{
      {"sheer", [](P p, S) { return some_cloth(p, &Cloth::sheer); }},
      {"old cloth", [](P p, S) { return some_cloth(p, &Cloth::old); }},
      {"raised surface", raised_surface},
      {"burns fast", burns_fast},
      {"drawstring", drawstring},
      {"metal eyelets", metal_eyelets},
      {"steel bones", steel_bones},
      {"made tight", made_tight},
      {"second mock-up", second_mock_up},
  };
  return facts;
}

}  // namespace gownsheaf
