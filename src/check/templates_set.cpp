#include "check/template_block.h"

namespace gownsheaf {
namespace {

SheetEntry sheet_of(const Entry& e, Diagnostics& diag) {
  const TemplateBlock block(e, "sheet", diag);
  SheetEntry sheet;
  sheet.at = e.key_at.line > 0 ? e.key_at : e.at;
  if (const Entry* name = block.entry("sheet")) sheet.at = name->at;
  sheet.sheet = block.text("sheet");
  sheet.title = block.text("title");
  sheet.for_each = block.text("for each");
  sheet.when = block.condition("when");
  sheet.one_page = !block.text("keep").empty();
  check_fact_items(sheet.when, sheet.for_each, block.at("when"), diag);
  if (const Entry* title = block.entry("title"))
    if (check_references(*title, sheet.for_each, true, diag).figures > 0)
      block.error("unknown-figure", "title", "A title holds names, no figures.", "{title}, {run} or {cloth}");
  if (const Entry* steps = block.entry("steps")) {
    const std::string_view written = steps->text;
    const auto n = written.substr(0, 5) == "next " ? read_count(written.substr(5), "steps") : read_count("", "steps");
    if (sheet.sheet != "order of work")
      block.error("wrong-place", "steps", "`steps` is for the order of work, not for `" + sheet.sheet + "`.", "take it out");
    else if (n.ok() && n.value() >= 1 && n.value() <= 100) sheet.next_steps = static_cast<int>(n.value());
    else block.error("number-form", "steps", "`steps: " + steps->text + "` names no number of steps.", "steps: next 8");
  }
  return sheet;
}

}  // namespace

void read_packet_set(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "set", diag);
  PacketSet set;
  set.name = block.text("set");
  const auto reads_from = block.length("reads from");
  set.reads_from = reads_from.value_or(Length{});
  if (reads_from && (set.reads_from < Length::cm(20) || set.reads_from > Length::cm(200)))
    block.error("out-of-range", "reads from", "A sheet is read from between 20 cm and 2 m.", "reads from: 60 cm");
  set.private_shown = block.text("private") == "shown";
  set.shared = block.text("shared") == "yes";
  if (set.shared && set.private_shown)
    block.error("wrong-place", "shared", "A set that is given to others shows nothing private.", "private: hidden");
  for (const Entry* e : block.blocks("sheets")) {
    SheetEntry sheet = sheet_of(*e, diag);
    set.contents_page = set.contents_page || sheet.sheet == "contents";
    set.sheets.push_back(std::move(sheet));
  }
  if (const Entry* sheets = block.entry("sheets"); sheets != nullptr && set.sheets.empty())
    block.error("value-empty", "sheets", "`sheets` names no sheet.", "sheets: [{ sheet: at a glance, title: \"{title}\" }]");
  if (!set.name.empty() && names.fresh("set", set.name, block.at("set"), diag)) into.sets.push_back(std::move(set));
}

}  // namespace gownsheaf
