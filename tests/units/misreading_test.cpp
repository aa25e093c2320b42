// Every malformed form: what was typed, the code, and the characters that are marked.
#include "support/catch.h"
#include "support/units_printing.h"
#include "units/read.h"

using namespace gownsheaf;

namespace {

struct Row {
  const char* text;
  const char* code;
  int at, length;
  const char* hint = nullptr;  // compared where it is given
};

template <class Read, std::size_t N>
void check_rows(Read read, const char* key, const Row (&rows)[N]) {
  for (const Row& row : rows) {
    INFO(row.text);
    const auto result = read(row.text, key);
    CHECK_FALSE(result.ok());
    if (result.ok()) continue;
    INFO(result.fault());
    CHECK(result.fault().code == row.code);
    CHECK(result.fault().at == row.at);
    CHECK(result.fault().length == row.length);
    CHECK_FALSE(result.fault().sentence.empty());
    if (row.hint != nullptr) CHECK(result.fault().hint == row.hint);
  }
}

}  // namespace

TEST_CASE("a length that cannot be read says where and why") {
  const Row rows[] = {
      {"", "value-empty", 0, 0},
      {"   ", "value-empty", 0, 3},
      {"36", "unit-missing", 0, 2, "`36 in` or `36 cm`"},
      {"13 1/2", "unit-missing", 0, 6, "`13 1/2 in` or `13 1/2 cm`"},
      {"2 yd 6", "unit-missing", 5, 1, "`2 yd 6 in`"},
      {"1/2 less", "unit-missing", 0, 3},
      {"36 inchs", "unit-unknown", 3, 5, "`36 in`"},
      {"36 yrd", "unit-unknown", 3, 3, "`36 yd`"},
      {"36 metrs", "unit-unknown", 3, 5, "`36 m`"},
      {"36 cubits", "unit-unknown", 3, 6, "known here: in, ft, yd, nails, mm, cm, m"},
      {"13 in wide", "unit-unknown", 6, 4, "`13 in`"},
      {"-36", "unit-missing", 1, 2, "`-36 in` or `-36 cm`"},
      {"-6 in 2 yd", "units-order", 6, 4, "larger units first, each once: `2 yd 6 in`"},
      {"8 oz", "unit-kind", 2, 2},
      {"3 %", "unit-kind", 2, 1},
      {"3 yd²", "unit-kind", 2, 3},
      {"13\"", "inch-mark", 2, 1, "`13 in`"},
      {"13 1/2\u2033", "inch-mark", 6, 1, "`13 1/2 in`"},
      {"13''", "inch-mark", 2, 1, "`13 in`"},
      {"3'", "inch-mark", 1, 1, "`3 ft`"},
      {"5' 3\"", "inch-mark", 1, 1, "`5 ft 3 in`"},
      {"5'3\"", "inch-mark", 1, 1, "`5 ft 3 in`"},
      {"2,5 m", "decimal-comma", 1, 1, "`2.5 m`"},
      {"13,75 in", "decimal-comma", 2, 1, "`13.75 in`"},
      {"2 yd, 6 in", "decimal-comma", 4, 1, "leave the comma out: `2 yd 6 in`"},
      {"13-1/2 in", "fraction-hyphen", 2, 1, "`13 1/2 in`, or `13 in to 13 1/2 in`"},
      {"13\u20131/2 in", "fraction-hyphen", 2, 1, "`13 1/2 in`, or `13 in to 13 1/2 in`"},
      {"13 - ½ in", "fraction-hyphen", 3, 1, "`13 ½ in`, or `13 in to 13 ½ in`"},
      {"13-14 in", "fraction-hyphen", 2, 1, "`13 in to 14 in`"},
      {"13.5-14 in", "fraction-hyphen", 4, 1, "`13.5 in to 14 in`"},
      {"3 in - 4 in", "fraction-hyphen", 5, 1, "`3 in to 4 in`"},
      {"3 in to 4 in", "number-form", 5, 2},
      {"1e3 mm", "number-form", 0, 3, "`1000 mm`"},
      {"1.5e3 mm", "number-form", 0, 5},
      {"1e+3 mm", "number-form", 0, 4},
      {"0x1f mm", "number-form", 0, 4},
      {"1_000 mm", "number-form", 0, 5},
      {"1,000 mm", "number-form", 0, 5, "`1000 mm`, or `1.000 mm`"},
      {"1,000,000 mm", "number-form", 0, 9, "`1000000 mm`"},
      {"1.2.3 in", "number-form", 0, 5},
      {"13. in", "number-form", 0, 3, "`13 in`"},
      {"13.5 1/2 in", "number-form", 0, 8, "`13.5 in`"},
      {"13.5½ in", "number-form", 0, 5, "`13.5 in`"},
      {"1/2 1/4 in", "number-form", 0, 7},
      {"13 1/2 1/4 in", "number-form", 0, 10},
      {"½½ in", "number-form", 0, 2},
      {"1/2/3 in", "number-form", 0, 5},
      {"1 5/4 in", "number-form", 0, 5, "`2 1/4 in`"},
      {"1 / 2 in", "number-form", 0, 5, "`1/2`"},
      {"1/0 in", "number-form", 0, 3},
      {"13 1/0 in", "number-form", 0, 6},
      {"13 12 in", "number-form", 0, 5},
      {"12:30 in", "number-form", 0, 5},
      {"+1/2 in", "number-form", 0, 1, "`1/2 in`"},
      {"thirteen in", "number-form", 0, 8},
      {"in 13", "number-form", 0, 2},
      {"-in", "number-form", 0, 3},
      {"-", "number-form", 0, 1},
      {"(13 in)", "number-form", 0, 1},
      {"13 in)", "number-form", 5, 1},
      {"-1/2 in less", "number-form", 8, 4},
      {"0.1234567891 in", "number-form", 0, 12},
      {"6 in 2 yd", "units-order", 5, 4, "`2 yd 6 in`"},
      {"2 in 3 in", "units-order", 5, 4},
      {"1 ft 2 yd 3 in", "units-order", 5, 4},
      {"2 in 3 cm", "units-mixed", 5, 4},
      {"1 m 3 in", "units-mixed", 4, 4},
      {"501 m", "out-of-range", 0, 5},
      {"-501 m", "out-of-range", 0, 6},
      {"500 m 1 mm", "out-of-range", 0, 10},
      {"999999999 yd", "out-of-range", 0, 12},
      {"9999999999 in", "out-of-range", 0, 10},
      {"1/9999999999 in", "out-of-range", 0, 12},
  };
  check_rows([](std::string_view text, std::string_view key) { return read_length(text, key); }, "bust", rows);
}

