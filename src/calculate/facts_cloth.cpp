// Facts of the cloths: kinds, care, what is cut from each.
#include "calculate/fact_values.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

FactValue kind_holds(const Known& k, std::string_view word) {
  if (failed(k, "cloths")) return kUnknown;
  return any_of_items(k.project.cloths,
                      [&](const Cloth& c) { return c.kind.known() ? truth_of(holds_word(*c.kind, word)) : Truth::unknown; });
}

const LayPlan* lay_of(const Known& k, std::string_view cloth) {
  for (const LayPlan& lay : k.plans.lays)
    if (same_name(lay.cloth, cloth)) return &lay;
  return nullptr;
}

// Without a lay: nothing is cut from a cloth that no piece names; else its parts are not known.
FactValue without_lay(const Known& k, std::string_view cloth) {
  if (failed(k, "pieces")) return kUnknown;
  for (const Piece& p : k.project.pieces)
    for (const std::string& from : p.from)
      if (same_name(from, cloth)) return kUnknown;
  return std::int64_t{0};
}

FactValue parts_cut(const Known& k, std::string_view cloth, bool breadths, bool others) {
  const LayPlan* lay = lay_of(k, cloth);
  if (lay == nullptr) return without_lay(k, cloth);
  std::int64_t n = 0;
  for (const CutPiece& cut : lay->cut)
    if (cut.full_width ? breadths : others) n += cut.copies;
  return n;
}

FactValue shrinkage_differs(const Known& k, std::string_view) {
  if (failed(k, "pieces") || failed(k, "cloths")) return kUnknown;
  return any_of_items(k.project.pieces, [&](const Piece& p) {
    if (p.from.size() < 2) return Truth::no;
    Length along;
    for (const LayPlan& lay : k.plans.lays)
      for (const CutPiece& cut : lay.cut)
        if (same_name(cut.as_named(), p.named.name)) along = std::max(along, cut.along);
    std::optional<Length> least, most;
    for (const std::string& name : p.from) {
      const Cloth* cloth = k.project.cloth(name);
      if (cloth == nullptr || along.is_zero()) return Truth::unknown;
      const bool shrunk = cloth->shrunk_already.known() && *cloth->shrunk_already;
      if (!shrunk && !cloth->shrinks_along.known()) return Truth::unknown;
      const Ratio r = shrunk ? Ratio{0, 1} : cloth->shrinks_along->of_one;
      const Length taken = along.times(r.n, r.d);
      least = least ? std::min(*least, taken) : taken;
      most = most ? std::max(*most, taken) : taken;
    }
    return truth_of(*most - *least > Length::sixty_fourths(16));
  });
}

FactValue cloth_short(const Known& k, std::string_view item) {
  const LayPlan* lay = lay_of(k, item);
  if (lay == nullptr || !lay->bought) return kUnknown;
  return *lay->bought < lay->needed || !lay->fits_bought;
}

template <class Get>
FactValue of_cloth(const Known& k, std::string_view item, const Get& get) {
  const Cloth* cloth = k.project.cloth(item);
  return cloth == nullptr ? kUnknown : get(*cloth);
}

}  // namespace

std::vector<FactRow> cloth_facts() {
  return {
      {"late cloth",
       [](K k, S item) {
         if (!k.plans.days) return kUnknown;
         for (const Delivery& d : k.plans.days->deliveries)
           if (same_name(d.what, item)) return FactValue(d.late);
         return FactValue(false);
       }},
      {"cloths",
       [](K k, S) { return failed(k, "cloths") ? kUnknown : FactValue(static_cast<std::int64_t>(k.project.cloths.size())); }},
      {"nap",
       [](K k, S) {
         return any_of_items(k.project.cloths, [](const Cloth& c) {
           return c.lay.known() ? truth_of(*c.lay == LayRule::one_way) : Truth::unknown;
         });
       }},
      {"silk", [](K k, S) { return kind_holds(k, "silk"); }},
      {"velvet", [](K k, S) { return kind_holds(k, "velvet"); }},
      {"never wet",
       [](K k, S) {
         return any_of_items(k.project.cloths,
                             [](const Cloth& c) { return c.care.known() ? truth_of(*c.care == "never wet") : Truth::unknown; });
       }},
      {"repeat",
       [](K k, S) {
         return failed(k, "cloths")
                    ? kUnknown
                    : any_of_items(k.project.cloths, [](const Cloth& c) { return truth_of(c.repeat.has_value()); });
       }},
      {"shrinkage differs", shrinkage_differs},
      {"used as", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return word_or_unknown(c.used_as); }); }},
      {"cloth care", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return or_unknown(c.care); }); }},
      {"shrunk already",
       [](K k, S item) {
         return of_cloth(k, item, [](const Cloth& c) { return FactValue(c.shrunk_already.known() && *c.shrunk_already); });
       }},
      {"cloth short", cloth_short},
      {"cloth weight", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return or_unknown(c.weight); }); }},
      {"cloth breadths", [](K k, S item) { return parts_cut(k, item, true, false); }},
      {"cloth pieces", [](K k, S item) { return parts_cut(k, item, true, true); }},
      {"other pieces", [](K k, S item) { return parts_cut(k, item, false, true); }},
  };
}

}  // namespace gownsheaf
