#include "calculate/rounds.h"

#include "support/catch.h"
#include "support/garment.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;
using garment::said;
using testing::work_through;

namespace {

std::string length_at(const testing::WorkedGarment& g, const std::string& key, ShownIn shown) {
  return plain_text(g.figures().at(key), shown);
}

}  // namespace

TEST_CASE("a twelve-line skirt: 2 x 140 - 4 x 1.5 = 274; depth (274 - 76) / 44 = 4.5; 76 / 22 shows; marks of one half") {
  const auto g = work_through(garment::linen_skirt());
  CHECK(g.length("pleats/waist/flat") == cm(274));
  CHECK(g.length("pleats/waist/depth") == mm(45));
  CHECK(g.length("pleats/waist/visible") == cm(76).times(1, 22));
  CHECK(g.length("pleats/waist/half flat") == cm(137));
  CHECK(g.count("pleats/waist/half count") == 11);
  REQUIRE(g.worked.plans.pleats.size() == 1);
  const PleatPlan& plan = g.worked.plans.pleats.front();
  CHECK(plan.half);
  CHECK(plan.count == 11);
  CHECK(plan.measured_from == "centre front");
  CHECK(plan.marks.size() == 11);
  CHECK(plan.marks.back().lay_on == cm(137));
  CHECK(plan.overlaps);
  // the middle of a breadth at centre front: the side seam lies half of 137 round
  CHECK(plan.seams_at == std::vector<Length>{mm(685)});
  CHECK(g.length("pleats/waist/mark 11/lay on") == cm(137));
  CHECK(length_at(g, "pleats/waist/fullness", ShownIn::centimetres) == "3.61");
  CHECK(g.figures().at("pleats/waist/depth").working->numbers == "(274.0 cm − 76.0 cm) / (2 × 22)");
}

TEST_CASE("the wool day dress: half 85 1/8 = 2 + (5 + 5 x 2 x 1 1/2) + 63 1/8; twice 13 = 26") {
  const auto g = work_through(garment::day_dress());
  CHECK(g.length("rounds/whole skirt/joined round") == in(681, 4));
  CHECK(g.length("rounds/whole skirt/explained") == in(681, 4));
  CHECK_FALSE(g.has("rounds/whole skirt/unexplained"));
  CHECK(g.length("pleats/sides/flat") == in(20));
  CHECK(g.length("pleats/sides/begins at") == in(2));
  CHECK(g.length("pleats/back/flat") == in(505, 8));  // 63 1/8
  CHECK(g.length("pleats/back/begins at") == in(22));
  CHECK(g.message("round-unexplained") == nullptr);
  CHECK(g.message("waist-seam-differs") == nullptr);
  CHECK(g.said().empty());
  REQUIRE(g.worked.plans.pleats.size() == 2);  // the gauged back has a plan, and no fold lines
  CHECK(g.worked.plans.pleats[1].marks.empty());
  CHECK(g.worked.plans.pleats[0].seams_at.empty());  // the seam at 28 3/8 lies beyond 22
  CHECK(g.figures().at("pleats/back/flat").working->numbers == "170 1/4 in / 2 − 2 in − 20 in");
}

TEST_CASE("cloth that lies in no run is a hold; so are runs that ask for more than there is") {
  Project p = garment::day_dress();
  p.pleats[2].flat_is_the_rest = false;
  p.pleats[2].flat = said(in(489, 8));  // 61 1/8: 2 in less in each half
  const auto g = work_through(p);
  REQUIRE(g.message("round-unexplained") != nullptr);
  CHECK(g.message("round-unexplained")->sentence == "The runs of whole skirt use 166 1/4 in of 170 1/4 in: 4 in lie in no run.");
  CHECK(g.message("round-unexplained")->item == "whole skirt");
  CHECK(g.length("rounds/whole skirt/unexplained") == in(4));
  p.pleats[2].flat = said(in(521, 8));
  CHECK(work_through(p).message("round-unexplained")->sentence ==
        "The runs of whole skirt use 174 1/4 in, and the joined pieces have 170 1/4 in: 4 in are missing.");
}

