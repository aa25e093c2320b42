// The question at ten at night. Each verdict is asked for one reason at a time.
#include "calculate/facts.h"
#include "calculate/order_of_work.h"
#include "support/catch.h"
#include "support/work_garment.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

Templates cutting_library() {
  Templates t;
  t.steps = {step_named("shrink-cloth", {}, "cloth"), step_named("lay-out-cloth", {hard_after("shrink-cloth")}, "cloth"),
             step_named("cut-breadths", {hard_after("lay-out-cloth", "one piece missing is one more yard")}, "cloth")};
  t.steps[0].say = "Shrink the {cloth} first. Test a strip.";
  t.steps[2].cannot_undo = "cuts good cloth";
  return t;
}

void plan(WorkGarment& g, const Templates& t, Diagnostics& diag) {
  g.plans.work = order_of_work(g.project, t, g.figures, facts_of(g.project, g.figures, g.plans), diag);
  add_holds(g.plans.work, g.project, g.figures, diag);
}

void all_ready(WorkGarment& g) {
  g.project.work.done = {{"shrink-cloth", std::nullopt, {}}, {"lay-out-cloth", std::nullopt, {}}};
}

CutVerdict verdict(WorkGarment& g, const std::string& cloth, Diagnostics& diag, const Templates& t = cutting_library()) {
  plan(g, t, diag);
  for (const CutVerdict& v : may_i_cut(g.project, g.plans, g.figures, diag))
    if (v.cloth == cloth) return v;
  FAIL("no verdict for " << cloth);
  return {};
}

Diagnostic hold(const std::string& section, const std::string& item) {
  Diagnostic d;
  d.code = "round-unexplained";
  d.severity = Severity::hold;
  d.section = section;
  d.item = item;
  d.sentence = "the runs explain 166 in of 170 in";
  return d;
}

}  // namespace

TEST_CASE("may I cut: yes when all before it is done, enough was bought and nothing holds it", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  const CutVerdict v = verdict(g, "slate wool", diag);
  CHECK(v.verdict == MayCut::yes);
  CHECK(v.parts == std::vector<std::string>{"skirt", "band"});
  CHECK(v.after.empty());
}

TEST_CASE("may I cut: outer cloths are answered first, each cloth once", "[may-cut]") {
  WorkGarment g = skirt_garment();
  Diagnostics diag;
  plan(g, cutting_library(), diag);
  const auto rows = may_i_cut(g.project, g.plans, g.figures, diag);
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].cloth == "slate wool");
  CHECK(rows[1].cloth == "white muslin");
}

TEST_CASE("may I cut: no, with the earliest step that is not done", "[may-cut]") {
  WorkGarment g = skirt_garment();
  Diagnostics diag;
  const CutVerdict v = verdict(g, "white muslin", diag);
  CHECK(v.verdict == MayCut::no);
  CHECK(v.reason == "Step 4, shrink the white muslin first, is not done.");
  g.project.work.done = {{"lay-out-cloth", std::nullopt, {}}};  // done in spite of that: what came before no longer counts
  CHECK(verdict(g, "white muslin", diag).verdict == MayCut::yes);
}

TEST_CASE("may I cut: a hold on the cloth, its piece, its run or round, or its step says no first", "[may-cut]") {
  const std::pair<const char*, const char*> places[] = {
      {"cloths", "slate wool"}, {"pieces", "waistband"}, {"pleats", "sides"}, {"rounds", "whole skirt"}};
  for (const auto& [section, item] : places) {
    CAPTURE(section);
    WorkGarment g = skirt_garment();
    Round round;
    round.named.name = "whole skirt";
    round.runs = {"front", "sides"};
    g.project.rounds = {round};
    all_ready(g);
    Diagnostics diag;
    diag.add(hold(section, item));
    const CutVerdict v = verdict(g, "slate wool", diag);
    CHECK(v.verdict == MayCut::no);
    CHECK(v.reason == "The runs explain 166 in of 170 in.");
    CHECK(verdict(g, "white muslin", diag).verdict == MayCut::yes);
  }
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  Diagnostic gate = hold("measures", "waist");
  gate.step = "cut-breadths@white muslin";
  diag.add(gate);
  CHECK(verdict(g, "white muslin", diag).verdict == MayCut::no);
  CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
}

TEST_CASE("may I cut: a hold that speaks of the body is named, never quoted", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  Diagnostic d = hold("pleats", "sides");
  d.is_private = true;
  diag.add(d);
  CHECK(verdict(g, "slate wool", diag).reason == "The hold on sides is not settled.");
}

TEST_CASE("may I cut: warnings stop nobody", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  Diagnostic d = hold("cloths", "slate wool");
  d.severity = Severity::warning;
  diag.add(d);
  CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
}

