// Pleats of one run: the sum in a sentence, the run drawn flat and folded, the table of marks.
#include <algorithm>
#include <optional>

#include "packet/pleat_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

// "22 knife pleats", "1 tuck", "4 inverted pleats at seams".
std::string pleats_of(const std::string& kind, std::int64_t count) {
  if (kind == "tucks") return count == 1 ? "tuck" : "tucks";
  const std::string pleats = count == 1 ? " pleat" : " pleats";
  return kind == "inverted at seams" ? "inverted" + pleats + " at seams" : kind + pleats;
}

Text answer(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  const std::string kind = text.has(key + "/kind") ? text.value(key + "/kind") : plan.kind;
  Text out = text.measured(key + "/flat") + words(" of cloth becomes ") + text.measured(key + "/finished") +
             words(": ") + text.marked(key + "/count", words(text.value(key + "/count"))) + words("\u00A0" + pleats_of(kind, plan.count));
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
  add_column(table, Column::Kind::words, plan.kind == "tucks" ? "tuck" : "pleat", far ? 70 : 60, true);
  const bool tucks = plan.kind == "tucks";
  add_column(table, Column::Kind::length, (tucks ? "stitch line, " : "fold at, ") + unit, far ? 120 : 110, true);
  add_column(table, Column::Kind::length, (tucks ? "sewn to, " : "lay it on, ") + unit, far ? 140 : 130, true);
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

// What the waist seam of this run comes to, and what is added to the edges of inverted pleats at seams.
Text at_the_seam(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  Text out;
  if (plan.seams_at.empty() && text.has(key + "/near edge"))  // seams of full breadths lie where they lie, and are told
    out = out + words(" Each seam belongs in an inner fold: cut ") + text.measured(key + "/near edge") + words(" more at its first edge and ") +
          text.measured(key + "/far edge") + words(" more at the other.");
  if (text.has(key + "/waist thickness"))
    out = out + words(" The seam will be about ") + text.measured(key + "/waist thickness") + words(" thick.");
  if (text.has(key + "/interlining stops"))
    out = out + words(" The interlining stops ") + text.measured(key + "/interlining stops") + words(" below the top.");
  return out;
}

// Gathers and cartridge pleats: rows of stitches, then the quarters that keep the fullness even.
Sheet gathered_sheet(const PacketInput& input, const PleatPlan& plan) {
  const FigureText text = figure_text_of(input);
  const std::string key = "pleats/" + plan.run;
  Sheet sheet;
  sheet.section = Section::pleats;
  const bool gauged = text.has(key + "/ridges");
  sheet.answer = text.measured(key + "/flat") + words(" of cloth becomes ") + text.measured(key + "/finished");
  if (gauged)
    sheet.answer = sheet.answer + words(": ") + text.measured(key + "/ridges") + words("\u00A0ridges of two stitches, each stitch ") +
                   text.measured(key + "/stitch") + words(" long");
  sheet.answer = sheet.answer + words(plan.half ? ". All of one half; the other is its mirror." : ".");

  Text how = bold("Run ") + text.measured(key + "/rows") + bold(" rows of stitches");
  if (text.has(key + "/row gap")) how = how + bold(", ") + text.measured(key + "/row gap") + bold(" apart");
  how = how + bold(gauged ? ", each stitch exactly under the one above." : ".");
  how = how + words(" Mark cloth and edge in quarters and draw each quarter up to its own mark.");
  if (text.has(key + "/closes to"))
    how = how + words(" Drawn close the ridges take ") + text.measured(key + "/closes to") + words(".");
  sheet.blocks.push_back(block(Paragraph{how + at_the_seam(plan, key, text), true}, true));

  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "quarter", pinned_up(input) ? 90 : 80, true);
  add_column(table, Column::Kind::length, "on the flat cloth, " + unit, pinned_up(input) ? 160 : 150, true);
  add_column(table, Column::Kind::length, "on the finished edge, " + unit, 0, false);
  for (int k = 1; k <= 4; ++k) {
    const std::string quarter = key + "/quarter " + whole_number(k);
    Row row;
    row.cells.push_back({bold(whole_number(k))});
    row.cells.push_back({text.cell(quarter + "/flat", true)});
    row.cells.push_back({text.cell(quarter + "/edge", false)});
    table.rows.push_back(row);
  }
  sheet.blocks.push_back(block(table));
  return sheet;
}

Sheet folded_sheet(const PacketInput& input, const PleatPlan& plan) {
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
  how = how + at_the_seam(plan, key, text);
  sheet.blocks.push_back(block(Paragraph{how, true}, true));  // marks read without their datum are wrong
  sheet.blocks.push_back(block(marks(plan, key, text, pinned_up(input))));
  return sheet;
}

}  // namespace

Sheet pleats_sheet(const PacketInput& input, const PleatPlan& plan) {
  return plan.marks.empty() ? gathered_sheet(input, plan) : folded_sheet(input, plan);
}

}  // namespace gownsheaf
