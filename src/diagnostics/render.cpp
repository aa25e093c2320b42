// A message as a terminal shows it:
//   dress.yaml:34:54: error [cut-or-finished]: is `width` on bodice front cut or finished?
//         - { piece: bodice front, make: pair, from: [wool], width: 10 1/2 in }
//                                                            ^^^^^
//       hint: stitch line to stitch line is `finished width`; where the scissors go is `cut width`
// The line keeps its own indentation after the four spaces of the message, so a tab in it is repeated under it.
#include <algorithm>
#include <charconv>

#include "diagnostics/diagnostics.h"
#include "diagnostics/shown.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

constexpr const char* kIndent = "    ";
constexpr std::size_t kWidest = 160;  // characters of one line that are shown; longer ones are cut around the place

std::string number(int n) {
  char room[16];
  return std::string(room, std::to_chars(room, room + sizeof room, n).ptr);
}

std::string place(const SourceSpan& at) {
  std::string out = shown::safe(at.file.text());
  if (at.line > 0) out += (out.empty() ? "line " : ":") + number(at.line);
  if (at.line > 0 && at.column > 0) out += ":" + number(at.column);
  return out;
}

const std::string* line_at(const SourceSpan& at, const std::vector<SourceText>& sources) {
  if (at.line <= 0) return nullptr;
  const auto source = std::find_if(sources.begin(), sources.end(), [&](const SourceText& s) { return s.file == at.file.text(); });
  if (source == sources.end() || static_cast<std::size_t>(at.line) > source->lines.size()) return nullptr;
  return &source->lines[static_cast<std::size_t>(at.line) - 1];
}

// The line and, below it, one caret for each character marked.
std::string line_and_carets(const SourceSpan& at, const std::string& line) {
  const std::vector<char32_t> chars = decode_utf8(line);
  const std::size_t marked = at.column > 0 ? static_cast<std::size_t>(at.column) - 1 : 0;
  std::size_t from = 0, to = chars.size();
  while (to > 0 && (chars[to - 1] == U'\r' || chars[to - 1] == U'\n')) --to;
  bool cut_before = false, cut_after = false;
  if (to > kWidest) {
    const std::size_t wish = marked > kWidest / 2 ? marked - kWidest / 2 : 0;
    from = std::min(wish, to - kWidest);
    cut_before = from > 0;
    cut_after = from + kWidest < to;
    to = from + kWidest;
  }
  std::string shown_line = kIndent, below = kIndent;
  if (cut_before) {
    shown_line += "…";
    below += " ";
  }
  for (std::size_t i = from; i < to; ++i) append_utf8(shown_line, shown::as_shown(chars[i]));
  if (cut_after) shown_line += "…";
  if (at.column <= 0) return shown_line + "\n";

  for (std::size_t i = from; i < std::max(marked, from); ++i) {
    if (i >= to) break;  // just past the end: where something is missing
    if (chars[i] == U'\t') below += "\t";
    else below.append(static_cast<std::size_t>(columns_of(shown::as_shown(chars[i]))), ' ');
  }
  const std::size_t length = at.length > 0 ? static_cast<std::size_t>(at.length) : 1;
  std::size_t owed = 0;  // the second column of a wide character, written only if another caret follows
  std::size_t carets = 0;
  for (std::size_t i = marked; i < to && i - marked < length; ++i) {
    const int wide = columns_of(shown::as_shown(chars[i]));
    if (wide == 0) continue;
    below.append(owed, ' ');
    below += '^';
    owed = static_cast<std::size_t>(wide) - 1;
    ++carets;
  }
  if (carets == 0) below += '^';
  return shown_line + "\n" + below + "\n";
}

}  // namespace

std::string render(const Diagnostic& d, const std::vector<SourceText>& sources) {
  const std::string where = place(d.at);
  std::string out = where.empty() ? "" : where + ": ";
  out += std::string(word_for(d.severity)) + " [" + shown::safe(d.code) + "]: " + shown::safe(d.sentence) + "\n";
  if (const std::string* line = line_at(d.at, sources)) out += line_and_carets(d.at, *line);
  if (!d.hint.empty()) out += kIndent + std::string("hint: ") + shown::safe(d.hint) + "\n";
  for (const SourceSpan& also : d.also) {
    SourceSpan line_only = also;
    line_only.column = 0;
    out += kIndent + std::string("also: ") + place(line_only) + "\n";
  }
  if (!d.accepted_because.empty()) out += kIndent + std::string("decided: ") + shown::safe(d.accepted_because) + "\n";
  return out;
}

}  // namespace gownsheaf
