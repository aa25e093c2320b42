// A fraction in 128 bits, for sums that must not round before the end. Used inside calculators only; lengths enter in
// ticks and leave by `to_length`, rounded once to the nearest tick.
#pragma once
#include <compare>
#include <cstdint>

#include "units/quantities.h"

namespace gownsheaf {

class Exact {
 public:
  Exact() = default;
  Exact(std::int64_t whole) : n_(whole) {}         // NOLINT: a whole number is a fraction
  Exact(Length length) : n_(length.in_ticks()) {}  // NOLINT: in ticks
  static Exact of(Ratio r) { return make(r.n, r.d); }
  static Exact make(Int128 n, Int128 d) {
    if (d < 0) {
      n = -n;
      d = -d;
    }
    Int128 a = n < 0 ? -n : n, b = d;
    while (b != 0) {
      const Int128 rest = a % b;
      a = b;
      b = rest;
    }
    Exact e;
    e.n_ = n / a;
    e.d_ = d / a;
    return e;
  }
  Int128 numerator() const { return n_; }
  Int128 denominator() const { return d_; }
  bool whole() const { return d_ == 1; }
  double value() const { return static_cast<double>(n_) / static_cast<double>(d_); }
  std::int64_t floor() const {
    Int128 q = n_ / d_;
    if (n_ % d_ != 0 && n_ < 0) --q;
    return static_cast<std::int64_t>(q);
  }
  std::int64_t ceil() const { return whole() ? floor() : floor() + 1; }
  // A tie goes to the smaller number: of two counts the fewer.
  std::int64_t nearest_tie_down() const { return (*this - make(1, 2)).ceil(); }
  Length to_length() const { return Length::ticks((*this + make(1, 2)).floor()); }
  Exact abs() const { return n_ < 0 ? make(-n_, d_) : *this; }

  friend Exact operator+(Exact a, Exact b) { return make(a.n_ * b.d_ + b.n_ * a.d_, a.d_ * b.d_); }
  friend Exact operator-(Exact a, Exact b) { return make(a.n_ * b.d_ - b.n_ * a.d_, a.d_ * b.d_); }
  friend Exact operator*(Exact a, Exact b) { return make(a.n_ * b.n_, a.d_ * b.d_); }
  friend Exact operator/(Exact a, Exact b) { return make(a.n_ * b.d_, a.d_ * b.n_); }
  friend bool operator==(Exact a, Exact b) { return a.n_ == b.n_ && a.d_ == b.d_; }
  friend bool operator<(Exact a, Exact b) { return a.n_ * b.d_ < b.n_ * a.d_; }
  friend bool operator<=(Exact a, Exact b) { return !(b < a); }
  friend bool operator>(Exact a, Exact b) { return b < a; }

 private:
  Int128 n_ = 0, d_ = 1;
};

}  // namespace gownsheaf
