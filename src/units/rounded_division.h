// Whole-number division with the rounding named. Internal to units.
#pragma once
#include <cstdint>
#include <limits>
#include <stdexcept>

#include "units/length.h"

namespace gownsheaf {

// n / d rounded as named; d != 0. Nearest sends ties away from zero; up and down go toward plus and minus infinity.
// |d| must be below 2^126, which every divisor in this room is.
constexpr Int128 divided(Int128 n, Int128 d, Rounding rounding) {
  Int128 whole = n / d;
  const Int128 rest = n % d;
  if (rest == 0) return whole;
  const bool below_zero = (n < 0) != (d < 0);  // the exact value; `whole` may be 0
  const Int128 size_of_rest = rest < 0 ? -rest : rest;
  const Int128 size_of_d = d < 0 ? -d : d;
  switch (rounding) {
    case Rounding::up: return below_zero ? whole : whole + 1;
    case Rounding::down: return below_zero ? whole - 1 : whole;
    case Rounding::nearest:
      if (size_of_rest >= size_of_d - size_of_rest) whole += below_zero ? -1 : 1;
      return whole;
  }
  return whole;
}

inline std::int64_t in_64_bits(Int128 n) {
  if (n > std::numeric_limits<std::int64_t>::max() || n < std::numeric_limits<std::int64_t>::min())
    throw std::out_of_range("a length past 64 bits of ticks");
  return static_cast<std::int64_t>(n);
}

}  // namespace gownsheaf
