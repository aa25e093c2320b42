// Where sources disagree: what is written wins, what is not keeps its default.
#include "support/faulty.h"

using namespace gownsheaf;
using namespace gownsheaf::support;

namespace {

Project check_rules(const std::string& rules) {
  Diagnostics diag;
  const Entry source = read_yaml("gownsheaf: 1\ntitle: Grey apron\n" + rules, "apron.yaml", diag);
  return check_project(source, the_library(), diag);
}

}  // namespace

TEST_CASE("rules: a default for each, with its label") {
  const Rules r = check_rules("garment: other\n").rules;
  CHECK(*r.yardage_by == YardageBy::lay);
  CHECK(*r.strips_lose == StripsLose::both_seams);
  CHECK(*r.plaid_extra == PlaidExtra::by_the_lay);
  CHECK(*r.pleat_seams == PleatSeams::inner_fold);
  CHECK(*r.hook_set_back == Length::sixty_fourths(16));
  CHECK(*r.buttonhole_is == ButtonholeIs::across_and_thickness);
  CHECK(*r.waist_is == WaistIs::belt_line);
  CHECK(*r.hook_pitch == Length::sixty_fourths(80));
  CHECK(*r.bone_length_is == BoneLengthIs::by_its_kind);
  CHECK(*r.corset_pressure == CorsetPressure::of_1910);
  CHECK(r.yardage_by.label == 'x');
  CHECK(r.hook_set_back.label == 'a');
  CHECK(r.waist_is.origin == Origin::standing);
}

TEST_CASE("rules: what is written is taken, each by itself") {
  const Rules r = check_rules(
                      "rules: { yardage by: width chart, strips lose: one seam, plaid extra: one repeat a piece, "
                      "pleat seams: as they fall, hook set back: 1/8 in, buttonhole is: more for a shank, waist is: midway, "
                      "hook pitch: 1 in, bone length is: casing less 1/2 in, corset pressure: measured 2011 }\n")
                      .rules;
  CHECK(*r.yardage_by == YardageBy::width_chart);
  CHECK(*r.strips_lose == StripsLose::one_seam);
  CHECK(*r.plaid_extra == PlaidExtra::one_repeat_a_piece);
  CHECK(*r.pleat_seams == PleatSeams::as_they_fall);
  CHECK(*r.hook_set_back == Length::sixty_fourths(8));
  CHECK(*r.buttonhole_is == ButtonholeIs::more_for_a_shank);
  CHECK(*r.waist_is == WaistIs::midway);
  CHECK(*r.hook_pitch == Length::inches(1));
  CHECK(*r.bone_length_is == BoneLengthIs::casing_less);
  CHECK(*r.corset_pressure == CorsetPressure::of_2011);
  CHECK(r.yardage_by.origin == Origin::written);
  CHECK(*check_rules("rules: { strips lose: one seam }\n").rules.yardage_by == YardageBy::lay);
}

TEST_CASE("rules: a word of no list is an error, and no rule of that block counts") {
  const Project p = check_rules("rules: { yardage by: guess, strips lose: one seam }\n");
  CHECK(p.failed_sections.contains("rules"));
  CHECK(*p.rules.strips_lose == StripsLose::both_seams);
}

TEST_CASE("[C04] a: Baldt's 1 in between hooks by the rule, where a closing keeps no distance of its own") {
  // Baldt, Tailored Skirt, part 3 (chestofbooks.com); without the rule 1 1/4 in (The New Dressmaker, 1921; Ingalls).
  const std::string closing = "closures: [{ closure: side, length: 10 1/2 in, fasten: hooks and eyes }]\n";
  CHECK(*check_rules(closing).closures.at(0).at_most == Length::sixty_fourths(80));
  CHECK(*check_rules(closing + "rules: { hook pitch: 1 in }\n").closures.at(0).at_most == Length::inches(1));
}

TEST_CASE("where the waist was measured says where a closing round it breathes") {
  const std::string strained =
      "measures: { waist: 28 in }\nclosures: [{ closure: side, length: 10 in, fasten: hooks and eyes }]\n"
      "strain: [{ closure: side, goes round: waist, worn: close }]\n";
  CHECK(*check_rules(strained).strain.at(0).breathes_at == "natural waist");
  const Project midway = check_rules(strained + "rules: { waist is: midway }\n");
  CHECK(*midway.strain.at(0).breathes_at == "navel");
  CHECK(midway.strain.at(0).breathes_at.origin == Origin::guessed);
}
