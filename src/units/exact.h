// Rationals in 128 bits that say when they no longer fit, instead of overflowing. Internal to units.
#pragma once
#include <optional>

#include "units/length.h"

namespace gownsheaf::written {

struct Exact {  // n/d in lowest terms, d > 0
  Int128 n = 0, d = 1;
};

constexpr Exact reduced(Int128 n, Int128 d) {
  Int128 a = n < 0 ? -n : n, b = d;
  while (b != 0) {
    const Int128 rest = a % b;
    a = b;
    b = rest;
  }
  return a == 0 ? Exact{0, 1} : Exact{n / a, d / a};
}

inline std::optional<Exact> sum(Exact a, Exact b) {
  Int128 left = 0, right = 0, n = 0, d = 0;
  if (__builtin_mul_overflow(a.n, b.d, &left) || __builtin_mul_overflow(b.n, a.d, &right) ||
      __builtin_add_overflow(left, right, &n) || __builtin_mul_overflow(a.d, b.d, &d))
    return std::nullopt;
  return reduced(n, d);
}

inline std::optional<Exact> product(Exact a, Int128 n, Int128 d) {  // d > 0
  Int128 top = 0, bottom = 0;
  if (__builtin_mul_overflow(a.n, n, &top) || __builtin_mul_overflow(a.d, d, &bottom)) return std::nullopt;
  return reduced(top, bottom);
}

// By one division of two correctly rounded numbers, so the same on every machine.
inline double as_double(Exact e) { return static_cast<double>(e.n) / static_cast<double>(e.d); }

}  // namespace gownsheaf::written
