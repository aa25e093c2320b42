// Printing quantities. Inches print as fractions (1/16, pleats 1/32), centimetres to the millimetre; rounding is always
// named by the caller. Numbers are printed with std::to_chars only, so no locale can change them.
#pragma once
#include <string>

#include "units/quantities.h"

namespace gownsheaf {

enum class ShownIn { inches, centimetres };

// A length taken apart for setting: "13", "1", "2", "in". For centimetres `whole` holds "34.5" and there is no fraction.
struct LengthText {
  bool negative = false;
  std::string whole;                   // "" when the value is a lone fraction such as 3/8
  std::string numerator, denominator;  // both "" when there is no fraction
  std::string unit;                    // "in", "yd", "cm", "m", "mm"
  std::string plain() const;           // "13 1/2 in", "-3/8 in", "34.5 cm"
  std::string number() const;          // the same without the unit
  friend bool operator==(const LengthText&, const LengthText&) = default;
};

// step: the smallest length shown (1/16 in, 1/32 in, 1 mm). Rounds to it as named, then takes apart.
LengthText text_of(Length length, ShownIn shown, Length step, Rounding rounding);
// A length that a rule of common practice names: marks of the unit, but from 10 cm on whole centimetres ("12 in", "30 cm").
LengthText rule_text_of(Length length, ShownIn shown);
// In yards (eighths) or metres (to 0.01), for cloth bought. Exact value must be a multiple of the shop step already, or
// is rounded up to 1/8 yd or 0.01 m.
LengthText cloth_text_of(Length length, ShownIn shown, Rounding rounding);
Length cut_step(ShownIn shown);    // 1/16 in or 1 mm: cut sizes round UP to it
Length mark_step(ShownIn shown);   // 1/16 in or 1 mm: marks round to nearest
Length pleat_step(ShownIn shown);  // 1/32 in or 1 mm

std::string decimal(double value, int places);  // "2.70" for (2.7, 2); C locale, half away from zero on the exact double
std::string whole_number(std::int64_t n);
std::string capital(std::string words);  // "slate wool" -> "Slate wool"; a letter past ASCII stays
std::string text_of(Ratio ratio);        // "2.5" when it ends within 3 places, else "1 1/3"
std::string text_of(Percent p);          // "3 %"
std::string text_of(Span span);          // "2 h 30 min"; never in days: 48 h of sewing are not two days
std::string days_text_of(Span span);     // "10 days" for a span of the calendar in whole days, else as text_of
std::string long_day(Day day);           // "Saturday 19 June 2027"
std::string iso_day(Day day);            // "2027-06-19"

}  // namespace gownsheaf
