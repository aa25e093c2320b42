#include "units/length.h"

#include <cmath>

#include "units/rounded_division.h"

namespace gownsheaf {
namespace {

std::int64_t ticks_in(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::inch: return Length::kPerInch;
    case LengthUnit::foot: return 12 * Length::kPerInch;
    case LengthUnit::yard: return 36 * Length::kPerInch;
    case LengthUnit::nail: return 9 * Length::kPerInch / 4;  // 1/16 yd, 2 1/4 in
    case LengthUnit::millimetre: return Length::kPerMm;
    case LengthUnit::centimetre: return 10 * Length::kPerMm;
    case LengthUnit::metre: return 1000 * Length::kPerMm;
    case LengthUnit::point: return Length::kPerPoint;
  }
  throw std::invalid_argument("no such unit of length");
}

}  // namespace

Length Length::from_rational(std::int64_t n, std::int64_t d, LengthUnit unit) {
  if (d <= 0) throw std::invalid_argument("a length needs a denominator above zero");
  return ticks(in_64_bits(divided(static_cast<Int128>(n) * ticks_in(unit), d, Rounding::nearest)));
}

Length Length::from_points(double pt) {
  const double wanted = pt * static_cast<double>(kPerPoint);
  if (!(wanted > -9.0e18 && wanted < 9.0e18)) throw std::out_of_range("a length past 64 bits of ticks");
  return ticks(std::llround(wanted));
}

Length Length::times(std::int64_t n, std::int64_t d, Rounding rounding) const {
  if (d == 0) throw std::invalid_argument("a length is divided by zero");
  return ticks(in_64_bits(divided(static_cast<Int128>(ticks_) * n, d, rounding)));
}

Length Length::to_step(Length step, Rounding rounding) const {
  if (step.ticks_ <= 0) throw std::invalid_argument("a step must be above zero");
  return ticks(in_64_bits(divided(ticks_, step.ticks_, rounding) * step.ticks_));
}

std::int64_t count_of(Length whole, Length part, Rounding rounding) {
  if (part.in_ticks() <= 0) throw std::invalid_argument("a part must be above zero");
  return in_64_bits(divided(whole.in_ticks(), part.in_ticks(), rounding));
}

double Area::in_square_inches() const {
  return static_cast<double>(t_) / (static_cast<double>(Length::kPerInch) * static_cast<double>(Length::kPerInch));
}

double Area::in_square_metres() const {
  constexpr double kPerMetre = 1000.0 * static_cast<double>(Length::kPerMm);
  return static_cast<double>(t_) / (kPerMetre * kPerMetre);
}

Length Area::over(Length width, Rounding rounding) const {
  if (width.in_ticks() <= 0) throw std::invalid_argument("an area is divided by a width above zero");
  return Length::ticks(in_64_bits(divided(t_, width.in_ticks(), rounding)));
}

}  // namespace gownsheaf
