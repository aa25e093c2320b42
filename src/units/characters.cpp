#include "units/characters.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "unicode/utf8.h"

namespace gownsheaf::written {
namespace {

bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }

}  // namespace

Characters::Characters(std::string_view text) : points_(decode_utf8(text)) {}

std::string Characters::slice(int from, int to) const {
  std::string out;
  for (int i = std::max(from, 0); i < std::min(to, size()); ++i) append_utf8(out, is_control((*this)[i]) ? U' ' : (*this)[i]);
  return out;
}

int Characters::past_spaces(int i) const {
  while (i < size() && is_space((*this)[i])) ++i;
  return i;
}

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }

bool is_space(char32_t c) {
  return c == U' ' || c == U'\t' || c == U'\u00A0' || (c >= U'\u2000' && c <= U'\u200A') || c == U'\u202F';
}

bool is_dash(char32_t c) { return c == U'-' || (c >= U'\u2010' && c <= U'\u2015') || c == U'\u2212'; }

bool is_minus(char32_t c) { return c == U'-' || c == U'\u2212'; }

bool is_slash(char32_t c) { return c == U'/' || c == U'\u2044' || c == U'\u2215'; }

bool is_foot_mark(char32_t c) { return c == U'\'' || c == U'\u2018' || c == U'\u2019' || c == U'\u2032'; }

bool is_inch_or_foot_mark(char32_t c) {
  return c == U'"' || c == U'\u201C' || c == U'\u201D' || c == U'\u2033' || is_foot_mark(c);
}

bool ready_made_fraction(char32_t c, int& numerator, int& denominator) {
  struct Row {
    char32_t c;
    int n, d;
  };
  static constexpr Row kRows[] = {{U'\u00BC', 1, 4},  {U'\u00BD', 1, 2}, {U'\u00BE', 3, 4}, {U'\u2150', 1, 7}, {U'\u2151', 1, 9},
                                  {U'\u2152', 1, 10}, {U'\u2153', 1, 3}, {U'\u2154', 2, 3}, {U'\u2155', 1, 5}, {U'\u2156', 2, 5},
                                  {U'\u2157', 3, 5},  {U'\u2158', 4, 5}, {U'\u2159', 1, 6}, {U'\u215A', 5, 6}, {U'\u215B', 1, 8},
                                  {U'\u215C', 3, 8},  {U'\u215D', 5, 8}, {U'\u215E', 7, 8}};
  const auto* row = std::find_if(std::begin(kRows), std::end(kRows), [&](const Row& r) { return r.c == c; });
  if (row == std::end(kRows)) return false;
  numerator = row->n;
  denominator = row->d;
  return true;
}

bool is_letter(char32_t c) {
  if ((c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z')) return true;
  int n = 0, d = 0;
  return c >= U'\u00A1' && c != kNoCharacter && !is_space(c) && !is_dash(c) && !is_slash(c) && !is_inch_or_foot_mark(c) &&
         !ready_made_fraction(c, n, d);
}

std::string lower_case(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

}  // namespace gownsheaf::written
