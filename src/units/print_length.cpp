#include <numeric>

#include "units/print.h"
#include "units/rounded_division.h"

namespace gownsheaf {
namespace {

// Whole units and a fraction in lowest terms. 0 <= ticks.
LengthText in_fractions(std::int64_t ticks, std::int64_t per_unit, const char* unit) {
  LengthText text;
  text.unit = unit;
  const std::int64_t whole = ticks / per_unit, rest = ticks % per_unit;
  if (rest != 0) {
    const std::int64_t common = std::gcd(rest, per_unit);
    text.numerator = whole_number(rest / common);
    text.denominator = whole_number(per_unit / common);
  }
  if (whole != 0 || rest == 0) text.whole = whole_number(whole);
  return text;
}

// ticks / per_unit with so many decimals; the value must end there. 0 <= ticks.
LengthText in_decimals(std::int64_t ticks, std::int64_t per_unit, int places, const char* unit) {
  LengthText text;
  text.unit = unit;
  text.whole = whole_number(ticks / per_unit);
  if (places > 0) text.whole += ".";
  Int128 rest = ticks % per_unit;
  for (int i = 0; i < places; ++i) {
    rest *= 10;
    text.whole += static_cast<char>('0' + static_cast<int>(rest / per_unit));
    rest %= per_unit;
  }
  return text;
}

LengthText with_sign(LengthText text, bool negative) {
  text.negative = negative;
  return text;
}

std::int64_t size_of(Length length) {
  return in_64_bits(length.in_ticks() < 0 ? -static_cast<Int128>(length.in_ticks()) : length.in_ticks());
}

}  // namespace

std::string LengthText::number() const {
  std::string text = negative ? "-" : "";
  text += whole;
  if (!numerator.empty()) {
    if (!whole.empty()) text += " ";
    text += numerator + "/" + denominator;
  }
  return text;
}

std::string LengthText::plain() const { return number() + " " + unit; }

LengthText text_of(Length length, ShownIn shown, Length step, Rounding rounding) {
  Length rounded = length.to_step(step, rounding);
  if (shown == ShownIn::inches) return with_sign(in_fractions(size_of(rounded), Length::kPerInch, "in"), rounded < Length());
  // As many decimals of a centimetre as the step has; a step that is no decimal part is rounded to 0.01 cm.
  int places = 0;
  std::int64_t part = 10 * Length::kPerMm;
  while (places < 2 && step.in_ticks() % part != 0) {
    part /= 10;
    ++places;
  }
  rounded = rounded.to_step(Length::ticks(part), Rounding::nearest);
  return with_sign(in_decimals(size_of(rounded), 10 * Length::kPerMm, places, "cm"), rounded < Length());
}

LengthText rule_text_of(Length length, ShownIn shown) {
  const bool whole = shown == ShownIn::centimetres && length >= Length::mm(100);
  LengthText text = text_of(length, shown, whole ? Length::mm(10) : mark_step(shown), Rounding::nearest);
  if (whole && text.whole.size() > 2 && text.whole.ends_with(".0")) text.whole.resize(text.whole.size() - 2);
  return text;
}

LengthText cloth_text_of(Length length, ShownIn shown, Rounding rounding) {
  if (shown == ShownIn::inches) {
    constexpr std::int64_t kYard = 36 * Length::kPerInch;
    const Length rounded = length.to_step(Length::ticks(kYard / 8), rounding);
    return with_sign(in_fractions(size_of(rounded), kYard, "yd"), rounded < Length());
  }
  const Length rounded = length.to_step(Length::cm(1), rounding);
  LengthText text = in_decimals(size_of(rounded), 1000 * Length::kPerMm, 2, "m");
  text.whole.erase(text.whole.find_last_not_of('0') + 1);  // 2.50 m is bought as 2.5 m
  if (text.whole.back() == '.') text.whole.pop_back();
  return with_sign(text, rounded < Length());
}

Length cut_step(ShownIn shown) { return shown == ShownIn::inches ? Length::sixty_fourths(4) : Length::mm(1); }
Length mark_step(ShownIn shown) { return cut_step(shown); }
Length pleat_step(ShownIn shown) { return shown == ShownIn::inches ? Length::sixty_fourths(2) : Length::mm(1); }

}  // namespace gownsheaf