TEST_CASE("the runs must finish at the edge they are sewn to") {
  Project p = garment::day_dress();
  p.rounds[0].finished = said(in(25));
  const auto g = work_through(p);
  REQUIRE(g.message("waist-seam-differs") != nullptr);
  CHECK(g.message("waist-seam-differs")->sentence ==
        "The runs of whole skirt finish at 26 in together; the edge they are sewn to is 25 in.");
  // 1 in over 10 pleats
  CHECK(g.message("waist-seam-differs")->hint ==
        "1 in over 10 pleats: show 3/32 in less on each; or alter `finished` of the round or of a run");
}

TEST_CASE("a lone run whose depth does not use the joined breadths is a hold, not silence") {
  Project p = garment::linen_skirt();
  p.pleats[0].depth = said(cm(4));  // 76 + 44 x 4 = 252 of 274
  const auto g = work_through(p);
  REQUIRE(g.message("round-unexplained") != nullptr);
  CHECK(g.message("round-unexplained")->sentence == "Run waist uses 252.0 cm of 274.0 cm: 22.0 cm lie in no run.");
}

TEST_CASE("two mirrored halves need an even count, unless all turn one way") {
  Project p = garment::linen_skirt();
  p.pleats[0].count = said<std::int64_t>(21);
  p.pleats[0].toward = said(Toward::centre_back);
  const auto odd = work_through(p);
  REQUIRE(odd.message("pleats-odd") != nullptr);
  CHECK(odd.message("pleats-odd")->severity == Severity::error);
  CHECK(odd.message("pleats-odd")->sentence ==
        "Run waist has 21 pleats that turn toward centre back from both sides; two halves need an even count.");
  CHECK(odd.message("pleats-odd")->hint == "`count: 20` or `count: 22`, or `toward: left` for all one way");
  CHECK(odd.worked.plans.pleats.empty());
  p.pleats[0].toward = said(Toward::left);
  const auto one_way = work_through(p);
  CHECK(one_way.message("pleats-odd") == nullptr);
  CHECK(one_way.worked.plans.pleats.front().marks.back().lay_on == cm(274));
  CHECK(one_way.worked.plans.pleats.front().seams_at == std::vector<Length>{mm(685), mm(2055)});
}

TEST_CASE("a wish for what shows gives each half the nearest count") {
  Project p = garment::linen_skirt();
  p.pleats[0].count = Given<std::int64_t>{};
  p.pleats[0].visible = said(mm(36));  // 76 / 3.6 = 21.1, odd: 38 / 3.6 = 10.6, so 11 each half
  const auto g = work_through(p);
  CHECK(g.message("pleats-odd") == nullptr);
  CHECK(g.count("pleats/waist/count") == 22);
  CHECK(g.length("pleats/waist/depth") == mm(45));
}

TEST_CASE("toward centre front the marks are measured from centre back") {
  Project p = garment::linen_skirt();
  p.pleats[0].toward = said(Toward::centre_front);
  const auto g = work_through(p);
  const PleatPlan& plan = g.worked.plans.pleats.front();
  CHECK(plan.measured_from == "centre back");
  CHECK(plan.marks.back().lay_on == cm(137));
  CHECK(plan.seams_at == std::vector<Length>{mm(685)});
}

TEST_CASE("box pleats in an odd number lie right round, one on the middle line") {
  Project p = garment::linen_skirt();
  p.pleats[0].kind = PleatKind::box;
  p.pleats[0].count = said<std::int64_t>(9);
  const auto g = work_through(p);
  CHECK(g.said().empty());
  const PleatPlan& plan = g.worked.plans.pleats.front();
  CHECK_FALSE(plan.half);
  CHECK(plan.marks.size() == 18);
  CHECK(plan.marks.back().lay_on == cm(274));
}

