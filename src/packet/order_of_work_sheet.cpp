// Order of work: what is done in one sentence, then the steps with their figures, holds and reasons.
#include <algorithm>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

Text answer(const std::vector<PlannedStep>& work) {
  std::vector<int> done;
  for (const PlannedStep& s : work) {
    if (s.done) done.push_back(s.number);
  }
  std::sort(done.begin(), done.end());
  if (work.empty()) return words("There are no steps for what is written.");
  if (done.empty()) return words(counted(static_cast<std::int64_t>(work.size()), "step", "steps") + ". Tick and go down the page.");
  if (done.size() == work.size()) return words("Every step is done.");
  if (done.size() == 1) return words("Step\u00A0" + ranges(done) + " is done. Tick and go down the page.");
  return words("Steps " + ranges(done) + " are done. Tick and go down the page.");
}

StepBlock step_block(const PlannedStep& s, const FigureText& text) {
  StepBlock b;
  b.number = s.number;
  b.anchor = step_anchor(s.number);
  b.id = s.id;
  b.cannot_undo = s.cannot_undo;
  for (const std::string& hold : s.holds) {
    const std::string until = hold.rfind("until", 0) == 0 ? hold : "until settled: " + hold;
    b.holds.push_back(tag(Tag::hold) + words(" ") + sentence_text(until, false) + words(" ") + tick_box());
  }
  if (s.conditional && !s.condition.empty()) b.act = words_in(Face::bold, "If " + s.condition + ": ");
  b.act = b.act + text.act(s.act);
  b.reason = text.reason(s.reason);
  if (!s.gate.empty()) {
    b.gate = true;
    return b;
  }
  for (std::size_t i = 0; i < s.shows.size() && i < 3; ++i) b.figures.push_back(text.beside_step(s.shows[i]));
  return b;
}

bool says(const PlannedStep& s, std::string_view word) {
  for (const SayPart& part : s.act) {
    std::string low = " ";
    for (const char c : part.words) low += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (low.find(" " + std::string(word)) != std::string::npos) return true;
  }
  return std::find(s.uses.begin(), s.uses.end(), word) != s.uses.end() ||
         std::find(s.needs.begin(), s.needs.end(), word) != s.needs.end();
}

// The usual cautions, only those that the steps on the sheet call for. Common practice, no source.
Text cautions(const std::vector<const PlannedStep*>& steps) {
  bool cuts = false, presses = false, pins = false;
  for (const PlannedStep* s : steps) {
    cuts = cuts || s->cannot_undo == kCannotUndo[0] || s->cannot_undo == kCannotUndo[1];
    presses = presses || says(*s, "press") || says(*s, "iron") || says(*s, "steam");
    pins = pins || says(*s, "pin") || says(*s, "baste") || says(*s, "needle") || says(*s, "try");
  }
  std::string out;
  if (cuts) out += " Lay the shears down closed, away from the table\u2019s edge.";
  if (pins) out += " Count pins and needles out and in; none stay in the garment when it is tried on.";
  if (presses) out += " Stand the iron on its heel, test it on a scrap, and unplug it when you leave the table.";
  if (out.empty()) return {};
  std::vector<std::string> sharp_or_hot;
  if (cuts) sharp_or_hot.push_back("blades");
  if (pins) sharp_or_hot.push_back("pins");
  if (presses) sharp_or_hot.push_back("hot irons");
  return bold("Care.") + words(out + " Keep " + listed(sharp_or_hot) + " out of children\u2019s reach.");
}

}  // namespace

Sheet order_of_work_sheet(const PacketInput& input, std::optional<int> next_steps) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::work;
  sheet.answer = answer(input.plans.work);
  std::vector<const PlannedStep*> shown;
  int later = 0;
  for (const PlannedStep& s : input.plans.work) {
    if (s.done) continue;
    if (next_steps && static_cast<int>(shown.size()) >= *next_steps) ++later;
    else shown.push_back(&s);
  }
  for (const PlannedStep* s : shown) sheet.blocks.push_back(block(step_block(*s, text)));
  if (later > 0) {
    sheet.answer = sheet.answer + words(" " + counted(later, "step follows", "steps follow") +
                                        "; when these are done, write their small names under done, and make the packet again.");
  }
  if (later == 0 && !shown.empty()) {
    sheet.blocks.push_back(paragraph(bold("Done?") + words(" The small words at the right name each step. Write the name in the "
                                                           "project file, under work, in the list done: - step: " + shown.front()->id + "."), true));
  }
  const Text care = cautions(shown);
  if (!care.empty()) sheet.blocks.push_back(paragraph(care));
  return sheet;
}

}  // namespace gownsheaf
