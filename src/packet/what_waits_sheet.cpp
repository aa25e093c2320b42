// What waits for what: each act that cannot be undone and each fitting still to come, with the steps that must be done
// first. Read from the wall: find the act, look what stands beside it.
#include <algorithm>
#include <map>
#include <set>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

using StepsById = std::map<std::string, const PlannedStep*>;

// Up to the first comma or stop: "Sew the sleeves, a left and a right." is known by "Sew the sleeves".
Say short_act(const Say& act) {
  Say out;
  for (const SayPart& part : act) {
    std::size_t end = part.words.find_first_of(",.;:");
    // A point between digits belongs to a number.
    while (end != std::string::npos && part.words[end] != ';' && end + 1 < part.words.size() && part.words[end + 1] != ' ')
      end = part.words.find_first_of(",.;:", end + 1);
    if (end != std::string::npos) {
      if (end > 0) out.push_back({part.words.substr(0, end), ""});
      return out;
    }
    out.push_back(part);
  }
  return out;
}

const std::set<std::string>& all_before(const std::string& id, const StepsById& steps, std::map<std::string, std::set<std::string>>& known) {
  const auto seen = known.find(id);
  if (seen != known.end()) return seen->second;
  std::set<std::string> before;
  if (const auto at = steps.find(id); at != steps.end()) {
    for (const std::string& earlier : at->second->hard_after) {
      before.insert(earlier);
      const std::set<std::string>& further = all_before(earlier, steps, known);
      before.insert(further.begin(), further.end());
    }
  }
  return known.emplace(id, std::move(before)).first->second;
}

}  // namespace

std::vector<const PlannedStep*> waits_directly(const PlannedStep& step, const std::vector<PlannedStep>& work) {
  StepsById steps;
  for (const PlannedStep& s : work) steps[s.id] = &s;
  std::map<std::string, std::set<std::string>> known;
  std::vector<const PlannedStep*> direct;
  for (const std::string& earlier : step.hard_after) {
    const auto at = steps.find(earlier);
    if (at == steps.end() || at->second->done) continue;
    const bool through_another = std::any_of(step.hard_after.begin(), step.hard_after.end(), [&](const std::string& other) {
      return other != earlier && all_before(other, steps, known).count(earlier) > 0;
    });
    if (!through_another) direct.push_back(at->second);
  }
  std::sort(direct.begin(), direct.end(), [](const PlannedStep* a, const PlannedStep* b) { return a->number < b->number; });
  return direct;
}

Sheet what_waits_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::work;
  Table table;
  const bool far = pinned_up(input);
  StepsById steps;
  for (const PlannedStep& s : input.plans.work) steps[s.id] = &s;
  std::map<std::string, std::set<std::string>> known;
  std::set<int> without_row;
  add_column(table, Column::Kind::tick, "", far ? 30 : 20, false);
  add_column(table, Column::Kind::words, "step", far ? 40 : 28, true);
  add_column(table, Column::Kind::words, "before you do this", far ? 200 : 190, true);
  add_column(table, Column::Kind::words, "these are done", 0, false);
  for (const PlannedStep& step : input.plans.work) {
    if (step.done || (step.cannot_undo.empty() && step.gate.empty())) continue;
    Row row;
    row.cells.push_back({tick_box()});
    row.cells.push_back({bold(whole_number(step.number))});
    row.cells.push_back({text.act(short_act(step.act)) + (step.cannot_undo.empty() ? Text{} : condensed(" (" + step.cannot_undo + ")"))});
    Text first;
    if (!step.holds.empty()) first = tag(Tag::hold) + words(" ");
    bool more = false;
    for (const PlannedStep* earlier : waits_directly(step, input.plans.work)) {
      if (more) first = first + words("; ");
      more = true;
      if (earlier->cannot_undo.empty() && earlier->gate.empty()) without_row.insert(earlier->number);
      first = first + bold(whole_number(earlier->number)) + words("\u00A0") + text.reason(short_act(earlier->act));
    }
    std::vector<int> all;
    for (const std::string& id : all_before(step.id, steps, known)) {
      const auto at = steps.find(id);
      if (at != steps.end() && !at->second->done) all.push_back(at->second->number);
    }
    std::sort(all.begin(), all.end());
    if (more) first = first + condensed("; in all " + ranges(all));
    row.cells.push_back({all.empty() ? first + words("nothing more: ready") : first});
    table.rows.push_back(std::move(row));
  }
  sheet.answer = table.rows.empty() ? words("Nothing is left that waits.")
                                    : words("Find what you are about to do; all that stands beside it is done first; the last numbers are everything that comes before.");
  const bool waits = !table.rows.empty();
  if (waits) sheet.blocks.push_back(block(std::move(table)));
  // The other numbers, so that no number on the wall is without its words.
  Text others;
  for (const PlannedStep& step : input.plans.work) {
    if (step.done || !step.cannot_undo.empty() || !step.gate.empty() || without_row.count(step.number) > 0) continue;
    others = others + words(others.empty() ? "" : "; ") + bold(whole_number(step.number)) + words("\u00A0") + text.reason(short_act(step.act));
  }
  if (!others.empty() && waits) {
    sheet.blocks.push_back(heading("The other numbers"));
    sheet.blocks.push_back(paragraph(others, true));
  }
  return sheet;
}

}  // namespace gownsheaf
