// Each fact is one small function; the files of facts_*.cpp hold them by subject, this one joins their tables.
#include "calculate/facts.h"

#include <map>

#include "calculate/fact_values.h"

namespace gownsheaf {
namespace {

const std::map<std::string_view, FactFunction>& table() {
  static const std::map<std::string_view, FactFunction> facts = [] {
    std::map<std::string_view, FactFunction> all;
    for (const auto& rows :
         {garment_facts(), wearer_facts(), cloth_facts(), bodice_facts(), skirt_facts(), closing_facts(), safety_facts()})
      all.insert(rows.begin(), rows.end());
    return all;
  }();
  return facts;
}

}  // namespace

std::vector<std::string_view> facts_worked_out() {
  std::vector<std::string_view> names;
  for (const auto& [name, fn] : table()) names.push_back(name);
  return names;
}

FactLookup facts_of(const Project& project, const Figures& figures, const Plans& plans) {
  return [&project, &figures, &plans](std::string_view fact, std::string_view item) -> FactValue {
    const auto at = table().find(fact);
    return at == table().end() ? kUnknown : at->second(Known{project, figures, plans}, item);
  };
}

}  // namespace gownsheaf
