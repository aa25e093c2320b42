// Shared by the files of facts: what a fact is worked out from, the shape of a row, and the questions several of them ask.
// A section that did not check clean, or a value that is not there, makes a fact unknown.
#pragma once
#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "calculate/facts.h"

namespace gownsheaf {

struct Known {
  const Project& project;
  const Figures& figures;
  const Plans& plans;
};
inline const FactValue kUnknown{};

using FactFunction = FactValue (*)(const Known&, std::string_view item);
using FactRow = std::pair<std::string_view, FactFunction>;

std::vector<FactRow> garment_facts();  // the garment, its parts, its pattern, its fittings
std::vector<FactRow> wearer_facts();
std::vector<FactRow> cloth_facts();
std::vector<FactRow> bodice_facts();   // seams, linings, edges, bones
std::vector<FactRow> skirt_facts();    // and its pleats
std::vector<FactRow> closing_facts();  // closures, and the trims that go on last
std::vector<FactRow> safety_facts();   // what can hurt, and the mock-up that is tried again

inline bool failed(const Known& k, const std::string& section) { return k.project.failed_sections.count(section) > 0; }
inline bool given(const Known& k, const std::string& section) { return k.project.sections_given.count(section) > 0; }

template <class T>
FactValue or_unknown(const Given<T>& value) {
  return value.known() ? FactValue(*value) : kUnknown;
}
template <class T>
FactValue word_or_unknown(const Given<T>& value) {
  return value.known() ? FactValue(std::string(word_for(*value))) : kUnknown;
}
inline Truth truth_of(bool b) { return b ? Truth::yes : Truth::no; }

// Yes when some item says so, no when every item says not, else unknown.
template <class Items, class Says>
FactValue any_of_items(const Items& items, const Says& says) {
  bool open = false;
  for (const auto& item : items) {
    const Truth truth = says(item);
    if (truth == Truth::yes) return true;
    open = open || truth == Truth::unknown;
  }
  return open ? kUnknown : FactValue(false);
}

// Pieces settle it; before there are pieces the kind of garment does, where it can.
FactValue has_part(const Known& k, PartOf part, std::initializer_list<Garment> garments);
// Some piece of this part is cut, alone or as a layer, from a cloth used so.
FactValue part_cut_from(const Known& k, PartOf part, UsedAs use);
FactValue section_there(const Known& k, const std::string& section);
// The word stands in the text by itself, whatever its case.
bool holds_word(const std::string& text, std::string_view word);

}  // namespace gownsheaf
