// Facts of the bodice: linings, seams, edges, bones.
#include "calculate/fact_values.h"
#include "calculate/step_drivers.h"

namespace gownsheaf {
namespace {

using K = const Known&;
using S = std::string_view;

FactValue lining(const Known& k, std::string_view) {
  if (k.project.lining_sewn_in.known()) return *k.project.lining_sewn_in;
  for (const PartOf part : {PartOf::bodice, PartOf::corset}) {
    const FactValue lined = part_cut_from(k, part, UsedAs::lining);
    const bool* b = std::get_if<bool>(&lined);
    if (b == nullptr || *b) return kUnknown;
  }
  return std::string("none");
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

// How the first edge of this kind is finished. A hemmed edge is turned.
FactValue edge_finish(const Known& k, std::string_view kind) {
  if (failed(k, "edges")) return kUnknown;
  // A piping or binding that goes along it says it as well as the edge does.
  const auto goes_along = [](const std::vector<Piping>& all, const std::string& edge) {
    return std::any_of(all.begin(), all.end(), [&](const Piping& p) {
      return std::any_of(p.along.begin(), p.along.end(), [&](const std::string& name) { return same_name(name, edge); });
    });
  };
  for (const EdgeLine& e : k.project.edges) {
    if (e.kind != kind) continue;
    if (!e.finish.empty()) return std::string(e.finish == "hemmed" ? "turned" : e.finish);
    if (goes_along(k.project.piping, e.named.name)) return std::string("piped");
    if (goes_along(k.project.binding, e.named.name)) return std::string("bound");
  }
  return kUnknown;
}

FactValue bones(const Known& k, std::string_view) {
  if (failed(k, "bones")) return kUnknown;
  std::int64_t n = 0;
  for (const Bone& b : k.project.bones) n += b.number;
  return n;
}

// As it is cut: the written length, or the one worked out. One that is not known might be the longest.
FactValue longest_bone(const Known& k, std::string_view) {
  if (failed(k, "bones") || k.project.bones.empty()) return kUnknown;
  Length most;
  for (const Bone& b : k.project.bones) {
    const auto cut = b.bone_length.known() ? std::optional<Length>(*b.bone_length)
                                           : k.figures.length("bones/" + b.named.name + "/bone length");
    if (!cut) return kUnknown;
    most = std::max(most, *cut);
  }
  return most;
}

FactValue bones_cross_waist(const Known& k, std::string_view) {
  if (failed(k, "bones")) return kUnknown;
  const bool no_waist_seam = k.project.joined_at_waist.known() && !*k.project.joined_at_waist;
  return any_of_items(k.project.bones, [&](const Bone& b) {
    if (b.crosses_waist_seam.known()) return truth_of(*b.crosses_waist_seam);
    return no_waist_seam ? Truth::no : Truth::unknown;
  });
}

FactValue waist_stay(const Known& k, std::string_view) {
  if (failed(k, "strain") || k.project.strain.empty()) return kUnknown;
  return any_of_items(k.project.strain, [](const Strain& s) { return truth_of(s.stay.has_value()); });
}

// A seam is sewn by machine where nothing else is written. Darts are stitched by themselves.
FactValue sewn(const Known& k, bool by_hand, bool skirt) {
  if (failed(k, "seams")) return kUnknown;
  bool some = false;
  for (const Seam& s : k.project.seams) {
    if (s.kind == "dart" || of_the_skirt(s, k.project) != skirt) continue;
    if (s.by_hand == by_hand) return true;
    some = true;
  }
  return !by_hand && !some;
}

FactValue piped_seams(const Known& k, std::string_view) {
  if (failed(k, "piping")) return kUnknown;
  std::int64_t n = 0;
  for (const Piping& p : k.project.piping)
    for (const std::string& name : p.along)
      if (const Seam* seam = k.project.seam(name)) n += seam->number;
  return n;
}

}  // namespace

std::vector<FactRow> bodice_facts() {
  return {
      {"lining", lining},
      {"interlined bodice", [](K k, S) { return part_cut_from(k, PartOf::bodice, UsedAs::interlining); }},
      {"legs lined", [](K k, S) { return part_cut_from(k, PartOf::leg, UsedAs::lining); }},
      {"sleeves lined", [](K k, S) { return part_cut_from(k, PartOf::sleeve, UsedAs::lining); }},
      {"darts", darts},
      {"princess seams", princess_seams},
      {"bias edge", bias_edge},
      {"boned", [](K k, S) { return section_there(k, "bones"); }},
      {"hand seams", [](K k, S) { return sewn(k, true, false); }},
      {"machine seams", [](K k, S) { return sewn(k, false, false); }},
      {"skirt sewn by hand", [](K k, S) { return sewn(k, true, true); }},
      {"piped seams", piped_seams},
      {"piped length",
       [](K k, S) {
         const auto length = k.figures.length("garment/piped");
         return length ? FactValue(*length) : kUnknown;
       }},
      {"piping", [](K k, S) { return section_there(k, "piping"); }},
      {"binding", [](K k, S) { return section_there(k, "binding"); }},
      {"neck edge", [](K k, S) { return edge_finish(k, "neck"); }},
      {"armhole edge", [](K k, S) { return edge_finish(k, "armhole"); }},
      {"bones", bones},
      {"longest bone", longest_bone},
      {"bones on seams",
       [](K k, S) {
         return failed(k, "bones") ? kUnknown
                                   : any_of_items(k.project.bones, [](const Bone& b) { return truth_of(!b.on_seam.empty()); });
       }},
      {"bones cross waist", bones_cross_waist},
      {"waist stay", waist_stay},
  };
}

}  // namespace gownsheaf
