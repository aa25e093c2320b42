// packet-templates: how closing edges are built.
#include "check/template_block.h"

namespace gownsheaf {
namespace {

bool sound_text(const TemplateBlock& row, std::string_view key, Diagnostics& diag, int* figures) {
  const Entry* e = row.entry(key);
  if (e == nullptr) return true;
  const ReferenceCount count = check_references(*e, "closure", false, diag);
  *figures = count.figures;
  return count.faults == 0;
}

ClosingBand band_of(const TemplateBlock& row) {
  ClosingBand band;
  band.name = row.text("band");
  band.words = row.text("words");
  band.pitch = row.length("pitch").value_or(Length{});
  band.edge = row.text("edge");
  band.rows = row.text("rows") == "2" ? 2 : 1;
  band.bones = row.text("bones");
  band.source = row.text("source");
  band.label = row.label();
  return band;
}

void read_note(const TemplateBlock& row, ClosingRules& rules, Diagnostics& diag) {
  int figures = 0, none = 0;
  ClosingNote note;
  note.fasten = row.text("fasten");
  note.from = row.text("from");
  note.about = row.text("about");
  note.say = row.text("say");
  note.plainly = row.text("plainly");
  note.source = row.text("source");
  note.label = row.label();
  const bool sound = sound_text(row, "say", diag, &figures) && sound_text(row, "plainly", diag, &none);
  if (sound && figures > 0 && note.plainly.empty())
    row.error("plainly-missing", "say", "This note prints a figure that a project may not have.",
              "add `plainly:` with words that need no figure");
  rules.notes.push_back(std::move(note));
}

}  // namespace

void read_closing_rules(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "closing rules", diag);
  for (const Entry* e : block.blocks("bands")) {
    const TemplateBlock row(*e, "closing band", diag);
    if (names.fresh("band", row.text("band"), row.at("band"), diag)) into.closing.bands.push_back(band_of(row));
  }
  for (const Entry* e : block.blocks("carried")) {
    const TemplateBlock row(*e, "carried", diag);
    if (names.fresh("way to carry", row.text("hangs from"), row.at("hangs from"), diag))
      into.closing.carried.push_back({row.text("hangs from"), row.text("say"), row.text("source"), row.label()});
  }
  for (const Entry* e : block.blocks("notes")) read_note(TemplateBlock(*e, "closing note", diag), into.closing, diag);
  for (const Entry* e : block.blocks("inspect")) {
    const TemplateBlock row(*e, "inspect", diag);
    into.closing.inspect.push_back({row.text("say"), row.texts("fasten")});
  }
}

}  // namespace gownsheaf
