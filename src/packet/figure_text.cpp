#include "packet/figure_text.h"

#include "packet/wording.h"

#include <algorithm>
#include <utility>

namespace gownsheaf {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Digits at `i`; moves past them.
std::string digits(std::string_view s, std::size_t& i) {
  const std::size_t from = i;
  while (i < s.size() && is_digit(s[i])) ++i;
  return std::string(s.substr(from, i - from));
}

// A unit word at `i`, or "". Longest first, and not the start of a longer word ("in" in "inside").
std::string unit_at(std::string_view s, std::size_t i) {
  for (const std::string_view unit : {"yd", "in", "ft", "cm", "mm", "m"}) {
    if (s.substr(i, unit.size()) != unit) continue;
    const std::size_t end = i + unit.size();
    const bool word_goes_on = end < s.size() && ((s[end] >= 'a' && s[end] <= 'z') || is_digit(s[end]));
    if (!word_goes_on) return std::string(unit);
  }
  return "";
}

// A length written out at `i`: `13 1/2 in`, `3/8 yd`, `34.5 cm`. Moves past it and returns true.
bool length_at(std::string_view s, std::size_t& i, LengthText& out) {
  std::size_t k = i;
  LengthText t;
  std::string first = digits(s, k);
  if (first.empty()) return false;
  const auto fraction = [&](std::string& numerator, std::size_t& at) {
    if (at >= s.size() || s[at] != '/') return false;
    ++at;
    t.numerator = numerator;
    t.denominator = digits(s, at);
    return !t.denominator.empty();
  };
  if (k < s.size() && s[k] == '/') {
    if (!fraction(first, k)) return false;
  } else {
    t.whole = first;
    if (k + 1 < s.size() && s[k] == '.' && is_digit(s[k + 1])) {
      ++k;
      t.whole += "." + digits(s, k);
    } else if (k + 1 < s.size() && s[k] == ' ' && is_digit(s[k + 1])) {
      std::size_t after = k + 1;
      std::string numerator = digits(s, after);
      if (fraction(numerator, after)) k = after;
    }
  }
  if (k < s.size() && s[k] == ' ') {
    ++k;
  } else if (s.substr(k, 2) == kNoBreak) {
    k += 2;
  } else {
    return false;
  }
  t.unit = unit_at(s, k);
  if (t.unit.empty()) return false;
  i = k + t.unit.size();
  out = t;
  return true;
}

// `step 7`, `pleat 5`: a number and the word before it stay together.
std::string keep_numbers_with_words(std::string s) {
  std::string out;
  for (std::size_t i = 0; i < s.size(); ++i) {
    bool after_word = false;
    if (s[i] == ' ' && i + 1 < s.size() && is_digit(s[i + 1]))
      for (const std::string_view word : {"step", "pleat", "seam", "size", "breadth"})
        after_word = after_word || std::string_view(s).substr(0, i).ends_with(word);
    if (after_word) out += kNoBreak;
    else out += s[i];
  }
  return out;
}

}  // namespace

Text words_in(Face face, std::string s, Inline::Size size) {
  if (s.empty()) return {};
  Inline one;
  one.face = face;
  one.size = size;
  one.words = std::move(s);
  return {one};
}

Text length_in(Face face, LengthText length, Inline::Size size) {
  Inline one;
  one.kind = Inline::Kind::length;
  one.face = face;
  one.size = size;
  one.length = std::move(length);
  return {one};
}

Text verdict(std::string s) { return words_in(Face::bold, std::move(s), Inline::Size::verdict); }

std::string unit_of(ShownIn shown_in) { return shown_in == ShownIn::inches ? "in" : "cm"; }
std::string cloth_unit_of(ShownIn shown_in) { return shown_in == ShownIn::inches ? "yd" : "m"; }

LengthText ruler_text(Length length, ShownIn shown_in) {
  return text_of(length, shown_in, mark_step(shown_in), Rounding::nearest);
}

