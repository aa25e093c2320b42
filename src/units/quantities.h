// The other quantities of the trade. Those that enter exact arithmetic (Ratio, Percent) are rationals; the weighed and
// pulled ones are doubles in one named unit, made only from exact rationals by one multiplication, so they come out
// the same on every machine. Conversion factors: NIST SP 811 App. B.8.
#pragma once
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>

#include "units/length.h"

namespace gownsheaf {

// n/d in lowest terms, d > 0. `2.5`, `1 1/3`.
struct Ratio {
  std::int64_t n = 0, d = 1;
  double value() const { return static_cast<double>(n) / static_cast<double>(d); }
  static Ratio of(std::int64_t n, std::int64_t d);  // reduces
  friend bool operator==(const Ratio&, const Ratio&) = default;
};
// Shrinkage and waste: `3 %` is Ratio 3/100, kept apart so that one is not taken for the other.
struct Percent {
  Ratio of_one;
  friend bool operator==(const Percent&, const Percent&) = default;
};

template <class Tag>
struct Measured {  // a double in the unit that Tag documents
  double value = 0;
  friend auto operator<=>(const Measured&, const Measured&) = default;
};
using Mass = Measured<struct MassInGrams>;                 // g
using MassPerArea = Measured<struct GramsPerSquareMetre>;  // g/m²
using Force = Measured<struct Newtons>;                    // N
using Pressure = Measured<struct Pascals>;                 // Pa
using LoadPerLength = Measured<struct NewtonsPerMetre>;    // N/m
using Angle = Measured<struct Degrees>;                    // degrees
using Fineness = Measured<struct TexGramsPerKilometre>;    // tex
constexpr double kGramsPerOunce = 28.349523125;
constexpr double kGramsPerSquareMetrePerOuncePerSquareYard = 28.349523125 / 0.83612736;
constexpr double kGramsPerSquareMetrePerMomme = 453.59237 / (1.143 * 91.44);  // 1 lb in 45 in x 100 yd
constexpr double kNewtonsPerPoundForce = 4.4482216152605;
constexpr double kNewtonsPerMetrePerPoundForcePerInch = 4.4482216152605 / 0.0254;
constexpr double kPascalsPerMillimetreOfMercury = 133.322387415;
Mass ounces(double oz);
MassPerArea ounces_per_square_yard(double oz);
MassPerArea momme(double m);
MassPerArea ounces_per_running_yard(double oz, Length width);  // spread over the width named

// A calendar day, proleptic Gregorian; `serial` counts days from 1970-01-01.
struct Day {
  std::int32_t serial = 0;
  friend auto operator<=>(const Day&, const Day&) = default;
};
Day make_day(int year, int month, int day);  // no check; read_day checks
struct CalendarDay {
  int year, month, day, weekday;
};  // weekday 0 = Monday
CalendarDay calendar(Day day);

struct Span {  // a stretch of time
  std::int64_t milliseconds = 0;
  friend auto operator<=>(const Span&, const Span&) = default;
};

struct Money {  // hundredths of the maker's money
  std::int64_t hundredths = 0;
  std::string per;  // "", "yd", "m", "each"
  friend bool operator==(const Money&, const Money&) = default;
};

// `10 per in`, `20 stitches per min`, `4 min each`: an amount per one of something.
struct Rate {
  Ratio amount;
  std::string of;   // "", "stitches", "min"
  std::string per;  // "in", "cm", "min", "each"
  friend bool operator==(const Rate&, const Rate&) = default;
};

}  // namespace gownsheaf
