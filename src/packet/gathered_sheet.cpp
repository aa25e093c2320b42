// Gathers and cartridge pleats: rows of stitches, then the quarters that keep the fullness even.
#include "packet/gathered_drawing.h"
#include "packet/pleat_tables.h"
#include "packet/sheets.h"

namespace gownsheaf {

Sheet gathered_sheet(const PacketInput& input, const PleatPlan& plan) {
  const FigureText text = figure_text_of(input);
  const std::string key = "pleats/" + plan.run;
  const bool gauged = text.has(key + "/ridges"), far = pinned_up(input);
  Sheet sheet;
  sheet.section = Section::pleats;
  sheet.answer = text.measured(key + "/flat") + words(" of cloth becomes ") + text.measured(key + "/finished");
  if (gauged)
    sheet.answer = sheet.answer + words(": ") + text.measured(key + "/ridges") +
                   words("\u00A0ridges of two stitches, each stitch ") + text.measured(key + "/stitch") + words(" long");
  sheet.answer = sheet.answer + words(plan.half ? ". All of one half; the other is its mirror." : ".");
  sheet.blocks.push_back(block(draw_gathered_run(plan, text, input.typesetter), true));
  if (gauged) sheet.blocks.push_back(block(draw_ridges(plan, text, input.typesetter), true));

  Text how = bold("Run ") + text.measured(key + "/rows") + bold(" rows of stitches");
  if (text.has(key + "/row gap")) how = how + bold(", ") + text.measured(key + "/row gap") + bold(" apart");
  how = how + bold(gauged ? ", each stitch exactly under the one above." : ".");
  how = how + words(" Mark cloth and edge in quarters and draw each quarter up to its own mark.");
  if (text.has(key + "/closes to"))
    how = how + words(" Drawn close the ridges take ") + text.measured(key + "/closes to") + words(".");
  sheet.blocks.push_back(block(Paragraph{how + at_the_seam(plan, key, text), true}, true));

  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "quarter", far ? 90 : 80, true);
  add_column(table, Column::Kind::length, "on the flat cloth, " + unit, far ? 160 : 150, true);
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
  if (!plan.tiers.empty()) {
    sheet.blocks.push_back(heading("Tiers, top first"));
    sheet.blocks.push_back(block(tiers_table(plan, text, far)));
  }
  add_landings(sheet, plan, text, far);
  return sheet;
}

}  // namespace gownsheaf