Text sentence_text(std::string_view sentence, bool to_measure, Face face) {
  Text out;
  std::string run;
  const auto flush = [&] {
    out = out + words_in(face, keep_numbers_with_words(run));
    run.clear();
  };
  for (std::size_t i = 0; i < sentence.size();) {
    const bool may_start = i == 0 || sentence[i - 1] == ' ' || sentence[i - 1] == '(' || sentence[i - 1] == '`';
    LengthText length;
    const bool minus = may_start && sentence[i] == '-';
    std::size_t k = minus ? i + 1 : i;
    if (may_start && length_at(sentence, k, length)) {
      length.negative = minus;
      flush();
      out = out + (to_measure ? measured(length) : length_in(face, length, Inline::Size::as_text));
      i = k;
      continue;
    }
    if (sentence[i] != '`') run += sentence[i];
    ++i;
  }
  flush();
  return out;
}

Text FigureText::marked(std::string_view key, Text text) const {
  if (changes_ == nullptr || !changes_->touches(key)) return text;
  const Figure* f = figures_->find(key);
  if (f != nullptr && hidden(*f)) return text;  // a bar would say that it moved
  for (Inline& item : text) item.changed = true;
  return text;
}

Text FigureText::was(std::string_view key) const {
  if (changes_ == nullptr || !changes_->touches(key)) return {};
  const Figure* f = figures_->find(key);
  if (f == nullptr || hidden(*f)) return {};
  for (const Change& c : changes_->all) {
    if (c.key != key || !c.was || (c.is_private && !private_shown_)) continue;
    const Text value = std::holds_alternative<Length>(c.was->value)
                           ? length_in(Face::condensed, length_text(*c.was, shown_in_), Inline::Size::as_text)
                           : condensed(plain_text(*c.was, shown_in_));
    return marked(key, condensed("changed, was\u00A0") + value);
  }
  return {};
}

Text FigureText::then_was(std::string_view key) const {
  const Text old = was(key);
  return old.empty() ? old : words(" ") + old;
}

Text FigureText::was_after(std::string_view key) const {
  const Text old = was(key);
  return old.empty() ? old : condensed(", ") + old;
}

Text FigureText::rests_on(std::string_view key) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr || hidden(*f)) return {};
  if (f->guessed) return words(" (guessed)");
  if (f->standing && f->inputs.empty()) return condensed(" (maker\u2019s default)");
  return {};
}

Text FigureText::measured(std::string_view key) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr) return words(kFigureAbsent);
  if (hidden(*f)) return words(kLeftOut);
  if (!std::holds_alternative<Length>(f->value))
    return marked(key, bold(plain_text(*f, shown_in_)) + rests_on(key)) + was_after(key);
  return marked(key, gownsheaf::measured(length_text(*f, shown_in_)) + rests_on(key)) + was_after(key);
}

Text FigureText::checking(std::string_view key) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr) return words(kFigureAbsent);
  if (hidden(*f)) return words(kLeftOut);
  if (!std::holds_alternative<Length>(f->value))
    return marked(key, words(plain_text(*f, shown_in_)) + rests_on(key)) + was_after(key);
  return marked(key, gownsheaf::checking(length_text(*f, shown_in_)) + rests_on(key)) + was_after(key);
}

Text FigureText::drawn(std::string_view key, Inline::Size size, Face face) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr) return words(kFigureAbsent);
  if (hidden(*f)) return words_in(face, kLeftOut, size);
  if (!std::holds_alternative<Length>(f->value)) return marked(key, words_in(face, plain_text(*f, shown_in_), size));
  return marked(key, length_in(face, length_text(*f, shown_in_), size));
}

Text FigureText::sizes(std::string_view across, std::string_view along, Face face, Inline::Size size) const {
  const Figure* a = figures_->find(across);
  const Figure* b = figures_->find(along);
  if (a == nullptr || b == nullptr) return words(kFigureAbsent);
  if (hidden(*a) || hidden(*b)) return words_in(face, kLeftOut, size);
  LengthText first = length_text(*a, shown_in_);
  first.unit.clear();
  return marked(across, length_in(face, first, size)) + words_in(face, "\u00A0\u00D7\u00A0", size) +
         marked(along, length_in(face, length_text(*b, shown_in_), size));
}

