// What waits for what: direct predecessors only, done ones left out, and every number before an act.
#include "support/catch.h"
#include "support/plain_blocks.h"
#include "support/small_project.h"

#include "packet/sheets.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

PlannedStep step_named(int number, const std::string& id, const std::string& act, std::vector<std::string> after,
                       const std::string& ends = "") {
  PlannedStep s;
  s.number = number;
  s.id = id;
  s.act = {{act, ""}};
  s.hard_after = std::move(after);
  s.cannot_undo = ends;
  return s;
}

}  // namespace

TEST_CASE("what waits for what: the cuff waits for the sleeve, and through it for its pieces", "[waits]") {
  SmallProject p = skirt_by_hand();
  p.plans.work = {step_named(1, "cut", "Cut the sleeves.", {}, "cuts good cloth"),
                  step_named(2, "mark", "Mark both, left and right.", {"cut"}),
                  step_named(3, "sew", "Sew the sleeves, a left and a right.", {"mark", "cut"}),
                  step_named(4, "press", "Press the cuffs.", {}),
                  step_named(5, "set", "Set the cuffs.", {"sew", "press", "cut"}, "shuts access")};
  p.sheet("what waits", "What waits for what");
  const auto direct = waiting_of(p.plans.work).steps[4].directly;
  REQUIRE(direct.size() == 2);  // not step 1: step 3 waits for it
  CHECK(direct[0]->number == 3);
  CHECK(direct[1]->number == 4);
  std::string wall, page;
  for (const Sheet& s : p.compose())
    if (s.id == "what waits") wall = plain_of(s);
  CHECK(says(wall, "3 Sew the sleeves; 4 Press the cuffs"));
  CHECK_FALSE(says(wall, "all: "));  // on the wall the nearest are enough
  p.scale = binder_scale();
  for (const Sheet& s : p.compose())
    if (s.id == "what waits") page = plain_of(s);
  CAPTURE(page);
  CHECK(says(page, "Sew the sleeves; 4 Press the cuffs; all: 1 to 4"));
  CHECK(says(page, "2 Mark both"));  // beside no row: among the other numbers
  CHECK(says(page, "nothing more: ready"));
  p.plans.work[0].holds = {"until the wool is here"};
  page.clear();
  for (const Sheet& s : p.compose())
    if (s.id == "what waits") page = plain_of(s);
  CHECK(says(page, "HOLD no step; what holds it"));
  CHECK_FALSE(says(page, "ready"));
  p.plans.work[2].done = true;
  const auto left = waiting_of(p.plans.work).steps[4].directly;
  REQUIRE(left.size() == 1);  // what a done step waited for is not asked again
  CHECK(left.front()->number == 4);
}

TEST_CASE("what waits for what: the wall tells the next acts and how many come later, the binder all of them", "[waits]") {
  SmallProject p = skirt_by_hand();
  p.plans.work.clear();
  for (int k = 1; k <= 40; ++k)
    p.plans.work.push_back(step_named(
        k, "cut " + std::to_string(k), "Cut piece " + std::to_string(k) + ".",
        k > 1 ? std::vector<std::string>{"cut " + std::to_string(k - 1)} : std::vector<std::string>{}, "cuts good cloth"));
  p.sheet("what waits", "What waits for what");
  const auto sheet = [&] {
    for (Sheet& s : p.compose())
      if (s.id == "what waits") return s;
    return Sheet{};
  };
  Sheet wall = sheet();
  CHECK(says(plain_of(wall), "13 Cut piece 13"));
  CHECK_FALSE(says(plain_of(wall), "15 Cut piece 15"));
  CHECK(says(plain_of(wall), "26 more come later: make the packet again when these are done."));
  REQUIRE(wall.shorter.size() == 9);  // 13 rows to 5
  wall.blocks = wall.shorter.back()();
  CHECK(says(plain_of(wall), "4 Cut piece 4"));
  CHECK(says(plain_of(wall), "35 more come later"));
  p.scale = binder_scale();
  const Sheet binder = sheet();
  CHECK(says(plain_of(binder), "39 Cut piece 39; all: 1 to 39"));
  CHECK_FALSE(says(plain_of(binder), "1 Cut piece 1; all"));  // step 2 waits for nothing but step 1: not said twice
  CHECK(binder.shorter.empty());
}

TEST_CASE("what waits for what: a chain as long as a project may have is told at once", "[waits]") {
  std::vector<PlannedStep> work;
  for (int k = 1; k <= 2000; ++k)
    work.push_back(step_named(k, "step " + std::to_string(k), "Sew.",
                              k > 1 ? std::vector<std::string>{"step " + std::to_string(k - 1)} : std::vector<std::string>{}));
  const Waiting waiting = waiting_of(work);
  REQUIRE(waiting.steps.size() == 2000);
  CHECK(waiting.steps[1999].all.size() == 1999);
  REQUIRE(waiting.steps[1999].directly.size() == 1);
  CHECK(waiting.steps[1999].directly[0]->number == 1999);
}
