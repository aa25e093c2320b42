// Quotations and brackets, which may run over several lines.
#include <algorithm>
#include <vector>

#include "read/findings.h"

namespace gownsheaf {
namespace {

std::string on_line(Place p) { return "line " + std::to_string(p.line + 1); }

std::size_t indent_of(std::string_view line) { return line.find_first_not_of(' '); }

bool lies_outside(std::string_view line, int indent) {
  return indent >= 0 && indent_of(line) <= static_cast<std::size_t>(indent);
}

std::optional<Place> never_closed(Findings& found, Place from) {
  found.report("quote-open", from, 1,
               "The quotation mark on " + on_line(from) + " is never closed, so all below it was taken as text.",
               "close it; inches are `13 in`, not `13\"`");
  return std::nullopt;
}

}  // namespace

std::optional<Place> past_quotation(Findings& found, Place from, int indent, bool in_brackets) {
  const SourceLines& lines = found.lines;
  const char mark = lines.line(from.line)[from.column];
  const std::string_view may_follow = in_brackets ? ",]}:" : "";
  Place p{from.line, from.column + 1};
  for (;;) {
    const std::string_view line = lines.line(p.line);
    if (p.column >= line.size()) {
      if (++p.line >= lines.count()) return never_closed(found, from);
      p.column = 0;
      const std::string_view next = lines.line(p.line);
      const bool empty = next.find_first_not_of(" \t") == next.npos;
      if (!empty && (lies_outside(next, indent) || is_document_mark(next))) return never_closed(found, from);
      continue;
    }
    if (mark == '"' && line[p.column] == '\\') {
      p.column += 2;
      continue;
    }
    if (line[p.column] != mark) {
      ++p.column;
      continue;
    }
    if (mark == '\'' && p.column + 1 < line.size() && line[p.column + 1] == mark) {
      p.column += 2;
      continue;
    }
    break;
  }
  const Place after{p.line, p.column + 1};
  const std::string_view line = lines.line(after.line);
  const std::size_t next = next_text(line, after.column);
  if (next == line.size() || may_follow.find(line[next]) != may_follow.npos) return after;
  // A quotation over several lines that ends in the middle of other text began with a mark that was not meant as one.
  if (after.line != from.line) return never_closed(found, from);
  found.report("quote-early", {after.line, next}, line.size() - next,
               "The quotation that begins with `" + std::string(1, mark) + "` ends before this text.",
               "put the whole text in quotes, and use the other kind of mark inside them");
  return std::nullopt;
}

namespace {

struct Bracket {
  char sign;
  Place at;
  bool has_colon = false;
  std::string_view word = {};  // the key before the colon
};

class BracketLook {
 public:
  BracketLook(Findings& found, int indent) : found_(found), lines_(found.lines), indent_(indent) {}

  std::optional<Place> past(Place from) {
    p_ = from;
    for (;;) {
      if (p_.column >= lines_.line(p_.line).size()) {
        if (!next_line()) return std::nullopt;
        continue;
      }
      const std::string_view line = lines_.line(p_.line);
      const char c = line[p_.column];
      if (is_blank(c)) {
        ++p_.column;
      } else if (c == '#' && (p_.column == 0 || is_blank(line[p_.column - 1]))) {
        if (hides_value(line)) take_as_text(line);
        else p_.column = line.size();
      } else if (c == '{' || c == '[') {
        open_.push_back({.sign = c, .at = p_});
        state_ = State::fresh;
        ++p_.column;
      } else if (c == '}' || c == ']') {
        if (!close(c)) return std::nullopt;
        if (open_.empty()) return p_;
      } else if (c == ',') {
        open_.back().has_colon = false;
        state_ = State::fresh;
        ++p_.column;
      } else if (is_colon(line)) {
        colon(line);
      } else if (state_ == State::text) {
        if (c == '?') question_mark();
        ++p_.column;
      } else if (!begin_text(line)) {
        return std::nullopt;
      }
    }
  }

 private:
  enum class State { fresh, text, closed };  // before a value; in plain text; after a quotation or closed bracket

  bool next_line() {
    const bool after_comma = state_ == State::fresh;
    if (++p_.line >= lines_.count()) return unclosed();
    p_.column = 0;
    const std::string_view line = lines_.line(p_.line);
    const std::size_t at = next_text(line, 0);
    if (at == line.size()) return true;
    if (is_document_mark(line)) return unclosed();
    if (!lies_outside(line, indent_)) return true;
    // Set in no further than what the brackets belong to: a new item or entry, so a closing bracket is missing.
    if (begins_item(line, at) || (!after_comma && key_at(line, at))) return unclosed();
    return true;
  }

  bool unclosed() {
    const Bracket& b = open_.back();
    const std::string close(1, b.sign == '{' ? '}' : ']');
    found_.report("bracket-open", b.at, 1, "The `" + std::string(1, b.sign) + "` on " + on_line(b.at) + " is never closed.",
                  "put `" + close + "` at the end of what belongs in it");
    return false;
  }

  bool close(char c) {
    const Bracket& b = open_.back();
    if ((b.sign == '{') != (c == '}')) {
      found_.report(
          "bracket-open", p_, 1,
          "`" + std::string(1, c) + "` closes here what `" + std::string(1, b.sign) + "` on " + on_line(b.at) + " opened.",
          "`{` goes with `}`, and `[` with `]`", b.at);
      return false;
    }
    open_.pop_back();
    state_ = State::closed;
    ++p_.column;
    return true;
  }

