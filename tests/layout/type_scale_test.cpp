// Type sizes and page measures against published figures for reading, paper and punch holes.
#include "layout/lay_out.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

// Minutes of arc to the radian: accessibility.gtri.gatech.edu, font size page (a).
constexpr double kArcMinutes = 3437.747;
constexpr double kPointsPerMm = 72 / 25.4;
constexpr double kRobotoCapital = 0.711;  // of the em: the face's own OS/2 table
constexpr double height_mm(double distance_mm, double arc_minutes) { return distance_mm * arc_minutes / kArcMinutes; }
double capital_mm(double size_points) { return size_points * kRobotoCapital / kPointsPerMm; }

}  // namespace

TEST_CASE("[N01] a, x: capitals at 60 cm are at least 20 minutes of arc high, 3.49 mm", "[published]") {
  // ISO 9241-3 as quoted by IBM's healthy-computing pages: 20 to 22 minutes preferred, 16 at least.
  CHECK_THAT(height_mm(600, 16), Catch::Matchers::WithinAbs(2.79, 0.01));
  CHECK_THAT(height_mm(600, 20), Catch::Matchers::WithinAbs(3.49, 0.01));
  CHECK_THAT(height_mm(600, 22), Catch::Matchers::WithinAbs(3.84, 0.01));
  CHECK(capital_mm(pin_up_scale().text) >= height_mm(600, 20));
  CHECK(capital_mm(binder_scale().text) >= height_mm(400, 20));
  CHECK(capital_mm(pin_up_scale().smallest) >= height_mm(600, 16));
  CHECK(capital_mm(binder_scale().smallest) >= height_mm(400, 16));
}

TEST_CASE("[N02] [N03] a, x: digits of a fraction are at least 1/200 of the distance high", "[published]") {
  // FAA human-factors training page: one two-hundredth of the distance is 17.19 minutes of arc.
  CHECK_THAT(kArcMinutes / 200, Catch::Matchers::WithinAbs(17.19, 0.01));
  const double two_thirds = 2.0 / 3.0;  // numerator and denominator against the length they belong to
  CHECK(capital_mm(pin_up_scale().length * two_thirds) >= 600.0 / 200);
  CHECK(capital_mm(binder_scale().length * two_thirds) >= 400.0 / 200);
  CHECK(capital_mm(pin_up_scale().step_number) >= 1000.0 / 200);  // a step's number is read from the machine, at 1 m
}

TEST_CASE("[N05] a: two holes 80 mm apart, 12 mm from the edge", "[published]") {
  // ISO 838: centres 80 +/- 0.5 mm apart, 12 +/- 1 mm from the edge (polymedia.pl).
  const PageShape a4 = page_shape(PaperName::a4, HoleCount::two);
  REQUIRE(a4.holes_y.size() == 2);
  CHECK_THAT((a4.holes_y[1] - a4.holes_y[0]) / kPointsPerMm, Catch::Matchers::WithinAbs(80, 0.5));
  CHECK_THAT((a4.holes_y[0] + a4.holes_y[1]) / 2, Catch::Matchers::WithinAbs(a4.height.in_points() / 2, 0.1));
  CHECK_THAT(34 / kPointsPerMm, Catch::Matchers::WithinAbs(12, 1));  // x of the hole centres, docs/pages.md
}

TEST_CASE("[N06] a: three holes 108 mm apart", "[published]") {
  // fact-archive.com, Punchhole.
  const PageShape letter = page_shape(PaperName::letter, HoleCount::three);
  REQUIRE(letter.holes_y.size() == 3);
  CHECK_THAT((letter.holes_y[1] - letter.holes_y[0]) / kPointsPerMm, Catch::Matchers::WithinAbs(108, 0.5));
  CHECK_THAT((letter.holes_y[2] - letter.holes_y[1]) / kPointsPerMm, Catch::Matchers::WithinAbs(108, 0.5));
}

TEST_CASE("[N07] a, b: A4 is 210 x 297 mm, Letter 215.9 x 279.4 mm", "[published]") {
  // ISO 216; ANSI/ASME Y14.1.
  const PageShape a4 = page_shape(PaperName::a4, HoleCount::none), letter = page_shape(PaperName::letter, HoleCount::none);
  CHECK_THAT(a4.width.in_mm(), Catch::Matchers::WithinAbs(210, 0.001));
  CHECK_THAT(a4.height.in_mm(), Catch::Matchers::WithinAbs(297, 0.001));
  CHECK_THAT(letter.width.in_mm(), Catch::Matchers::WithinAbs(215.9, 0.001));
  CHECK_THAT(letter.height.in_mm(), Catch::Matchers::WithinAbs(279.4, 0.001));
}
