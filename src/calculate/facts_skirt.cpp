// Facts of the skirt, its hem and its pleats.
#include "calculate/fact_values.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

FactValue skirt_breadths(const Known& k, std::string_view) {
  if (failed(k, "pieces")) return kUnknown;
  std::int64_t n = 0;
  for (const LayPlan& lay : k.plans.lays)
    for (const CutPiece& cut : lay.cut) {
      const Piece* p = k.project.piece(cut.as_named());
      if (!cut.full_width || p == nullptr || !p->part_of.known() ||
          (*p->part_of != PartOf::skirt && *p->part_of != PartOf::petticoat))
        continue;
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

FactValue hem_has(const Known& k, std::string SkirtHem::*what) {
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
    if (same_name(plan.run, item) && !plan.marks.empty() && plan.finished > Length{})
      return Ratio::of((plan.flat - plan.plus).in_ticks(), plan.finished.in_ticks());
  return kUnknown;
}

FactValue skirt_weight(const Known& k, std::string_view) {
  if (const Figure* f = k.figures.find("skirt/weight"))
    if (const auto* mass = std::get_if<Mass>(&f->value)) return *mass;
  return kUnknown;
}

// The first closing whose strain says it; a guess counts, as it does for the load.
FactValue skirt_hangs_from(const Known& k, std::string_view) {
  if (failed(k, "strain")) return kUnknown;
  for (const Strain& s : k.project.strain)
    if (s.skirt_hangs_from.known()) return *s.skirt_hangs_from;
  return kUnknown;
}

// A seam open along all its length is closed when the pleats are laid; an opening in it, for a placket say, stays.
FactValue seam_left_open(const Known& k, std::string_view) {
  if (failed(k, "seams")) return kUnknown;
  return any_of_items(k.project.seams, [](const Seam& s) {
    return truth_of(s.left_open.known() && s.length.known() && *s.left_open == *s.length);
  });
}

// Told by the word in a piece's name, as the part it belongs to is.
FactValue flounces(const Known& k, std::string_view) {
  if (failed(k, "pieces")) return kUnknown;
  return any_of_items(k.project.pieces, [](const Piece& p) {
    for (const char* word : {"flounce", "flounces", "frill", "ruffle"})
      if (holds_word(p.named.name, word)) return Truth::yes;
    return Truth::no;
  });
}

FactValue waistband(const Known& k, std::string_view) {
  const FactValue hangs = skirt_hangs_from(k, "");
  if (const auto* word = std::get_if<std::string>(&hangs); word != nullptr && *word == "own band") return true;
  if (k.project.joined_at_waist.known() && *k.project.joined_at_waist) return false;
  return has_part(k, PartOf::band, {});
}

}  // namespace

std::vector<FactRow> skirt_facts() {
  return {
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
      {"seam left open", seam_left_open},
      {"flounces", flounces},
      {"pleats", pleats},
      {"gauging", gauging},
      {"pleat kind",
       [](K k, S item) {
         const PleatRun* run = k.project.run(item);
         return run == nullptr ? kUnknown : FactValue(std::string(word_for(run->kind)));
       }},
      {"pleat plies", pleat_plies},
      {"skirt weight", skirt_weight},
      {"skirt hangs from", skirt_hangs_from},
      {"waistband", waistband},
  };
}

}  // namespace gownsheaf
