// One gate, one page: what is put on, what is looked at and how, what is right, room for what was found, what to do then.
#include <algorithm>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

// Words, lengths of the words set as lengths to measure, and figures.
Text said(const Say& say, const FigureText& text, Face face = Face::regular) {
  Text out;
  for (const SayPart& part : say) {
    if (part.figure.empty()) {
      out = out + sentence_text(part.words, true, face);
      continue;
    }
    const Figure* f = text.figures().find(part.figure);
    const bool length = f != nullptr && std::holds_alternative<Length>(f->value);
    out = out + (length ? text.measured(part.figure) : words_in(Face::bold, text.value(part.figure)));
  }
  return out;
}

bool has_private(const Say& say, const Figures& figures) {
  return std::any_of(say.begin(), say.end(), [&](const SayPart& part) {
    const Figure* f = part.figure.empty() ? nullptr : figures.find(part.figure);
    return f != nullptr && f->is_private;
  });
}

const Say& shown_of(const PacketInput& input, const Say& whole, const Say& plainly) {
  return !input.set.private_shown && has_private(whole, input.figures) ? plainly : whole;
}

Text new_line() {
  Inline one;
  one.kind = Inline::Kind::line_break;
  return {one};
}

Text answer(const FittingPlan& plan) {
  if (plan.next_step > 0)
    return words(capital(nth_step(plan.next_step)) + " and all that follows from it wait until this page is signed.");
  if (plan.step > 0) return words("This is " + nth_step(plan.step) + "; it is over when this page is signed.");
  return words("Go down the page; write down what is found, not what is hoped.");
}

// Ticked before anyone looks: what is missing under the garment makes every reading false.
void ready(const FittingPlan& plan, Sheet& sheet) {
  sheet.blocks.push_back(block(Rule{2.0}, true));
  Text layers = bold("Ready?") + words(plan.wear.empty() ? " All underlayers on and fastened before anyone looks:"
                                                         : " All on and all fastened before anyone looks:");
  sheet.blocks.push_back(block(Paragraph{layers, true}, true));
  Text boxes;
  const auto box = [&](const std::string& what) {
    boxes = boxes + tick_box() + words(kNoBreak + replaced(what, " ", kNoBreak)) + words("   ");
  };
  for (const LayerWorn& worn : plan.wear) {
    box(worn.layer);
    if (!worn.still_to_make) continue;
    boxes = boxes + condensed("(still to make" + (worn.ready_by.empty() ? std::string() : ", ready by " + worn.ready_by) + ")") +
            words("   ");
  }
  if (plan.wear.empty()) box("everything that will be worn under it");
  box("pins counted");
  sheet.blocks.push_back(block(Paragraph{boxes, true}));
}

// `brief`: how it is looked at stands beside its name, and the longest words have the most room.
Table checks(const PacketInput& input, const FittingPlan& plan, const FigureText& text, bool brief) {
  const bool far = pinned_up(input);
  Table table;
  add_column(table, Column::Kind::words, "look at", 140, false);
  add_column(table, Column::Kind::words, "right when", far && !brief ? 124 : 112, false);
  add_column(table, Column::Kind::words, "found", far && !brief ? 70 : 64, false);
  add_column(table, Column::Kind::words, "if not", 0, false);
  for (const FittingCheckPlan& check : plan.checks) {
    Row row;
    Text look;
    if (!check.condition.empty()) look = condensed("If " + check.condition + ": ");
    look = look + bold(check.look) + (brief ? words(" ") : new_line()) +
           sentence_text(in_unit_of(check.how, text.shown_in()), false, Face::condensed);
    row.cells.push_back({look});
    row.cells.push_back({said(shown_of(input, check.allowed, check.allowed_plainly), text)});
    row.cells.push_back({Text{}});
    row.cells.push_back({said(shown_of(input, check.remedy, check.remedy_plainly), text)});
    table.rows.push_back(std::move(row));
  }
  return table;
}

Table movements(const PacketInput& input, const FittingPlan& plan) {
  const double wide = pinned_up(input) ? 84 : 68;
  Table table;
  add_column(table, Column::Kind::words, "move", 0, false);
  for (const char* head : {"passes", "tight", "gapes"}) add_column(table, Column::Kind::words, head, wide, false);
  for (const std::string& move : plan.moves) {
    Row row;
    row.cells.push_back({sentence_text(move, false)});
    for (int i = 0; i < 3; ++i) row.cells.push_back({tick_box()});
    table.rows.push_back(std::move(row));
  }
  return table;
}

