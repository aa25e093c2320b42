// Inside the room: a text that is known to be good UTF-8, its lines, and places in it counted in characters.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

struct Place {
  std::size_t line = 0, column = 0;
};  // both from 0, the column in bytes

class SourceLines {
 public:
  SourceLines(std::string text, std::string file);
  std::size_t count() const { return starts_.size(); }
  std::string_view line(std::size_t i) const;
  const std::string& text() const { return text_; }
  std::size_t offset(Place p) const { return starts_[p.line] + p.column; }
  SourceSpan span(Place p, std::size_t bytes) const;  // cut at the end of the line

 private:
  std::size_t characters(std::size_t from, std::size_t to) const;
  std::size_t tails_before(std::size_t at) const;
  std::string text_;
  FileName file_;
  std::vector<std::size_t> starts_;
  std::vector<std::size_t> tails_;  // bytes before each 64th that only continue a character
};

// BOM stripped, CRLF and lone CR made LF.
std::string with_plain_line_ends(std::string_view bytes);
// Refuses UTF-16, bad UTF-8 and control characters with messages, and then returns nothing.
std::optional<SourceLines> clean_text(const std::string& bytes, const std::string& file, Diagnostics& diag);

inline bool is_blank(char c) { return c == ' ' || c == '\t'; }
// The word in backticks, cut when it is long.
std::string named(std::string_view word);

}  // namespace gownsheaf
