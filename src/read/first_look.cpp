// The classic slips, found line by line before the parser, which stops at its first: tabs, quotation marks left open,
// colons missing or without their space, list items and keys set in by the wrong number of spaces.
// It follows the blocks by their columns, and leaves alone what YAML allows: text that runs on over deeper lines, texts
// after | and >, brackets and quotations over several lines, remarks.
#include <algorithm>
#include <vector>

#include "read/findings.h"
#include "read/missing_colon.h"

namespace gownsheaf {
namespace {

struct Block {
  enum class Value { empty, text, closed };  // of its last key or item: none so far, plain text, or ended by its mark
  std::size_t column;
  bool is_list;
  Value value = Value::empty;
  std::string_view word = {};          // the last key
  std::size_t line = 0;                // of the last key or item
  std::optional<Place> own_line = {};  // where a text began that stands below its key
};

class FirstLook {
 public:
  explicit FirstLook(Findings& found) : found_(found), lines_(found.lines) {}

  void run() {
    for (line_ = 0; line_ < lines_.count() && !found_.enough(); ++line_)
      if (!look_at_line()) return;
  }

 private:
  using Value = Block::Value;

  std::string_view text() const { return lines_.line(line_); }
  static std::string spaces(std::size_t n) { return std::to_string(n) + (n == 1 ? " space" : " spaces"); }

  // False at the end of the project.
  bool look_at_line() {
    const std::string_view line = text();
    const std::size_t first = line.find_first_not_of(' ');
    if (first == line.npos) return true;
    if (text_block_) {
      if (first > *text_block_) return true;
      text_block_.reset();
    }
    if (next_text(line, 0) == line.size()) {  // the parser, unlike YAML, stumbles over tabs here
      const std::size_t blanks = std::min(line.find_first_not_of(" \t"), line.size());
      found_.replace({line_, 0}, blanks, ' ');
      return true;
    }
    if (skip_deeper_) {
      if (first > *skip_deeper_) {
        found_.replace({line_, 0}, line.size(), ' ');
        return true;
      }
      skip_deeper_.reset();
    }
    if (is_document_mark(line)) return document_mark(line);
    if (line[0] == '%') {
      report_shorthand(found_, {line_, 0});
      found_.replace({line_, 0}, line.size(), ' ');
      return true;
    }
    const std::size_t begin = past_odd_indent(line, first);
    content_ = true;
    if (begin < line.size()) statement(begin);
    return true;
  }

  bool document_mark(std::string_view line) {
    if (line[0] == '-' && !content_ && !marked_ && next_text(line, 3) == line.size()) {
      marked_ = true;
      return true;
    }
    found_.end_before(line_);
    if (line[0] == '-') {
      found_.report("second-project", {line_, 0}, 3, "`---` on line " + std::to_string(line_ + 1) + " begins a second project.",
                    "one file each: move what follows into a file of its own");
      return false;
    }
    for (std::size_t i = line_ + 1; i < lines_.count(); ++i) {
      const std::size_t at = next_text(lines_.line(i), 0);
      if (at == lines_.line(i).size()) continue;
      found_.report("second-project", {i, at}, lines_.line(i).size() - at,
                    "`...` on line " + std::to_string(line_ + 1) + " ends the project, and this stands after it.",
                    "delete the line with the three points");
      break;
    }
    return false;
  }

  // Tabs and other wide blanks at the start of a line: where they end. Their width is anyone's guess, so columns mean
  // nothing again until a line begins at the margin.
  std::size_t past_odd_indent(std::string_view line, std::size_t first) {
    if (first == 0 && !columns_known_ && line[0] != '\t' && !line.starts_with("\xC2\xA0")) {
      columns_known_ = true;
      open_.clear();
    }
    std::size_t end = first;
    if (line[first] == '\t') {
      while (end < line.size() && is_blank(line[end])) ++end;
      found_.report("tab-indent", {line_, first}, end - first, "Line " + std::to_string(line_ + 1) + " is indented with a tab.",
                    "use spaces, two for each step in");
    } else if (line.substr(first).starts_with("\xC2\xA0")) {
      while (end < line.size() && (is_blank(line[end]) || line.substr(end).starts_with("\xC2\xA0")))
        end += is_blank(line[end]) ? 1 : 2;
      found_.report("stray-indent", {line_, first}, end - first,
                    "Line " + std::to_string(line_ + 1) + " is set in by hard spaces, as web pages have them.",
                    "type ordinary spaces");
    } else {
      return first;
    }
    found_.replace({line_, first}, end - first, ' ');
    columns_known_ = false;
    return end;
  }