// `brief`: a line each, where rows of two would take a page more.
void changes(const PacketInput& input, const FittingPlan& plan, const FigureText& text, bool brief, Sheet& sheet) {
  if (plan.changes.empty() || !input.set.private_shown) return;
  const std::string head = capital(plan.fitting) + ": carry this to the pattern";
  sheet.blocks.push_back(brief ? block(Paragraph{bold(head + "."), true}, true) : heading(head));
  for (const FittingChange& change : plan.changes) {
    Text act = said(change.change, text) + words(".");
    if (!change.left.empty()) act = act + words(" ") + tag(Tag::warning) + words(" ") + said(change.left, text) + words(".");
    if (brief) {
      sheet.blocks.push_back(block(Paragraph{
          tick_box() + words(" ") + bold(capital(change.where)) + words(", ") + said(change.found, text) + words(": ") + act,
          true}));
      continue;
    }
    PairRow row;
    row.left = bold(capital(change.where));
    row.left_under = said(change.found, text, Face::condensed);
    row.right = tick_box() + words(" ") + act;
    row.last = &change == &plan.changes.back();
    sheet.blocks.push_back(block(row));
  }
}

// How much white a page of a gate has, chosen once: one with many lines keeps its signature on the page.
struct Spacing {
  double between = 8;  // the parts of the page, points
  double before_record = 6;
  bool record_in_one_line = false;
};
constexpr Spacing kClose{3, 4, true};
Spacing spacing_of(const FittingPlan& plan) {
  constexpr std::size_t kManyLines = 9;
  return plan.checks.size() > kManyLines ? kClose : Spacing{};
}

// Rows high enough for a pen: two lines of white each. On the wall the page itself is written on.
void record(const PacketInput& input, const Spacing& spacing, Sheet& sheet) {
  if (pinned_up(input)) return;
  sheet.blocks.push_back(block(Gap{spacing.before_record}));
  if (spacing.record_in_one_line) {
    sheet.blocks.push_back(
        block(WriteIn{{{words("value"), 56}, {words("moved"), 56}, {words("where"), 100}, {words("initials"), 36}}}));
    return;
  }
  Table table;
  for (const char* head : {"value", "moved", "where"}) add_column(table, Column::Kind::words, head, 0, false);
  add_column(table, Column::Kind::words, "initials", 60, false);
  add_column(table, Column::Kind::words, "date", 80, false);
  for (int i = 0; i < 2; ++i) {
    Row row;
    row.cells.push_back({words(kNoBreak) + new_line() + words(kNoBreak)});
    for (int k = 0; k < 4; ++k) row.cells.push_back({Text{}});
    table.rows.push_back(std::move(row));
  }
  sheet.blocks.push_back(block(table));
}

void signature(const PacketInput& input, const FittingPlan& plan, const Spacing& spacing, Sheet& sheet) {
  sheet.blocks.push_back(block(Gap{spacing.between}, true));
  sheet.blocks.push_back(block(Rule{2.0}, true));
  const std::string on = plan.next_step > 0 ? "Signed: go on to " + nth_step(plan.next_step) + "." : "Signed: it is right.";
  const Text photographed =
      pinned_up(input) ? Text{} : tick_box() + words(std::string(kNoBreak) + "Photographed: front, sides, back.    ");
  sheet.blocks.push_back(block(Paragraph{photographed + tick_box() + words(kNoBreak) + bold(on) + words("    ") + tick_box() +
                                             words(std::string(kNoBreak) + "Not yet: alter and fit again."),
                                         true},
                               true));
  sheet.blocks.push_back(block(WriteIn{{{words("who"), 184}, {words("date"), 184}}}));
}

// `brief`: fewer lines for each thing and hardly a gap between the parts.
std::vector<Block> blocks_of(const PacketInput& input, const FittingPlan& plan, bool brief) {
  const FigureText text = figure_text_of(input);
  const Spacing spacing = brief ? kClose : spacing_of(plan);
  Sheet sheet;
  ready(plan, sheet);
  sheet.blocks.push_back(block(Gap{spacing.between}));
  sheet.blocks.push_back(block(checks(input, plan, text, brief)));
  if (!plan.moves.empty()) {
    sheet.blocks.push_back(block(Gap{spacing.between}));
    sheet.blocks.push_back(block(movements(input, plan)));
  }
  record(input, spacing, sheet);
  signature(input, plan, spacing, sheet);
  changes(input, plan, text, brief, sheet);
  return sheet.blocks;
}

}  // namespace

Sheet fitting_checklist_sheet(const PacketInput& input, const FittingPlan& plan) {
  Sheet sheet;
  sheet.section = Section::fit;
  sheet.answer = answer(plan);
  sheet.blocks = blocks_of(input, plan, false);
  sheet.shorter.push_back([input, &plan] { return blocks_of(input, plan, true); });
  return sheet;
}

}  // namespace gownsheaf
