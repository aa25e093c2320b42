// Facts of the garment: what it is, which parts it has, how it is fitted, its size.
#include "calculate/fact_values.h"
#include "calculate/gates.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

bool garment_is(const Known& k, std::initializer_list<Garment> any) {
  return k.project.garment.known() && std::find(any.begin(), any.end(), *k.project.garment) != any.end();
}

}  // namespace

FactValue has_part(const Known& k, PartOf part, std::initializer_list<Garment> garments) {
  if (failed(k, "pieces")) return kUnknown;
  if (k.project.pieces.empty()) return garment_is(k, garments) ? FactValue(true) : kUnknown;
  return any_of_items(k.project.pieces,
                      [&](const Piece& p) { return p.part_of.known() ? truth_of(*p.part_of == part) : Truth::unknown; });
}

FactValue part_cut_from(const Known& k, PartOf part, UsedAs use) {
  if (failed(k, "pieces") || failed(k, "cloths")) return kUnknown;
  return any_of_items(k.project.pieces, [&](const Piece& p) {
    if (!p.part_of.known()) return Truth::unknown;
    if (*p.part_of != part) return Truth::no;
    Truth truth = Truth::no;
    for (const std::string& name : p.from) {
      const Cloth* cloth = k.project.cloth(name);
      if (cloth == nullptr || !cloth->used_as.known()) truth = truth || Truth::unknown;
      else truth = truth || truth_of(*cloth->used_as == use);
    }
    return truth;
  });
}

FactValue section_there(const Known& k, const std::string& section) {
  return failed(k, section) ? kUnknown : FactValue(given(k, section));
}

bool holds_word(const std::string& text, std::string_view word) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  std::string folded;
  for (const char c : text) folded += lower(c);
  for (auto at = folded.find(word); at != std::string::npos; at = folded.find(word, at + 1)) {
    const bool begins = at == 0 || !letter(folded[at - 1]);
    const bool ends = at + word.size() == folded.size() || !letter(folded[at + word.size()]);
    if (begins && ends) return true;
  }
  return false;
}

namespace {

// Few garments have legs: what is not said to be one is none.
FactValue has_legs(const Known& k) {
  const auto& all = k.project.pieces;
  return std::any_of(all.begin(), all.end(), [](const Piece& p) { return p.part_of.known() && *p.part_of == PartOf::leg; });
}

FactValue fitted(const Known& k, std::string_view) {
  if (failed(k, "ease") || k.project.ease.empty()) return kUnknown;
  return any_of_items(k.project.ease, [](const auto& entry) {
    return entry.second.known() ? truth_of(*entry.second <= Length::inches(2)) : Truth::unknown;
  });
}

FactValue waist_ease(const Known& k, std::string_view) {
  const auto at = k.project.ease.find("waist");
  return at == k.project.ease.end() ? kUnknown : or_unknown(at->second);
}

FactValue between_sizes(const Known& k, std::string_view) {
  if (failed(k, "size table") || failed(k, "size")) return kUnknown;
  if (!k.project.size_choice || !k.project.size_choice->girth) return k.project.size_table ? kUnknown : FactValue(false);
  return k.project.size_choice->lies == SizeChoice::Lies::between_rows;
}
FactValue sized(const Known& k, std::string_view) {
  return k.project.size_choice.has_value() ||
         std::any_of(k.project.ease.begin(), k.project.ease.end(), [](const auto& e) { return e.second.known(); });
}

// A round of the mock-up is a fitting whose name says so; the last is the one written last.
const Fitting* last_mock_up(const Known& k) {
  const Fitting* last = nullptr;
  for (const Fitting& f : k.project.fittings)
    if (is_mock_up(f.named.name)) last = &f;
  return last;
}
FactValue mock_up_rounds(const Known& k, std::string_view) {
  if (failed(k, "fittings")) return kUnknown;
  return static_cast<std::int64_t>(std::count_if(k.project.fittings.begin(), k.project.fittings.end(),
                                                 [](const Fitting& f) { return is_mock_up(f.named.name); }));
}
FactValue largest_change(const Known& k, std::string_view) {
  const Fitting* last = failed(k, "fittings") ? nullptr : last_mock_up(k);
  if (last == nullptr) return kUnknown;
  Length most;
  for (const Finding& f : last->found) most = std::max(most, f.by);
  return most;
}
FactValue drapery(const Known& k, std::string_view) {
  if (failed(k, "drapery")) return kUnknown;
  if (!k.project.drapery.empty()) return true;
  return has_part(k, PartOf::drapery, {});
}
// One word where all of it is held alike; pieces of drapery of which nothing more is said may be held any way.
FactValue drapery_held(const Known& k, std::string_view) {
  if (failed(k, "drapery")) return kUnknown;
  const std::vector<Drapery>& all = k.project.drapery;
  if (all.empty()) return has_part(k, PartOf::drapery, {}) == FactValue(false) ? FactValue(std::string("none")) : kUnknown;
  const bool alike = std::all_of(all.begin(), all.end(), [&](const Drapery& d) { return d.held == all.front().held; });
  return alike ? FactValue(all.front().held) : kUnknown;
}

// Of the fittings that are written; one that was never held is not among them.
FactValue gates_open(const Known& k, std::string_view) {
  if (failed(k, "fittings") || k.project.fittings.empty()) return kUnknown;
  return static_cast<std::int64_t>(
      std::count_if(k.project.fittings.begin(), k.project.fittings.end(), [](const Fitting& f) { return !f.signed_on.known(); }));
}

}  // namespace

std::vector<FactRow> garment_facts() {
  return {
      {"garment kind", [](K k, S) { return word_or_unknown(k.project.garment); }},
      {"bodice",
       [](K k, S) {
         return has_part(k, PartOf::bodice, {Garment::dress, Garment::bodice});
       }},
      {"skirt",
       [](K k, S) {
         return has_part(k, PartOf::skirt, {Garment::dress, Garment::skirt});
       }},
      {"sleeves", [](K k, S) { return has_part(k, PartOf::sleeve, {}); }},
      {"legs", [](K k, S) { return has_legs(k); }},
      {"collar", [](K k, S) { return has_part(k, PartOf::collar, {}); }},
      {"band", [](K k, S) { return has_part(k, PartOf::band, {}); }},
      {"petticoat", [](K k, S) { return has_part(k, PartOf::petticoat, {Garment::petticoat}); }},
      {"corset", [](K k, S) { return has_part(k, PartOf::corset, {Garment::corset}); }},
      {"drapery", drapery},
      {"drapery held", drapery_held},
      {"drapery foundation",
       [](K k, S) {
         return failed(k, "drapery")
                    ? kUnknown
                    : any_of_items(k.project.drapery, [](const Drapery& d) { return truth_of(!d.foundation.empty()); });
       }},
      {"tailored",
       [](K k, S) {
         return k.project.garment.known() ? FactValue(garment_is(k, {Garment::waistcoat, Garment::coat, Garment::spencer}))
                                          : kUnknown;
       }},
      {"joined at waist", [](K k, S) { return or_unknown(k.project.joined_at_waist); }},
      {"fitted", fitted},
      {"waist ease", waist_ease},
      {"between sizes", between_sizes},
      {"size to fit", sized},
      {"mock-up rounds", mock_up_rounds},
      {"largest change", largest_change},
      {"gates open", gates_open},
  };
}

}  // namespace gownsheaf