  void statement(std::size_t at) {
    const std::string_view line = text();
    if (columns_known_ && !open_.empty() && at > open_.back().column && open_.back().value != Value::empty && !text_goes_on(at))
      return;
    bool after_dash = false;
    while (begins_item(line, at)) {
      if (columns_known_ && !open_item(at, after_dash)) return;
      after_dash = true;
      at = next_text(line, at + 1);
      if (at == line.size()) return;
    }
    if (line[at] == '?' && (at + 1 == line.size() || is_blank(line[at + 1]))) {
      report_shorthand(found_, {line_, at});
      found_.replace({line_, at}, 1, '_');
      skip_deeper_ = at;
      return;
    }
    if (const auto key = key_at(line, at)) {
      const bool placed = !columns_known_ || open_key(at, after_dash, key->word);
      look_at_key(at, *key);
      if (placed) value(key->colon + 1, true);
    } else if (!columns_known_ || after_dash) {
      value(at, false);
    } else {
      lone_text(at);
    }
  }

  void look_at_key(std::size_t at, const WrittenKey& key) {
    const bool merge = key.word == "<<";
    if (merge || shorthand_sign(key.word.front())) {
      report_shorthand(found_, {line_, at});
      found_.replace({line_, at}, merge ? 2 : 1, '_');
    } else if (key.word.size() > 1000) {  // the parser gives up at 1024 and says something else
      found_.report("too-large", {line_, at}, key.word.size(), "This key is longer than any name can be.",
                    "is a quotation mark or a line end missing?");
    }
  }

  // A line set in further than a key or item that has its value already. True when it is to be read as a statement.
  bool text_goes_on(std::size_t at) {
    Block& block = open_.back();
    const auto key = key_at(text(), at);
    if (block.value == Value::text && !key) return false;  // plain text may run on
    if (key && block.own_line && block.own_line->column == at) {
      // Text at the very column where keys follow: keys too, whose colons were forgotten.
      for (std::size_t i = block.own_line->line; i < line_; ++i) {
        const std::size_t from = next_text(lines_.line(i), 0);
        if (from < lines_.line(i).size()) report_missing_colon(found_, {i, from});
      }
      block.own_line.reset();
      open_.push_back({.column = at, .is_list = false});
      return true;
    }
    const std::size_t length = key ? key->word.size() : text().size() - at;
    const std::string above = block.word.empty() ? "the item above" : named(block.word) + " above";
    found_.report("stray-indent", {line_, at}, length,
                  named(text().substr(at, length)) + " on line " + std::to_string(line_ + 1) + " is set in by " + spaces(at) +
                      ", as if it belonged to " + above + ", which has its value already.",
                  "line it up with " + (block.word.empty() ? "the dash" : named(block.word)) +
                      (block.value == Value::text ? "; a longer text that holds a colon needs quotes" : ""),
                  Place{block.line, block.column});
    skip_deeper_ = block.column;
    return false;
  }

  // Closes the blocks that lie deeper. The column of the last one closed, when none is left at this column.
  std::optional<std::size_t> close_deeper(std::size_t at) {
    std::optional<std::size_t> last;
    while (!open_.empty() && open_.back().column > at) {
      last = open_.back().column;
      closed_ = open_.back();
      open_.pop_back();
    }
    return last;
  }