TEST_CASE("sentences name what was seen") {
  CHECK(read_length("36", "bust").fault().sentence == "`bust: 36` has no unit.");
  CHECK(read_length("36 inchs", "bust").fault().sentence == "`36 inchs`: the unit `inchs` is not known.");
  CHECK(read_length("13\"", "bust").fault().sentence == "`13\"` uses a quotation mark for inches.");
  CHECK(read_length("2,5 m", "bust").fault().sentence == "`2,5 m`: a comma parts two items.");
  CHECK(read_length("13-1/2 in", "bust").fault().sentence == "`13-1/2 in` could be a sum or a range.");
  CHECK(read_length("1e3 mm", "bust").fault().sentence == "`1e3 mm` is not a way numbers are written here.");
  CHECK(read_cloth_weight("8 mm", "weight").fault().sentence == "`weight: 8 mm`: mm is a length.");
  CHECK(read_number("9 h", "hours a week").fault().sentence == "`hours a week: 9 h`: the key names the unit.");
  CHECK(read_day("4/6/2027", "worn on").fault().sentence == "`4/6/2027` can be read two ways.");
  CHECK(read_day("2027-02-30", "worn on").fault().sentence == "2027-02-30: that February has 28 days.");
  CHECK(read_length("600 m", "width").fault().sentence == "`width: 600 m` is more than 500 m, the longest length kept.");
}

