// Pleats of one run: the sum in a sentence, the run drawn flat and folded, the table of marks.
#include <algorithm>
#include <optional>

#include "packet/pleat_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

Text answer(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  const std::string kind = text.has(key + "/kind") ? text.value(key + "/kind") : plan.kind;
  Text out = text.measured(key + "/flat") + words(" of cloth becomes ") + text.measured(key + "/finished") +
             words(": ") + text.marked(key + "/count", words(text.value(key + "/count"))) + words("\u00A0" + kind + (plan.count == 1 ? " pleat" : " pleats"));
  if (text.has(key + "/visible") && text.has(key + "/depth")) {
    out = out + words(". Each shows ") + text.measured(key + "/visible") + words(" and is ") +
          text.measured(key + "/depth") + words(" deep");
  }
  if (text.has(key + "/half count")) {  // the sums are of the whole run, the marks of one half
    return out + words(". The marks are of one half, " + text.value(key + "/half count") +
                       "\u00A0pleats; the other is its mirror.");
  }
  return out + words(plan.half ? ". All of one half; the other is its mirror." : ".");
}

Table marks(const PleatPlan& plan, const std::string& key, const FigureText& text, bool far) {
  const std::string unit = unit_of(text.shown_in());
  Table table;
  table.heavy_every_third = true;
  add_column(table, Column::Kind::words, "pleat", far ? 70 : 60, true);
  add_column(table, Column::Kind::length, "fold at, " + unit, far ? 120 : 110, true);
  add_column(table, Column::Kind::length, "lay it on, " + unit, far ? 140 : 130, true);
  add_column(table, Column::Kind::length, "edge then lies at, " + unit, 0, false);
  for (std::size_t i = 0; i < plan.marks.size(); ++i) {
    const std::string mark = key + "/mark " + whole_number(static_cast<std::int64_t>(i + 1));
    const bool same_pleat = i > 0 && plan.marks[i - 1].pleat == plan.marks[i].pleat;
    Row row;
    row.cells.push_back({same_pleat ? Text{} : bold(whole_number(plan.marks[i].pleat))});
    row.cells.push_back({text.cell(mark + "/fold", true)});
    row.cells.push_back({text.cell(mark + "/lay on", true)});
    row.cells.push_back({text.cell(mark + "/edge", false)});
    table.rows.push_back(row);
  }
  return table;
}

// Where a breadth seam lands: "under pleat 4", or where it can be seen.
std::string lands(const PleatPlan& plan, Length seam) {
  for (const PleatMark& m : plan.marks) {
    const Length a = std::min(m.fold, m.lay_on), b = std::max(m.fold, m.lay_on);
    if (seam > a && seam < b) return "hidden in pleat\u00A0" + whole_number(m.pleat);
    if (seam == m.fold) return "on the fold of pleat\u00A0" + whole_number(m.pleat);
    if (seam == m.lay_on) return "at the lay-on line of pleat\u00A0" + whole_number(m.pleat);
    if (seam < a) return "where it shows, before pleat\u00A0" + whole_number(m.pleat);
  }
  return "past the last pleat";
}

Text seams(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  Text out;
  for (std::size_t i = 0; i < plan.seams_at.size(); ++i) {
    const std::string seam = key + "/seam " + whole_number(static_cast<std::int64_t>(i + 1));
    out = out + words(out.empty() ? "Breadth seams: at " : "; at ") + text.measured(seam) + words(", " + lands(plan, plan.seams_at[i]));
  }
  return out.empty() ? out : out + words(".");
}

}  // namespace

Sheet pleats_sheet(const PacketInput& input, const PleatPlan& plan) {
  const FigureText text = figure_text_of(input);
  const std::string key = "pleats/" + plan.run;
  Sheet sheet;
  sheet.section = Section::pleats;
  sheet.answer = answer(plan, key, text);
  sheet.blocks.push_back(block(draw_flat_run(plan, text, input.typesetter), true));
  sheet.blocks.push_back(block(draw_folded_run(plan, text, input.typesetter)));

  const std::string from = plan.measured_from.empty() ? "the start of the run" : plan.measured_from;
  const std::optional<Length> begins = input.figures.length(key + "/begins at");
  const std::string named = replaced(from, "its end", "the run\u2019s end");
  const bool from_its_start = from == "its end nearer centre front" || from == "the run's start";
  Text how = bold("Measure every mark from " + named);
  const bool further_on = begins && !begins->is_zero();
  if (further_on && from_its_start) {
    how = how + bold(", which lies ") + text.measured(key + "/begins at") + bold(" past centre front");
  }
  how = how + bold(".") + words(" Never from the mark before.");
  if (further_on && !from_its_start) {
    how = how + words(" The run begins ") + text.measured(key + "/begins at") + words(" past centre front.");
  }
  if (text.has(key + "/plus")) {
    const std::optional<Length> plus = input.figures.length(key + "/plus");
    if (plus && !plus->is_zero()) how = how + words(" The first ") + text.measured(key + "/plus") + words(" stays flat.");
  }
  if (plan.overlaps) how = how + words(" The pleats lie over each other.");
  const Text where = seams(plan, key, text);
  if (!where.empty()) how = how + words(" ") + where;
  sheet.blocks.push_back(block(Paragraph{how, true}, true));  // marks read without their datum are wrong
  sheet.blocks.push_back(block(marks(plan, key, text, pinned_up(input))));
  return sheet;
}

}  // namespace gownsheaf