  // The line begins between the columns of two blocks: reported, and taken for one of the deeper.
  void between_columns(std::size_t at, std::size_t length, std::size_t wanted) {
    const std::string above = closed_.word.empty() ? "the item above" : named(closed_.word) + " above";
    found_.report("stray-indent", {line_, at}, length,
                  named(text().substr(at, length)) + " on line " + std::to_string(line_ + 1) + " is set in by " + spaces(at) +
                      "; " + above + " by " + std::to_string(wanted) + ".",
                  "line it up with " + (closed_.word.empty() ? "the item above" : named(closed_.word)),
                  Place{closed_.line, closed_.column});
    open_.push_back({.column = at, .is_list = closed_.is_list, .word = closed_.word, .line = line_});
  }

  bool open_item(std::size_t at, bool after_dash) {
    if (after_dash || open_.empty() || (open_.back().value == Value::empty && at > open_.back().column)) {
      open_.push_back({.column = at, .is_list = true, .line = line_});
      return true;
    }
    const auto closed = close_deeper(at);
    if (open_.empty() || open_.back().column < at) {
      if (closed) between_columns(at, 1, *closed);
      open_.back().is_list = true;
    } else if (!open_.back().is_list) {
      if (open_.back().value == Value::empty && !closed) {
        open_.push_back({.column = at, .is_list = true, .line = line_});
        return true;
      }
      found_.report("stray-dash", {line_, at}, 1,
                    "This dash begins a list item, but " + named(open_.back().word) + " above has its value already.",
                    "set the dash in under the key that the list belongs to");
      skip_deeper_ = at;
      return false;
    }
    open_.back().value = Value::empty;
    open_.back().line = line_;
    return true;
  }

  bool open_key(std::size_t at, bool after_dash, std::string_view word) {
    if (after_dash || open_.empty() || (open_.back().value == Value::empty && at > open_.back().column)) {
      if (!open_.empty()) open_.back().value = Value::closed;
      open_.push_back({.column = at, .is_list = false, .word = word, .line = line_});
      return true;
    }
    const auto closed = close_deeper(at);
    if (open_.empty() || open_.back().column < at) {
      if (closed) between_columns(at, word.size(), *closed);
      open_.back().is_list = false;
    } else if (!end_list_at(at)) {
      found_.report("stray-dash", {line_, at}, word.size(), named(word) + " stands among list items without a dash.",
                    "put `- ` before it, or set it in with the item it belongs to");
      return false;
    }
    Block& block = open_.back();
    block.value = Value::empty;
    block.own_line.reset();
    block.word = word;
    block.line = line_;
    return true;
  }

  // At this column a block of keys is open, or one whose last value was a list at the same column, which ends here.
  bool end_list_at(std::size_t at) {
    if (!open_.back().is_list) return true;
    if (open_.size() < 2 || open_[open_.size() - 2].is_list || open_[open_.size() - 2].column != at) return false;
    open_.pop_back();
    return true;
  }

  // A line that is neither key nor item.
  void lone_text(std::size_t at) {
    const std::string_view line = text();
    const bool bracket = line[at] == '{' || line[at] == '[';
    if (open_.empty() && bracket) return value(at, false);
    if (!open_.empty() && open_.back().value == Value::empty && at > open_.back().column) {
      value(at, false);
      Block& block = open_.back();
      if (block.value != Value::text) return;
      block.own_line = Place{line_, at};
      if (word_without_space(line, at, true)) report_missing_colon(found_, {line_, at});
      return;
    }
    const auto closed = close_deeper(at);
    if (!open_.empty() && open_.back().column == at && line[at] == '-' && open_.back().is_list) {
      found_.report("no-space", {line_, at}, 1, "This dash has no space after it.", "`- ` begins a list item");
      found_.replace({line_, at}, line.size() - at, ' ');
      return;
    }
    if (line[at] == '}' || line[at] == ']') {
      found_.report("bracket-extra", {line_, at}, 1, "`" + std::string(1, line[at]) + "` closes nothing here.",
                    "delete it, or look for the bracket that should open");
      found_.replace({line_, at}, line.size() - at, ' ');
      return;
    }
    if (closed && (open_.empty() || open_.back().column < at)) open_.push_back(closed_);
    report_missing_colon(found_, {line_, at});
    if (open_.empty() || open_.back().column < at) open_.push_back({.column = at, .is_list = false, .line = line_});
    end_list_at(at);
    open_.back().value = Value::empty;
    open_.back().word = line.substr(at);
    open_.back().line = line_;
  }

