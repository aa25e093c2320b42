// Pleats of one run: the sum in a sentence, the run drawn flat and folded, the table of marks.
#include <algorithm>
#include <optional>

#include "packet/pleat_drawing.h"
#include "packet/pleat_tables.h"
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

// What each pleat takes up where they are not alike.
Text unlike(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  const auto takes = [&](std::int64_t k) { return text.measured(key + "/pleat " + whole_number(k) + "/takes"); };
  Text out = words(". Each shows ") + text.measured(key + "/visible");
  if (plan.takes_said == 1) out = out + words("; the first takes up ") + takes(1);
  else out = out + words("; what the first ") + words(whole_number(plan.takes_said) + " take up stands in the table");
  out = out + words(plan.takes_said + 1 == plan.count ? ", the last " : ", each of the others ") + takes(plan.count);
  return out;
}

Text answer(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  const std::string kind = text.has(key + "/kind") ? text.value(key + "/kind") : plan.kind;
  Text out = text.measured(key + "/flat") + words(" of cloth becomes ") + text.measured(key + "/finished") + words(": ") +
             text.marked(key + "/count", words(text.value(key + "/count"))) + words("\u00A0" + pleats_of(kind, plan.count));
  if (plan.uneven) {
    out = out + unlike(plan, key, text);
  } else if (text.has(key + "/visible") && text.has(key + "/depth")) {
    out = out + words(". Each shows ") + text.measured(key + "/visible") + words(" and is ") + text.measured(key + "/depth") +
          words(" deep");
  }
  if (text.has(key + "/half count")) {  // the sums are of the whole run, the marks of one half
    return out + words(". The marks are of one half, " + text.value(key + "/half count") +
                       (kind == "tucks" ? "\u00A0tucks" : "\u00A0pleats") + "; the other is its mirror.");
  }
  return out + words(plan.half ? ". All of one half; the other is its mirror." : ".");
}

// What the pleats make where they meet or part.
Text ends(const PleatPlan& plan, const FigureText& text) {
  Text out;
  for (const PleatEnd& end : plan.ends) {
    std::string where = end.where;
    if (!where.empty()) where.front() = static_cast<char>(where.front() - 'a' + 'A');
    out =
        out + words(" " + where + (end.parts ? " the folds part: a " : " the folds meet: an ") + text.value(end.key + "/makes"));
    if (text.has(end.key + "/wide")) out = out + words(" ") + text.measured(end.key + "/wide") + words(" wide");
    out = out + words(".");
  }
  return out;
}

Sheet folded_sheet(const PacketInput& input, const PleatPlan& plan, bool flat_drawn) {
  const FigureText text = figure_text_of(input);
  const std::string key = "pleats/" + plan.run;
  Sheet sheet;
  sheet.section = Section::pleats;
  sheet.answer = answer(plan, key, text);
  if (flat_drawn) sheet.blocks.push_back(block(draw_flat_run(plan, text, input.typesetter), true));
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
  how = how + ends(plan, text) + at_the_seam(plan, key, text);
  const bool far = pinned_up(input);
  if (plan.levels.empty()) {
    sheet.blocks.push_back(block(Paragraph{how, true}, true));  // marks read without their datum are wrong
    sheet.blocks.push_back(block(marks_table(plan, plan.marks, key, text, far)));
  } else {
    sheet.blocks.push_back(
        block(Paragraph{how + words(" A line runs from its mark at the seam to its mark at each level below."), true}, true));
    sheet.blocks.push_back(heading("At the seam"));
    sheet.blocks.push_back(block(marks_table(plan, plan.marks, key, text, far)));
    for (const PleatLevel& level : plan.levels) {
      const std::string below = key + "/at " + level.name;
      sheet.blocks.push_back(heading("At the " + level.name));
      sheet.blocks.push_back(
          block(Paragraph{text.measured(below + "/flat") + words(" flat becomes ") + text.measured(below + "/finished") +
                              words("; the pleats take up ") + text.measured(below + "/takes up") + words("."),
                          true},
                true));
      sheet.blocks.push_back(block(marks_table(plan, level.marks, below, text, far)));
    }
  }
  add_landings(sheet, plan, text, far);
  if (plan.choices > 0) {
    sheet.blocks.push_back(heading("Plans to choose from"));
    sheet.blocks.push_back(
        block(Paragraph{words("All finish at ") + text.measured(key + "/finished") +
                            words(". Write count and kind of the one you choose into the project, and its cloth as flat."),
                        true},
              true));
    sheet.blocks.push_back(block(choices_table(plan, text, far)));
    if (auto strip = draw_trial_strip(plan, text, input.typesetter)) {
      sheet.blocks.push_back(heading("Trial strip"));
      sheet.blocks.push_back(block(std::move(*strip)));
    }
  }
  return sheet;
}

}  // namespace

// What the waist seam of this run comes to, and what is added to the edges of inverted pleats at seams.
Text at_the_seam(const PleatPlan& plan, const std::string& key, const FigureText& text) {
  Text out;
  if (plan.seams_at.empty() && text.has(key + "/near edge"))  // seams of full breadths lie where they lie, and are told
    out = out + words(" Each seam belongs in an inner fold: cut ") + text.measured(key + "/near edge") +
          words(" more at its first edge and ") + text.measured(key + "/far edge") + words(" more at the other.");
  if (text.has(key + "/stitched down"))
    out = out + words(" Stitch the pleats down for ") + text.measured(key + "/stitched down") + words(" below the top, ") +
          text.checking(key + "/stitching") + words(" of stitching in all.");
  if (text.has(key + "/waist thickness"))
    out = out + words(" The seam will be about ") + text.measured(key + "/waist thickness") + words(" thick.");
  if (text.has(key + "/interlining stops"))
    out = out + words(" The interlining stops ") + text.measured(key + "/interlining stops") + words(" below the top.");
  return out;
}

void add_landings(Sheet& sheet, const PleatPlan& plan, const FigureText& text, bool far) {
  if (plan.landings.empty()) return;
  sheet.blocks.push_back(heading("Where seams and openings land"));
  sheet.blocks.push_back(
      block(Paragraph{words("Flat as the marks are measured; pleated, and as an angle, from centre front." +
                            std::string(plan.toward == "left" || plan.toward == "right" ? "" : " The other half mirrors it.")),
                      true},
            true));
  sheet.blocks.push_back(block(landings_table(plan, text, far)));
}

Sheet pleats_sheet(const PacketInput& input, const PleatPlan& plan) {
  if (plan.marks.empty()) return gathered_sheet(input, plan);
  Sheet sheet = folded_sheet(input, plan, true);
  // The wall does without the flat run when that saves a page: the table has its marks.
  if (pinned_up(input)) sheet.shorter.push_back([input, &plan] { return folded_sheet(input, plan, false).blocks; });
  return sheet;
}

}  // namespace gownsheaf
