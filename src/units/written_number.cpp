// Numbers as makers write them: `13`, `13.5`, `13 1/2`, `13½`, `1/2`, `½`. Nothing else is a number.
#include <optional>

#include "units/print.h"
#include "units/written_parts.h"

namespace gownsheaf::written {
namespace {

constexpr int kMostDigits = 9;  // before the point, after it, and on each side of a fraction

class NumberReader {
 public:
  NumberReader(const Written& written, int start) : written_(written), chars_(written.chars), start_(start), i_(start) {}

  ReadResult<Part> read() {
    if (auto wrong = read_first()) return {*wrong};
    if (auto wrong = refuse_what_follows()) return {*wrong};
    part_.at = start_;
    part_.end = i_;
    part_.typed = chars_.slice(start_, i_);
    return {part_};
  }
  int end() const { return i_; }

 private:
  using Wrong = std::optional<Misread>;

  Misread wrong(std::string sentence, std::string hint, int end) const {
    return fault("number-form", std::move(sentence), std::move(hint), start_, end);
  }
  std::string shown(int to) const { return quoted(chars_.slice(start_, to)); }
  std::string rest(int from) const {  // what the maker wrote after the number: the unit, for hints
    const std::string after = chars_.slice(chars_.past_spaces(from), chars_.size());
    return after.empty() || after.size() > 20 ? "" : " " + after;
  }
  int past_digits(int i) const {
    while (is_digit(chars_[i])) ++i;
    return i;
  }
  // The digits from..to, which are no more than kMostDigits after leading zeros.
  std::optional<std::int64_t> digits(int from, int to) const {
    while (from < to && chars_[from] == U'0') ++from;
    if (to - from > kMostDigits) return std::nullopt;
    std::int64_t n = 0;
    for (int i = from; i < to; ++i) n = n * 10 + static_cast<std::int64_t>(chars_[i] - U'0');
    return n;
  }
  bool fraction_begins(int i) const {
    int n = 0, d = 0;
    if (ready_made_fraction(chars_[i], n, d)) return true;
    const int slash = past_digits(i);
    return slash > i && is_slash(chars_[slash]) && is_digit(chars_[slash + 1]);
  }
  Wrong too_long(int end) const {
    return fault("out-of-range", shown(end) + " has more than nine digits in a row.", "a number of nine digits at most", start_,
                 end);
  }

  // A fraction at i_, added to `whole` ones.
  Wrong read_fraction(std::int64_t whole, bool has_whole) {
    int n_typed = 0, d_typed = 0;
    std::int64_t n = 0, d = 1;
    if (ready_made_fraction(chars_[i_], n_typed, d_typed)) {
      n = n_typed;
      d = d_typed;
      ++i_;
    } else {
      const int slash = past_digits(i_), end = past_digits(slash + 1);
      const auto top = digits(i_, slash), bottom = digits(slash + 1, end);
      if (!top || !bottom) return too_long(end);
      if (*bottom == 0) return wrong(shown(end) + " is divided by nothing; the number under the stroke is 1 or more.", "", end);
      n = *top;
      d = *bottom;
      i_ = end;
      if (has_whole && n >= d)
        return wrong(shown(end) + " has a fraction of one or more beside a whole number.",
                     quoted(whole_number(whole + n / d) + (n % d == 0 ? "" : " " + whole_number(n % d) + "/" + whole_number(d)) +
                            rest(end)),
                     end);
    }
    part_.number = reduced(static_cast<Int128>(whole) * d + n, d);
    return std::nullopt;
  }

  Wrong read_first() {
    if (fraction_begins(i_)) return read_fraction(0, false);
    const int whole_end = past_digits(i_);
    if (chars_[whole_end] == U'.' && is_digit(chars_[whole_end + 1])) return read_decimal(whole_end);
    if (auto form = refuse_other_forms(whole_end)) return form;
    const auto whole = digits(i_, whole_end);
    if (!whole) return too_long(whole_end);
    i_ = whole_end;
    part_.number = Exact{*whole, 1};
    const int next = chars_.past_spaces(i_);
    if (fraction_begins(next)) {
      i_ = next;
      return read_fraction(*whole, true);
    }
    part_.whole_number = true;
    return std::nullopt;
  }