  // What follows a key's colon, a dash, or stands on a line of its own below a key.
  void value(std::size_t from, bool after_key) {
    const std::string_view line = text();
    const std::size_t at = next_text(line, from);
    if (at == line.size()) return;
    const char c = line[at];
    const bool known = columns_known_ && !open_.empty();
    const int indent = known ? static_cast<int>(open_.back().column) : -1;
    if (known) open_.back().value = Value::closed;
    if (c == '"' || c == '\'' || c == '{' || c == '[') return enclosed({line_, at}, indent);
    if (c == '|' || c == '>') return text_block(at, indent);
    if (c == '&' || c == '!') {
      report_shorthand(found_, {line_, at});
      std::size_t end = at;
      while (end < line.size() && !is_blank(line[end])) ++end;
      found_.replace({line_, at}, end - at, ' ');
      if (known) open_.back().value = Value::empty;
      return value(end, after_key);
    }
    if (c == ']' || c == '}') {
      found_.report("bracket-extra", {line_, at}, 1, "`" + std::string(1, c) + "` closes nothing here.",
                    "delete it, or put the text in quotes");
      found_.replace({line_, at}, 1, '_');
    } else if (shorthand_sign(c)) {
      report_shorthand(found_, {line_, at});
      found_.replace({line_, at}, 1, '_');
    } else if (after_key && begins_item(line, at)) {
      found_.report("stray-dash", {line_, at}, 1, "A dash after a key does not begin a list.",
                    "put the items on lines of their own, or write [one, two]");
      found_.replace({line_, at}, 1, '_');
    }
    if (known) open_.back().value = Value::text;
    if (!after_key) return;
    if (const auto second = key_at(line, at)) {
      const std::string word(known ? open_.back().word : std::string_view{});
      found_.report("second-colon", {line_, second->colon}, 1,
                    word.empty() ? "This text holds another colon." : "The text after `" + word + ":` holds another colon.",
                    "put the whole text in quotes");
      found_.replace({line_, second->colon}, 1, ';');
    }
  }

  void enclosed(Place at, int indent) {
    const bool brackets = text()[at.column] == '{' || text()[at.column] == '[';
    const auto after = brackets ? past_brackets(found_, at, indent) : past_quotation(found_, at, indent, false);
    if (!after) {
      found_.replace(at, text().size() - at.column, ' ');
      skip_deeper_ = indent < 0 ? 0 : static_cast<std::size_t>(indent);
      return;
    }
    line_ = after->line;
    const std::size_t rest = next_text(text(), after->column);
    if (rest == text().size()) return;
    const char c = text()[rest];
    if (c == '}' || c == ']') {
      found_.report("bracket-extra", {line_, rest}, 1, "`" + std::string(1, c) + "` closes nothing here.",
                    "delete it, or look for the bracket that should open");
    } else {
      found_.report("bracket-early", {line_, rest}, text().size() - rest, "Text stands after the closing bracket.",
                    "put it inside, or on a line of its own");
    }
  }

  void text_block(std::size_t at, int indent) {
    const std::string_view line = text();
    std::size_t end = at + 1;
    while (end < line.size() && std::string_view("+-123456789").find(line[end]) != line.npos) ++end;
    if (next_text(line, end) != line.size()) {
      report_shorthand(found_, {line_, at});
      found_.replace({line_, at}, 1, '_');
      return;
    }
    text_block_ = indent < 0 ? next_text(line, 0) : static_cast<std::size_t>(indent);
  }

  Findings& found_;
  const SourceLines& lines_;
  std::size_t line_ = 0;
  std::vector<Block> open_;
  Block closed_{.column = 0, .is_list = false};  // the last block closed
  bool columns_known_ = true, content_ = false, marked_ = false;
  std::optional<std::size_t> text_block_;   // inside | or >: deeper lines are text
  std::optional<std::size_t> skip_deeper_;  // past a fault: deeper lines cannot be judged
};

}  // namespace

void first_look(Findings& found) { FirstLook(found).run(); }

}  // namespace gownsheaf
