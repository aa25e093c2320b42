#include "calculate/order_of_work.h"

#include "calculate/facts.h"
#include "support/catch.h"
#include "support/work_garment.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

Condition when(const std::string& text) {
  Diagnostics diag;
  Condition c = parse_condition(text, {}, diag);
  REQUIRE_FALSE(diag.has_errors());
  return c;
}

std::vector<PlannedStep> planned(const WorkGarment& g, const Templates& t, Diagnostics& diag) {
  auto work = order_of_work(g.project, t, g.figures, facts_of(g.project, g.figures, g.plans), diag);
  add_holds(work, g.project, g.figures, diag);
  return work;
}
std::vector<PlannedStep> planned(const WorkGarment& g, const Templates& t) {
  Diagnostics diag;
  auto work = planned(g, t, diag);
  REQUIRE_FALSE(diag.has_errors());
  return work;
}

std::vector<std::string> ids(const std::vector<PlannedStep>& work) {
  std::vector<std::string> all;
  for (const PlannedStep& s : work) all.push_back(s.id);
  return all;
}
using Ids = std::vector<std::string>;

DoneStep done(const std::string& id) { return {id, std::nullopt, {}}; }

}  // namespace

TEST_CASE("work: a step is repeated for each item, outer cloths first", "[work]") {
  Templates t;
  t.steps = {step_named("look-over", {}, "cloth"), step_named("mark", {}, "run"), step_named("press")};
  t.steps[1].when = when("pleat kind is not plain");
  const auto work = planned(skirt_garment(), t);
  CHECK(ids(work) == Ids{"look-over@slate wool", "look-over@white muslin", "mark@sides", "press"});
  CHECK(work[0].number == 1);
  CHECK(work[3].number == 4);
  CHECK(work[0].item == "slate wool");
}

TEST_CASE("work: steps of the same items wait item by item, others for all", "[work]") {
  Templates t;
  t.steps = {step_named("sew", {hard_after("cut")}), step_named("cut", {hard_after("lay-out")}, "cloth"),
             step_named("lay-out", {}, "cloth")};
  const auto work = planned(skirt_garment(), t);
  CHECK(ids(work) == Ids{"lay-out@slate wool", "cut@slate wool", "lay-out@white muslin", "cut@white muslin", "sew"});
  CHECK(find_step(work, "cut@white muslin")->hard_after == Ids{"lay-out@white muslin"});
  CHECK(find_step(work, "sew")->hard_after == Ids{"cut@slate wool", "cut@white muslin"});
}

TEST_CASE("work: a step without a single item still passes on what it waits for", "[work]") {
  WorkGarment g = skirt_garment();
  g.project.pleats.clear();
  Templates t;
  t.steps = {step_named("try-on", {hard_after("mark")}), step_named("mark", {hard_after("hem")}, "run"), step_named("hem")};
  CHECK(ids(planned(g, t)) == Ids{"hem", "try-on"});
}

TEST_CASE("work: the reason is that of the first step not yet done", "[work]") {
  WorkGarment g = skirt_garment();
  Templates t;
  t.steps = {step_named("measure"), step_named("wash"),
             step_named("cut", {hard_after("measure", "the body comes first"), hard_after("wash", "it shrinks")})};
  CHECK(words_of(planned(g, t)[2].reason) == "The body comes first.");
  g.project.work.done = {done("measure")};
  const auto work = planned(g, t);
  CHECK(work[0].done);
  CHECK(words_of(work[2].reason) == "It shrinks.");
  g.project.work.done = {done("measure"), done("wash")};
  CHECK(planned(g, t)[2].reason.empty());
}

TEST_CASE("work: where only an absent step had a reason, the step that comes first is named", "[work]") {
  WorkGarment g = skirt_garment();
  Templates t;
  t.steps = {step_named("sew"), step_named("bones", {hard_after("sew", "a bone needs its channel")}),
             step_named("try-on", {hard_after("bones", "bones change the closing line")})};
  t.steps[1].when = when("has boned");
  CHECK(words_of(planned(g, t)[1].reason) == "Step 1 comes first.");
  g.project.work.done = {done("sew")};
  CHECK(planned(g, t)[1].reason.empty());
}

