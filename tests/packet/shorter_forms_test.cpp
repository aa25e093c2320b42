// What a sheet says when it is told to be shorter, and the weeks of the days left as drawings.
#include "support/catch.h"
#include "support/plain_blocks.h"
#include "support/small_project.h"

#include "packet/calendar_drawing.h"
#include "packet/sheets.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

// The sheet of a project, as itself and in each of its shorter forms; the typesetter lives as long as they are made.
std::vector<std::string> all_forms(const SmallProject& p, const std::string& id) {
  const Typesetter typesetter(p.font, p.scale);
  std::vector<std::string> all;
  for (Sheet s : compose_packet({p.project, p.figures, p.plans, p.set, p.facts, p.messages, typesetter, p.shape})) {
    if (s.id != id) continue;
    all.push_back(plain_of(s));
    for (const auto& shorter : s.shorter) {
      s.blocks = shorter();
      all.push_back(plain_of(s));
    }
  }
  return all;
}

// Days from a Monday on, the steps of each.
SmallProject planned_days(const std::vector<std::vector<int>>& steps) {
  SmallProject p;
  p.sheet("calendar", "The days left");
  for (int k = 1; k <= 40; ++k) p.step(k, "step " + std::to_string(k), "", "Sew.", false, "");
  WorkPlan plan;
  const Day monday = make_day(2027, 8, 30);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    CalendarDayPlan day;
    day.day = Day{monday.serial + static_cast<std::int32_t>(i)};
    for (const int step : steps[i]) day.does.push_back({step, 30});
    plan.days.push_back(day);
  }
  plan.from = monday;
  plan.last = Day{monday.serial + 20};
  plan.worn_on = Day{monday.serial + 24};
  plan.needed = Span{3'600'000};
  plan.chain = {1, 2};
  p.plans.days = plan;
  return p;
}

std::string week_labels(const Drawing& drawing) {
  std::string all;
  for (const DrawingItem& item : drawing.items)
    if (const auto* label = std::get_if<Label>(&item)) all += plain(label->text) + "|";
  return all;
}

}  // namespace

TEST_CASE("cautions: without Last word, then as paragraphs, each keeps its name, its question and who has it",
          "[cautions][shorter]") {
  SmallProject p = skirt_by_hand();
  p.set.sheets.clear();
  p.sheet("cautions", "Cautions");
  p.plans.cautions = {{"Near a flame", {{"Stay away.", ""}}, "the fire officer", "it is worn near a flame"},
                      {"Iron", {{"Test a scrap.", ""}}, "the maker", ""}};
  const std::vector<std::string> forms = all_forms(p, "cautions");
  REQUIRE(forms.size() == 3);
  CHECK(says(forms[0], "Near a flame (Last word: the fire officer) | If it is worn near a flame: Stay away."));
  CHECK(says(forms[1], "Near a flame (the fire officer) | If it is worn near a flame: Stay away."));
  CHECK(says(forms[2], "Near a flame. If it is worn near a flame: Stay away. Last word: the fire officer."));
  CHECK(says(forms[2], "Iron. Test a scrap. Last word: the maker."));
  for (const std::string& form : forms) CHECK(says(form, "pins and needles out ____"));
}

TEST_CASE("cutting list: what most pieces of a cloth have is said once, what another has in its row", "[shorter]") {
  SmallProject p = skirt_by_hand();
  CutPiece other = cut_piece("pocket", p.plans.lays[0].cloth, 2, Length::inches(8), Length::inches(9));
  p.plans.lays[0].cut.push_back(other);
  other.piece = "strap";
  other.pair = true;
  other.copies = 4;
  other.allowances = "none added";
  p.plans.lays[0].cut.push_back(other);
  const std::vector<std::string> forms = all_forms(p, "cutting list");
  REQUIRE(forms.size() == 2);
  CHECK(says(forms[0], "seams 1/2 in, hem 3 in, top 1 in\n"));
  CHECK(says(forms[1], "Where nothing else is said: seams 1/2 in, hem 3 in, top 1 in"));
  CHECK_FALSE(says(forms[1], "| seams 1/2 in, hem 3 in, top 1 in\npocket"));
  for (const std::string& form : forms) CHECK(says(form, "strap | 4 | 2 pairs | \u2013 | \u2013 | none added"));
}

TEST_CASE("what comes next: where a page does not hold the steps, fewer come and more follow", "[shorter]") {
  SmallProject p = skirt_by_hand();
  p.set.sheets[1].next_steps = 3;  // the first of four is done
  const std::vector<std::string> forms = all_forms(p, "order of work");
  REQUIRE(forms.size() == 3);
  CHECK_FALSE(says(forms[0], "follow; "));
  CHECK(says(forms[1], "1 step follows; "));
  CHECK(says(forms[2], "2 steps follow; "));
  CHECK(says(forms[1], "\n3. "));
  CHECK_FALSE(says(forms[2], "\n3. "));
}

TEST_CASE("days left: a drawing a week under the names of the days, numbers that follow on by first and last", "[calendar]") {
  const SmallProject p =
      planned_days({{1, 2}, {3, 4, 5}, {5}, {9, 8, 7, 12}, {}, {}, {}, {20, 22, 24, 26, 28, 30, 32, 34, 36, 38}});
  const Typesetter typesetter(p.font, p.scale);
  const std::vector<Drawing> weeks = draw_weeks(p.plans, typesetter);
  REQUIRE(weeks.size() == 5);  // the names, 30 August, 6 and 13 September, 20 September with the day it is worn
  CHECK(says(week_labels(weeks[0]), "Mon|Tue|"));
  CHECK(says(week_labels(weeks[1]), "30|Aug|"));
  CHECK(says(week_labels(weeks[1]), "3\u20135|"));
  CHECK(says(week_labels(weeks[1]), "7\u20139 12|"));
  CHECK(says(week_labels(weeks[2]), "6|Sept|"));
  CHECK(says(week_labels(weeks[2]), " \u2026|"));
  CHECK(says(week_labels(weeks[4]), "worn|"));
  for (std::size_t i = 1; i < weeks.size(); ++i) {
    CHECK(weeks[i].below_last);
    CHECK(weeks[i].head != nullptr);
    CHECK(weeks[i].width <= Length::points(486));
  }
  const std::vector<std::string> forms = all_forms(p, "calendar");
  REQUIRE(forms.size() == 3);
  CHECK(says(forms[0], "\u2026: more steps than have room."));
  CHECK(says(forms[0], "The longest chain: "));
  CHECK_FALSE(says(forms[1], "The longest chain: "));
  CHECK(says(forms[1], "It is worn"));
  CHECK_FALSE(says(forms[2], "It is worn"));
  SmallProject near = p;
  near.scale = binder_scale();
  CHECK(all_forms(near, "calendar").size() == 1);
}
