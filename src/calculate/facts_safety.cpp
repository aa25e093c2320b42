#include "calculate/facts_safety.h"

#include <algorithm>

#include "calculate/fitting.h"
#include "calculate/safety.h"

namespace gownsheaf {
namespace {

const FactValue kUnknown{};
constexpr std::int32_t kStaleAfterDays = 56;  // eight weeks, common practice

using P = const Project&;
using S = std::string_view;

bool failed(P p, const char* section) { return p.failed_sections.count(section) > 0; }
bool given(P p, const char* section) { return p.sections_given.count(section) > 0; }

bool has_word_in(const std::string& name, std::string_view word) {
  std::string folded = " ";
  for (const char c : name) folded += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return (folded + " ").find(" " + std::string(word) + " ") != std::string::npos;
}

FactValue age(P p, S) { return p.wearer.age.known() ? FactValue(*p.wearer.age) : kUnknown; }
FactValue child(P p, S) { return p.wearer.age.known() ? FactValue(*p.wearer.age < 16) : kUnknown; }

FactValue over_corset(P p, S) {
  if (!p.taken) return kUnknown;
  return std::any_of(p.taken->over.begin(), p.taken->over.end(), [](const std::string& layer) {
    return has_word_in(layer, "corset") || has_word_in(layer, "stays");
  });
}

FactValue underlayers_to_make(P p, S) {
  return failed(p, "still to make") ? kUnknown : FactValue(static_cast<std::int64_t>(p.still_to_make.size()));
}

FactValue measures_stale(P p, S) {
  if (!p.taken) return kUnknown;
  if (!p.fittings.empty() && !p.fittings.back().wore.empty() && !p.taken->over.empty()) {
    std::vector<std::string> over = p.taken->over, wore = p.fittings.back().wore;
    std::sort(over.begin(), over.end());
    std::sort(wore.begin(), wore.end());
    if (over != wore) return true;
  }
  if (!p.taken->day.known() || !p.today.known()) return kUnknown;
  return p.today->serial - p.taken->day->serial >= kStaleAfterDays;
}

template <const char* const& word>
FactValue worn_for(P p, S) {
  if (failed(p, "worn for") || !given(p, "worn for")) return kUnknown;
  return p.worn_for.count(word) > 0;
}
const char* const kStreet = "street";
const char* const kDancing = "dancing";
const char* const kStairs = "stairs";
const char* const kStage = "stage";
const char* const kNearFlame = "near flame";

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

FactValue mock_up_rounds(P p, S) {
  return failed(p, "fittings") ? kUnknown : FactValue(static_cast<std::int64_t>(p.fittings.size()));
}

FactValue largest_change(P p, S) {
  if (failed(p, "fittings") || p.fittings.empty()) return kUnknown;
  Length most;
  for (const Finding& f : p.fittings.back().found) most = std::max(most, f.by);
  return most;
}

FactValue gates_open(P p, S) {
  if (failed(p, "fittings")) return kUnknown;
  return static_cast<std::int64_t>(std::count_if(p.fittings.begin(), p.fittings.end(), [](const Fitting& f) { return !f.signed_on.known(); }));
}

FactValue second_mock_up(P p, S) { return failed(p, "fittings") || failed(p, "seams") ? kUnknown : FactValue(needs_second_mock_up(p)); }

}  // namespace

const std::map<std::string_view, SafetyFact>& safety_facts() {
  static const std::map<std::string_view, SafetyFact> facts{
      {"age", age},
      {"child", child},
      {"over corset", over_corset},
      {"underlayers to make", underlayers_to_make},
      {"measures stale", measures_stale},
      {"worn for street", worn_for<kStreet>},
      {"worn for dancing", worn_for<kDancing>},
      {"worn for stairs", worn_for<kStairs>},
      {"worn for stage", worn_for<kStage>},
      {"worn for near flame", worn_for<kNearFlame>},
      {"sheer", [](P p, S) { return some_cloth(p, &Cloth::sheer); }},
      {"old cloth", [](P p, S) { return some_cloth(p, &Cloth::old); }},
      {"raised surface", raised_surface},
      {"burns fast", burns_fast},
      {"drawstring", drawstring},
      {"metal eyelets", metal_eyelets},
      {"steel bones", steel_bones},
      {"made tight", made_tight},
      {"mock-up rounds", mock_up_rounds},
      {"largest change", largest_change},
      {"gates open", gates_open},
      {"second mock-up", second_mock_up},
  };
  return facts;
}

}  // namespace gownsheaf
