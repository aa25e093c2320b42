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
  CHECK(r.yardage_by.label == 'x');
  CHECK(r.hook_set_back.label == 'a');
  CHECK(r.waist_is.origin == Origin::standing);
}

TEST_CASE("rules: what is written is taken, each by itself") {
  const Rules r = check_rules(
                      "rules: { yardage by: width chart, strips lose: one seam, plaid extra: one repeat a piece, "
                      "pleat seams: as they fall, hook set back: 1/8 in, buttonhole is: more for a shank, waist is: midway }\n")
                      .rules;
  CHECK(*r.yardage_by == YardageBy::width_chart);
  CHECK(*r.strips_lose == StripsLose::one_seam);
  CHECK(*r.plaid_extra == PlaidExtra::one_repeat_a_piece);
  CHECK(*r.pleat_seams == PleatSeams::as_they_fall);
  CHECK(*r.hook_set_back == Length::sixty_fourths(8));
  CHECK(*r.buttonhole_is == ButtonholeIs::more_for_a_shank);
  CHECK(*r.waist_is == WaistIs::midway);
  CHECK(r.yardage_by.origin == Origin::written);
  CHECK(*check_rules("rules: { strips lose: one seam }\n").rules.yardage_by == YardageBy::lay);
}

TEST_CASE("rules: a word of no list is an error, and no rule of that block counts") {
  const Project p = check_rules("rules: { yardage by: guess, strips lose: one seam }\n");
  CHECK(p.failed_sections.contains("rules"));
  CHECK(*p.rules.strips_lose == StripsLose::both_seams);
}
