#include "packet/wording.h"

#include "units/read.h"

#include "units/print.h"

namespace gownsheaf {

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
    out += words[i];
  }
  return out;
}

std::string listed_few(const std::vector<std::string>& words) {
  if (words.size() <= 4) return listed(words);
  return words[0] + ", " + words[1] + ", " + words[2] + " and " + whole_number(static_cast<std::int64_t>(words.size() - 3)) +
         " more";
}

std::string counted(std::int64_t n, std::string_view one, std::string_view many) {
  return whole_number(n) + "\u00A0" + std::string(n == 1 ? one : many);
}

std::string ranges(const std::vector<int>& rising) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < rising.size();) {
    std::size_t k = i;
    while (k + 1 < rising.size() && rising[k + 1] == rising[k] + 1) ++k;
    const std::string first = whole_number(rising[i]), last = whole_number(rising[k]);
    if (k == i) {
      out.push_back(first);
    } else if (k == i + 1) {
      out.push_back(first);
      out.push_back(last);
    } else {
      out.push_back(first + " to " + last);
    }
    i = k + 1;
  }
  return listed(out);
}

std::string nth_step(int number) { return "step\u00A0" + whole_number(number); }

std::vector<std::string> parts_of_key(std::string_view key) {
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const std::size_t slash = key.find('/', from);
    parts.emplace_back(key.substr(from, slash == std::string_view::npos ? slash : slash - from));
    if (slash == std::string_view::npos) return parts;
    from = slash + 1;
  }
}

std::string figure_name(std::string_view key) {
  const std::vector<std::string> p = parts_of_key(key);
  if (p.size() < 2) return std::string(key);
  if (p[0] == "measures") return p.size() == 2 ? p[1] : p[1] + ", " + p[2];
  if (p[0] == "garment") return p.back();
  if (p[0] == "size" && p.back() == "chosen by") return "the measure that decides the size";
  if (p[0] == "size" && p.back() == "made") return "size that is made";
  if (p[0] == "skirt") return p.back() + " of the skirt";
  if (p[0] == "cloths" && p.back() == "needed") return "length of " + p[1] + " to buy";
  if (p[0] == "cloths" && p.back() == "short") return "length of " + p[1] + " that is short";
  if (p[0] == "cloths" && p.back() == "bought") return "length of " + p[1] + " bought";
  if (p[0] == "cloths" && p.back() == "spare") return "length of " + p[1] + " to spare";
  if (p[0] == "pieces" && p.size() == 4) return p[3] + " of " + p[1] + " in " + p[2];
  if (p.size() == 2) return p[1];
  std::string what = p[2];
  for (std::size_t i = 3; i < p.size(); ++i) what += " " + p[i];
  return what + " of " + p[1];
}

std::string short_day(Day day) {
  // "Saturday 19 June 2027"
  const std::string whole = long_day(day);
  const auto first = whole.find(' '), last = whole.rfind(' ');
  return whole.substr(0, 3) + kNoBreak + whole.substr(first + 1, whole.find(' ', first + 1) - first - 1) + kNoBreak +
         whole.substr(whole.find(' ', first + 1) + 1, last - whole.find(' ', first + 1) - 1);
}

std::string ends_with_stop(std::string sentence) {
  while (!sentence.empty() && sentence.back() == ' ') sentence.pop_back();
  if (sentence.empty()) return sentence;
  const char last = sentence.back();
  if (last != '.' && last != '?' && last != ':') sentence += '.';
  return sentence;
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size())) {
    text.replace(at, what.size(), with);
  }
  return text;
}

std::string in_unit_of(std::string_view text, ShownIn shown_in) {
  std::string out;
  if (shown_in == ShownIn::inches) return std::string(text);
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0;
  while (i < text.size()) {
    std::size_t end = i;
    if (digit(text[i]) && (i == 0 || text[i - 1] == ' ' || text[i - 1] == '(')) {
      while (end < text.size() &&
             (digit(text[end]) || text[end] == '/' || (text[end] == ' ' && end + 1 < text.size() && digit(text[end + 1]))))
        ++end;
      const bool inches =
          text.substr(end, 3) == " in" && (end + 3 == text.size() || !((text[end + 3] >= 'a' && text[end + 3] <= 'z')));
      const auto length =
          inches ? read_length(std::string(text.substr(i, end - i)) + " in", "") : ReadResult<WrittenLength>{Misread{}};
      if (inches && length.ok()) {
        out += rule_text_of(length.value().length, shown_in).plain();
        i = end + 3;
        continue;
      }
      const bool pounds = text.substr(end, 3) == " lb" &&
                          (end + 3 == text.size() || text[end + 3] == ' ' || text[end + 3] == '.') &&
                          text.substr(end + 3, 2) != " (";  // not where the sentence gives kilograms itself
      const auto weight = pounds ? read_mass(std::string(text.substr(i, end + 3 - i)), "") : ReadResult<Mass>{Misread{}};
      if (pounds && weight.ok()) {
        const auto tenths = static_cast<std::int64_t>(weight.value().value / 100 + 0.5);
        out += whole_number(tenths / 10) + (tenths % 10 == 0 ? "" : "." + whole_number(tenths % 10)) + " kg";
        i = end + 3;
        continue;
      }
    }
    out += text[i++];
  }
  return out;
}

std::string size_word(const SizeChoice& choice) {
  if (choice.between_to.empty()) return "Size " + choice.made + " is made";
  return "It is made between sizes " + choice.made + " and " + choice.between_to;
}

}  // namespace gownsheaf