TEST_CASE("work: a hold that speaks of the body is named, never quoted", "[work]") {
  Templates t;
  t.steps = {step_named("cut", {}, "cloth")};
  t.steps[0].cannot_undo = "cuts good cloth";
  Diagnostics diag;
  Diagnostic d;
  d.code = "waist-seam-differs";
  d.severity = Severity::hold;
  d.item = "sides";
  d.sentence = "The waist is 27 in.";
  d.is_private = true;
  diag.add(d);
  const auto work = planned(skirt_garment(), t, diag);
  CHECK(work[0].holds == std::vector<std::string>{"until the hold on sides is settled"});
}

TEST_CASE("work: `done` names every item of a step, or one", "[work]") {
  WorkGarment g = skirt_garment();
  Templates t;
  t.steps = {step_named("wash", {}, "cloth")};
  g.project.work.done = {done("wash@White Muslin")};
  auto work = planned(g, t);
  CHECK_FALSE(work[0].done);
  CHECK(work[1].done);
  g.project.work.done = {done("wash")};
  work = planned(g, t);
  CHECK((work[0].done && work[1].done));
}

TEST_CASE("work: a step that replaces another takes its place and its edges where its condition holds", "[work]") {
  WorkGarment g = skirt_garment();
  Templates t;
  t.steps = {step_named("measure"), step_named("gather", {hard_after("measure")}), step_named("band", {hard_after("gather")}),
             step_named("pleat")};
  t.steps[3].replaces = "gather";
  t.steps[3].when = when("has pleats");
  CHECK(ids(planned(g, t)) == Ids{"measure", "pleat", "band"});
  g.project.pleats.clear();
  CHECK(ids(planned(g, t)) == Ids{"measure", "gather", "band"});
}

TEST_CASE("work: a step of the same sitting stands beside the one it goes with", "[work]") {
  Templates t;
  t.steps = {step_named("fit"), step_named("press"), step_named("photograph")};
  t.steps[2].with = "fit";
  CHECK(ids(planned(skirt_garment(), t)) == Ids{"fit", "photograph", "press"});
}

TEST_CASE("work: own steps stand after what they wait for, or before what waits for them", "[work]") {
  WorkGarment g = skirt_garment();
  OwnStep dye, rest;
  dye.named.name = "dye the muslin";
  dye.say = "Dye the muslin in tea.";
  dye.before = {"cut@white muslin"};
  dye.because = "cut edges fray in the bath";
  rest.named.name = "let it rest";
  rest.after = {"own/dye the muslin"};
  g.project.work.own_steps = {rest, dye};
  Templates t;
  t.steps = {step_named("measure"), step_named("cut", {}, "cloth"), step_named("sew", {hard_after("cut")})};
  const auto work = planned(g, t);
  CHECK(ids(work) == Ids{"measure", "own/dye the muslin", "cut@slate wool", "cut@white muslin", "sew", "own/let it rest"});
  CHECK(words_of(find_step(work, "own/dye the muslin")->act) == "Dye the muslin in tea.");
  CHECK(words_of(find_step(work, "own/let it rest")->act) == "let it rest");
  CHECK(words_of(find_step(work, "cut@white muslin")->reason) == "Cut edges fray in the bath.");
  CHECK(find_step(work, "cut@slate wool")->reason.empty());
}

TEST_CASE("work: a ring with an own step is an error that prints the ring at its own line", "[work]") {
  WorkGarment g = skirt_garment();
  OwnStep own;
  own.named = {"dye", "", "", {"skirt.yaml", 40, 5, 3}};
  own.after = {"sew"};
  own.after_at = {"skirt.yaml", 41, 12, 3};
  own.before = {"cut"};
  g.project.work.own_steps = {own};
  Templates t;
  t.steps = {step_named("cut"), step_named("sew", {hard_after("cut")})};
  Diagnostics diag;
  CHECK(planned(g, t, diag).empty());
  REQUIRE(diag.in_order_found().size() == 1);
  const Diagnostic& d = diag.in_order_found().front();
  CHECK(d.code == "steps-ring");
  CHECK(d.sentence == "cut waits for own/dye waits for sew waits for cut.");
  CHECK(d.at.line == 41);
}

