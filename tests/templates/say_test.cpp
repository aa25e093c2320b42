#include "templates/say.h"

#include "support/catch.h"
#include "templates/templates.h"

using namespace gownsheaf;

TEST_CASE("say: words and references in turn, with places in characters", "[say]") {
  const SayRead read = read_say("Märk {run:count} pleats of {run}.");
  REQUIRE_FALSE(read.fault);
  REQUIRE(read.pieces.size() == 5);
  CHECK(read.pieces[0].text == "Märk ");
  CHECK(read.pieces[1].reference);
  CHECK(read.pieces[1].text == "run:count");
  CHECK(read.pieces[1].at == 5);
  CHECK(read.pieces[1].length == 11);
  CHECK(read.pieces[3].text == "run");
  CHECK(read.pieces[3].at == 27);
  CHECK(read.pieces[4].text == ".");
  CHECK(read_say("").pieces.empty());
}

TEST_CASE("say: a brace without its other half is told with its place", "[say]") {
  CHECK(read_say("Mark {run").fault->at == 5);
  CHECK(read_say("Mark run}").fault->at == 8);
  CHECK(read_say("Mark {a{b}}").fault->at == 7);
  CHECK(read_say("Mark { }").fault->length == 3);
}

TEST_CASE("say: references name an item's figure or a whole key", "[say]") {
  const SayReference count = read_reference("run:count");
  CHECK(count.item_word == "run");
  CHECK(count.section == "pleats");
  CHECK(count.quantity == "count");
  CHECK(read_reference("cloth").quantity.empty());
  const SayReference whole = read_reference("measures/waist to floor/longest");
  CHECK(whole.item_word.empty());
  CHECK(whole.section == "measures");
  CHECK(whole.quantity == "waist to floor/longest");
}

TEST_CASE("templates: cloth kinds are found by either name, whatever the case", "[templates]") {
  Templates t;
  ClothKind wool;
  wool.kind = "wool suiting";
  wool.also = {"tropical wool"};
  t.cloth_kinds.push_back(wool);
  PacketSet set;
  set.name = "pin-up";
  t.sets.push_back(set);
  Step step;
  step.id = "mark-pleats";
  t.steps.push_back(step);
  CHECK(t.cloth_kind("Tropical Wool") == &t.cloth_kinds[0]);
  CHECK(t.cloth_kind("WOOL SUITING") == &t.cloth_kinds[0]);
  CHECK(t.cloth_kind("wool") == nullptr);
  CHECK(t.set("Pin-Up") == &t.sets[0]);
  CHECK(t.set("binder") == nullptr);
  CHECK(t.step("mark-pleats") == &t.steps[0]);
  CHECK(t.step("Mark-pleats") == nullptr);
}