  Wrong read_decimal(int point) {
    const int end = past_digits(point + 1);
    if (auto form = refuse_other_forms(end)) return form;
    int last = end;
    while (last > point + 1 && chars_[last - 1] == U'0') --last;
    const auto whole = digits(i_, point);
    if (!whole) return too_long(point);
    if (last - point - 1 > kMostDigits)
      return wrong(shown(end) + " has more than nine decimals.",
                   quoted(chars_.slice(start_, point + 4) + rest(end)) + " is finer than any tape", end);
    Int128 n = *whole, d = 1;
    for (int i = point + 1; i < last; ++i) {
      n = n * 10 + static_cast<Int128>(chars_[i] - U'0');
      d *= 10;
    }
    part_.number = reduced(n, d);
    i_ = end;
    const int next = chars_.past_spaces(i_);
    if (fraction_begins(next)) {
      const int fraction_end = is_digit(chars_[next]) ? past_digits(past_digits(next) + 1) : next + 1;
      return wrong(shown(fraction_end) + " has a decimal point and a fraction; a number has one of the two.",
                   quoted(chars_.slice(start_, end) + rest(fraction_end)), fraction_end);
    }
    return std::nullopt;
  }

  // Numbers of calculators, of other languages and of programs, and commas.
  Wrong refuse_other_forms(int end) const {
    const char32_t c = chars_[end];
    const auto to_word_end = [&](int i) {
      while (is_digit(chars_[i]) || is_letter(chars_[i]) || chars_[i] == U'_' || chars_[i] == U'.' || chars_[i] == U'+' ||
             chars_[i] == U'-')
        ++i;
      return i;
    };
    if (c == U'_') {
      const int last = to_word_end(end);
      std::string digits;
      for (int i = start_; i < last; ++i)
        if (chars_[i] != U'_') digits += chars_.slice(i, i + 1);
      return wrong(shown(last) + " is not a way numbers are written here; digits stand together.", quoted(digits + rest(last)),
                   last);
    }
    if ((c == U'e' || c == U'E') &&
        (is_digit(chars_[end + 1]) || ((chars_[end + 1] == U'+' || is_minus(chars_[end + 1])) && is_digit(chars_[end + 2]))))
      return refuse_exponent(end, to_word_end(end));
    if ((c == U'x' || c == U'X') && end == start_ + 1 && chars_[start_] == U'0') {
      const int last = to_word_end(end);
      return wrong(shown(last) + " is not a way numbers are written here.", "digits, one point or one fraction: `13 1/2`", last);
    }
    if (c == U'.' && is_digit(chars_[end + 1])) {
      const int last = to_word_end(end);
      return wrong(shown(last) + " has more than one point.", "", last);
    }
    if (c == U'.') return wrong(shown(end + 1) + " ends in a point.", quoted(chars_.slice(start_, end) + rest(end + 1)), end + 1);
    if (c == U',' && is_digit(chars_[end + 1])) return refuse_comma(end);
    return std::nullopt;
  }

  Misread refuse_exponent(int e, int last) const {
    std::string plain;
    const int power_end = past_digits(e + 1);
    const auto power = digits(e + 1, power_end);
    bool only_digits = true;
    for (int i = start_; i < e; ++i) only_digits = only_digits && is_digit(chars_[i]);
    if (only_digits && power && power_end > e + 1 && *power <= 6)
      plain = quoted(chars_.slice(start_, e) + std::string(static_cast<std::size_t>(*power), '0') + rest(power_end));
    return wrong(written_.alone() + " is not a way numbers are written here.",
                 plain.empty() ? "digits, one point or one fraction: `13 1/2`" : plain, last);
  }

