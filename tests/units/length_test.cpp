#include "units/length.h"

#include <stdexcept>

#include "support/catch.h"
#include "support/units_printing.h"

using namespace gownsheaf;

TEST_CASE("the finest steps of tape, rule and page are whole ticks") {
  // 73,152 = 64 · 1143 = 25.4 · 2880 = 72 · 1016
  CHECK(64 * Length::sixty_fourths(1) == Length::inches(1));
  CHECK(254 * Length::tenth_mm(1) == Length::inches(1));
  CHECK(72 * Length::points(1) == Length::inches(1));
  CHECK(Length::sixty_fourths(1).in_ticks() == 1143);
  CHECK(Length::tenth_mm(1).in_ticks() == 288);
  CHECK(Length::points(1).in_ticks() == 1016);
}

TEST_CASE("a rational of a unit is the nearest tick, ties away from zero") {
  CHECK(Length::from_rational(27, 2, LengthUnit::inch) == Length::sixty_fourths(27 * 32));
  CHECK(Length::from_rational(1, 3, LengthUnit::yard) == Length::inches(12));
  CHECK(Length::from_rational(1, 3, LengthUnit::foot) == Length::inches(4));
  CHECK(Length::from_rational(3, 1, LengthUnit::nail) == Length::sixty_fourths(27 * 16));  // 3 · 2 1/4 = 6 3/4 in
  CHECK(Length::from_rational(345, 10, LengthUnit::centimetre) == Length::mm(345));
  CHECK(Length::from_rational(12, 10, LengthUnit::metre) == Length::cm(120));
  CHECK(Length::from_rational(1, 2032, LengthUnit::point) == Length::ticks(1));    // half a tick
  CHECK(Length::from_rational(-1, 2032, LengthUnit::point) == Length::ticks(-1));  // and its mirror image
  CHECK(Length::from_rational(1, 7, LengthUnit::inch).in_ticks() == 10450);        // 73152/7 = 10450.29
  CHECK_THROWS_AS(Length::from_rational(9'000'000'000'000'000'000, 1, LengthUnit::yard), std::out_of_range);
  CHECK_THROWS_AS(Length::from_rational(1, 0, LengthUnit::inch), std::invalid_argument);
}

TEST_CASE("times rounds once, as it is told") {
  const Length tick = Length::ticks(1);
  CHECK((7 * tick).times(1, 2, Rounding::nearest).in_ticks() == 4);
  CHECK((7 * tick).times(1, 2, Rounding::up).in_ticks() == 4);
  CHECK((7 * tick).times(1, 2, Rounding::down).in_ticks() == 3);
  CHECK((-7 * tick).times(1, 2, Rounding::nearest).in_ticks() == -4);
  CHECK((-7 * tick).times(1, 2, Rounding::up).in_ticks() == -3);
  CHECK((-7 * tick).times(1, 2, Rounding::down).in_ticks() == -4);
  CHECK((7 * tick).times(1, -2, Rounding::down).in_ticks() == -4);
  CHECK((7 * tick).times(1, 3).in_ticks() == 2);
  CHECK((8 * tick).times(1, 3).in_ticks() == 3);
  // 36 in through a fraction whose product passes 64 bits on the way: 36 in · 10^15 / 10^15.
  CHECK(Length::inches(36).times(1'000'000'000'000'000, 1'000'000'000'000'000) == Length::inches(36));
  CHECK_THROWS_AS(Length::inches(36).times(1'000'000'000'000'000'000, 1), std::out_of_range);
}

TEST_CASE("steps and counts round as they are told, on both sides of nothing") {
  const Length sixteenth = Length::sixty_fourths(4), tick = Length::ticks(1);
  const Length little_more = Length::inches(3) + tick;
  CHECK(little_more.to_step(sixteenth, Rounding::up) == Length::inches(3) + sixteenth);
  CHECK(little_more.to_step(sixteenth, Rounding::down) == Length::inches(3));
  CHECK(little_more.to_step(sixteenth, Rounding::nearest) == Length::inches(3));
  CHECK((-little_more).to_step(sixteenth, Rounding::up) == Length::inches(-3));
  CHECK((-little_more).to_step(sixteenth, Rounding::down) == Length::inches(-3) - sixteenth);
  CHECK(Length::inches(3).to_step(sixteenth, Rounding::up) == Length::inches(3));  // already there
  // 1/32 in lies halfway between two sixteenths
  CHECK(Length::sixty_fourths(2).to_step(sixteenth, Rounding::nearest) == sixteenth);
  CHECK(Length::sixty_fourths(-2).to_step(sixteenth, Rounding::nearest) == -sixteenth);

  // 60 in of skirt in breadths of 25 in: 2.4 breadths
  CHECK(count_of(Length::inches(60), Length::inches(25), Rounding::up) == 3);
  CHECK(count_of(Length::inches(60), Length::inches(25), Rounding::down) == 2);
  CHECK(count_of(Length::inches(60), Length::inches(25), Rounding::nearest) == 2);
  CHECK(count_of(Length::inches(50), Length::inches(25), Rounding::up) == 2);
  CHECK(count_of(Length::inches(-60), Length::inches(25), Rounding::down) == -3);
}

TEST_CASE("areas are kept in 128 bits") {
  // 500 m by 500 m is 250,000 m²: 1,440,000,000 ticks squared is 2.07e18, and a few such pass 64 bits
  const Length longest = Length::ticks(Length::kCap);
  const Area field = Area::of(longest, longest);
  CHECK(field.in_square_metres() == 250000.0);
  CHECK(field.over(longest, Rounding::nearest) == longest);
  CHECK((field * 4000).over(longest, Rounding::nearest) == 4000 * longest);
  CHECK(Area::of(Length::inches(36), Length::inches(36)).in_square_inches() == 1296.0);
  // 10 square inches over a width of 3 in: 3 1/3 in is 243,840 ticks, whole
  CHECK(Area::of(Length::inches(10), Length::inches(1)).over(Length::inches(3), Rounding::down).in_ticks() == 243840);
  // over 7 in: 104,502.857 ticks
  CHECK(Area::of(Length::inches(10), Length::inches(1)).over(Length::inches(7), Rounding::down).in_ticks() == 104502);
  CHECK(Area::of(Length::inches(10), Length::inches(1)).over(Length::inches(7), Rounding::up).in_ticks() == 104503);
  CHECK(Area::of(Length::inches(2), Length::inches(3)) * 4 == Area::of(Length::inches(4), Length::inches(6)));
}

TEST_CASE("points of a page become the nearest tick") {
  CHECK(Length::from_points(72.0) == Length::inches(1));
  CHECK(Length::from_points(0.5).in_ticks() == 508);
  CHECK(Length::from_points(-0.5).in_ticks() == -508);
  CHECK_THROWS_AS(Length::from_points(1e18), std::out_of_range);
}
