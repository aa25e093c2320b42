// Cautions: only those that the garment calls for, each with whose word goes before the packet's.
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {

Sheet cautions_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::fit;
  sheet.answer = words("Not medical, fire or compliance advice: whoever is named beside a caution has the last word.");
  sheet.blocks.push_back(block(Rule{2.0}));
  if (input.plans.cautions.empty()) sheet.blocks.push_back(paragraph(words("What is written of this garment calls for none.")));
  for (const CautionPlan& caution : input.plans.cautions) {
    PairRow row;
    row.left = bold(caution.about);
    row.left_under = condensed("Last word: " + caution.defers_to);
    if (!caution.condition.empty()) row.right = words_in(Face::bold, "If " + caution.condition + ": ");
    for (const SayPart& part : caution.say) row.right = row.right + sentence_text(part.words, false);
    row.last = &caution == &input.plans.cautions.back();
    sheet.blocks.push_back(block(row));
  }
  sheet.blocks.push_back(block(Gap{8}));
  sheet.blocks.push_back(block(WriteIn{{{words("pins and needles out"), 68}, {words("in again"), 68}, {words("counted by"), 68}}}));
  return sheet;
}

}  // namespace gownsheaf
