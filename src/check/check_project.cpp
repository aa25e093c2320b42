// Entry to Project: the walk over all keys first, then section by section.
#include <algorithm>

#include "check/check.h"
#include "check/sections.h"

namespace gownsheaf {

namespace {

bool has_part(const Project& project, PartOf part) {
  return std::any_of(project.pieces.begin(), project.pieces.end(),
                     [&](const Piece& p) { return p.part_of.known() && *p.part_of == part; });
}

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
  if (failed("cloths")) project.cloths.clear();
  if (failed("notions")) project.notions.clear();
  if (failed("pieces")) project.pieces.clear();
  if (failed("seams")) project.seams.clear();
  if (failed("edges")) project.edges.clear();
  if (failed("rounds")) project.rounds.clear();
  if (failed("pleats")) project.pleats.clear();
  if (failed("skirt")) project.skirt.reset();
  if (failed("work")) project.work = {};
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
  if (failed.contains("allowances")) failed.insert("pieces");  // their sizes rest on it
  return failed;
}

}  // namespace

void guess_from_pieces(Project& project) {
  if (!project.garment.known()) {
    const bool bodice = has_part(project, PartOf::bodice), skirt = has_part(project, PartOf::skirt);
    const Garment guess = bodice && skirt                            ? Garment::dress
                          : has_part(project, PartOf::corset)        ? Garment::corset
                          : bodice                                   ? Garment::bodice
                          : skirt                                    ? Garment::skirt
                          : has_part(project, PartOf::petticoat)     ? Garment::petticoat
                                                                     : Garment::other;
    project.garment = Given<Garment>::guessed(guess, "the parts its pieces belong to");
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
    project.lining_sewn_in = Given<std::string>::guessed(lined ? "flat" : "none", lined ? "a piece has a lining" : "no piece has a lining");
    if (lined) project.lining_sewn_in.label = 'a';
  }
}

Project check_project(const Entry& source, const Templates& templates, Diagnostics& diag) {
  Project project;
  project.file = source.at.file;
  if (source.kind != Entry::Kind::block) return project;
  for (const Entry& section : source.children)
    if (section.text != kNone) project.sections_given.insert(section.key);

  const KnownNames names(source, templates);
  KeyCheck walk(names, diag);
  walk.whole_file(source);
  project.to_measure = walk.to_measure();

  const Filling file{Item(&source, ""), names, templates, walk.units(), diag};
  fill_head(file, project);
  fill_measures(file, project);
  fill_wearer(file, project);
  fill_taken(file, project);
  fill_finished_girths(file, project);
  fill_cloths(file, project);
  fill_notions(file, project);
  fill_skirt(file, project);
  fill_pieces(file, project);
  fill_seams_and_edges(file, project);
  fill_rounds(file, project);
  fill_pleats(file, project);
  fill_fittings(file, project);
  fill_work(file, project);
  fill_print(file, project);
  guess_from_pieces(project);

  project.failed_sections = failed_sections(source, diag);
  empty_failed(project);
  return project;
}

}  // namespace gownsheaf
