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
  if (done.empty())
    return words(counted(static_cast<std::int64_t>(work.size()), "step", "steps") + ". Tick and go down the page.");
  if (done.size() == work.size()) return words("Every step is done.");
  if (done.size() == 1) return words("Step\u00A0" + ranges(done) + " is done. Tick and go down the page.");
  return words("Steps " + ranges(done) + " are done. Tick and go down the page.");
}

constexpr std::int64_t kMinute = 60'000;

// "Machine, second person." What stands ready or stands by; hands alone need not be said.
std::string needed_for(const PlannedStep& s) {
  if (s.needs.empty()) return "";
  std::vector<std::string> needs = s.needs;
  for (std::string& n : needs)
    if (n == "wearer") n = "the wearer";
    else if (n == "second person") n = "a second person";
    else if (n == "form") n = "a padded form";
  return "Needs " + listed(needs) + ".";
}

// A long step in parts of 20 to 40 minutes, where it can be laid down safely.
std::string laid_down(const PlannedStep& s) {
  const std::int64_t minutes = s.takes.milliseconds / kMinute;
  if (s.stop.empty() || minutes <= 40 || !s.gate.empty() || !s.parts.empty()) return "";
  const std::int64_t parts = (minutes + 34) / 35;
  return "Stop " + s.stop + ": " + whole_number(parts) + " sittings of about " + whole_number((minutes / parts + 4) / 5 * 5) +
         " min.";
}

std::string days_of(const PlannedStep& s) {
  std::string out;
  if (s.rests && s.rests->milliseconds > 0) out = "Then it rests for " + days_text_of(*s.rests) + ".";
  if (!s.latest) return out;
  return out + (out.empty() ? "" : " ") + "Begin by " + short_day(*s.latest) +
         (s.on_longest_chain ? ", on the longest chain." : ".");
}

// The sheet to have beside it, where this set holds it, by the title that stands on it. A step that is not of one cloth finds
// its own among those of a kind.
std::string sheet_beside(const PlannedStep& s, const PacketInput& input) {
  const std::vector<SheetEntry>& sheets = input.set.sheets;
  const auto entry = std::find_if(sheets.begin(), sheets.end(), [&](const SheetEntry& e) { return e.sheet == s.sheet; });
  if (s.sheet.empty() || entry == sheets.end()) return "";
  std::string title = entry->title.empty() ? capital(s.sheet) : entry->title;
  const auto open = title.find('{'), shut = title.find('}');
  if (open != std::string::npos && shut != std::string::npos && open < shut) {
    std::string item = s.item.empty() ? "\u2026" : s.item;
    if (s.item.empty() && s.sheet == "cutting layouts" && input.plans.lays.size() == 1) item = input.plans.lays.front().cloth;
    title.replace(open, shut - open + 1, item);
  }
  return "Sheet \u201C" + title + "\u201D.";
}

Text remark_of(const PlannedStep& s, const PacketInput& input) {
  std::string out;
  for (const std::string& one : {needed_for(s), sheet_beside(s, input), laid_down(s), days_of(s)})
    if (!one.empty()) out += (out.empty() ? "" : " ") + one;
  return out.empty() ? Text{} : words(out);
}

StepBlock step_block(const PlannedStep& s, const PacketInput& input, const FigureText& text) {
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
  b.remark = remark_of(s, input);
  b.takes = text.marked("steps/" + s.id + "/takes", words(text_of(s.takes)));
  for (const PlannedStep::Part& part : s.parts)
    b.parts.push_back((part.done ? words("Done:") : tick_box()) +
                      words(" " + part.words + (part.takes ? ", " + text_of(*part.takes) : std::string())));
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

// The steps on the sheet, and how many are left for the next packet.
struct Shown {
  std::vector<const PlannedStep*> steps;
  int later = 0;
};
Shown shown_of(const std::vector<PlannedStep>& work, std::optional<int> next_steps) {
  Shown out;
  for (const PlannedStep& s : work) {
    if (s.done) continue;
    // What comes next ends with a fitting: what it shows may change the rest.
    const bool full = next_steps && (static_cast<int>(out.steps.size()) >= *next_steps ||
                                     (!out.steps.empty() && !out.steps.back()->gate.empty()));
    if (full || out.later > 0) ++out.later;
    else out.steps.push_back(&s);
  }
  return out;
}

std::vector<Block> blocks_of(const PacketInput& input, std::optional<int> next_steps) {
  const FigureText text = figure_text_of(input);
  const Shown shown = shown_of(input.plans.work, next_steps);
  std::vector<Block> blocks;
  if (shown.later > 0)
    blocks.push_back(paragraph(words(counted(shown.later, "step follows", "steps follow") +
                                     "; when these are done, write their small names under done, and make the packet again."),
                               true));
  const Text care = cautions(shown.steps);
  const bool care_first = pinned_up(input) && !shown.steps.empty() && !shown.steps.back()->gate.empty();  // a gate ends its page
  if (!care.empty() && care_first) blocks.push_back(paragraph(care, true));
  for (const PlannedStep* s : shown.steps) blocks.push_back(block(step_block(*s, input, text)));
  if (shown.later == 0 && !shown.steps.empty()) {
    blocks.push_back(paragraph(bold("Done?") + words(" The small words at the right name each step. Write the name in the "
                                                     "project file, under work, in the list done: - step: " +
                                                     shown.steps.front()->id + "."),
                               true));
  }
  if (!care.empty() && !care_first) blocks.push_back(paragraph(care, !pinned_up(input)));
  return blocks;
}

}  // namespace

Sheet order_of_work_sheet(const PacketInput& input, std::optional<int> next_steps) {
  Sheet sheet;
  sheet.section = Section::work;
  sheet.answer = answer(input.plans.work);
  sheet.blocks = blocks_of(input, next_steps);
  // Where they take a page more, fewer come next.
  for (int fewer = next_steps.value_or(0) - 1; fewer > 0; --fewer)
    sheet.shorter.push_back([input, fewer] { return blocks_of(input, fewer); });
  return sheet;
}

}  // namespace gownsheaf
