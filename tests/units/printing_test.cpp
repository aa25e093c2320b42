#include "support/catch.h"
#include "support/units_printing.h"
#include "units/print.h"

using namespace gownsheaf;

namespace {

const Length kSixteenth = Length::sixty_fourths(4);
std::string inches(Length length, Length step = kSixteenth, Rounding rounding = Rounding::nearest) {
  return text_of(length, ShownIn::inches, step, rounding).plain();
}
std::string centimetres(Length length, Length step = Length::mm(1), Rounding rounding = Rounding::nearest) {
  return text_of(length, ShownIn::centimetres, step, rounding).plain();
}

}  // namespace

TEST_CASE("inches print as whole numbers and reduced fractions") {
  CHECK(inches(Length::inches(13) + Length::sixty_fourths(32)) == "13 1/2 in");  // 8/16
  CHECK(inches(Length::sixty_fourths(24)) == "3/8 in");
  CHECK(inches(Length::sixty_fourths(-24)) == "-3/8 in");
  CHECK(inches(Length::inches(-13) - Length::sixty_fourths(4)) == "-13 1/16 in");
  CHECK(inches(Length::inches(65)) == "65 in");
  CHECK(inches(Length()) == "0 in");
  CHECK(inches(-Length::ticks(1)) == "0 in");  // no minus before nothing
  const LengthText text = text_of(Length::inches(13) + Length::sixty_fourths(32), ShownIn::inches, kSixteenth, Rounding::up);
  CHECK(text == LengthText{false, "13", "1", "2", "in"});
  CHECK(text.number() == "13 1/2");
  CHECK(text_of(Length::sixty_fourths(24), ShownIn::inches, kSixteenth, Rounding::up) == LengthText{false, "", "3", "8", "in"});
}

TEST_CASE("the rounding of a printed length is the one named") {
  const Length third = Length::inches(1).times(1, 3);  // 5.33 sixteenths, 10.67 thirty-seconds
  CHECK(inches(third, kSixteenth, Rounding::up) == "3/8 in");
  CHECK(inches(third, kSixteenth, Rounding::down) == "5/16 in");
  CHECK(inches(third, kSixteenth, Rounding::nearest) == "5/16 in");
  CHECK(inches(third, pleat_step(ShownIn::inches), Rounding::nearest) == "11/32 in");
  CHECK(inches(Length::inches(1) - Length::ticks(1), kSixteenth, Rounding::up) == "1 in");  // carries into the whole
  CHECK(inches(-third, kSixteenth, Rounding::up) == "-5/16 in");
  CHECK(inches(-third, kSixteenth, Rounding::down) == "-3/8 in");
}

TEST_CASE("centimetres print to the step") {
  CHECK(centimetres(Length::mm(345)) == "34.5 cm");
  CHECK(centimetres(Length::mm(340)) == "34.0 cm");
  CHECK(centimetres(Length::mm(4)) == "0.4 cm");
  CHECK(centimetres(Length::mm(-4)) == "-0.4 cm");
  CHECK(centimetres(Length::inches(1)) == "2.5 cm");  // 25.4 mm
  CHECK(centimetres(Length::inches(1), Length::mm(1), Rounding::up) == "2.6 cm");
  CHECK(centimetres(Length::inches(1), Length::tenth_mm(1)) == "2.54 cm");
  CHECK(centimetres(Length::inches(1), Length::cm(1), Rounding::up) == "3 cm");
}

TEST_CASE("cloth bought prints in yards and eighths, or in metres") {
  const auto yards = [](Length l, Rounding r) { return cloth_text_of(l, ShownIn::inches, r).plain(); };
  const auto metres = [](Length l, Rounding r) { return cloth_text_of(l, ShownIn::centimetres, r).plain(); };
  CHECK(yards(Length::inches(192), Rounding::up) == "5 3/8 yd");  // 192/36 = 5.33, 42.67 eighths
  CHECK(yards(Length::inches(207), Rounding::up) == "5 3/4 yd");  // 46 eighths exactly
  CHECK(yards(Length::inches(9), Rounding::down) == "1/4 yd");
  CHECK(yards(Length::inches(72), Rounding::up) == "2 yd");
  CHECK(yards(Length(), Rounding::up) == "0 yd");
  CHECK(yards(Length::inches(-9), Rounding::down) == "-1/4 yd");
  CHECK(metres(Length::cm(250), Rounding::up) == "2.5 m");
  CHECK(metres(Length::mm(2501), Rounding::up) == "2.51 m");
  CHECK(metres(Length::cm(200), Rounding::up) == "2 m");
  CHECK(metres(Length::cm(1000), Rounding::up) == "10 m");
  CHECK(metres(Length(), Rounding::up) == "0 m");
}

