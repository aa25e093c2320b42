// Facts of the closings, of what pulls at them, and of the trims.
#include "calculate/fact_values.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

template <class Get>
FactValue of_closure(const Known& k, std::string_view item, const Get& get) {
  const Closure* closure = failed(k, "closures") ? nullptr : k.project.closure(item);
  return closure == nullptr ? kUnknown : get(*closure);
}

const Figure* figure_of(const Known& k, std::string_view item, const char* quantity) {
  return k.figures.find("closures/" + std::string(item) + "/" + quantity);
}

FactValue closes_at(const Known& k, std::string_view item) {
  return of_closure(k, item, [&](const Closure& c) {
    const EdgeLine* edge = failed(k, "edges") || c.edge.empty() ? nullptr : k.project.edge(c.edge);
    if (edge == nullptr) return kUnknown;
    for (const char* place : {"front", "back", "side"})
      if (edge->kind == std::string(place) + " closing") return FactValue(std::string(place));
    return kUnknown;
  });
}

FactValue fasteners(const Known& k, std::string_view item) {
  const auto n = k.figures.count("closures/" + std::string(item) + "/in all");
  return n ? FactValue(*n) : kUnknown;
}

FactValue line_load(const Known& k, std::string_view item) {
  if (const Figure* f = figure_of(k, item, "line load"))
    if (const auto* load = std::get_if<LoadPerLength>(&f->value)) return *load;
  return kUnknown;
}

FactValue load_band(const Known& k, std::string_view item) {
  if (const Figure* f = figure_of(k, item, "load band"))
    if (const auto* band = std::get_if<std::string>(&f->value)) return *band;
  return kUnknown;
}

// Bows are counted one by one, other trimmings by their lines in the list. Lace is a trimming of its own, joined and gathered.
FactValue trims_of(const Known& k, bool bows) {
  if (failed(k, "trims")) return kUnknown;
  if (k.project.trims.empty()) return given(k, "trims") ? kUnknown : FactValue(std::int64_t{0});
  std::int64_t n = 0;
  for (const Trim& t : k.project.trims)
    if (bows ? t.kind == "bow" : t.kind != "bow" && t.kind != "lace") n += bows ? t.number.value.value_or(1) : 1;
  return n;
}

}  // namespace

std::vector<FactRow> closing_facts() {
  return {
      {"trims", [](K k, S) { return section_there(k, "trims"); }},
      {"bows", [](K k, S) { return trims_of(k, true); }},
      {"other trims", [](K k, S) { return trims_of(k, false); }},
      {"lace",
       [](K k, S) {
         return failed(k, "notions")
                    ? kUnknown
                    : any_of_items(k.project.notions, [](const Notion& n) { return truth_of(n.kind == "lace"); });
       }},
      {"closures",
       [](K k, S) { return failed(k, "closures") ? kUnknown : FactValue(static_cast<std::int64_t>(k.project.closures.size())); }},
      {"fasten",
       [](K k, S item) {
         return of_closure(k, item, [](const Closure& c) { return FactValue(std::string(word_for(c.fasten))); });
       }},
      {"closes at", closes_at},
      {"closed alone", [](K k, S item) { return of_closure(k, item, [](const Closure& c) { return or_unknown(c.alone); }); }},
      {"fasteners", fasteners},
      {"line load", line_load},
      {"load band", load_band},
      {"guard", [](K k, S item) { return of_closure(k, item, [](const Closure& c) { return FactValue(c.guard.has_value()); }); }},
      {"drawstring at",
       [](K k, S item) { return of_closure(k, item, [](const Closure& c) { return or_unknown(c.drawstring_at); }); }},
      {"drawstring end",
       [](K k, S item) { return of_closure(k, item, [](const Closure& c) { return or_unknown(c.hangs_out); }); }},
  };
}

}  // namespace gownsheaf
