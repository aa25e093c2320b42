#include "outline/numbers.h"

#include <charconv>

namespace gownsheaf {
namespace {

bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; }
bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// Length of the number that begins at `from`, by SVG's grammar; 0 for none. from_chars alone would read `inf` too.
std::size_t number_length(std::string_view text, std::size_t from) {
  std::size_t i = from;
  const auto here = [&] { return i < text.size() ? text[i] : '\0'; };
  if (here() == '+' || here() == '-') ++i;
  bool any = false;
  for (; digit(here()); ++i) any = true;
  if (here() == '.') {
    ++i;
    for (; digit(here()); ++i) any = true;
  }
  if (!any) return 0;
  if (here() == 'e' || here() == 'E') {
    std::size_t exponent = i + 1;
    if (exponent < text.size() && (text[exponent] == '+' || text[exponent] == '-')) ++exponent;
    if (exponent < text.size() && digit(text[exponent])) {
      for (i = exponent; digit(here());) ++i;
    }
  }
  return i - from;
}

}  // namespace

void NumberScanner::skip_blanks() {
  while (!done() && blank(text_[at_])) ++at_;
}

void NumberScanner::skip_comma() {
  skip_blanks();
  if (peek() == ',') {
    ++at_;
    skip_blanks();
  }
}

bool NumberScanner::begins_number() const {
  const char c = peek();
  return digit(c) || c == '+' || c == '-' || c == '.';
}

std::optional<double> NumberScanner::number() {
  const std::size_t length = number_length(text_, at_);
  if (length == 0) return {};
  std::string_view written = text_.substr(at_, length);
  if (written.front() == '+') written.remove_prefix(1);
  double value = 0;
  const auto [end, fault] = std::from_chars(written.data(), written.data() + written.size(), value);
  if (fault != std::errc() || end != written.data() + written.size()) return {};
  at_ += length;
  return value;
}

std::optional<bool> NumberScanner::flag() {
  if (peek() != '0' && peek() != '1') return {};
  return take() == '1';
}

std::string_view NumberScanner::letters() {
  const std::size_t from = at_;
  if (peek() == '%') ++at_;
  else
    while (!done() && letter(text_[at_])) ++at_;
  return text_.substr(from, at_ - from);
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

std::optional<SvgLength> read_svg_length(std::string_view text) {
  NumberScanner scan(trimmed(text));
  const std::optional<double> number = scan.number();
  if (!number) return {};
  std::string_view unit = scan.letters();
  if (!scan.done()) return {};
  struct Known {
    std::string_view word;
    double px;
    bool real;
  };
  static constexpr Known kUnits[] = {{"", 1, false},           {"px", 1, false},        {"mm", 96 / 25.4, true},
                                     {"cm", 960 / 25.4, true}, {"in", 96, true},        {"pt", 96.0 / 72, true},
                                     {"pc", 16, true},         {"Q", 96 / 101.6, true}, {"q", 96 / 101.6, true}};
  for (const Known& known : kUnits)
    if (unit == known.word) return SvgLength{*number * known.px, SvgLength::Unit::px, known.real};
  if (unit == "%") return SvgLength{*number, SvgLength::Unit::percent, false};
  return {};
}

}  // namespace gownsheaf