  Misread refuse_comma(int comma) const {
    int end = comma, groups = 0;
    bool threes = comma - start_ <= 3;
    while (chars_[end] == U',' && is_digit(chars_[end + 1])) {
      const int next = past_digits(end + 1);
      threes = threes && next - end == 4;
      end = next;
      ++groups;
    }
    std::string joined;
    for (int i = start_; i < end; ++i)
      if (chars_[i] != U',') joined += static_cast<char>(chars_[i]);
    const std::string pointed = chars_.slice(start_, comma) + "." + chars_.slice(comma + 1, end);
    if (threes)
      return wrong(shown(end) + " holds a comma; the digits of a number stand together.",
                   quoted(joined + rest(end)) + (groups == 1 ? ", or " + quoted(pointed + rest(end)) : ""), end);
    return fault("decimal-comma", quoted(chars_.slice(start_, end) + rest(end)) + ": a comma parts two items.",
                 groups == 1 ? quoted(pointed + rest(end)) : "", comma, comma + 1);
  }

  // After a whole number or a fraction: another number without a unit between, or a hyphen.
  Wrong refuse_what_follows() const {
    const int next = chars_.past_spaces(i_);
    if (fraction_begins(next) || (is_slash(chars_[i_]) && is_digit(chars_[i_ + 1]))) {
      const int from = is_slash(chars_[next]) ? next + 1 : next;
      const int end = is_digit(chars_[from]) && fraction_begins(from) ? past_digits(past_digits(from) + 1)
                      : is_digit(chars_[from])                        ? past_digits(from)
                                                                      : from + 1;
      return wrong(shown(end) + " has two fractions; a number has one.", "", end);
    }
    if (is_slash(chars_[next]) && is_digit(chars_[chars_.past_spaces(next + 1)])) {
      const int end = past_digits(chars_.past_spaces(next + 1));
      return wrong(shown(end) + ": the stroke of a fraction touches both numbers.", "`1/2`", end);
    }
    if (is_digit(chars_[next])) {
      const int end = past_digits(next);
      return wrong(shown(end) + ": two numbers stand side by side.", "is a stroke missing, as in `13 1/2`, or a unit?", end);
    }
    if (chars_[next] == U':' && is_digit(chars_[next + 1])) {
      const int end = past_digits(next + 1);
      return wrong(shown(end) + ": a colon has no place in a number.", "a time is written `2 h 30 min`", end);
    }
    if (is_dash(chars_[next]) &&
        (is_digit(chars_[chars_.past_spaces(next + 1)]) || fraction_begins(chars_.past_spaces(next + 1))))
      return refuse_hyphen(next);
    return std::nullopt;
  }

  Misread refuse_hyphen(int hyphen) const {
    const int second = chars_.past_spaces(hyphen + 1);
    int end = fraction_begins(second) && is_digit(chars_[second]) ? past_digits(past_digits(second) + 1)
              : is_digit(chars_[second])                          ? past_digits(second)
                                                                  : second + 1;
    if (chars_[end] == U'.' && is_digit(chars_[end + 1])) end = past_digits(end + 1);
    const std::string unit = rest(end);
    const std::string first = chars_.slice(start_, i_), last = chars_.slice(second, end);
    std::string hint = quoted(first + unit + " to " + last + unit);
    if (part_.whole_number && fraction_begins(second))
      hint = quoted(first + " " + last + unit) + ", or " + quoted(first + unit + " to " + first + " " + last + unit);
    return fault("fraction-hyphen", quoted(chars_.slice(start_, end) + unit) + " could be a sum or a range.", hint, hyphen,
                 hyphen + 1);
  }

  const Written& written_;
  const Characters& chars_;
  int start_, i_;
  Part part_;
};

}  // namespace

ReadResult<Part> read_number_at(const Written& written, int& i) {
  NumberReader reader(written, i);
  ReadResult<Part> part = reader.read();
  if (part.ok()) i = reader.end();
  return part;
}

}  // namespace gownsheaf::written
