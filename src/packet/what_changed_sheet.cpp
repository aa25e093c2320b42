// What changed since an older packet: what is cut and no longer serves, what is done and must be done again, then old
// and new by what is to be done about them.
#include <algorithm>

#include "packet/changes_told.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

const Diagnostic* message_of(const PacketInput& input, const CutAlready& cut) {
  for (const Diagnostic& d : input.messages)
    if (d.code == "already-cut" && d.sentence == cut.sentence) return &d;
  return nullptr;
}

void cut_already(const PacketInput& input, const Changes& changes, Sheet& sheet) {
  std::vector<PairRow> rows;
  for (const CutAlready& cut : changes.cut) {
    if (cut.is_private && !input.set.private_shown) continue;
    const Diagnostic* message = message_of(input, cut);
    const bool decided = message != nullptr && !message->accepted_because.empty();
    const bool stops = cut.kind == CutAlready::Kind::too_small || cut.kind == CutAlready::Kind::wanted_more;
    PairRow row;
    row.left = (decided ? bold("Decided") : tag(stops ? Tag::hold : Tag::warning)) + condensed(" " + cut.piece);
    row.right = sentence_text(cut.sentence, true) + words(" ");
    row.right = row.right + (decided ? words("Decided, because " + ends_with_stop(message->accepted_because))
                                     : bold(capital(ends_with_stop(cut.what_to_do))));
    rows.push_back(std::move(row));
  }
  if (rows.empty()) return;
  rows.back().last = true;
  sheet.blocks.push_back(heading("Cut already"));
  for (PairRow& row : rows) sheet.blocks.push_back(block(std::move(row)));
}

void done_again(const PacketInput& input, const Changes& changes, Sheet& sheet) {
  if (changes.again.empty()) return;
  const FigureText text = figure_text_of(input);
  sheet.blocks.push_back(heading("Done, and to be done again"));
  for (const StepAgain& again : changes.again) {
    const PlannedStep* step = step_with_id(input.plans, again.id);
    if (step == nullptr) continue;
    PairRow row;
    row.left = tick_box() + bold(" " + capital(nth_step(step->number)));
    Text act = text.act(step->act);
    for (Inline& part : act) part.changed = false;  // the bar is for the other sheets
    row.right = act + words(" " + capital(again.because) + ".");
    row.last = &again == &changes.again.back();
    sheet.blocks.push_back(block(std::move(row)));
  }
  sheet.blocks.push_back(paragraph(
      words("When you mean to do a step again, take it out of the list of done ones; then the order of work shows it.")));
}

Table old_and_new(const std::vector<ChangeLine>& lines, bool far) {
  Table table;
  add_column(table, Column::Kind::words, "what", 0, false);
  add_column(table, Column::Kind::length, "now", far ? 104 : 84, true);
  add_column(table, Column::Kind::length, "was", far ? 104 : 84, false);
  add_column(table, Column::Kind::unit, "", far ? 40 : 30, false);
  std::string item;
  for (const ChangeLine& line : lines) {
    if (line.item != item || table.rows.empty()) {
      item = line.item;
      Row name;
      name.kind = Row::Kind::group;
      name.cells.push_back({words_in(Face::bold, capital(item))});
      table.rows.push_back(std::move(name));
    }
    Row row;
    row.cells.push_back({words(line.what)});
    const bool numbers = !line.now.plain().empty() || !line.was.plain().empty();
    row.cells.push_back({numbers ? measured(line.now) : Text{}});
    row.cells.push_back({numbers ? checking(line.was) : Text{}});
    row.cells.push_back({words_in(Face::condensed, line.unit)});
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace

Sheet what_changed_sheet(const PacketInput& input, const Changes& changes) {
  const bool private_shown = input.set.private_shown;
  const ShownIn in = figure_text_of(input).shown_in();
  Sheet sheet;
  sheet.section = Section::glance;
  sheet.answer = changes_answer(changes, in, private_shown);
  cut_already(input, changes, sheet);
  done_again(input, changes, sheet);
  const std::pair<Action, const char*> groups[] = {
      {Action::recut, "To cut"}, {Action::remark, "To mark"}, {Action::buy, "To buy"}, {Action::none, "Nothing to do for these"}};
  bool any = false;
  for (const auto& [action, title] : groups) {
    const std::vector<ChangeLine> lines = change_lines(changes, action, in, private_shown);
    if (lines.empty()) continue;
    any = true;
    if (action == Action::none && pinned_up(input)) {  // on the wall stands what is to be done
      sheet.blocks.push_back(paragraph(words("What changed and asks for nothing is on the sheet of the binder.")));
      continue;
    }
    sheet.blocks.push_back(heading(title));
    sheet.blocks.push_back(block(old_and_new(lines, pinned_up(input))));
  }
  if (private_shown && !changes.private_compared)
    sheet.blocks.push_back(paragraph(words("The older figures hold no measures of the body, so those are not compared.")));
  if (any)
    sheet.blocks.push_back(
        paragraph(words("On the other sheets a bar in the left margin stands beside every line that is changed.")));
  return sheet;
}

}  // namespace gownsheaf
