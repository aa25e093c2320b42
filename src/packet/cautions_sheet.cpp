// Cautions: only those that the garment calls for, each with whose word goes before the packet's.
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {

Sheet cautions_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::fit;
  sheet.answer = words("Not medical, fire or compliance advice: whoever is named beside a caution has the last word.");
  if (input.plans.cautions.empty()) sheet.blocks.push_back(paragraph(words("What is written of this garment calls for none.")));
  for (const CautionPlan& caution : input.plans.cautions) {
    PairRow row;
    row.left = bold(caution.about);
    row.left_under = condensed("asks: " + caution.defers_to);
    if (!caution.condition.empty()) row.right = words_in(Face::bold, "If " + caution.condition + ": ");
    for (const SayPart& part : caution.say) row.right = row.right + sentence_text(part.words, false);
    row.last = &caution == &input.plans.cautions.back();
    sheet.blocks.push_back(block(row));
  }
  return sheet;
}

}  // namespace gownsheaf
