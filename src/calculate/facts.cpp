// Each fact is one small function, named in one table. A section that did not check clean, or a value that is not there,
// makes a fact unknown.
#include "calculate/facts.h"

#include <algorithm>
#include <map>

#include "calculate/facts_safety.h"

namespace gownsheaf {
namespace {

struct Known {
  const Project& project;
  const Figures& figures;
  const Plans& plans;
};
const FactValue kUnknown{};

bool failed(const Known& k, const std::string& section) { return k.project.failed_sections.count(section) > 0; }
bool given(const Known& k, const std::string& section) { return k.project.sections_given.count(section) > 0; }

template <class T>
FactValue or_unknown(const Given<T>& value) {
  return value.known() ? FactValue(*value) : kUnknown;
}
template <class T>
FactValue word_or_unknown(const Given<T>& value) {
  return value.known() ? FactValue(std::string(word_for(*value))) : kUnknown;
}

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
Truth truth_of(bool b) { return b ? Truth::yes : Truth::no; }

bool garment_is(const Known& k, std::initializer_list<Garment> any) {
  return k.project.garment.known() && std::find(any.begin(), any.end(), *k.project.garment) != any.end();
}

// Pieces settle it; before there are pieces the kind of garment does, where it can.
FactValue has_part(const Known& k, PartOf part, std::initializer_list<Garment> garments) {
  if (failed(k, "pieces")) return kUnknown;
  if (k.project.pieces.empty()) return garment_is(k, garments) ? FactValue(true) : kUnknown;
  return any_of_items(k.project.pieces, [&](const Piece& p) {
    return p.part_of.known() ? truth_of(*p.part_of == part) : Truth::unknown;
  });
}

// Some piece of this part is cut, alone or as a layer, from a cloth used so.
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

FactValue kind_holds(const Known& k, std::string_view word) {
  if (failed(k, "cloths")) return kUnknown;
  return any_of_items(k.project.cloths, [&](const Cloth& c) {
    return c.kind.known() ? truth_of(holds_word(*c.kind, word)) : Truth::unknown;
  });
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
        if (same_name(cut.piece, p.named.name)) along = std::max(along, cut.along);
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

FactValue sides_differ(const Known& k, std::string_view) {
  if (failed(k, "measures")) return kUnknown;
  for (const auto& [name, m] : k.project.measures.girths_and_lengths)
    if (m.left.known() && m.right.known() && *m.left != *m.right) return true;
  return false;
}

FactValue lining(const Known& k, std::string_view) {
  if (k.project.lining_sewn_in.known()) return *k.project.lining_sewn_in;
  const FactValue lined = part_cut_from(k, PartOf::bodice, UsedAs::lining);
  const bool* b = std::get_if<bool>(&lined);
  return b != nullptr && !*b ? FactValue(std::string("none")) : kUnknown;
}

FactValue darts(const Known& k, std::string_view) {
  if (failed(k, "seams") || !given(k, "seams")) return kUnknown;
  std::int64_t n = 0;
  for (const Seam& s : k.project.seams)
    if (s.kind == "dart") n += s.number;
  return n;
}

FactValue princess_seams(const Known& k, std::string_view) {
  if (failed(k, "seams") || !given(k, "seams")) return kUnknown;
  return any_of_items(k.project.seams, [](const Seam& s) { return truth_of(s.kind == "princess"); });
}

// A body piece has a neck or an armhole: without edges written it is open, not no.
FactValue bias_edge(const Known& k, std::string_view) {
  if (failed(k, "pieces") || failed(k, "edges")) return kUnknown;
  for (const EdgeLine& e : k.project.edges)
    if (e.kind == "neck" || e.kind == "armhole") return true;
  for (const Piece& p : k.project.pieces)
    if ((p.grain.known() && *p.grain == Grain::bias) || (p.lay.known() && *p.lay == LayRule::bias)) return true;
  const FactValue body = has_part(k, PartOf::bodice, {Garment::bodice, Garment::dress});
  const bool* b = std::get_if<bool>(&body);
  return b != nullptr && !*b ? FactValue(false) : kUnknown;
}

FactValue skirt_breadths(const Known& k, std::string_view) {
  if (failed(k, "pieces")) return kUnknown;
  std::int64_t n = 0;
  for (const LayPlan& lay : k.plans.lays)
    for (const CutPiece& cut : lay.cut) {
      const Piece* p = k.project.piece(cut.piece);
      if (!cut.full_width || p == nullptr || !p->part_of.known() || (*p->part_of != PartOf::skirt && *p->part_of != PartOf::petticoat)) continue;
      const Cloth* cloth = k.project.cloth(cut.cloth);
      if (cloth != nullptr && cloth->used_as.known() && *cloth->used_as == UsedAs::outer) n += cut.copies;
    }
  return n;
}

bool straight(const Known& k) {
  const FactValue n = skirt_breadths(k, "");
  const auto* count = std::get_if<std::int64_t>(&n);
  return count != nullptr && *count > 0;
}

// A skirt of full breadths says by itself that it is straight, and so levelled at the waist.
FactValue skirt_kind(const Known& k, std::string_view) {
  if (k.project.skirt && k.project.skirt->kind.known()) return *k.project.skirt->kind;
  return straight(k) ? FactValue(std::string("straight breadths")) : kUnknown;
}
FactValue skirt_levelled_at(const Known& k, std::string_view) {
  if (k.project.skirt && k.project.skirt->levelled_at.known()) return *k.project.skirt->levelled_at;
  const FactValue kind = skirt_kind(k, "");
  const auto* word = std::get_if<std::string>(&kind);
  if (word == nullptr) return kUnknown;
  return std::string(*word == "straight breadths" ? "waist" : "hem");
}

FactValue hem_depth(const Known& k, std::string_view) {
  if (k.project.skirt && k.project.skirt->hem && k.project.skirt->hem->depth.known()) return *k.project.skirt->hem->depth;
  const auto length = k.figures.length("skirt/hem depth");
  return length ? FactValue(*length) : kUnknown;
}
FactValue hem_round(const Known& k, std::string_view) {
  const auto length = k.figures.length("skirt/hem round");
  return length ? FactValue(*length) : kUnknown;
}

FactValue hem_has(const Known& k, std::string SkirtHem::* what) {
  if (failed(k, "skirt")) return kUnknown;
  if (!k.project.skirt || !k.project.skirt->hem) return false;
  const std::string& name = (*k.project.skirt->hem).*what;
  return !name.empty() && name != "none";
}

FactValue pleats(const Known& k, std::string_view) {
  if (failed(k, "pleats")) return kUnknown;
  return any_of_items(k.project.pleats, [](const PleatRun& r) { return truth_of(r.kind != PleatKind::plain); });
}
FactValue gauging(const Known& k, std::string_view) {
  if (failed(k, "pleats")) return kUnknown;
  return any_of_items(k.project.pleats, [](const PleatRun& r) { return truth_of(r.kind == PleatKind::cartridge); });
}
FactValue pleat_plies(const Known& k, std::string_view item) {
  for (const PleatPlan& plan : k.plans.pleats)
    if (same_name(plan.run, item) && plan.visible > Length{})
      return Ratio::of(plan.visible.in_ticks() + 2 * plan.depth.in_ticks(), plan.visible.in_ticks());
  return kUnknown;
}

template <class Get>
FactValue of_cloth(const Known& k, std::string_view item, const Get& get) {
  const Cloth* cloth = k.project.cloth(item);
  return cloth == nullptr ? kUnknown : get(*cloth);
}

using Fn = FactValue (*)(const Known&, std::string_view);
using K = const Known&;
using S = std::string_view;

const std::map<std::string_view, Fn>& table() {
  static const std::map<std::string_view, Fn> facts{
      {"garment kind", [](K k, S) { return word_or_unknown(k.project.garment); }},
      {"bodice", [](K k, S) { return has_part(k, PartOf::bodice, {Garment::dress, Garment::bodice}); }},
      {"skirt", [](K k, S) { return has_part(k, PartOf::skirt, {Garment::dress, Garment::skirt}); }},
      {"sleeves", [](K k, S) { return has_part(k, PartOf::sleeve, {}); }},
      {"collar", [](K k, S) { return has_part(k, PartOf::collar, {}); }},
      {"band", [](K k, S) { return has_part(k, PartOf::band, {}); }},
      {"petticoat", [](K k, S) { return has_part(k, PartOf::petticoat, {Garment::petticoat}); }},
      {"corset", [](K k, S) { return has_part(k, PartOf::corset, {Garment::corset}); }},
      {"joined at waist", [](K k, S) { return or_unknown(k.project.joined_at_waist); }},
      {"fitted", fitted},
      {"sides differ", sides_differ},
      {"waist ease", waist_ease},
      {"cloths", [](K k, S) { return failed(k, "cloths") ? kUnknown : FactValue(static_cast<std::int64_t>(k.project.cloths.size())); }},
      {"nap", [](K k, S) {
         return any_of_items(k.project.cloths, [](const Cloth& c) {
           return c.lay.known() ? truth_of(*c.lay == LayRule::one_way) : Truth::unknown; });
       }},
      {"silk", [](K k, S) { return kind_holds(k, "silk"); }},
      {"velvet", [](K k, S) { return kind_holds(k, "velvet"); }},
      {"never wet", [](K k, S) {
         return any_of_items(k.project.cloths, [](const Cloth& c) {
           return c.care.known() ? truth_of(*c.care == "never wet") : Truth::unknown; });
       }},
      {"repeat", [](K k, S) {
         return failed(k, "cloths") ? kUnknown : any_of_items(k.project.cloths, [](const Cloth& c) { return truth_of(c.repeat.has_value()); });
       }},
      {"shrinkage differs", shrinkage_differs},
      {"used as", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return word_or_unknown(c.used_as); }); }},
      {"cloth care", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return or_unknown(c.care); }); }},
      {"shrunk already", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) {
         return FactValue(c.shrunk_already.known() && *c.shrunk_already); }); }},
      {"cloth short", cloth_short},
      {"cloth weight", [](K k, S item) { return of_cloth(k, item, [](const Cloth& c) { return or_unknown(c.weight); }); }},
      {"cloth breadths", [](K k, S item) { return parts_cut(k, item, true, false); }},
      {"cloth pieces", [](K k, S item) { return parts_cut(k, item, true, true); }},
      {"other pieces", [](K k, S item) { return parts_cut(k, item, false, true); }},
      {"lining", lining},
      {"interlined bodice", [](K k, S) { return part_cut_from(k, PartOf::bodice, UsedAs::interlining); }},
      {"darts", darts},
      {"princess seams", princess_seams},
      {"bias edge", bias_edge},
      {"boned", [](K k, S) { return section_there(k, "bones"); }},
      {"piping", [](K k, S) { return section_there(k, "piping"); }},
      {"binding", [](K k, S) { return section_there(k, "binding"); }},
      {"trims", [](K k, S) { return section_there(k, "trims"); }},
      {"skirt kind", skirt_kind},
      {"skirt breadths", skirt_breadths},
      {"skirt interlined", [](K k, S) { return part_cut_from(k, PartOf::skirt, UsedAs::interlining); }},
      {"skirt levelled at", skirt_levelled_at},
      {"hem depth", hem_depth},
      {"hem round", hem_round},
      {"floor clearance", [](K k, S) { return k.project.skirt ? or_unknown(k.project.skirt->clears_floor_by) : kUnknown; }},
      {"hem stiffening", [](K k, S) { return hem_has(k, &SkirtHem::stiffened_with); }},
      {"hem facing", [](K k, S) { return hem_has(k, &SkirtHem::faced_with); }},
      {"hem braid", [](K k, S) { return hem_has(k, &SkirtHem::braid); }},
      {"placket", [](K k, S) { return section_there(k, "plackets"); }},
      {"pocket", [](K k, S) { return section_there(k, "pockets"); }},
      {"pleats", pleats},
      {"gauging", gauging},
      {"pleat kind", [](K k, S item) {
         const PleatRun* run = k.project.run(item);
         return run == nullptr ? kUnknown : FactValue(std::string(word_for(run->kind)));
       }},
      {"pleat plies", pleat_plies},
  };
  return facts;
}

}  // namespace

std::vector<std::string_view> facts_worked_out() {
  std::vector<std::string_view> names;
  for (const auto& [name, fn] : table()) names.push_back(name);
  for (const auto& [name, fn] : safety_facts()) names.push_back(name);
  std::sort(names.begin(), names.end());
  return names;
}

FactLookup facts_of(const Project& project, const Figures& figures, const Plans& plans) {
  return [&project, &figures, &plans](std::string_view fact, std::string_view item) -> FactValue {
    const auto at = table().find(fact);
    if (at != table().end()) return at->second(Known{project, figures, plans}, item);
    const auto safety = safety_facts().find(fact);
    return safety == safety_facts().end() ? kUnknown : safety->second(project, item);
  };
}

}  // namespace gownsheaf
