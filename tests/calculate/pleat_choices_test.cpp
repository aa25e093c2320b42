// Plans to choose from: five that differ, all of the same finished width, each a run that can be laid.
#include "calculate/pleat_choices.h"

#include <set>

#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::in;

TEST_CASE("five plans of 90 in into 30 in, breadths of 30 in: by hand") {
  PleatSolution s;
  s.flat = in(90);
  s.finished = in(30);
  s.count = 12;
  const auto plans = pleat_choices(PleatKind::knife, s, 2, in(30));
  REQUIRE(plans.size() == 5);
  CHECK(plans[0].depth == in(5, 2));  // 60 / 24
  CHECK(plans[1].count == 8);         // 9, to an even count
  CHECK(plans[2].count == 14);        // 15, likewise
  CHECK(plans[3].flat == in(60));
  CHECK(plans[3].depth == in(5, 4));
  CHECK(plans[4].kind == PleatKind::box);
  CHECK(plans[4].count == 6);
  CHECK(plans[4].visible == in(5));
  CHECK(plans[4].depth == in(5, 2));  // 60 / (4 x 6)
}

TEST_CASE("law: plans differ, keep the finished width and the step of the count") {
  draws::Draws draw(55);
  for (int round = 0; round < kLawRounds; ++round) {
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted, PleatKind::double_box};
    const PleatKind kind = kinds[draw.of(0, 3)];
    const std::int64_t step = kind == PleatKind::knife ? draw.of(1, 2) : 1;
    PleatSolution s;
    s.count = step * draw.of(2, 60);
    s.finished = Length::ticks(draw.of(1000000, 50000000));
    s.flat = s.finished + Length::ticks(draw.of(1000000, 90000000));
    const auto plans =
        pleat_choices(kind, s, step, draw.of(0, 1) == 0 ? std::nullopt : std::optional(Length::ticks(draw.of(1000000, 9000000))));
    INFO("round " << round);
    REQUIRE(plans.size() == 5);
    std::set<std::tuple<int, std::int64_t, std::int64_t>> seen;
    for (std::size_t i = 0; i < plans.size(); ++i) {
      const PleatChoice& c = plans[i];
      seen.insert({static_cast<int>(c.kind), c.count, c.flat.in_ticks()});
      REQUIRE(c.finished == s.finished);
      REQUIRE(c.flat > c.finished);
      REQUIRE(c.depth > Length{});
      if (i < 4) REQUIRE(c.count % step == 0);
    }
    REQUIRE(seen.size() == 5);
  }
}