TEST_CASE("a seam at centre front moves every seam by half a breadth") {
  Project p = garment::day_dress();
  p.rounds[0].centre_front_is_seam = true;
  p.pleats[1].depth = said(in(6));  // sides 65 in flat from 2 in: holds the seam at 56 3/4
  const auto g = work_through(p);
  REQUIRE(g.worked.plans.pleats.size() == 2);  // the gauged back has a plan, and no fold lines
  CHECK(g.worked.plans.pleats[1].marks.empty());
  CHECK(g.worked.plans.pleats[0].seams_at == std::vector<Length>{in(219, 4)});  // 56 3/4 - 2
}

TEST_CASE("a full breadth is shown as wide as its cloth, never wider") {
  Project p = garment::linen_skirt();
  p.cloths[0].width = said(Length::tenth_mm(14732));  // 147.32 cm on the bolt: the pieces' step would give 147.4
  const auto g = work_through(p);
  REQUIRE(g.figures().find("pieces/skirt breadth/blue linen/cut width") != nullptr);
  CHECK(length_at(g, "pieces/skirt breadth/blue linen/cut width", ShownIn::centimetres) == "147.3 cm");
}

TEST_CASE("gathers: flat, finished and fullness, any two") {
  Project p = garment::linen_skirt();
  p.pleats[0] = garment::run("waist", PleatKind::gathers, {"skirt breadth"});
  p.pleats[0].finished = said(cm(76));
  const auto g = work_through(p);
  CHECK(g.length("pleats/waist/flat") == cm(274));
  CHECK(length_at(g, "pleats/waist/fullness", ShownIn::centimetres) == "3.61");
  p.pleats[0].finished = Given<Length>{};
  const auto short_of = work_through(p);
  REQUIRE(short_of.message("pleats-too-few") != nullptr);
  CHECK(short_of.message("pleats-too-few")->sentence == "Gathered run waist needs two of flat, finished and fullness.");
}

TEST_CASE("a run that waits for a measure is a hold, not an error") {
  Project p = garment::linen_skirt();
  p.pleats[0].finished = Given<Length>{};
  p.pleats[0].finished.origin = Origin::to_measure;
  const auto g = work_through(p);
  REQUIRE(g.message("pleats-too-few") != nullptr);
  CHECK(g.message("pleats-too-few")->severity == Severity::hold);
}

TEST_CASE("a piece that fills a run which itself waits for the piece") {
  Project p = garment::linen_skirt();
  p.pieces[0].make = said(garment::fills("waist"));
  const auto g = work_through(p);  // 76 cm and 22 pleats: how deep is said nowhere
  REQUIRE(g.message("pleats-too-few") != nullptr);
  p.pleats[0].depth = said(cm(4));  // 76 + 44 x 4 = 252 of 137 each: two breadths
  const auto h = work_through(p);
  CHECK(h.count("pieces/skirt breadth/blue linen/copies") == 2);
  CHECK(h.message("round-unexplained") == nullptr);
}

TEST_CASE("accepted holds are recorded decisions; what cannot be accepted is said") {
  Project p = garment::linen_skirt();
  p.pleats[0].depth = said(cm(4));
  p.accept = {{"round-unexplained", "waist", "the placket takes the rest", {}},
              {"cloth-short", "blue linen", "never mind it", {}}};
  const auto g = work_through(p);
  CHECK(g.message("round-unexplained")->accepted_because == "the placket takes the rest");
  REQUIRE(g.message("accept-unused") != nullptr);
  CHECK(g.message("accept-unused")->sentence == "Nothing called `cloth-short` is left at blue linen.");
  p.pleats[0].depth = Given<Length>{};
  p.pleats[0].count = said<std::int64_t>(21);
  p.accept = {{"pleats-odd", "waist", "I like it odd", {}}};
  CHECK(work_through(p).message("accept-error") != nullptr);
}