Text FigureText::cell(std::string_view key, bool to_measure) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr) return words("\u2013");
  if (hidden(*f)) return words(kLeftOut);
  if (!std::holds_alternative<Length>(f->value)) return marked(key, words(plain_text(*f, shown_in_)));
  LengthText t = length_text(*f, shown_in_);
  // A length of cloth that is no whole step of the shop is shown in inches or centimetres: no number of yards or metres.
  if (f->shown != Shown::cloth || t.unit == cloth_unit_of(shown_in_)) t.unit.clear();
  return marked(key, to_measure ? gownsheaf::measured(t) : gownsheaf::checking(t));
}

std::string FigureText::value(std::string_view key) const {
  const Figure* f = figures_->find(key);
  if (f == nullptr) return kFigureAbsent;
  return hidden(*f) ? kLeftOut : plain_text(*f, shown_in_);
}

namespace {

std::string two_figures(double value) {
  const double size = value < 0 ? -value : value;
  if (size < 0.005) return "0";
  return decimal(value, size < 0.995 ? 2 : size < 9.95 ? 1 : 0);
}

struct About {
  bool inches;
  std::string operator()(Force f) const {
    return inches ? two_figures(f.value / kNewtonsPerPoundForce) + "\u00A0lbf" : two_figures(f.value) + "\u00A0N";
  }
  std::string operator()(LoadPerLength l) const {
    return inches ? two_figures(l.value / kNewtonsPerMetrePerPoundForcePerInch) + "\u00A0lbf/in"
                  : two_figures(l.value / 100) + "\u00A0N/cm";
  }
  std::string operator()(Mass m) const {
    return inches ? two_figures(m.value / kGramsPerOunce / 16) + "\u00A0lb" : two_figures(m.value / 1000) + "\u00A0kg";
  }
  std::string operator()(Pressure p) const {
    return inches ? two_figures(p.value / kPascalsPerMillimetreOfMercury) + "\u00A0mmHg"
                  : two_figures(p.value / 1000) + "\u00A0kPa";
  }
  template <class Other>
  std::string operator()(const Other&) const {
    return kFigureAbsent;
  }
};

}  // namespace

std::string FigureText::about(std::string_view key) const {
  const Figure* figure = figures_->find(key);
  return figure == nullptr ? kFigureAbsent : "about\u00A0" + std::visit(About{shown_in_ == ShownIn::inches}, figure->value);
}

std::int64_t FigureText::count(std::string_view key) const { return figures_->count(key).value_or(0); }

Text FigureText::say(const Say& parts, Face words_face, bool to_measure) const {
  Text out;
  for (const SayPart& part : parts) {
    out = out + sentence_text(in_unit_of(part.words, shown_in_), to_measure, words_face);
    if (part.figure.empty()) continue;
    const Figure* f = figures_->find(part.figure);
    if (f == nullptr) {
      out = out + words_in(words_face, kFigureAbsent);
    } else if (hidden(*f)) {
      out = out + words_in(words_face, kLeftOut);
    } else if (std::holds_alternative<Length>(f->value)) {
      const LengthText t = length_text(*f, shown_in_);
      out = out + marked(part.figure, to_measure ? gownsheaf::measured(t) : length_in(words_face, t, Inline::Size::as_text));
    } else {
      out = out + marked(part.figure, words_in(words_face, plain_text(*f, shown_in_)));
    }
    if (f != nullptr && !hidden(*f) && f->guessed) out = out + words_in(words_face, " (guessed)");
  }
  return out;
}

Text FigureText::act(const Say& parts) const { return say(parts, Face::bold, true); }
Text FigureText::reason(const Say& parts) const { return say(parts, Face::condensed, false); }

// "1 part", where the library writes "{cloth:other parts} parts".
Text FigureText::beside_step(const Say& parts) const {
  Say said = parts;
  for (std::size_t i = 0; i + 1 < said.size(); ++i) {
    std::string& after = said[i + 1].words;
    const std::size_t end = std::min(after.find(' ', 1), after.size());  // of the first word, which a space leads
    if (!said[i].figure.empty() && figures_->count(said[i].figure) == 1 && end > 3 && after[end - 1] == 's')
      after.erase(end - 1, 1);
  }
  return say(said, Face::condensed, true);
}

}  // namespace gownsheaf
