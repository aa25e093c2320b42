#include "calculate/facts.h"

#include "support/catch.h"
#include "support/work_garment.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

FactValue fact(const WorkGarment& g, std::string_view name, std::string_view item = "") {
  return facts_of(g.project, g.figures, g.plans)(name, item);
}
bool unknown(const FactValue& v) { return std::holds_alternative<std::monostate>(v); }
FactValue yes() { return true; }
FactValue no() { return false; }
FactValue word(const char* w) { return std::string(w); }
FactValue number(std::int64_t n) { return n; }

Given<std::string> text(const char* s) { return Given<std::string>::written(s, {}); }

}  // namespace

TEST_CASE("facts: those that are called worked out are, and no others", "[facts]") {
  std::vector<std::string_view> computed;
  for (const FactKind& k : fact_kinds())
    if (k.computed) computed.push_back(k.name);
  CHECK(computed == facts_worked_out());
}

TEST_CASE("facts: each has the type that the table says", "[facts]") {
  WorkGarment g = skirt_garment();
  g.project.garment = Given<Garment>::written(Garment::dress, {});
  g.project.cloths[0].weight = Given<MassPerArea>::written(MassPerArea{120}, {});
  for (const FactKind& k : fact_kinds())
    for (const char* item : {"slate wool", "white muslin", "sides", ""}) {
      INFO(k.name);
      const FactValue v = fact(g, k.name, item);
      if (unknown(v)) continue;
      CHECK(std::holds_alternative<bool>(v) == (k.type == FactType::yes_no));
      CHECK(std::holds_alternative<std::int64_t>(v) == (k.type == FactType::count));
      CHECK(std::holds_alternative<Length>(v) == (k.type == FactType::length));
      CHECK(std::holds_alternative<Ratio>(v) == (k.type == FactType::ratio));
      if (const auto* w = std::get_if<std::string>(&v)) CHECK(std::find(k.words.begin(), k.words.end(), *w) != k.words.end());
    }
}

TEST_CASE("facts: pieces say which parts the garment has", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "skirt") == yes());
  CHECK(fact(g, "band") == yes());
  CHECK(fact(g, "bodice") == no());
  CHECK(fact(g, "skirt interlined") == yes());
  CHECK(fact(g, "interlined bodice") == no());
  CHECK(fact(g, "lining") == word("none"));
  g.project.pieces[2].part_of = {};
  CHECK(unknown(fact(g, "bodice")));  // the band's part is not known: it might be one
  g.project.failed_sections.insert("pieces");
  CHECK(unknown(fact(g, "skirt")));
}

TEST_CASE("facts: before there are pieces the kind of garment speaks", "[facts]") {
  WorkGarment g;
  g.project.garment = Given<Garment>::written(Garment::dress, {});
  CHECK(fact(g, "skirt") == yes());
  CHECK(fact(g, "bodice") == yes());
  CHECK(unknown(fact(g, "sleeves")));
  CHECK(fact(g, "garment kind") == word("dress"));
}

TEST_CASE("facts: parts cut from a cloth", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "cloth breadths", "slate wool") == number(3));
  CHECK(fact(g, "other pieces", "slate wool") == number(1));
  CHECK(fact(g, "cloth pieces", "slate wool") == number(4));
  CHECK(fact(g, "other pieces", "white muslin") == number(0));
  CHECK(fact(g, "skirt breadths") == number(3));  // the outside's alone
  g.project.cloths.push_back(cloth_named("spare sateen", UsedAs::lining));
  CHECK(fact(g, "cloth pieces", "spare sateen") == number(0));
  g.plans.lays.clear();
  CHECK(unknown(fact(g, "cloth pieces", "slate wool")));
}

TEST_CASE("facts: a cloth is short when less was bought than is needed, or it does not hold the pieces", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "cloth short", "slate wool") == no());
  g.plans.lays[1].bought = Length::inches(179);
  CHECK(fact(g, "cloth short", "slate wool") == yes());
  g.plans.lays[1].bought.reset();
  CHECK(unknown(fact(g, "cloth short", "slate wool")));
}

TEST_CASE("facts: silk and velvet are told by the word, never by a part of one", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "silk") == no());
  g.project.cloths[0].kind = text("silkworm cotton");
  CHECK(fact(g, "silk") == no());
  g.project.cloths[0].kind = text("Shot silk");
  CHECK(fact(g, "silk") == yes());
  g.project.cloths[1].kind = text("silk velvet");
  CHECK(fact(g, "velvet") == yes());
}

