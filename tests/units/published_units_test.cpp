// Conversions against published rows. The source stands beside each check; "from memory" where it was not re-read.
#include <cmath>

#include "support/catch.h"
#include "support/units_printing.h"
#include "units/read.h"

using namespace gownsheaf;

namespace {

bool within(double value, double expected, double tolerance) { return std::fabs(value - expected) <= tolerance; }
double weight_of(const char* text) { return read_cloth_weight(text, "weight").value().weight.value().value; }

}  // namespace

TEST_CASE("an ounce to the square yard in grams to the square metre [U01] a") {
  // NIST SP 811 App. B.8: 1 oz/yd² = 33.90575 g/m²
  CHECK(within(weight_of("1 oz/yd²"), 33.90575, 0.00001));
  CHECK(within(ounces_per_square_yard(1).value, 33.90575, 0.00001));
}

TEST_CASE("a momme is a pound in 45 in by 100 yd [U02] a") {
  // apparelsearch.com/education/measurements/textiles/fabrics/mommes.html: 4.340 g/m²
  CHECK(within(weight_of("1 momme"), 4.340, 0.0005));
  // by the definition: 453.59237 g over 1.143 m · 91.44 m
  CHECK(within(weight_of("1 momme"), 453.59237 / (1.143 * 91.44), 1e-12));
}

TEST_CASE("eight momme is about 35 g/m² and about 1 oz/yd² [U03] a") {
  // the same page says about 35 g/m² and about 1 oz
  CHECK(within(weight_of("8 momme"), 35.0, 0.5));
  CHECK(within(weight_of("8 momme"), 34.72, 0.005));
  CHECK(within(weight_of("8 momme") / weight_of("1 oz/yd2"), 1.024, 0.0005));
}

TEST_CASE("nine denier is one tex [U04] a") {
  // superiorthreads.com/education/natural-or-synthetic: tex is g in 1000 m, denier g in 9000 m
  CHECK(read_fineness("9 den", "fineness").value() == Fineness{1.0});
  CHECK(read_fineness("27 tex", "fineness").value() == Fineness{27.0});
  CHECK(read_fineness("270 dtex", "fineness").value() == Fineness{27.0});
}

TEST_CASE("a pound-force to the inch in newtons to the metre [U05] b") {
  // NIST SP 811 (2008) App. B.8, from memory: 175.1268 N/m
  CHECK(within(read_line_load("1 lbf/in", "load").value().value, 175.1268, 0.0001));
  CHECK(within(read_line_load("1.2 lbf per in", "load").value().value, 1.2 * 175.1268, 0.0002));
  CHECK(read_line_load("2.1 N/cm", "load").value() == LoadPerLength{210.0});
}

TEST_CASE("compression classes in millimetres of mercury and in kilopascals [U06] a") {
  // RAL-GZ 387/1 (January 2008), gzg-kompressionsstruempfe.de: both columns as printed, kPa to one place
  const struct {
    const char *mercury, *kilopascals;
  } rows[] = {{"18 mmHg", "2.4 kPa"}, {"21 mmHg", "2.8 kPa"}, {"23 mmHg", "3.1 kPa"}, {"32 mmHg", "4.3 kPa"},
              {"34 mmHg", "4.5 kPa"}, {"46 mmHg", "6.1 kPa"}, {"49 mmHg", "6.5 kPa"}};
  for (const auto& row : rows) {
    INFO(row.mercury);
    CHECK(within(read_pressure(row.mercury, "pressure").value().value, read_pressure(row.kilopascals, "pressure").value().value,
                 50.0));
  }
}

TEST_CASE("a millimetre of mercury in pascals [U07] b") {
  // NIST SP 811 (2008) App. B.8, from memory: 133.3224 Pa
  CHECK(within(read_pressure("1 mmHg", "pressure").value().value, 133.3224, 0.0001));
  CHECK(read_pressure("2.4 kPa", "pressure").value() == Pressure{2400.0});
}

TEST_CASE("the inch and the yard are exact in millimetres [U08] b") {
  // NIST SP 811 App. B, from memory: 1 in = 25.4 mm, 1 yd = 0.9144 m, both exactly
  CHECK(read_length("1 in", "l").value().length == read_length("25.4 mm", "l").value().length);
  CHECK(read_length("1 yd", "l").value().length == read_length("0.9144 m", "l").value().length);
}

TEST_CASE("wool quoted by the running yard [U09] a, x") {
  // thelondonlounge.net/forum/viewtopic.php?t=6202: a running yard is 36 in by the full width, here 58 in.
  // 13 oz · 36 / 58 = 8.069 oz/yd² = 273.6 g/m²
  const double weight = weight_of("13 oz per running yd at 58 in");
  CHECK(within(weight, 273.6, 0.1));
  CHECK(within(weight / ounces_per_square_yard(1).value, 8.069, 0.0005));
  CHECK(ounces_per_running_yard(13, Length::inches(58)).value == weight);
  // without its width it waits for the cloth's
  const WrittenWeight open = read_cloth_weight("13 oz per running yd", "weight").value();
  CHECK_FALSE(open.weight.has_value());
  CHECK(open.ounces_per_running_yard.value() == 13.0);
}

TEST_CASE("pounds, ounces and newtons") {
  // NIST SP 811 App. B.8, from memory: 1 oz = 28.349523125 g, 1 lbf = 4.4482216152605 N
  CHECK(read_mass("4 lb 6 oz", "weighs").value() == ounces(70.0));
  CHECK(within(read_mass("4 lb 6 oz", "weighs").value().value, 1984.46661875, 1e-9));
  CHECK(read_mass("2.1 kg", "weighs").value() == Mass{2100.0});
  CHECK(read_mass("1 kg 250 g", "weighs").value() == Mass{1250.0});
  CHECK(within(read_force("4 lbf", "holds").value().value, 17.792886461042, 1e-12));
  CHECK(read_force("18 N", "holds").value() == Force{18.0});
}