TEST_CASE("the steps of cutting, marking and pleating") {
  CHECK(cut_step(ShownIn::inches) == kSixteenth);
  CHECK(mark_step(ShownIn::inches) == kSixteenth);
  CHECK(pleat_step(ShownIn::inches) == Length::sixty_fourths(2));
  CHECK(cut_step(ShownIn::centimetres) == Length::mm(1));
  CHECK(mark_step(ShownIn::centimetres) == Length::mm(1));
  CHECK(pleat_step(ShownIn::centimetres) == Length::mm(1));
}

TEST_CASE("decimals round the double as it is, ties away from zero") {
  CHECK(decimal(2.7, 2) == "2.70");
  CHECK(decimal(0.125, 2) == "0.13");  // a tie exactly
  CHECK(decimal(-0.125, 2) == "-0.13");
  CHECK(decimal(0.375, 2) == "0.38");
  CHECK(decimal(2.5, 0) == "3");
  CHECK(decimal(1.5, 0) == "2");
  CHECK(decimal(0.5, 0) == "1");
  CHECK(decimal(1.005, 2) == "1.00");  // the double lies just below
  CHECK(decimal(9.996, 2) == "10.00");
  CHECK(decimal(999.5, 0) == "1000");
  CHECK(decimal(-0.001, 2) == "0.00");  // no minus before nothing
  CHECK(decimal(0.0, 1) == "0.0");
  CHECK(decimal(1e15, 1) == "1000000000000000.0");
  CHECK(decimal(33.90575, 3) == "33.906");
}

TEST_CASE("whole numbers, ratios, shares and spans") {
  CHECK(whole_number(0) == "0");
  CHECK(whole_number(-20548) == "-20548");
  CHECK(whole_number(INT64_MIN) == "-9223372036854775808");
  CHECK(text_of(Ratio::of(5, 2)) == "2.5");
  CHECK(text_of(Ratio::of(4, 3)) == "1 1/3");
  CHECK(text_of(Ratio::of(-4, 3)) == "-1 1/3");
  CHECK(text_of(Ratio::of(1, 3)) == "1/3");
  CHECK(text_of(Ratio::of(1, 1000)) == "0.001");
  CHECK(text_of(Ratio::of(1, 16)) == "1/16");  // 0.0625 has four places
  CHECK(text_of(Ratio::of(3, 1)) == "3");
  CHECK(text_of(Ratio::of(6, -4)) == "-1.5");
  CHECK(text_of(Percent{Ratio::of(3, 100)}) == "3 %");
  CHECK(text_of(Percent{Ratio::of(1, 40)}) == "2.5 %");
  CHECK(text_of(Percent{Ratio::of(1, 300)}) == "1/3 %");
  constexpr std::int64_t kMin = 60'000;
  CHECK(text_of(Span{150 * kMin}) == "2 h 30 min");
  CHECK(text_of(Span{45 * kMin}) == "45 min");
  CHECK(text_of(Span{120 * kMin}) == "2 h");
  CHECK(text_of(Span{3500}) == "3.5 s");
  CHECK(text_of(Span{60 * 60'000 + 5000}) == "1 h 5 s");
  CHECK(text_of(Span{}) == "0 s");
  CHECK(text_of(Span{-45 * kMin}) == "-45 min");
  CHECK(text_of(Span{48 * 60 * kMin}) == "48 h");
  CHECK(days_text_of(Span{240 * 60 * kMin}) == "10 days");
  CHECK(days_text_of(Span{24 * 60 * kMin}) == "1 day");
  CHECK(days_text_of(Span{36 * 60 * kMin}) == "36 h");
}

TEST_CASE("days print long and short") {
  CHECK(long_day(make_day(2027, 6, 19)) == "Saturday 19 June 2027");
  CHECK(long_day(make_day(1970, 1, 1)) == "Thursday 1 January 1970");
  CHECK(long_day(make_day(2000, 2, 29)) == "Tuesday 29 February 2000");
  CHECK(iso_day(make_day(2027, 6, 19)) == "2027-06-19");
  CHECK(iso_day(make_day(983, 1, 2)) == "0983-01-02");
}
