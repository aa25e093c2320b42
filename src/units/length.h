// Exact lengths and areas. A Length is a whole number of ticks, 73,152 to the inch, so that 1/64 in, 0.1 mm and
// one page point are all whole and sums never round. Ticks are kept in 64 bits; project lengths are capped at 500 m.
// The inch is 25.4 mm exactly (NIST SP 811).
#pragma once
#include <compare>
#include <cstdint>

namespace gownsheaf {

__extension__ typedef __int128 Int128;

enum class Rounding { nearest, up, down };  // nearest: a tie goes away from zero; up and down are toward +/- infinity
enum class LengthUnit { inch, foot, yard, nail, millimetre, centimetre, metre, point };

class Length {
 public:
  static constexpr std::int64_t kPerInch = 73152, kPerMm = 2880, kPerPoint = 1016;
  static constexpr std::int64_t kCap = 500LL * 1000 * kPerMm;  // 500 m

  constexpr Length() = default;
  static constexpr Length ticks(std::int64_t t) { return Length(t); }
  // n/d of a unit, to the nearest tick. d > 0. Throws std::out_of_range past 64 bits of ticks.
  static Length from_rational(std::int64_t n, std::int64_t d, LengthUnit unit);
  static constexpr Length inches(std::int64_t n) { return Length(n * kPerInch); }
  static constexpr Length sixty_fourths(std::int64_t n) { return Length(n * (kPerInch / 64)); }
  static constexpr Length tenth_mm(std::int64_t n) { return Length(n * (kPerMm / 10)); }
  static constexpr Length mm(std::int64_t n) { return Length(n * kPerMm); }
  static constexpr Length cm(std::int64_t n) { return Length(n * kPerMm * 10); }
  static constexpr Length points(std::int64_t n) { return Length(n * kPerPoint); }
  static Length from_points(double pt);  // to the nearest tick; for drawings only, never for project lengths

  constexpr std::int64_t in_ticks() const { return ticks_; }
  constexpr double in_inches() const { return static_cast<double>(ticks_) / static_cast<double>(kPerInch); }
  constexpr double in_mm() const { return static_cast<double>(ticks_) / static_cast<double>(kPerMm); }
  constexpr double in_points() const { return static_cast<double>(ticks_) / static_cast<double>(kPerPoint); }

  // this * n / d, computed in 128 bits and rounded once as named. d != 0.
  Length times(std::int64_t n, std::int64_t d, Rounding rounding = Rounding::nearest) const;
  // The multiple of `step` that the rounding names. step > 0.
  Length to_step(Length step, Rounding rounding) const;

  constexpr bool is_zero() const { return ticks_ == 0; }
  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.ticks_ + b.ticks_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.ticks_ - b.ticks_); }
  friend constexpr Length operator-(Length a) { return Length(-a.ticks_); }
  friend constexpr Length operator*(Length a, std::int64_t n) { return Length(a.ticks_ * n); }
  friend constexpr Length operator*(std::int64_t n, Length a) { return Length(a.ticks_ * n); }
  friend constexpr double operator/(Length a, Length b) { return static_cast<double>(a.ticks_) / static_cast<double>(b.ticks_); }
  constexpr Length& operator+=(Length b) {
    ticks_ += b.ticks_;
    return *this;
  }
  constexpr Length& operator-=(Length b) {
    ticks_ -= b.ticks_;
    return *this;
  }

 private:
  explicit constexpr Length(std::int64_t t) : ticks_(t) {}
  std::int64_t ticks_ = 0;
};

// How many whole times `part` goes into `whole`, rounded as named. part > 0.
std::int64_t count_of(Length whole, Length part, Rounding rounding);

// Square ticks in 128 bits.
class Area {
 public:
  constexpr Area() = default;
  static constexpr Area of(Length a, Length b) {
    return Area(static_cast<Int128>(a.in_ticks()) * static_cast<Int128>(b.in_ticks()));
  }
  static constexpr Area square_ticks(Int128 t) { return Area(t); }
  constexpr Int128 in_square_ticks() const { return t_; }
  double in_square_inches() const;
  double in_square_metres() const;
  Length over(Length width, Rounding rounding) const;  // area / width, width > 0
  friend constexpr auto operator<=>(Area, Area) = default;
  friend constexpr Area operator+(Area a, Area b) { return Area(a.t_ + b.t_); }
  friend constexpr Area operator-(Area a, Area b) { return Area(a.t_ - b.t_); }
  friend constexpr Area operator*(Area a, std::int64_t n) { return Area(a.t_ * n); }
  constexpr Area& operator+=(Area b) {
    t_ += b.t_;
    return *this;
  }

 private:
  explicit constexpr Area(Int128 t) : t_(t) {}
  Int128 t_ = 0;
};

}  // namespace gownsheaf