  // `size: #2, bought: 6 }`: what was meant as the value would hide all that follows it.
  bool hides_value(std::string_view line) const {
    const std::string_view rest = line.substr(p_.column + 1);
    return state_ == State::fresh && open_.back().has_colon && !rest.empty() && !is_blank(rest[0]) &&
           rest.find_first_of(",]}") != rest.npos;
  }

  void take_as_text(std::string_view line) {
    const std::size_t end = line.find_first_of(",]}", p_.column);
    std::string_view value = line.substr(p_.column, end - p_.column);
    while (is_blank(value.back())) value.remove_suffix(1);
    found_.report("remark-early", p_, value.size(),
                  "`" + std::string(value) + "` is read as a remark, with all after it: `#` after a space begins one.",
                  "put it in quotes: `\"" + std::string(value) + "\"`");
    found_.replace(p_, 1, '_');
    text_from_ = p_;
    state_ = State::text;
    ++p_.column;
  }

  bool is_colon(std::string_view line) const {
    if (line[p_.column] != ':') return false;
    if (state_ == State::closed) return true;
    const std::size_t next = p_.column + 1;
    return next == line.size() || is_blank(line[next]) || std::string_view(",]}").find(line[next]) != line.npos;
  }

  void colon(std::string_view line) {
    Bracket& b = open_.back();
    const bool same_line = text_from_.line == p_.line && state_ == State::text;
    std::string_view word = same_line ? line.substr(text_from_.column, p_.column - text_from_.column) : "";
    while (!word.empty() && is_blank(word.back())) word.remove_suffix(1);
    if (!b.has_colon) {
      b.has_colon = true;
      b.word = word;
      state_ = State::fresh;
    } else if (const std::string_view key = known_key_at_end(word); !key.empty()) {
      std::string_view value = word.substr(0, word.size() - key.size());
      while (!value.empty() && is_blank(value.back())) value.remove_suffix(1);
      found_.report("comma-missing", {p_.line, text_from_.column + (word.size() - key.size())}, key.size(),
                    "A comma is missing between `" + std::string(b.word) + "` and `" + std::string(key) + "`.",
                    "`" + std::string(b.word) + ": " + std::string(value) + ", " + std::string(key) + ":`");
      found_.replace(p_, 1, ';');
    } else {
      const bool comma_missing = state_ == State::text && text_from_.line != p_.line;
      found_.report("second-colon", p_, 1,
                    comma_missing    ? "A comma is missing before this line: its colon is the second of one entry."
                    : b.word.empty() ? "This entry holds a second colon."
                                     : "The text after `" + std::string(b.word) + ":` holds another colon.",
                    comma_missing ? "end each entry but the last with a comma" : "put the whole text in quotes");
      found_.replace(p_, 1, ';');
    }
    ++p_.column;
  }

  // The longest known key that ends these words and leaves a value before it; else "".
  std::string_view known_key_at_end(std::string_view words) const {
    if (open_.back().sign != '{' || open_.back().word.empty()) return {};
    for (std::size_t i = 1; i < words.size(); ++i) {
      if (!is_blank(words[i - 1]) || is_blank(words[i])) continue;
      const std::string_view rest = words.substr(i);
      if (std::find(found_.keys.begin(), found_.keys.end(), rest) != found_.keys.end()) return rest;
    }
    return {};
  }

  void question_mark() {
    found_.report("shorthand", p_, 1, "A question mark inside brackets ends the text before it.", "put the whole text in quotes");
    found_.replace(p_, 1, '_');
  }

  // At the first byte of a value or key. False when what is wrong with it spoils all that follows.
  bool begin_text(std::string_view line) {
    const char c = line[p_.column];
    if (state_ == State::closed) {
      // After a quotation this was told already; here a bracket closed before the text.
      std::size_t end = p_.column;
      while (end < line.size() && std::string_view(",]}").find(line[end]) == line.npos && next_text(line, end) < line.size())
        ++end;
      while (is_blank(line[end - 1])) --end;
      found_.report("bracket-early", p_, end - p_.column, "Text stands after the closing bracket.",
                    "a comma is missing before it, or it belongs inside the bracket");
      return false;
    }
    if (c == '"' || c == '\'') {
      const auto after = past_quotation(found_, p_, indent_, true);
      if (!after) return false;
      p_ = *after;
      state_ = State::closed;
      return true;
    }
    text_from_ = p_;
    state_ = State::text;
    if (shorthand_sign(c) || c == '|' || c == '>') {
      report_shorthand(found_, p_);
      found_.replace(p_, 1, '_');
    } else if (c == '?') {
      question_mark();
    } else if (begins_item(line, p_.column)) {
      found_.report("stray-dash", p_, 1, "A dash begins an item only on a line of its own, not inside brackets.",
                    "part the items by commas");
      found_.replace(p_, 1, '_');
    }
    ++p_.column;
    return true;
  }

  Findings& found_;
  const SourceLines& lines_;
  int indent_;
  std::vector<Bracket> open_;
  State state_ = State::fresh;
  Place p_, text_from_;
};

}  // namespace

std::optional<Place> past_brackets(Findings& found, Place from, int indent) { return BracketLook(found, indent).past(from); }

}  // namespace gownsheaf