TEST_CASE("facts: layers that shrink apart by over a quarter inch on the longest piece", "[facts]") {
  // 45 in at 3 % and at 3 1/2 %: 0.225 in apart; at 4 %: 0.45 in.
  WorkGarment g = skirt_garment();
  g.project.pieces[0].from = {"slate wool", "white muslin"};
  const auto shrinks = [](std::int64_t n, std::int64_t d) { return Given<Percent>::written(Percent{Ratio::of(n, d)}, {}); };
  g.project.cloths[1].shrinks_along = shrinks(3, 100);
  CHECK(unknown(fact(g, "shrinkage differs")));
  g.project.cloths[0].shrinks_along = shrinks(7, 200);
  CHECK(fact(g, "shrinkage differs") == no());
  g.project.cloths[0].shrinks_along = shrinks(4, 100);
  CHECK(fact(g, "shrinkage differs") == yes());
  for (Cloth& c : g.project.cloths) c.shrunk_already = Given<bool>::written(true, {});
  CHECK(fact(g, "shrinkage differs") == no());
}

TEST_CASE("facts: the ease at any girth says whether it is fitted", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(unknown(fact(g, "fitted")));
  g.project.ease["bust"] = Given<Length>::written(Length::inches(3), {});
  CHECK(fact(g, "fitted") == no());
  g.project.ease["waist"] = Given<Length>::written(-Length::sixty_fourths(32), {});
  CHECK(fact(g, "fitted") == yes());
  CHECK(fact(g, "waist ease") == FactValue(-Length::sixty_fourths(32)));
}

TEST_CASE("facts: breadths alone say that a skirt is straight and levelled at the waist", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "skirt kind") == word("straight breadths"));
  CHECK(fact(g, "skirt levelled at") == word("waist"));
  g.project.skirt.emplace();
  g.project.skirt->kind = text("gored");
  CHECK(fact(g, "skirt levelled at") == word("hem"));
  g.project.skirt->levelled_at = text("waist");
  CHECK(fact(g, "skirt levelled at") == word("waist"));
  WorkGarment none;
  CHECK(unknown(fact(none, "skirt levelled at")));
}

TEST_CASE("facts: the hem", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "hem braid") == no());
  g.project.skirt.emplace();
  g.project.skirt->hem = SkirtHem{Given<Length>::written(Length::inches(3), {}), "drab sateen", "none", "wool braid"};
  CHECK(fact(g, "hem depth") == FactValue(Length::inches(3)));
  CHECK(fact(g, "hem facing") == yes());
  CHECK(fact(g, "hem stiffening") == no());
  CHECK(fact(g, "hem braid") == yes());
  add_figure(g.figures, "skirt/hem round", Length::inches(170));
  CHECK(fact(g, "hem round") == FactValue(Length::inches(170)));
}

TEST_CASE("facts: pleats, and how many cloths lie on each other", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "pleats") == yes());
  CHECK(fact(g, "gauging") == no());
  CHECK(fact(g, "pleat kind", "front") == word("plain"));
  CHECK(fact(g, "pleat kind", "sides") == word("knife"));
  PleatPlan plan;
  plan.run = "sides";
  plan.depth = Length::sixty_fourths(96);  // 1 1/2 in deep, 1 in to see: 1 + 3/1 = 4 cloths
  plan.visible = Length::inches(1);
  plan.flat = Length::inches(20);  // five of them
  plan.finished = Length::inches(5);
  plan.marks.resize(5);
  g.plans.pleats.push_back(plan);
  CHECK(fact(g, "pleat plies", "sides") == FactValue(Ratio{4, 1}));
  g.project.pleats.pop_back();
  CHECK(fact(g, "pleats") == no());
}

TEST_CASE("facts: sections that only later issues work out still say that they are there", "[facts]") {
  WorkGarment g = skirt_garment();
  CHECK(fact(g, "boned") == no());
  g.project.sections_given.insert("bones");
  CHECK(fact(g, "boned") == yes());
  CHECK(unknown(fact(g, "darts")));
  g.project.sections_given.insert("seams");
  Seam dart;
  dart.kind = "dart";
  dart.number = 4;
  g.project.seams = {dart, Seam{}};
  CHECK(fact(g, "darts") == number(4));
}
