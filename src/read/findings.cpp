#include "read/findings.h"

#include <algorithm>

namespace gownsheaf {

void Findings::report(const std::string& code, Place at, std::size_t bytes, std::string sentence, std::string hint,
                      std::optional<Place> also) {
  first_ = first_ ? std::min(*first_, at.line) : at.line;
  ++count_;
  Diagnostic d;
  d.code = code;
  d.at = lines.span(at, bytes);
  if (also) d.also.push_back(lines.span(*also, 1));
  d.sentence = std::move(sentence);
  d.hint = std::move(hint);
  diag_.add(std::move(d));
}

std::string Findings::mended() const {
  std::string text;
  const std::size_t end = end_.value_or(lines.count());
  for (std::size_t i = 0; i < end; ++i) {
    std::string_view line = std::string_view(mended_).substr(lines.offset({i, 0}), lines.line(i).size());
    if (colons_.contains(i)) {
      std::size_t keep = line.size();  // a remark would hide the colon, so it goes
      for (std::size_t k = 1; k < line.size(); ++k)
        if (line[k] == '#' && is_blank(line[k - 1])) {
          keep = k;
          break;
        }
      while (keep > 0 && is_blank(line[keep - 1])) --keep;
      text.append(line.substr(0, keep)).append(":\n");
    } else {
      text.append(line).append("\n");
    }
  }
  return text;
}

bool shorthand_sign(char c) { return c == '&' || c == '*' || c == '!' || c == '%' || c == '@' || c == '`'; }

void report_shorthand(Findings& found, Place at) {
  const std::string_view line = found.lines.line(at.line);
  std::size_t end = at.column + 1;
  while (end < line.size() && !is_blank(line[end]) && std::string_view(",[]{}:").find(line[end]) == line.npos) ++end;
  const std::string sign(1, line[at.column]);
  const std::string_view word = line.substr(at.column, end - at.column);
  const bool tick = line[at.column] == '`';
  found.report("shorthand", at, end - at.column,
               (tick ? "The backtick here" : named(word)) + " is YAML shorthand, which is not read here.",
               word == "<<" ? "write the entries out"
               : tick       ? "text that begins with a backtick needs quotes"
                            : "write it out; text that begins with `" + sign + "` needs quotes");
}

std::size_t closing_mark(std::string_view line, std::size_t opening) {
  const char mark = line[opening];
  for (std::size_t i = opening + 1; i < line.size(); ++i) {
    if (mark == '"' && line[i] == '\\') {
      ++i;
    } else if (line[i] == mark) {
      if (mark == '"' || i + 1 >= line.size() || line[i + 1] != mark) return i;
      ++i;  // '' inside '…' is an apostrophe
    }
  }
  return std::string_view::npos;
}

std::size_t next_text(std::string_view line, std::size_t from) {
  std::size_t i = from;
  while (i < line.size() && is_blank(line[i])) ++i;
  if (i < line.size() && line[i] == '#' && (i == 0 || is_blank(line[i - 1]))) return line.size();
  return i;
}

std::optional<WrittenKey> key_at(std::string_view line, std::size_t from) {
  const auto ends_key = [&](std::size_t i) {
    return i < line.size() && line[i] == ':' && (i + 1 == line.size() || is_blank(line[i + 1]));
  };
  if (from >= line.size() || line[from] == '[' || line[from] == '{') return std::nullopt;
  if (line[from] == '"' || line[from] == '\'') {
    const std::size_t close = closing_mark(line, from);
    if (close == std::string_view::npos) return std::nullopt;
    std::size_t colon = close + 1;
    while (colon < line.size() && is_blank(line[colon])) ++colon;
    if (!ends_key(colon)) return std::nullopt;
    return WrittenKey{line.substr(from, close + 1 - from), colon};
  }
  for (std::size_t i = from; i < line.size(); ++i) {
    if (line[i] == '#' && i > from && is_blank(line[i - 1])) return std::nullopt;
    if (!ends_key(i)) continue;
    std::size_t end = i;
    while (end > from && is_blank(line[end - 1])) --end;
    return WrittenKey{line.substr(from, end - from), i};
  }
  return std::nullopt;
}

bool begins_item(std::string_view line, std::size_t at) {
  return at < line.size() && line[at] == '-' && (at + 1 == line.size() || is_blank(line[at + 1]));
}

bool is_document_mark(std::string_view line) {
  return (line.starts_with("---") || line.starts_with("...")) && (line.size() == 3 || is_blank(line[3]));
}

}  // namespace gownsheaf
