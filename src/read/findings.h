// Inside the room: where the first look puts what it finds, and the copy of the text that it mends so that reading can
// go on. A mend never moves a character: places in the mended text are places in the file.
#pragma once
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "read/source_lines.h"

namespace gownsheaf {

class Findings {
 public:
  Findings(const SourceLines& source, Diagnostics& diag, const std::vector<std::string>& known_keys)
      : lines(source), keys(known_keys), mended_(source.text()), diag_(diag) {}

  void report(const std::string& code, Place at, std::size_t bytes, std::string sentence, std::string hint,
              std::optional<Place> also = {});
  void replace(Place at, std::size_t bytes, char with) { mended_.replace(lines.offset(at), bytes, bytes, with); }
  void add_colon_after(std::size_t line) { colons_.insert(line); }
  void end_before(std::size_t line) { end_ = line; }
  bool enough() const { return count_ >= 50; }  // a file this wrong is best mended piecemeal
  std::optional<std::size_t> first_line() const { return first_; }
  std::string mended() const;

  const SourceLines& lines;
  const std::vector<std::string>& keys;

 private:
  std::string mended_;
  Diagnostics& diag_;
  std::set<std::size_t> colons_;
  std::optional<std::size_t> end_, first_;
  int count_ = 0;
};

// YAML shorthand at this place: anchors, aliases, tags and reserved signs. Reported, and mended to plain text.
bool shorthand_sign(char c);
void report_shorthand(Findings& found, Place at);

// Where a quotation begun at `from` ends (the place after its closing mark); nothing when it was reported. `indent`:
// what lies in this many columns or fewer cannot belong to it; -1 for none.
std::optional<Place> past_quotation(Findings& found, Place from, int indent, bool in_brackets);
// The same for [ ] and { }.
std::optional<Place> past_brackets(Findings& found, Place from, int indent);
// Closing mark of a quotation within its line, or npos.
std::size_t closing_mark(std::string_view line, std::size_t opening);

struct WrittenKey {
  std::string_view word;
  std::size_t colon;
};
// The key of "key: value" or "key:" that begins here, when the colon stands on this line.
std::optional<WrittenKey> key_at(std::string_view line, std::size_t from);
// First byte from here on that is no blank; the line's size when only blanks or a remark follow.
std::size_t next_text(std::string_view line, std::size_t from);
bool begins_item(std::string_view line, std::size_t at);  // "- " or "-" at the end
bool is_document_mark(std::string_view line);             // "---" or "..."

// The mistakes that the maker of a project file makes most, each reported with its place, whatever else is wrong.
void first_look(Findings& found);

}  // namespace gownsheaf
