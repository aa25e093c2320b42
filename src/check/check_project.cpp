// Entry to Project: the walk over all keys first, then section by section.
#include <algorithm>

#include "check/check.h"
#include "check/sections.h"

namespace gownsheaf {

namespace {

// A section with an error is left empty, so that no calculator works on half of it.
void empty_failed(Project& project) {
  const auto failed = [&](const char* section) { return project.failed_sections.contains(section); };
  if (failed("measures")) {
    project.measures = {};
    project.taken.reset();
  }
  if (failed("ease")) project.ease.clear();
  if (failed("wearer")) project.wearer = {};
  if (failed("worn for")) project.worn_for.clear();
  if (failed("still to make")) project.still_to_make.clear();
  if (failed("finished girths")) project.finished_girths.clear();
  if (failed("fittings")) project.fittings.clear();
  if (failed("accept")) project.accept.clear();
  if (failed("rules")) project.rules = {};
  if (failed("cloths")) project.cloths.clear();
  if (failed("notions")) project.notions.clear();
  if (failed("size table") || failed("size")) {
    project.size_table.reset();
    project.size_choice.reset();
  }
  if (failed("pieces")) {
    project.pieces.clear();
    project.sized_pieces.clear();
  }
  if (failed("seams")) project.seams.clear();
  if (failed("edges")) project.edges.clear();
  if (failed("rounds")) project.rounds.clear();
  if (failed("pleats")) project.pleats.clear();
  if (failed("closures")) project.closures.clear();
  if (failed("plackets")) project.plackets.clear();
  if (failed("pockets")) project.pockets.clear();
  if (failed("skirt")) project.skirt.reset();
  if (failed("drapery")) project.drapery.clear();
  if (failed("piping")) project.piping.clear();
  if (failed("binding")) project.binding.clear();
  if (failed("trims")) project.trims.clear();
  if (failed("strain")) project.strain.clear();
  if (failed("bones")) project.bones.clear();
  if (failed("bone stock")) project.bone_stock.clear();
  if (failed("work")) project.work = {};
  if (failed("pace")) project.pace = {};
}

// Sections in which something is wrong; the reader's own errors are placed by their lines.
std::set<std::string> failed_sections(const Entry& root, const Diagnostics& diag) {
  std::set<std::string> failed;
  for (const Diagnostic& d : diag.in_order_found()) {
    if (d.severity != Severity::error || d.at.file != root.at.file) continue;
    if (!d.section.empty()) {
      failed.insert(d.section);
      continue;
    }
    const Entry* in = nullptr;
    for (const Entry& section : root.children)
      if (section.key_at.line <= d.at.line) in = &section;
    if (in != nullptr) failed.insert(in->key);
  }
  for (const char* rested_on : {"allowances", "size table", "size"})  // their sizes rest on these
    if (failed.contains(rested_on)) failed.insert("pieces");
  return failed;
}

}  // namespace

std::optional<Garment> garment_of(const std::set<PartOf>& parts) {
  const bool bodice = parts.contains(PartOf::bodice), skirt = parts.contains(PartOf::skirt);
  if (bodice && skirt) return Garment::dress;
  if (parts.contains(PartOf::corset)) return Garment::corset;
  if (bodice) return Garment::bodice;
  if (skirt) return Garment::skirt;
  if (parts.contains(PartOf::petticoat)) return Garment::petticoat;
  return {};
}

void guess_from_pieces(Project& project) {
  if (!project.garment.known()) {
    std::set<PartOf> parts;
    for (const Piece& piece : project.pieces)
      if (piece.part_of.known()) parts.insert(*piece.part_of);
    project.garment = Given<Garment>::guessed(garment_of(parts).value_or(Garment::other), "the parts its pieces belong to");
  }
  if (!project.joined_at_waist.known())
    project.joined_at_waist =
        Given<bool>::guessed(*project.garment == Garment::dress, "its kind: " + std::string(word_for(*project.garment)));

  for (Cloth& cloth : project.cloths) {
    if (cloth.used_as.known()) continue;
    for (const Piece& piece : project.pieces)
      if (!piece.from.empty() && piece.from.front() == cloth.named.name && !cloth.used_as.known())
        cloth.used_as = Given<UsedAs>::guessed(UsedAs::outer, "the first cloth of " + piece.named.name, piece.from_at);
  }
  if (!project.lining_sewn_in.known()) {
    bool lined = false;
    for (const Piece& piece : project.pieces)
      for (std::size_t i = 1; i < piece.from.size(); ++i) {
        const Cloth* cloth = project.cloth(piece.from[i]);
        lined = lined || (cloth != nullptr && cloth->used_as.known() && *cloth->used_as == UsedAs::lining);
      }
    project.lining_sewn_in =
        Given<std::string>::guessed(lined ? "flat" : "none", lined ? "a piece has a lining" : "no piece has a lining");
    if (lined) project.lining_sewn_in.label = 'a';
  }
}

Project check_project(const Entry& source, const Templates& templates, Diagnostics& diag,
                      const std::optional<std::string>& size_option, DrawingReader reader) {
  Project project;
  project.file = source.at.file;
  if (source.kind != Entry::Kind::block) return project;
  for (const Entry& section : source.children)
    if (section.text != kNone) project.sections_given.insert(section.key);

  const KnownNames names(source, templates);
  KeyCheck walk(names, diag);
  walk.whole_file(source);
  project.to_measure = walk.to_measure();

  Drawings drawings(std::move(reader), diag);
  const Filling file{Item(&source, ""), names, templates, walk.units(), diag, size_option, &drawings};
  fill_head(file, project);
  fill_rules(file, project);
  fill_measures(file, project);
  fill_wearer(file, project);
  fill_taken(file, project);
  fill_finished_girths(file, project);
  fill_cloths(file, project);
  fill_notions(file, project);
  fill_skirt(file, project);
  fill_size_table(file, project);
  fill_pieces(file, project);
  fill_seams_and_edges(file, project);
  fill_rounds(file, project);
  fill_pleats(file, project);
  fill_closures(file, project);
  fill_plackets(file, project);
  fill_pockets(file, project);
  fill_bone_stock(file, project);
  fill_bones(file, project);
  fill_strain(file, project);
  fill_drapery(file, project);
  fill_piping(file, project);
  fill_binding(file, project);
  fill_trims(file, project);
  fill_fittings(file, project);
  judge_measures_day(file, project);
  fill_work(file, project);
  fill_pace(file, project);
  fill_print(file, project);
  guess_from_pieces(project);

  project.failed_sections = failed_sections(source, diag);
  empty_failed(project);
  add_pieces_made_for(file, project);
  return project;
}

}  // namespace gownsheaf
