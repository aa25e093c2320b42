#include "layout/text.h"

#include <algorithm>

#include "layout/block.h"

namespace gownsheaf {

namespace {

Text one(Inline item) { return Text{std::move(item)}; }

Text of_words(Face face, std::string s) {
  Inline item;
  item.face = face;
  item.words = std::move(s);
  return one(std::move(item));
}

// Appends with every run of blanks, NO-BREAK SPACE among them, as one space.
void append_spaced(std::string& out, const std::string& s) {
  for (std::size_t i = 0; i < s.size(); ++i) {
    const bool no_break = s[i] == '\xC2' && i + 1 < s.size() && s[i + 1] == '\xA0';
    if (no_break) ++i;
    if (no_break || s[i] == ' ' || s[i] == '\n' || s[i] == '\t') {
      if (!out.empty() && out.back() != ' ') out += ' ';
    } else {
      out += s[i];
    }
  }
}

}  // namespace

std::string_view word_for(Tag t) {
  switch (t) {
    case Tag::hold: return "HOLD";
    case Tag::warning: return "WARNING";
    case Tag::short_of: return "SHORT";
    case Tag::guessed: return "GUESSED";
    case Tag::late: return "LATE";
    case Tag::decided: return "DECIDED";
  }
  return "";
}

std::string_view word_for(Section s) {
  switch (s) {
    case Section::glance: return "Glance";
    case Section::buy: return "Buy";
    case Section::cut: return "Cut";
    case Section::pleats: return "Pleats";
    case Section::close: return "Close";
    case Section::fit: return "Fit";
    case Section::work: return "Work";
    case Section::sums: return "Sums";
  }
  return "";
}

Text words(std::string s) { return of_words(Face::regular, std::move(s)); }
Text bold(std::string s) { return of_words(Face::bold, std::move(s)); }
Text condensed(std::string s) { return of_words(Face::condensed, std::move(s)); }

Text measured(const LengthText& length) {
  Inline item;
  item.kind = Inline::Kind::length;
  item.face = Face::bold;
  item.size = Inline::Size::measured;
  item.length = length;
  return one(std::move(item));
}

Text checking(const LengthText& length) {
  Inline item;
  item.kind = Inline::Kind::length;
  item.length = length;
  return one(std::move(item));
}

Text tag(Tag t) {
  Inline item;
  item.kind = Inline::Kind::tag;
  item.tag = t;
  return one(std::move(item));
}

Text tick_box() {
  Inline item;
  item.kind = Inline::Kind::tick_box;
  return one(std::move(item));
}

Text operator+(Text a, const Text& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

bool any_changed(const Text& text) {
  return std::any_of(text.begin(), text.end(), [](const Inline& item) { return item.changed; });
}

std::string plain(const Text& text) {
  std::string out;
  for (const Inline& item : text) {
    switch (item.kind) {
      case Inline::Kind::words: append_spaced(out, item.words); break;
      case Inline::Kind::length: out += item.length.plain(); break;
      case Inline::Kind::tag: append_spaced(out, " " + std::string(word_for(item.tag)) + " "); break;
      case Inline::Kind::tick_box:
      case Inline::Kind::line_break: append_spaced(out, " "); break;
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

}  // namespace gownsheaf