TEST_CASE("may I cut: an accepted hold is a decision that is printed", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  Diagnostic d = hold("rounds", "");
  d.section = "cloths";
  d.item = "slate wool";
  d.accepted_because = "it lies under the sash";
  diag.add(d);
  const CutVerdict v = verdict(g, "slate wool", diag);
  CHECK(v.verdict == MayCut::yes);
  CHECK(v.decided == "Decided: the runs explain 166 in of 170 in, because it lies under the sash.");
}

TEST_CASE("may I cut: what was bought must reach", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  Diagnostics diag;
  SECTION("nothing written") {
    g.plans.lays[1].bought.reset();
    const CutVerdict v = verdict(g, "slate wool", diag);
    CHECK(v.verdict == MayCut::no);
    CHECK(v.reason == "Nothing is written as bought of the slate wool.");
  }
  SECTION("one inch short") {
    g.plans.lays[1].bought = Length::inches(179);
    add_figure(g.figures, "cloths/slate wool/short", Length::inches(1), Shown::cloth);
    const CutVerdict v = verdict(g, "slate wool", diag);
    CHECK(v.verdict == MayCut::no);
    CHECK(v.reason == "The slate wool is {} short.");
    CHECK(v.reason_figure == "cloths/slate wool/short");
  }
  SECTION("exactly enough") {
    g.plans.lays[1].bought = Length::inches(180);
    CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
  }
  SECTION("enough in sum, in lengths that are too short") {
    g.plans.lays[1].fits_bought = false;
    g.plans.lays[1].left_out = {"skirt breadth 3"};
    CHECK(verdict(g, "slate wool", diag).reason == "The lengths of slate wool that were bought do not hold skirt breadth 3.");
  }
  SECTION("only remnants, which hold every piece") {
    g.plans.lays[1].bought.reset();
    g.plans.lays[1].on_bought.emplace_back();
    CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
  }
  SECTION("not here yet") {
    g.project.today = Given<Day>::written(make_day(2027, 3, 1), {});
    BoughtLength late{Length::inches(198), std::nullopt, make_day(2027, 3, 12), {}};
    g.project.cloths[1].bought = Given<std::vector<BoughtLength>>::written({late}, {});
    CHECK(verdict(g, "slate wool", diag).reason == "The slate wool arrives on Friday 12 March 2027.");
    g.project.today = Given<Day>::written(make_day(2027, 3, 12), {});
    CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
  }
  SECTION("short, but decided") {
    g.plans.lays[1].bought = Length::inches(179);
    Diagnostic d = hold("cloths", "slate wool");
    d.code = "cloth-short";
    d.accepted_because = "the band is pieced";
    diag.add(d);
    CHECK(verdict(g, "slate wool", diag).verdict == MayCut::yes);
  }
}

TEST_CASE("may I cut: after earlier cuts alone, the answer is yes, after them", "[may-cut]") {
  Templates t = cutting_library();
  t.steps.push_back(step_named("cut-linings", {hard_after("cut-breadths", "the outside is the pattern")}, "cloth"));
  t.steps[3].cannot_undo = "cuts good cloth";
  OwnStep own;
  own.named.name = "look";
  WorkGarment g = skirt_garment();
  all_ready(g);
  // The muslin waits for the wool: an own step would do the same.
  t.steps[2].when = Condition{};
  Diagnostics diag;
  plan(g, t, diag);
  for (PlannedStep& s : g.plans.work)
    if (s.id == "cut-breadths@white muslin") s.hard_after.push_back("cut-breadths@slate wool");
  auto rows = may_i_cut(g.project, g.plans, g.figures, diag);
  CHECK(rows[0].verdict == MayCut::yes);
  CHECK(rows[1].verdict == MayCut::yes_after);
  CHECK(rows[1].after == "the slate wool");

  // Where that earlier cut is held itself, nothing waits for it alone.
  diag.add(hold("cloths", "slate wool"));
  rows = may_i_cut(g.project, g.plans, g.figures, diag);
  CHECK(rows[0].verdict == MayCut::no);
  CHECK(rows[1].verdict == MayCut::no);
  CHECK(rows[1].reason == "Step 3, do cut-breadths, is not done.");
}

TEST_CASE("may I cut: a cloth that is cut has no row; one that nothing cuts says so", "[may-cut]") {
  WorkGarment g = skirt_garment();
  all_ready(g);
  g.project.work.done.push_back({"cut-breadths@slate wool", std::nullopt, {}});
  Diagnostics diag;
  plan(g, cutting_library(), diag);
  auto rows = may_i_cut(g.project, g.plans, g.figures, diag);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].cloth == "white muslin");
  Templates none;
  CHECK(verdict(g, "white muslin", diag, none).reason == "No step of the order of work cuts the white muslin.");
}
