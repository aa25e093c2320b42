#include "units/characters.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>

namespace gownsheaf::written {
namespace {

constexpr char32_t kNoCharacter = 0xFFFD;

// The character that begins at text[i]; moves i past it. Overlong forms, surrogates and stray bytes are refused.
char32_t next_character(std::string_view text, std::size_t& i) {
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
  const unsigned char first = byte(i);
  const int more = first < 0x80                    ? 0
                   : first >= 0xC2 && first < 0xE0 ? 1
                   : first >= 0xE0 && first < 0xF0 ? 2
                   : first >= 0xF0 && first < 0xF5 ? 3
                                                   : -1;
  if (more < 0 || i + static_cast<std::size_t>(more) >= text.size()) {
    ++i;
    return kNoCharacter;
  }
  static constexpr std::array<unsigned, 4> kFirstBits = {0x7F, 0x1F, 0x0F, 0x07};
  static constexpr std::array<std::uint32_t, 4> kLeast = {0, 0x80, 0x800, 0x10000};
  std::uint32_t point = first & kFirstBits[static_cast<std::size_t>(more)];
  for (int k = 1; k <= more; ++k) {
    const unsigned char next = byte(i + static_cast<std::size_t>(k));
    if ((next & 0xC0) != 0x80) {
      ++i;
      return kNoCharacter;
    }
    point = (point << 6) | (next & 0x3FU);
  }
  if (point < kLeast[static_cast<std::size_t>(more)] || point > 0x10FFFF || (point >= 0xD800 && point < 0xE000)) {
    ++i;
    return kNoCharacter;
  }
  i += static_cast<std::size_t>(more) + 1;
  return static_cast<char32_t>(point);
}

void append(std::string& out, char32_t c) {
  const auto point = static_cast<std::uint32_t>(c);
  const auto byte = [&](std::uint32_t b) { out += static_cast<char>(static_cast<unsigned char>(b)); };
  if (point < 0x80) {
    byte(point);
  } else if (point < 0x800) {
    byte(0xC0 | (point >> 6));
    byte(0x80 | (point & 0x3F));
  } else if (point < 0x10000) {
    byte(0xE0 | (point >> 12));
    byte(0x80 | ((point >> 6) & 0x3F));
    byte(0x80 | (point & 0x3F));
  } else {
    byte(0xF0 | (point >> 18));
    byte(0x80 | ((point >> 12) & 0x3F));
    byte(0x80 | ((point >> 6) & 0x3F));
    byte(0x80 | (point & 0x3F));
  }
}

bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }

}  // namespace

Characters::Characters(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) points_.push_back(next_character(text, i));
}

std::string Characters::slice(int from, int to) const {
  std::string out;
  for (int i = std::max(from, 0); i < std::min(to, size()); ++i)
    append(out, is_control((*this)[i]) ? U' ' : (*this)[i]);
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
  static constexpr Row kRows[] = {
      {U'\u00BC', 1, 4}, {U'\u00BD', 1, 2}, {U'\u00BE', 3, 4}, {U'\u2150', 1, 7}, {U'\u2151', 1, 9}, {U'\u2152', 1, 10},
      {U'\u2153', 1, 3}, {U'\u2154', 2, 3}, {U'\u2155', 1, 5}, {U'\u2156', 2, 5}, {U'\u2157', 3, 5}, {U'\u2158', 4, 5},
      {U'\u2159', 1, 6}, {U'\u215A', 5, 6}, {U'\u215B', 1, 8}, {U'\u215C', 3, 8}, {U'\u215D', 5, 8}, {U'\u215E', 7, 8}};
  const auto* row = std::find_if(std::begin(kRows), std::end(kRows), [&](const Row& r) { return r.c == c; });
  if (row == std::end(kRows)) return false;
  numerator = row->n;
  denominator = row->d;
  return true;
}

bool is_letter(char32_t c) {
  if ((c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z')) return true;
  int n = 0, d = 0;
  return c >= U'\u00A1' && c != kNoCharacter && !is_space(c) && !is_dash(c) && !is_slash(c) &&
         !is_inch_or_foot_mark(c) && !ready_made_fraction(c, n, d);
}

std::string lower_case(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

}  // namespace gownsheaf::written
