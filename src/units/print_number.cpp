#include <array>
#include <charconv>
#include <cmath>

#include "units/print.h"

namespace gownsheaf {
namespace {

// 0 <= n. (to_chars knows no 128-bit numbers.)
std::string digits_of(Int128 n) {
  std::string digits;
  do {
    digits.insert(digits.begin(), static_cast<char>('0' + static_cast<int>(n % 10)));
    n /= 10;
  } while (n != 0);
  return digits;
}

// 0 <= n / d: a decimal when it ends within three places, else a whole number and a fraction in lowest terms.
std::string shown_ratio(Int128 n, Int128 d) {
  const Int128 whole = n / d, rest = n % d;
  if (rest == 0) return digits_of(whole);
  if ((rest * 1000) % d == 0) {
    std::string places = digits_of(1000 + rest * 1000 / d).substr(1);
    places.erase(places.find_last_not_of('0') + 1);
    return digits_of(whole) + "." + places;
  }
  Int128 a = rest, b = d;
  while (b != 0) {
    const Int128 left = a % b;
    a = b;
    b = left;
  }
  const std::string fraction = digits_of(rest / a) + "/" + digits_of(d / a);
  return whole == 0 ? fraction : digits_of(whole) + " " + fraction;
}

std::string signed_ratio(Int128 n, Int128 d) { return n < 0 ? "-" + shown_ratio(-n, d) : shown_ratio(n, d); }

}  // namespace

std::string capital(std::string words) {
  if (!words.empty() && words.front() >= 'a' && words.front() <= 'z')
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
  return words;
}

std::string whole_number(std::int64_t n) {
  std::array<char, 24> room{};
  const auto end = std::to_chars(room.data(), room.data() + room.size(), n).ptr;
  return std::string(room.data(), end);
}

// Every double has an exact decimal expansion of at most 1074 places; to_chars writes it without rounding, and the
// rounding is then done on its digits. (to_chars alone would send the tie 0.125 to 0.12.)
std::string decimal(double value, int places) {
  constexpr int kAllPlaces = 1074;
  std::array<char, 1500> room{};
  const auto end =
      std::to_chars(room.data(), room.data() + room.size(), std::fabs(value), std::chars_format::fixed, kAllPlaces).ptr;
  std::string digits(room.data(), end);
  const std::size_t point = digits.find('.');
  if (point == std::string::npos) return digits;  // not a number, or endless: never printed, but never wrong either
  const auto kept = static_cast<std::size_t>(places < 0 ? 0 : places > kAllPlaces - 1 ? kAllPlaces - 1 : places);
  const bool carries = digits[point + 1 + kept] >= '5';
  digits.resize(point + 1 + kept);
  bool carry = carries;
  for (std::size_t i = digits.size(); carry && i-- > 0;) {
    if (digits[i] == '.') continue;
    carry = digits[i] == '9';
    digits[i] = carry ? '0' : static_cast<char>(digits[i] + 1);
  }
  if (carry) digits.insert(0, "1");
  if (kept == 0) digits.pop_back();
  const bool is_nothing = digits.find_first_not_of("0.") == std::string::npos;
  return value < 0 && !is_nothing ? "-" + digits : digits;
}

std::string text_of(Ratio ratio) { return signed_ratio(ratio.n, ratio.d); }

std::string text_of(Percent p) { return signed_ratio(static_cast<Int128>(p.of_one.n) * 100, p.of_one.d) + " %"; }

std::string text_of(Span span) {
  // Days are left to days_text_of: 48 h of sewing are not two days.
  constexpr std::int64_t kMinute = 60 * 1000, kHour = 60 * kMinute;
  std::string shown;
  Int128 left = span.milliseconds;
  if (left < 0) {
    shown = "-";
    left = -left;
  }
  const bool has_hours = left >= kHour, has_minutes = left % kHour >= kMinute;
  if (has_hours) shown += whole_number(static_cast<std::int64_t>(left / kHour)) + " h";
  if (has_minutes) shown += (has_hours ? " " : "") + whole_number(static_cast<std::int64_t>(left % kHour / kMinute)) + " min";
  const Int128 rest = left % kMinute;
  if (rest != 0 || !(has_hours || has_minutes)) shown += (has_hours || has_minutes ? " " : "") + shown_ratio(rest, 1000) + " s";
  return shown;
}

std::string days_text_of(Span span) {
  constexpr std::int64_t kDay = 24LL * 60 * 60 * 1000;
  if (span.milliseconds % kDay != 0 || span.milliseconds == 0) return text_of(span);
  const std::int64_t days = span.milliseconds / kDay;
  return whole_number(days) + (days == 1 || days == -1 ? " day" : " days");
}

}  // namespace gownsheaf
