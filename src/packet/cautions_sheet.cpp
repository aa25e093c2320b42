// Cautions: only those that the garment calls for, each with whose word goes before the packet's.
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {

namespace {

void count_pins(std::vector<Block>& blocks) {
  blocks.push_back(block(Gap{8}));
  blocks.push_back(block(WriteIn{{{words("pins and needles out"), 68}, {words("in"), 68}, {words("counted by"), 68}}}));
}

// The first sentence says what the name beside a caution is for; it is said again where there is room.
std::vector<Block> rows(const PacketInput& input, const std::string& before_name) {
  std::vector<Block> blocks{block(Rule{2.0})};
  if (input.plans.cautions.empty()) blocks.push_back(paragraph(words("What is written of this garment calls for none.")));
  for (const CautionPlan& caution : input.plans.cautions) {
    PairRow row;
    row.left = bold(caution.about);
    row.left_under = condensed(before_name + caution.defers_to);
    if (!caution.condition.empty()) row.right = words_in(Face::bold, "If " + caution.condition + ": ");
    for (const SayPart& part : caution.say) row.right = row.right + sentence_text(part.words, false);
    row.last = &caution == &input.plans.cautions.back();
    blocks.push_back(block(row));
  }
  count_pins(blocks);
  return blocks;
}

// Where they take a page more than one: a paragraph each, as wide as the page.
std::vector<Block> paragraphs(const PacketInput& input) {
  std::vector<Block> blocks{block(Rule{2.0})};
  for (const CautionPlan& caution : input.plans.cautions) {
    Text said = bold(caution.about + ". ");
    if (!caution.condition.empty()) said = said + words_in(Face::bold, "If " + caution.condition + ": ");
    for (const SayPart& part : caution.say) said = said + sentence_text(part.words, false);
    blocks.push_back(paragraph(said + condensed(" Last word: " + caution.defers_to + "."), true));
  }
  count_pins(blocks);
  return blocks;
}

}  // namespace

Sheet cautions_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::fit;
  sheet.answer = words("Not medical, fire or compliance advice: whoever is named beside a caution has the last word.");
  sheet.blocks = rows(input, "Last word: ");
  sheet.shorter.push_back([input] { return rows(input, ""); });
  sheet.shorter.push_back([input] { return paragraphs(input); });
  return sheet;
}

}  // namespace gownsheaf