TEST_CASE("a cloth weight that cannot be read says where and why") {
  const Row rows[] = {
      {"8", "unit-missing", 0, 1, "`8 oz/yd²` or `8 g/m²`"},
      {"8 mm", "unit-kind", 2, 2, "silk is weighed in `8 momme`"},
      {"8 oz", "unit-kind", 2, 2, "`8 oz/yd²` or `8 oz per running yd`"},
      {"8 oz/yd", "unit-kind", 2, 5, "`8 oz/yd²` or `8 oz per running yd`"},
      {"8 lb", "unit-kind", 2, 2},
      {"8 mome", "unit-unknown", 2, 4, "`8 momme`"},
      {"8 oz/yrd²", "unit-unknown", 2, 7, "`8 oz/yd²`"},
      {"8 oz/yd² at 58 in", "unit-kind", 8, 9, "`8 oz/yd²`"},
      {"13 oz per running yd at 58", "unit-missing", 24, 2},
      {"13 oz per running yd at 0 in", "out-of-range", 24, 1},
      {"13 oz per running yd at 8 oz", "unit-kind", 26, 2},
      {"3 momme 2 g/m²", "units-mixed", 8, 6},
  };
  check_rows([](std::string_view text, std::string_view key) { return read_cloth_weight(text, key); }, "weight", rows);
}

TEST_CASE("bare numbers refuse units") {
  const Row numbers[] = {{"9 h", "unit-in-key", 2, 1, "`hours a week: 9`"},
                         {"-9 h", "unit-in-key", 3, 1, "`hours a week: -9`"},
                         {"7 h 30 min", "unit-in-key", 2, 8},
                         {"9 %", "unit-in-key", 2, 1},
                         {"nine", "number-form", 0, 4}};
  check_rows([](std::string_view text, std::string_view key) { return read_number(text, key); }, "hours a week", numbers);
  const Row ratios[] = {{"3 in", "unit-kind", 2, 2, "`3`"}, {"1:3", "number-form", 0, 3}};
  check_rows([](std::string_view text, std::string_view key) { return read_ratio(text, key); }, "fullness", ratios);
  const Row counts[] = {{"2.5", "number-form", 0, 3, "`2` or `3`"},
                        {"1/2", "number-form", 0, 3, "`0` or `1`"},
                        {"5 in", "unit-kind", 2, 2, "`5`"},
                        {"1e3", "number-form", 0, 3, "`1000`"}};
  check_rows([](std::string_view text, std::string_view key) { return read_count(text, key); }, "number", counts);
  const Row percents[] = {{"3", "unit-missing", 0, 1, "`3 %`"}, {"3 in", "unit-kind", 2, 2}};
  check_rows([](std::string_view text, std::string_view key) { return read_percent(text, key); }, "shrinks", percents);
}

TEST_CASE("pulls, pressures and times refuse what they are not") {
  const Row forces[] = {{"4 lb", "unit-kind", 2, 2, "`4 lbf` or `4 N`"}, {"4", "unit-missing", 0, 1}};
  check_rows([](std::string_view text, std::string_view key) { return read_force(text, key); }, "holds", forces);
  const Row pressures[] = {{"50 mm", "unit-kind", 3, 2}, {"50 mHg", "unit-unknown", 3, 3, "`50 mmHg`"}};
  check_rows([](std::string_view text, std::string_view key) { return read_pressure(text, key); }, "pressure", pressures);
  const Row loads[] = {{"1.2 lbf", "unit-kind", 4, 3}, {"1.2 lb/in", "unit-unknown", 4, 5, "`1.2 lbf/in`"}};
  check_rows([](std::string_view text, std::string_view key) { return read_line_load(text, key); }, "load", loads);
  const Row masses[] = {{"4 oz 6 lb", "units-order", 5, 4, "`6 lb 4 oz`"}, {"1 lb 20 g", "units-mixed", 5, 4}};
  check_rows([](std::string_view text, std::string_view key) { return read_mass(text, key); }, "weighs", masses);
  const Row angles[] = {{"20", "unit-missing", 0, 2, "`20 deg` or `20 arcmin`"}};
  check_rows([](std::string_view text, std::string_view key) { return read_angle(text, key); }, "hip slope", angles);
  const Row spans[] = {{"12:30", "number-form", 0, 5, "a time is written `2 h 30 min`"},
                       {"45", "unit-missing", 0, 2, "`45 min` or `45 h`"},
                       {"30 min 2 h", "units-order", 7, 3, "`2 h 30 min`"},
                       {"40000 days", "out-of-range", 0, 10}};
  check_rows([](std::string_view text, std::string_view key) { return read_span(text, key); }, "takes", spans);
  const Row threads[] = {{"no. 40", "unit-unknown", 0, 6}, {"40", "unit-missing", 0, 2}};
  check_rows([](std::string_view text, std::string_view key) { return read_fineness(text, key); }, "fineness", threads);
}

