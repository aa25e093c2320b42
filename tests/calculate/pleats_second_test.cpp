// The subset solving of calculate/pleats against the second way of tests/support/plain_pleats.h.
#include <array>

#include "calculate/pleats.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/plain_pleats.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;

namespace {

bool near(Length a, double ticks) { return std::abs(static_cast<double>(a.in_ticks()) - ticks) <= 1.0; }

}  // namespace

TEST_CASE("law: any few of the six, agreeing or not, settle as a second way settles them") {
  draws::Draws draw(4041);
  std::array<int, 3> seen{};
  int skipped = 0, many = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    PleatInput input;
    const PleatKind kinds[] = {PleatKind::knife,      PleatKind::box,   PleatKind::inverted,
                               PleatKind::double_box, PleatKind::tucks, PleatKind::inverted_at_seams};
    input.kind = kinds[draw.of(0, 5)];
    plain_pleats::Said said;
    said.folds = folds_under(input.kind);
    said.within = pleat_step(ShownIn::inches).in_ticks() / 2;
    // A run that is true, in 1/64 in; then some of it is kept, and at times something is put out.
    const std::int64_t unit = Length::sixty_fourths(1).in_ticks(), count = draw.of(1, 60), d = draw.of(8, 300),
                       v = draw.of(8, 300);
    const std::int64_t finished = count * v, flat = finished + said.folds * count * d;
    const auto keep = draw.of(0, 63);
    const auto off = [&](std::int64_t value) {
      return draw.of(0, 3) == 0 ? std::max<std::int64_t>(1, value + draw.of(-value / 4, value / 4)) : value;
    };
    if (draw.of(0, 1) == 0) input.plus = Length::ticks(draw.of(1, 1000000));
    if ((keep & 1) != 0) {
      said.flat = off(flat) * unit;
      input.flat = Length::ticks(said.flat) + input.plus;
    }
    if ((keep & 2) != 0) {
      said.finished = off(finished) * unit;
      input.finished = Length::ticks(said.finished);
    }
    if ((keep & 4) != 0) {
      said.count = off(count);
      input.count = said.count;
    }
    if ((keep & 8) != 0) {
      said.depth = off(d) * unit;
      input.depth = Length::ticks(said.depth);
    }
    if ((keep & 16) != 0) {
      said.visible = off(v) * unit;
      input.visible = Length::ticks(said.visible);
    }
    if ((keep & 32) != 0) {
      if (draw.of(0, 1) == 0) {
        said.top = flat;
        said.bottom = finished;
      } else {
        said.top = draw.of(2, 80);
        said.bottom = draw.of(1, 8) * 4;
      }
      input.fullness = Ratio::of(said.top, said.bottom);
    }
    const plain_pleats::Answer second = plain_pleats::settle(said);
    if (second.near_limit) {
      ++skipped;
      continue;
    }
    const auto outcome = solve_pleats(input, "sides", ShownIn::inches);
    INFO("round " << round << " keeps " << keep << ": flat " << said.flat << " finished " << said.finished << " count "
                  << said.count << " depth " << said.depth << " visible " << said.visible << " fullness " << said.top << "/"
                  << said.bottom);
    ++seen[static_cast<std::size_t>(second.how)];
    if (outcome.index() == 1) {
      INFO(std::get<1>(outcome).sentence);
      REQUIRE(second.how ==
              (std::get<1>(outcome).code == "pleats-too-few" ? plain_pleats::How::too_few : plain_pleats::How::refused));
      continue;
    }
    REQUIRE(second.how == plain_pleats::How::settled);
    const PleatSolution& s = std::get<0>(outcome);
    REQUIRE(s.count == second.count);
    REQUIRE(near(s.flat - s.plus, second.flat));
    REQUIRE(near(s.finished, second.finished));
    REQUIRE(near(s.depth, second.depth));
    REQUIRE(near(s.visible, second.visible));
    many += s.count != count;
  }
  CHECK(skipped < kLawRounds / 10);
  for (const int each : seen) CHECK(each > kLawRounds / 20);
  CHECK(many > 0);  // wishes that round to another count were among them
}

TEST_CASE("fullness is a wish where depth and one width settle the count with it") {
  PleatInput input;
  input.finished = in(30);
  input.depth = in(1);
  input.fullness = Ratio::of(5, 2);  // 45 in to take up, 2 in each: 22.5, a tie to fewer
  auto outcome = solve_pleats(input, "sides", ShownIn::inches);
  REQUIRE(outcome.index() == 0);
  CHECK(std::get<0>(outcome).count == 22);
  CHECK(std::get<0>(outcome).flat == in(74));
  CHECK(std::get<0>(outcome).depth == in(1));
  CHECK(std::get<0>(outcome).count_rounded);
  input.finished.reset();
  input.flat = in(100);
  input.fullness = Ratio::of(3, 1);  // 66 2/3 in to take up: 33 pleats
  outcome = solve_pleats(input, "sides", ShownIn::inches);
  REQUIRE(outcome.index() == 0);
  CHECK(std::get<0>(outcome).count == 33);
  CHECK(std::get<0>(outcome).finished == in(34));
}
