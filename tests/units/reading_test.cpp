#include "support/catch.h"
#include "support/units_printing.h"
#include "units/read.h"

using namespace gownsheaf;

namespace {

WrittenLength length_in(const std::string& text) {
  const auto read = read_length(text, "width");
  INFO(text);
  if (!read.ok()) FAIL(read.fault());
  return read.value();
}

}  // namespace

TEST_CASE("lengths as makers write them") {
  const Length half_inch = Length::sixty_fourths(32);
  const struct {
    const char* text;
    Length expected;
  } rows[] = {
      {"13 1/2 in", Length::inches(13) + half_inch},
      {"13½ in", Length::inches(13) + half_inch},
      {"13 ½ in", Length::inches(13) + half_inch},
      {"13 1\u20442 in", Length::inches(13) + half_inch},
      {"13.5 in", Length::inches(13) + half_inch},
      {"13.50in", Length::inches(13) + half_inch},
      {"  13 1/2  in ", Length::inches(13) + half_inch},
      {"13\u00A01/2 in", Length::inches(13) + half_inch},
      {"2 yd 6 in", Length::inches(78)},
      {"2yd 6in", Length::inches(78)},
      {"2yd6in", Length::inches(78)},
      {"2 1/2 yd 3 in", Length::inches(93)},
      {"5 ft 3 1/2 in", Length::inches(63) + half_inch},
      {"1 yd 1 ft 1 in", Length::inches(49)},
      {"34.5 cm", Length::mm(345)},
      {"1.2 m", Length::cm(120)},
      {"1 m 20 cm 5 mm", Length::mm(1205)},
      {"5 mm", Length::mm(5)},
      {"3 ft", Length::inches(36)},
      {"3 nails", Length::sixty_fourths(432)},
      {"1 nail", Length::sixty_fourths(144)},
      {"1 yd 3 nails", Length::inches(36) + Length::sixty_fourths(432)},
      {"13in", Length::inches(13)},
      {"13IN", Length::inches(13)},
      {"1 inch", Length::inches(1)},
      {"2 inches", Length::inches(2)},
      {"2 in.", Length::inches(2)},
      {"2 yards", Length::inches(72)},
      {"1 yard", Length::inches(36)},
      {"1 foot", Length::inches(12)},
      {"2 feet", Length::inches(24)},
      {"2 centimetres", Length::cm(2)},
      {"2 meters", Length::cm(200)},
      {"¼ in", Length::sixty_fourths(16)},
      {"¾ in", Length::sixty_fourths(48)},
      {"⅛ in", Length::sixty_fourths(8)},
      {"⅜ in", Length::sixty_fourths(24)},
      {"⅝ in", Length::sixty_fourths(40)},
      {"⅞ in", Length::sixty_fourths(56)},
      {"⅓ yd", Length::inches(12)},
      {"⅔ yd", Length::inches(24)},
      {"⅙ yd", Length::inches(6)},
      {"3/2 in", Length::inches(1) + half_inch},
      {".5 in", half_inch},
      {"013 in", Length::inches(13)},
      {"0 in", Length()},
      {"-1/2 in", -half_inch},
      {"\u22121/2 in", -half_inch},
      {"-2 yd 6 in", Length::inches(-78)},
      {"1/2 in less", -half_inch},
      {"500 m", Length::ticks(Length::kCap)},
      {"-500 m", Length::ticks(-Length::kCap)},
  };
  for (const auto& row : rows) {
    INFO(row.text);
    CHECK(length_in(row.text).length == row.expected);
  }
}

TEST_CASE("a length remembers how it was written") {
  CHECK(length_in("2 yd 6 in").unit == LengthUnit::yard);
  CHECK(length_in("3 nails").unit == LengthUnit::nail);
  CHECK(length_in("34.5 cm").unit == LengthUnit::centimetre);
  CHECK(length_in("5 mm").unit == LengthUnit::millimetre);
  CHECK(length_in("1/2 in less").less);
  CHECK_FALSE(length_in("-1/2 in").less);
}

TEST_CASE("cloth weights as shops write them") {
  const auto weight = [](const char* text) { return read_cloth_weight(text, "weight").value().weight.value(); };
  const MassPerArea eight = ounces_per_square_yard(8);
  for (const char* text :
       {"8 oz/yd²", "8 oz/yd2", "8 oz/yd^2", "8 oz per sq yd", "8 oz / sq. yd.", "8 ounces per square yard", "8oz/yd²"}) {
    INFO(text);
    CHECK(weight(text) == eight);
  }
  for (const char* text : {"270 g/m²", "270 g/m2", "270 gsm", "270 g per sq m", "270 grams per square metre"}) {
    INFO(text);
    CHECK(weight(text) == MassPerArea{270.0});
  }
  CHECK(weight("19 momme") == momme(19));
  CHECK(weight("16 1/2 momme") == momme(16.5));
  CHECK(weight("13 oz per running yd at 58 in") == weight("13 oz/running yard at 1 yd 22 in"));
  CHECK(read_cloth_weight("13 oz per linear yard", "weight").value().ounces_per_running_yard.value() == 13.0);
}

