#include <stdexcept>

#include "units/quantities.h"
#include "units/rounded_division.h"

namespace gownsheaf {

Ratio Ratio::of(std::int64_t n, std::int64_t d) {
  if (d == 0) throw std::invalid_argument("a ratio needs a denominator other than zero");
  // In 128 bits, so that the sign of the smallest 64-bit number can be turned.
  Int128 top = n, bottom = d;
  if (bottom < 0) {
    top = -top;
    bottom = -bottom;
  }
  Int128 a = top < 0 ? -top : top, b = bottom;
  while (b != 0) {
    const Int128 rest = a % b;
    a = b;
    b = rest;
  }
  return Ratio{in_64_bits(top / a), in_64_bits(bottom / a)};
}

}  // namespace gownsheaf
