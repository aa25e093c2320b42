#include "read/source_lines.h"

#include <algorithm>

#include "files/files.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

// What no maker types on purpose: control characters, a byte order mark in the middle, separators that some programs
// take for the end of a line, and the two numbers that are no characters.
bool is_control(char32_t c) {
  return (c < 0x20 && c != '\n' && c != '\t') || (c >= 0x7F && c < 0xA0) || c == 0x2028 || c == 0x2029 || c == 0xFEFF ||
         c == 0xFFFE || c == 0xFFFF;
}

std::string hex(char32_t c) {
  std::string digits;
  for (int shift = 12; shift >= 0; shift -= 4) digits += "0123456789ABCDEF"[(c >> shift) & 15u];
  return "U+" + digits;
}

bool looks_like_utf16(std::string_view bytes) {
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) return true;
  // Without a mark: every second byte of ordinary text is zero.
  return bytes.size() >= 4 && (bytes[0] == 0) != (bytes[1] == 0) && (bytes[0] == 0) == (bytes[2] == 0) &&
         (bytes[1] == 0) == (bytes[3] == 0);
}

}  // namespace

SourceLines::SourceLines(std::string text, std::string file) : text_(std::move(text)), file_(std::move(file)) {
  starts_.push_back(0);
  std::size_t tails = 0;
  for (std::size_t i = 0; i < text_.size(); ++i) {
    if (i % 64 == 0) tails_.push_back(tails);
    if (!begins_character(text_[i])) ++tails;
    if (text_[i] == '\n' && i + 1 < text_.size()) starts_.push_back(i + 1);
  }
  tails_.push_back(tails);
}

std::string_view SourceLines::line(std::size_t i) const {
  std::size_t end = i + 1 < starts_.size() ? starts_[i + 1] : text_.size();
  if (end > starts_[i] && text_[end - 1] == '\n') --end;
  return std::string_view(text_).substr(starts_[i], end - starts_[i]);
}

std::size_t SourceLines::tails_before(std::size_t at) const {
  std::size_t tails = tails_[at / 64];
  for (std::size_t i = at / 64 * 64; i < at; ++i) tails += begins_character(text_[i]) ? 0 : 1;
  return tails;
}

std::size_t SourceLines::characters(std::size_t from, std::size_t to) const {
  return to - from - (tails_before(to) - tails_before(from));
}

SourceSpan SourceLines::span(Place p, std::size_t bytes) const {
  p.line = std::min(p.line, starts_.size() - 1);
  const std::size_t start = starts_[p.line], size = line(p.line).size();
  const std::size_t from = start + std::min(p.column, size), to = start + std::min(p.column + bytes, size);
  return {file_, static_cast<int>(p.line) + 1, static_cast<int>(characters(start, from)) + 1,
          std::max(1, static_cast<int>(characters(from, to)))};
}

std::string with_plain_line_ends(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  if (bytes.find('\r') == bytes.npos) return std::string(bytes);
  std::string text;
  text.reserve(bytes.size());
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (bytes[i] != '\r') {
      text += bytes[i];
    } else if (i + 1 >= bytes.size() || bytes[i + 1] != '\n') {
      text += '\n';
    }
  }
  return text;
}

std::optional<SourceLines> clean_text(const std::string& bytes, const std::string& file, Diagnostics& diag) {
  const SourceSpan start{file, 1, 1, 1};
  if (bytes.size() > kLargestProjectFile) {
    diag.error("too-large", start, "The file is larger than 2 MiB, the most that is read.");
    return std::nullopt;
  }
  if (looks_like_utf16(bytes)) {
    diag.error("utf16", start, "The file is saved as UTF-16, two bytes a letter; UTF-8 is read.", "save the file as UTF-8");
    return std::nullopt;
  }
  SourceLines lines(with_plain_line_ends(bytes), file);
  int faults = 0;
  for (std::size_t i = 0; i < lines.count() && faults < 20; ++i) {
    const std::string_view line = lines.line(i);
    for (std::size_t at = 0; at < line.size();) {
      const std::size_t from = at;
      const char32_t c = next_character(line, at);
      const bool is_utf8 = c != kNoCharacter || at - from > 1;
      if (is_utf8 && !is_control(c)) continue;
      ++faults;
      if (!is_utf8) {
        diag.error("not-utf8", lines.span({i, from}, 1),
                   "Line " + std::to_string(i + 1) + " holds a letter saved in another encoding.", "save the file as UTF-8");
      } else {
        diag.error("control-character", lines.span({i, from}, at - from),
                   "Line " + std::to_string(i + 1) + " holds the control character " + hex(c) + ", which no one can see.",
                   "delete it; typing the line anew is surest");
      }
      break;  // one a line is enough to find it by
    }
  }
  if (faults > 0) return std::nullopt;
  return lines;
}

std::string named(std::string_view word) {
  std::size_t end = std::min<std::size_t>(word.size(), 60);
  while (end > 0 && end < word.size() && !begins_character(word[end])) --end;
  return "`" + std::string(word.substr(0, end)) + (end < word.size() ? "…`" : "`");
}

}  // namespace gownsheaf