TEST_CASE("money and rates say what they want") {
  const Row prices[] = {{"$24", "number-form", 0, 1, "`24`"}, {"£24 per yd", "number-form", 0, 1, "`24 per yd`"},
                        {"24 per kg", "unit-unknown", 3, 6},  {"24 yd", "unit-kind", 3, 2, "`24 per yd` or `24 each`"},
                        {"1.205 each", "number-form", 0, 5},  {"24,50 per yd", "decimal-comma", 2, 1, "`24.50 per yd`"}};
  check_rows([](std::string_view text, std::string_view key) { return read_money(text, key); }, "price", prices);
  const Row rates[] = {{"10", "unit-missing", 0, 2},
                       {"4 min", "unit-missing", 2, 3},
                       {"10 per yd", "unit-kind", 7, 2},
                       {"10 per hop", "unit-unknown", 7, 3},
                       {"4 in each", "unit-kind", 2, 2}};
  check_rows([](std::string_view text, std::string_view key) { return read_rate(text, key); }, "pace", rates);
}

TEST_CASE("a day that cannot be read says where and why") {
  const Row rows[] = {{"", "value-empty", 0, 0},
                      {"14/6/2027", "day-form", 0, 9, "`2027-06-14`"},
                      {"6/14/2027", "day-form", 0, 9, "`2027-06-14`"},
                      {"3/4/2027", "day-form", 0, 8, "`2027-04-03` or `2027-03-04`"},
                      {"3.3.2027", "day-form", 0, 8, "`2027-03-03`"},
                      {"14/6/27", "day-form", 0, 7},
                      {"2027/06/14", "day-form", 0, 10, "`2027-06-14`"},
                      {"2027-6-14", "day-form", 0, 9, "`2027-06-14`"},
                      {"14 June 2027", "day-form", 0, 12, "`2027-06-14`"},
                      {"June 14, 2027", "day-form", 0, 13, "`2027-06-14`"},
                      {"14 Sept 2027", "day-form", 0, 12, "`2027-09-14`"},
                      {"20270614", "day-form", 0, 8},
                      {"next Tuesday", "day-form", 0, 12},
                      {"2027-06-14T10:00", "day-form", 0, 16},
                      {"2027-02-30", "no-such-day", 8, 2, "`2027-02-28`?"},
                      {"2028-02-30", "no-such-day", 8, 2, "`2028-02-29`?"},
                      {"2100-02-29", "no-such-day", 8, 2, "`2100-02-28`?"},  // 2100 is no leap year
                      {"2027-06-31", "no-such-day", 8, 2, "`2027-06-30`?"},
                      {"2027-06-00", "no-such-day", 8, 2, "`2027-06-01`?"},
                      {"2027-14-06", "no-such-day", 5, 2, "`2027-06-14`?"},
                      {"2027-13-40", "no-such-day", 5, 2, ""},
                      {"0000-01-01", "no-such-day", 0, 4}};
  check_rows([](std::string_view text, std::string_view key) { return read_day(text, key); }, "worn on", rows);
}
