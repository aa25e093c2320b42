#include "packet/pleat_tables.h"

#include "packet/wording.h"

namespace gownsheaf {
namespace {

std::string figure_of(const std::string& below, const std::string& quantity) { return below + "/" + quantity; }

}  // namespace

Table marks_table(const PleatPlan& plan, const std::vector<PleatMark>& marks, const std::string& below, const FigureText& text,
                  bool far) {
  const std::string unit = unit_of(text.shown_in());
  const bool tucks = plan.kind == "tucks", takes = text.has(figure_of(below, "pleat 1/takes"));
  Table table;
  table.heavy_every_third = true;
  add_column(table, Column::Kind::words, tucks ? "tuck" : "pleat", far ? 70 : 60, true);
  add_column(table, Column::Kind::length, (tucks ? "stitch line, " : "fold at, ") + unit, far ? 120 : 110, true);
  add_column(table, Column::Kind::length, (tucks ? "sewn to, " : "lay it on, ") + unit, far ? 130 : 120, true);
  if (takes) add_column(table, Column::Kind::length, "takes up, " + unit, far ? 110 : 100, false);
  add_column(table, Column::Kind::length, (takes ? "edge at, " : "edge then lies at, ") + unit, 0, false);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const std::string mark = figure_of(below, "mark " + whole_number(static_cast<std::int64_t>(i + 1)));
    const bool same_pleat = i > 0 && marks[i - 1].pleat == marks[i].pleat;
    Row row;
    row.cells.push_back({same_pleat ? Text{} : bold(whole_number(marks[i].pleat))});
    row.cells.push_back({text.cell(mark + "/fold", true)});
    row.cells.push_back({text.cell(mark + "/lay on", true)});
    if (takes)
      row.cells.push_back(
          {same_pleat ? Text{} : text.cell(figure_of(below, "pleat " + whole_number(marks[i].pleat) + "/takes"), false)});
    row.cells.push_back({text.cell(mark + "/edge", false)});
    table.rows.push_back(row);
  }
  return table;
}

Table landings_table(const PleatPlan& plan, const FigureText& text, bool far) {
  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "what", far ? 110 : 104, true);
  add_column(table, Column::Kind::length, "flat, " + unit, far ? 88 : 80, true);
  add_column(table, Column::Kind::length, "pleated, " + unit, far ? 96 : 96, false);
  table.columns.back().padding = 20;
  add_column(table, Column::Kind::words, "angle", far ? 78 : 60, false);
  add_column(table, Column::Kind::words, "where it lands", 0, false);
  for (const PleatLanding& l : plan.landings) {
    Row row;
    row.cells.push_back({bold(l.what)});
    row.cells.push_back({text.cell(text.has(l.key) ? l.key : l.key + "/in the run", true)});
    row.cells.push_back({text.cell(l.key + "/pleated", false)});
    row.cells.push_back({words(text.value(l.key + "/angle"))});
    Text lands = words(l.lands);
    if (text.has(l.key + "/opening")) lands = lands + words(", ") + text.checking(l.key + "/opening") + words(" open");
    row.cells.push_back({lands});
    table.rows.push_back(row);
  }
  return table;
}

Table choices_table(const PleatPlan& plan, const FigureText& text, bool far) {
  const std::string unit = unit_of(text.shown_in()), run = "pleats/" + plan.run;
  const bool thick = text.has(run + "/plan 1/waist thickness");
  Table table;
  add_column(table, Column::Kind::words, "plan", far ? 118 : 108, true);
  add_column(table, Column::Kind::length, "cloth, " + unit, far ? 80 : 72, false);
  add_column(table, Column::Kind::length, "shows, " + unit, far ? 80 : 72, false);
  add_column(table, Column::Kind::length, "deep, " + unit, far ? 80 : 72, false);
  table.columns.back().padding = 20;
  add_column(table, Column::Kind::words, "cloths thick", thick ? 64 : 0, false);
  if (thick) add_column(table, Column::Kind::length, "at the seam, " + unit, 0, false);
  for (int i = 1; i <= plan.choices; ++i) {
    const std::string key = run + "/plan " + whole_number(i);
    Row row;
    row.cells.push_back({bold(text.value(key + "/count") + "\u00A0" + text.value(key + "/kind") + (i == 1 ? ", as it is" : ""))});
    row.cells.push_back({text.cell(key + "/flat", false)});
    row.cells.push_back({text.cell(key + "/visible", false)});
    row.cells.push_back({text.cell(key + "/depth", false)});
    row.cells.push_back({words(text.value(key + "/cloths thick"))});
    if (thick) row.cells.push_back({text.cell(key + "/waist thickness", false)});
    table.rows.push_back(row);
  }
  return table;
}

Table tiers_table(const PleatPlan& plan, const FigureText& text, bool far) {
  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "tier", far ? 130 : 120, true);
  add_column(table, Column::Kind::length, "cut long, between seams, " + unit, far ? 140 : 130, true);
  table.columns.back().padding = 20;
  add_column(table, Column::Kind::words, "of the edge above", far ? 100 : 90, false);
  add_column(table, Column::Kind::length, "deep, finished, " + unit, 0, false);
  for (const std::string& tier : plan.tiers) {
    const std::string key = "pleats/" + plan.run + "/tier " + tier;
    Row row;
    row.cells.push_back({bold(tier)});
    row.cells.push_back({text.cell(key + "/flat", true)});
    row.cells.push_back({words(text.value(key + "/fullness") + " times")});
    row.cells.push_back({text.has(key + "/finished length") ? text.cell(key + "/finished length", false) : Text{}});
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace gownsheaf
