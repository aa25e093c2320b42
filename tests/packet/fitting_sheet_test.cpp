// The checklist of a fitting and the cautions, read as their reader does.
#include "packet/sheets.h"
#include "support/catch.h"
#include "support/plain_blocks.h"
#include "support/small_project.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

bool holds(const std::string& page, const std::string& words) { return page.find(words) != std::string::npos; }

SmallProject tried_on(bool private_shown) {
  SmallProject p;
  p.set.private_shown = private_shown;
  p.sheet("fitting checklist", "Fitting: {fitting}", "fitting");
  p.sheet("cautions", "Cautions");
  p.scale = binder_scale();
  Figure f;
  f.key = "girths/waist/finished";
  f.value = Length::inches(26);
  f.shown = Shown::mark;
  f.is_private = true;
  p.figures.add(f);
  FittingPlan plan;
  plan.gate = "mock-up";
  plan.title = "the mock-up";
  plan.step = 4;
  plan.next_step = 5;
  plan.wear = {{"chemise", false, ""}, {"two petticoats", true, "Saturday 20 March 2027"}};
  FittingCheckPlan check;
  check.look = "Waist";
  check.how = "pinch all round";
  check.allowed = {{"the mock-up measures ", ""}, {"", "girths/waist/finished"}};
  check.allowed_plainly = {{"even with the body to 1/2 in less", ""}};
  check.remedy = check.remedy_plainly = {{"share it", ""}};
  plan.checks = {check};
  plan.moves = {"Deep breath"};
  plan.fitting = "first mock-up";
  plan.changes = {{"first mock-up", "waist", {{"loose by 5/8 in", ""}}, {{"take in 5/32 in", ""}}, {}, {}}};
  p.plans.fittings = {plan};
  plan.gate = plan.title = "the basted bodice";
  p.plans.fittings.push_back(plan);
  p.plans.cautions = {{"Near a flame", {{"stays 40 in away", ""}}, "the venue's fire officer", "it is worn near a flame"}};
  return p;
}

}  // namespace

TEST_CASE("fitting checklist: ready first, then what to look at with room to write, then the signature", "[fitting]") {
  const std::vector<Sheet> sheets = tried_on(true).compose();
  REQUIRE(sheets.size() == 3);
  const std::string page = plain_of(sheets[0]);
  CAPTURE(page);
  CHECK(holds(page, "Fitting: the mock-up\nStep 5 and all that follows from it wait until this page is signed."));
  CHECK(page.find("Ready?") < page.find("Waist"));
  CHECK(holds(page, "two petticoats (still to make, ready by Saturday 20 March 2027)"));
  CHECK(holds(page, "[look at][right when][found][if not]"));
  CHECK(holds(page, "the mock-up measures 26 in |  | share it"));
  CHECK(holds(page, "[move][passes][tight][gapes]"));
  CHECK(holds(page, "[value][moved][where][initials][date]"));
  CHECK(holds(page, "Signed: go on to step 5."));
  CHECK(holds(page, "who ____ date ____"));
  CHECK(holds(page, "First mock-up: carry this to the pattern"));
  CHECK(holds(page, "take in 5/32 in"));
  CHECK(sheets[0].section == Section::fit);
}

TEST_CASE("fitting checklist: where body measures are hidden neither girths nor changes print", "[fitting]") {
  const std::string page = plain_of(tried_on(false).compose()[0]);
  CAPTURE(page);
  CHECK_FALSE(holds(page, "26"));
  CHECK_FALSE(holds(page, "5/32"));
  CHECK_FALSE(holds(page, "5/8"));
  CHECK(holds(page, "even with the body to 1/2 in less"));
}

TEST_CASE("fitting checklist: on the wall hangs only the fitting that comes next", "[fitting]") {
  SmallProject p = tried_on(false);
  p.scale = pin_up_scale();
  const std::vector<Sheet> sheets = p.compose();
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].title == "Fitting: the mock-up");
}

TEST_CASE("cautions: each with its question and whose word is last", "[cautions]") {
  const std::string page = plain_of(tried_on(true).compose()[2]);
  CAPTURE(page);
  CHECK(holds(page, "Not medical, fire or compliance advice"));
  CHECK(holds(page, "Near a flame (Last word: the venue's fire officer) | If it is worn near a flame: stays 40 in away"));
  CHECK(holds(page, "pins and needles out ____"));
}
