#include "units/written_parts.h"

#include <array>
#include <utility>

namespace gownsheaf::written {
namespace {

constexpr int kLongestQuantity = 120;  // characters; nothing a maker writes as one quantity is as long
constexpr int kLongestQuotation = 40;

bool number_begins(const Characters& chars, int i) {
  int n = 0, d = 0;
  return is_digit(chars[i]) || ready_made_fraction(chars[i], n, d) || (chars[i] == U'.' && is_digit(chars[i + 1]));
}

// `two` -> "2", or "".
std::string digits_for(const std::string& word) {
  constexpr std::array<std::string_view, 12> kWords = {"one",   "two",   "three", "four", "five",   "six",
                                                       "seven", "eight", "nine",  "ten",  "eleven", "twelve"};
  for (std::size_t i = 0; i < kWords.size(); ++i)
    if (kWords[i] == word) return std::to_string(i + 1);
  return "";
}

// `5' 3"` as `5 ft 3 in`, with the marks that the maker used.
std::string with_units_for_marks(const Characters& chars) {
  std::string out;
  for (int i = 0; i < chars.size(); ++i) {
    if (!is_inch_or_foot_mark(chars[i])) {
      out += chars.slice(i, i + 1);
      continue;
    }
    const bool doubled = is_foot_mark(chars[i]) && is_foot_mark(chars[i + 1]);  // '' is an inch mark
    while (!out.empty() && out.back() == ' ') out.pop_back();
    out += is_foot_mark(chars[i]) && !doubled ? " ft" : " in";
    if (doubled) ++i;
    if (i + 1 < chars.size() && !is_space(chars[i + 1])) out += " ";
  }
  const auto first = out.find_first_not_of(' ');
  return first == std::string::npos ? "" : out.substr(first);
}

Misread refuse_mark(const Written& written, int i) {
  const bool foot = is_foot_mark(written.chars[i]) && !is_foot_mark(written.chars[i + 1]);
  return fault(
      "inch-mark",
      written.alone() + (foot ? " uses a mark for feet; units are written as words." : " uses a quotation mark for inches."),
      quoted(with_units_for_marks(written.chars)), i, i + 1);
}

Misread refuse_character(const Written& written, int i) {
  const Characters& chars = written.chars;
  if (is_inch_or_foot_mark(chars[i])) return refuse_mark(written, i);
  if (chars[i] == U',')
    return fault("decimal-comma", written.alone() + ": a comma parts two items.",
                 "leave the comma out: " + quoted(chars.slice(chars.past_spaces(0), i) + chars.slice(i + 1, chars.size())), i,
                 i + 1);
  if (is_dash(chars[i])) {
    const int next = chars.past_spaces(i + 1);
    if (number_begins(chars, next)) {
      std::string first = chars.slice(chars.past_spaces(0), i);
      while (!first.empty() && first.back() == ' ') first.pop_back();
      return fault("fraction-hyphen", written.alone() + " could be a sum or a range.",
                   quoted(first + " to " + chars.slice(next, chars.size())), i, i + 1);
    }
  }
  return fault("number-form", written.alone() + ": " + quoted(chars.slice(i, i + 1)) + " has no place in a quantity.",
               written.form, i, i + 1);
}

// One unit word, a slash or a percent sign. `i` stands on it.
Word read_word(const Characters& chars, int& i) {
  Word word;
  word.at = i;
  if (is_slash(chars[i])) {
    word.text = "/";
    word.end = ++i;
    return word;
  }
  if (chars[i] == U'%') {
    word.text = "%";
    word.end = ++i;
    return word;
  }
  while (is_letter(chars[i]) && chars[i] != U'\u00B2') ++i;
  word.text = lower_case(chars.slice(word.at, i));
  const bool ends_after_2 =
      !is_letter(chars[i + 1]) && !is_digit(chars[i + 1]) && chars[i + 1] != U'.' && !is_slash(chars[i + 1]);
  if (chars[i] == U'\u00B2' || (chars[i] == U'2' && i > word.at && ends_after_2)) {
    word.text += "2";
    ++i;
  } else if (chars[i] == U'^' && chars[i + 1] == U'2') {
    word.text += "2";
    i += 2;
  } else if (chars[i] == U'.') {
    ++i;  // `in.`, `sq. yd`
  }
  word.end = i;
  return word;
}

}  // namespace

Written::Written(std::string_view text, std::string_view what) : chars(text), key(Characters(what).slice(0, 80)) {}

std::string Written::text() const {
  const int from = chars.past_spaces(0);
  int to = chars.size();
  while (to > from && is_space(chars[to - 1])) --to;
  if (to - from > kLongestQuotation) return chars.slice(from, from + kLongestQuotation) + "…";
  return chars.slice(from, to);
}

std::string Written::alone() const { return quoted(text()); }
std::string Written::with_key() const { return quoted(key.empty() ? text() : key + ": " + text()); }

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

Misread fault(std::string code, std::string sentence, std::string hint, int at, int end) {
  return Misread{std::move(code), std::move(sentence), std::move(hint), at, end - at};
}

ReadResult<Parts> read_parts(const Written& written) {
  const Characters& chars = written.chars;
  Parts all;
  int i = chars.past_spaces(0);
  if (i == chars.size())
    return {fault("value-empty", quoted(written.key + ":") + " is followed by nothing.", "not known yet: `to measure`", 0,
                  chars.size())};
  if (chars.size() > kLongestQuantity)
    return {fault("number-form", written.with_key() + " is too long to be a quantity.", written.form, 0, chars.size())};
  const int begins = i;
  if (is_minus(chars[i])) {
    all.negative = true;
    i = chars.past_spaces(i + 1);
  } else if (chars[i] == U'+') {
    return {fault("number-form", written.alone() + ": a plus sign has no place in a quantity.",
                  quoted(chars.slice(chars.past_spaces(i + 1), chars.size())), i, i + 1)};
  }
  if (!number_begins(chars, i)) {
    if (is_letter(chars[i]) || i == chars.size()) {
      int end = i;
      while (is_letter(chars[end])) ++end;
      const std::string digits = digits_for(lower_case(chars.slice(i, end)));
      return {fault("number-form", written.with_key() + " does not begin with a number.",
                    digits.empty() ? written.form : quoted(digits + chars.slice(end, chars.size())), begins, end)};
    }
    return {refuse_character(written, i)};
  }
  while (i < chars.size()) {
    ReadResult<Part> number = read_number_at(written, i);
    if (!number.ok()) return {number.fault()};
    Part part = number.value();
    if (all.negative && all.parts.empty()) part.typed.insert(0, "-");  // so that hints keep it
    for (i = chars.past_spaces(i); i < chars.size() && !number_begins(chars, i); i = chars.past_spaces(i)) {
      const bool joins_letters = chars[i] == U'-' && is_letter(chars[i - 1]) && is_letter(chars[i + 1]);
      if (joins_letters) {
        ++i;  // `pound-force`
        continue;
      }
      if (!is_letter(chars[i]) && !is_slash(chars[i]) && chars[i] != U'%') return {refuse_character(written, i)};
      part.words.push_back(read_word(chars, i));
    }
    all.parts.push_back(std::move(part));
  }
  return {std::move(all)};
}

}  // namespace gownsheaf::written