TEST_CASE("work: figures stand in the act by their keys; an act without them is said plainly", "[work]") {
  WorkGarment g = skirt_garment();
  Templates t;
  t.steps = {step_named("mark", {}, "run")};
  t.steps[0].say = "Mark the {run:kind} pleats of {run}, {run:count} in all.";
  t.steps[0].plainly = "Mark the pleats of {run}.";
  t.steps[0].shows = {"{run:depth} deep", "{run:visible} to see"};
  t.steps[0].when = when("pleat kind is not plain");
  auto work = planned(g, t);
  CHECK(words_of(work[0].act) == "Mark the pleats of sides.");  // no count was worked out
  REQUIRE(work[0].shows.size() == 1);                           // nor what shows
  CHECK(words_of(work[0].shows[0]) == "[pleats/sides/depth] deep");
  add_figure(g.figures, "pleats/sides/count", std::int64_t{20}, Shown::exact);
  work = planned(g, t);
  CHECK(words_of(work[0].act) == "Mark the [pleats/sides/kind] pleats of sides, [pleats/sides/count] in all.");
}

TEST_CASE("work: a piece's figure is that of its first cloth, else its own", "[work]") {
  WorkGarment g = skirt_garment();
  add_figure(g.figures, "pieces/waistband/slate wool/cut length", Length::inches(30), Shown::cut);
  add_figure(g.figures, "pieces/waistband/hem", Length::inches(1));
  Templates t;
  t.steps = {step_named("check", {}, "piece")};
  t.steps[0].shows = {"{piece:cut length}", "{piece:hem}"};
  const auto work = planned(g, t);
  CHECK(find_step(work, "check@skirt breadth")->shows.empty());
  const PlannedStep* band = find_step(work, "check@waistband");
  REQUIRE(band->shows.size() == 2);
  CHECK(words_of(band->shows[0]) == "[pieces/waistband/slate wool/cut length]");
  CHECK(words_of(band->shows[1]) == "[pieces/waistband/hem]");
}

TEST_CASE("work: a condition that stays open keeps the step and says what is open", "[work]") {
  Templates t;
  t.steps = {step_named("mock-up"), step_named("boning")};
  t.steps[0].when = when("has fitted");
  t.steps[1].when = when("has boned");
  const auto work = planned(skirt_garment(), t);
  REQUIRE(ids(work) == Ids{"mock-up"});
  CHECK(work[0].conditional);
  CHECK(work[0].condition == "it fits with 2 in of ease or less");
}

TEST_CASE("work: an open hold stands on the step that it gates", "[work]") {
  WorkGarment g = skirt_garment();
  add_figure(g.figures, "cloths/slate wool/short", Length::sixty_fourths(36 * 64 * 3 / 8), Shown::cloth);
  Templates t;
  t.steps = {step_named("cut", {}, "cloth"), step_named("fold", {}, "run")};
  t.steps[0].cannot_undo = "cuts good cloth";
  Diagnostics diag;
  Diagnostic shortage;
  shortage.code = "cloth-short";
  shortage.severity = Severity::hold;
  shortage.item = "slate wool";
  shortage.section = "cloths";
  shortage.sentence = "Slate wool is short.";
  diag.add(shortage);
  Diagnostic round = shortage;  // a run in skirt breadths touches the wool alone
  round.code = "round-unexplained";
  round.item = "sides";
  round.section = "pleats";
  round.sentence = "4 in lie in no run.";
  round.step = "fold@sides";
  diag.add(round);
  auto work = planned(g, t, diag);
  const PlannedStep* wool = find_step(work, "cut@slate wool");
  REQUIRE(wool->holds.size() == 2);
  CHECK(wool->holds[0] == "until 3/8 yd more of slate wool is here");
  CHECK(wool->holds[1] == "until this is settled: 4 in lie in no run.");
  CHECK(find_step(work, "cut@white muslin")->holds.empty());
  CHECK(find_step(work, "fold@sides")->holds.size() == 1);
  CHECK(find_step(work, "fold@front")->holds.empty());

  for (Diagnostic& d : diag.all()) d.accepted_because = "the joins hide in the pleats";
  CHECK(find_step(planned(g, t, diag), "cut@slate wool")->holds.empty());
}

TEST_CASE("work: more than 2,000 steps is one sentence", "[work]") {
  WorkGarment g = skirt_garment();
  for (int i = 0; i < 2001; ++i) g.project.pleats.push_back(run_named("run " + std::to_string(i), PleatKind::knife, {}));
  Templates t;
  t.steps = {step_named("mark", {}, "run")};
  Diagnostics diag;
  CHECK(planned(g, t, diag).empty());
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(diag.in_order_found().front().code == "steps-many");
}
