// What waits for what: each act that cannot be undone and each fitting still to come, with the steps that must be done
// first. Read from the wall: find the act, look what stands beside it.
#include <algorithm>
#include <map>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

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

// More rows than this are left for a later packet's wall: what hangs there is about the next weeks, and it is one page.
constexpr std::size_t kMostOnTheWall = 14, kFewestOnTheWall = 5;

std::vector<Block> on_the_wall(const Table& whole, std::size_t rows) {
  Table table = whole;
  table.rows.resize(std::min(rows, whole.rows.size()));
  const auto later = static_cast<std::int64_t>(whole.rows.size() - table.rows.size());
  std::vector<Block> blocks{block(std::move(table), later > 0)};
  if (later > 0)
    blocks.push_back(paragraph(
        condensed(counted(later, "more comes", "more come") + " later: make the packet again when these are done."), true));
  return blocks;
}

// Whether what it waits for directly is all that comes before it.
bool says_all(const Waiting::Step& step) {
  return step.all.size() == step.directly.size();  // directly is part of all
}

}  // namespace

// The work is in order, so that what a step waits for stands before it: one pass, a bit for each earlier step.
Waiting waiting_of(const std::vector<PlannedStep>& work) {
  std::map<std::string_view, std::size_t> place;
  for (std::size_t i = 0; i < work.size(); ++i) place.emplace(work[i].id, i);
  std::vector<std::vector<bool>> before(work.size());
  Waiting all;
  for (std::size_t i = 0; i < work.size(); ++i) {
    std::vector<std::size_t> direct;
    for (const std::string& id : work[i].hard_after)
      if (const auto at = place.find(id); at != place.end() && at->second < i) direct.push_back(at->second);
    std::vector<bool> further(work.size());
    for (const std::size_t d : direct)
      for (std::size_t k = 0; k < d; ++k)
        if (before[d][k]) further[k] = true;
    std::sort(direct.begin(), direct.end());
    before[i] = further;
    Waiting::Step step;
    for (const std::size_t d : direct) {
      before[i][d] = true;
      if (!further[d] && !work[d].done) step.directly.push_back(&work[d]);
    }
    for (std::size_t k = 0; k < i; ++k)
      if (before[i][k] && !work[k].done) step.all.push_back(work[k].number);
    all.steps.push_back(std::move(step));
  }
  return all;
}

Sheet what_waits_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::work;
  Table table;
  const bool far = pinned_up(input);
  const Waiting waiting = waiting_of(input.plans.work);
  std::map<int, int> beside_a_row;  // a number whose words stand beside a row: that row's step
  add_column(table, Column::Kind::words, "step", far ? 40 : 28, true);
  add_column(table, Column::Kind::words, "before you do this", far ? 190 : 180, true);
  add_column(table, Column::Kind::words, "these are done", 0, false);
  for (std::size_t i = 0; i < input.plans.work.size(); ++i) {
    const PlannedStep& step = input.plans.work[i];
    if (step.done || (step.cannot_undo.empty() && step.gate.empty())) continue;
    Row row;
    row.cells.push_back({bold(whole_number(step.number))});
    row.cells.push_back(
        {text.act(short_act(step.act)) + (step.cannot_undo.empty() ? Text{} : condensed(" (" + step.cannot_undo + ")"))});
    Text first;
    if (!step.holds.empty()) first = tag(Tag::hold) + words(" ");
    bool more = false;
    std::map<int, std::vector<int>> said_beside;  // row's step: numbers whose words stand there
    for (const PlannedStep* earlier : waiting.steps[i].directly) {
      const bool has_row = !earlier->cannot_undo.empty() || !earlier->gate.empty();
      if (const auto said = beside_a_row.find(earlier->number); !has_row && said != beside_a_row.end()) {
        said_beside[said->second].push_back(earlier->number);
        continue;
      }
      if (more) first = first + words("; ");
      more = true;
      if (!has_row) beside_a_row.emplace(earlier->number, step.number);
      first = first + bold(whole_number(earlier->number)) + words("\u00A0") + text.reason(short_act(earlier->act));
    }
    for (const auto& [row_of, numbers] : said_beside) {
      if (more) first = first + words("; ");
      more = true;
      first = first + bold(ranges(numbers)) + condensed(" (words at " + whole_number(row_of) + ")");
    }
    const std::vector<int>& all = waiting.steps[i].all;
    // On the wall the nearest are enough: each of them waited for the rest in its turn.
    if (more && !far && !says_all(waiting.steps[i])) first = first + condensed("; all: " + ranges(all));
    if (all.empty())
      first = first + words(step.holds.empty() ? "nothing more: ready" : "no step; what holds it stands in at a glance");
    row.cells.push_back({first});
    table.rows.push_back(std::move(row));
  }
  sheet.answer =
      table.rows.empty()
          ? words("Nothing is left that waits.")
          : words(
                far ? "Find what you are about to do; what stands beside it is done first, and all that those wait for."
                    : "Find what you are about to do; what stands beside it is done first. Last, where there are more, all the numbers before it.");
  const bool waits = !table.rows.empty();
  if (waits && far) {
    sheet.blocks = on_the_wall(table, kMostOnTheWall);
    for (std::size_t rows = std::min(kMostOnTheWall, table.rows.size()); rows-- > kFewestOnTheWall;)
      sheet.shorter.push_back([table, rows] { return on_the_wall(table, rows); });
  } else if (waits) {
    sheet.blocks.push_back(block(std::move(table)));
  }
  // The other numbers, so that no number on the wall is without its words.
  Text others;
  for (const PlannedStep& step : input.plans.work) {
    if (step.done || !step.cannot_undo.empty() || !step.gate.empty() || beside_a_row.count(step.number) > 0) continue;
    others = others + words(others.empty() ? "" : "; ") + bold(whole_number(step.number)) + words("\u00A0") +
             text.reason(short_act(step.act));
  }
  if (!others.empty() && waits && !far) {
    sheet.shorter.push_back([blocks = sheet.blocks] {
      std::vector<Block> all = blocks;
      all.push_back(paragraph(condensed("The words of the other numbers stand in the order of work."), true));
      return all;
    });
    sheet.blocks.push_back(paragraph(bold("The other numbers: ") + others, true));
  }
  return sheet;
}

}  // namespace gownsheaf
