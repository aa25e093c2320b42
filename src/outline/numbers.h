// Numbers and lengths as SVG attributes write them. Internal to outline.
#pragma once
#include <optional>
#include <string_view>

namespace gownsheaf {

// Goes along an attribute's text.
class NumberScanner {
 public:
  explicit NumberScanner(std::string_view text) : text_(text) {}
  void skip_blanks();
  void skip_comma();  // blanks, one comma at most, blanks
  bool done() const { return at_ >= text_.size(); }
  char peek() const { return done() ? '\0' : text_[at_]; }
  char take() { return done() ? '\0' : text_[at_++]; }
  std::size_t at() const { return at_; }
  bool begins_number() const;      // a digit, sign or point stands here
  std::optional<double> number();  // finite, or nothing and the place kept
  std::optional<bool> flag();      // one digit, 0 or 1: may touch what follows
  std::string_view letters();      // a word of letters, or %

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

std::string_view trimmed(std::string_view text);

struct SvgLength {
  double value = 0;
  enum class Unit { px, percent } unit = Unit::px;  // px: at 96 to the inch, or user units
  bool real = false;                                // written in mm, cm, in, pt, pc, q
};
// "10", "1.5cm", "50%". Nothing when it cannot be read or the unit is unknown.
std::optional<SvgLength> read_svg_length(std::string_view text);

}  // namespace gownsheaf