TEST_CASE("angles, shares and bare numbers") {
  CHECK(read_angle("20 deg", "hip slope").value() == Angle{20.0});
  CHECK(read_angle("20°", "hip slope").value() == Angle{20.0});
  CHECK(read_angle("30 arcmin", "smallest angle").value() == Angle{0.5});
  CHECK(read_angle("1 deg 30 arcmin", "hip slope").value() == Angle{1.5});
  CHECK(read_percent("3 %", "shrinks").value() == Percent{Ratio{3, 100}});
  CHECK(read_percent("2.5%", "shrinks").value() == Percent{Ratio{1, 40}});
  CHECK(read_percent("3 per cent", "shrinks").value() == Percent{Ratio{3, 100}});
  CHECK(read_ratio("2.5", "fullness").value() == Ratio{5, 2});
  CHECK(read_ratio("1 1/3", "fullness").value() == Ratio{4, 3});
  CHECK(read_ratio("1⅓", "fullness").value() == Ratio{4, 3});
  CHECK(read_number("7 1/2", "hours a week").value() == Ratio{15, 2});
  CHECK(read_number("9", "hours a week").value() == Ratio{9, 1});
  CHECK(read_number("-3", "hours a week").value() == Ratio{-3, 1});
  CHECK(read_count("6", "number").value() == 6);
  CHECK(read_count("006", "number").value() == 6);
}

TEST_CASE("spans, rates and money") {
  constexpr std::int64_t kMin = 60'000, kHour = 60 * kMin;
  CHECK(read_span("45 min", "takes").value() == Span{45 * kMin});
  CHECK(read_span("2 h 30 min", "takes").value() == Span{150 * kMin});
  CHECK(read_span("2h30min", "takes").value() == Span{150 * kMin});
  CHECK(read_span("7 1/2 hours", "takes").value() == Span{450 * kMin});
  CHECK(read_span("10 days", "takes").value() == Span{240 * kHour});
  CHECK(read_span("1 day", "takes").value() == Span{24 * kHour});
  CHECK(read_span("3.5 s", "burn test").value() == Span{3500});

  CHECK(read_rate("10 per in", "stitches").value() == Rate{Ratio{10, 1}, "", "in"});
  CHECK(read_rate("10/in", "stitches").value() == Rate{Ratio{10, 1}, "", "in"});
  CHECK(read_rate("4.5 per cm", "stitches").value() == Rate{Ratio{9, 2}, "", "cm"});
  CHECK(read_rate("20 stitches per min", "pace").value() == Rate{Ratio{20, 1}, "stitches", "min"});
  CHECK(read_rate("4 min each", "pace").value() == Rate{Ratio{4, 1}, "min", "each"});
  CHECK(read_rate("1 h 20 min each", "pace").value() == Rate{Ratio{80, 1}, "min", "each"});
  CHECK(read_rate("90 s each", "pace").value() == Rate{Ratio{3, 2}, "min", "each"});

  CHECK(read_money("24 per yd", "price").value() == Money{2400, "yd"});
  CHECK(read_money("24/yard", "price").value() == Money{2400, "yd"});
  CHECK(read_money("18.50 per m", "price").value() == Money{1850, "m"});
  CHECK(read_money("1.20 each", "price").value() == Money{120, "each"});
  CHECK(read_money("24", "price").value() == Money{2400, ""});
}

TEST_CASE("days are real days") {
  CHECK(read_day("1970-01-01", "day").value().serial == 0);
  CHECK(read_day("2031-06-14", "day").value() == make_day(2031, 6, 14));
  CHECK(read_day("2028-02-29", "day").value() == make_day(2028, 2, 29));
  CHECK(read_day("2000-02-29", "day").value() == make_day(2000, 2, 29));
  CHECK(read_day(" 2031-06-14 ", "day").value() == make_day(2031, 6, 14));
  const CalendarDay day = calendar(make_day(2027, 6, 19));
  CHECK(day.year == 2027);
  CHECK(day.month == 6);
  CHECK(day.day == 19);
  CHECK(day.weekday == 5);  // a Saturday
}
