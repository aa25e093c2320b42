// A written quantity as characters (code points), so that a fault can be placed where the maker sees it.
// Internal to units.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf::written {

class Characters {
 public:
  explicit Characters(std::string_view text);  // bytes that are not UTF-8 become U+FFFD, one each
  int size() const { return static_cast<int>(points_.size()); }
  char32_t operator[](int i) const {  // 0 outside
    return i < 0 || i >= size() ? U'\0' : points_[static_cast<std::size_t>(i)];
  }
  // The characters from `from` up to `to` as UTF-8, safe to show: control characters become spaces.
  std::string slice(int from, int to) const;
  int past_spaces(int i) const;

 private:
  std::vector<char32_t> points_;
};

bool is_digit(char32_t c);
bool is_space(char32_t c);   // the blank, the tab, and the no-break and thin spaces of typesetting
bool is_dash(char32_t c);    // hyphens, dashes and the minus sign
bool is_minus(char32_t c);   // - and U+2212: what may stand before a number
bool is_slash(char32_t c);   // / and the slashes of ready-made fractions, U+2044 and U+2215
bool is_letter(char32_t c);  // may begin or continue a unit
bool is_inch_or_foot_mark(char32_t c);
bool is_foot_mark(char32_t c);
// The parts of ½ ¼ ⅜ … ; false for any other character.
bool ready_made_fraction(char32_t c, int& numerator, int& denominator);
std::string lower_case(std::string text);  // of the letters a to z only

}  // namespace gownsheaf::written
