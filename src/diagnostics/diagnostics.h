// What was found wrong or doubtful: data, not text. One run collects everything; messages are sorted by file, position
// and code, and never repeated.
#pragma once
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics/file_name.h"

namespace gownsheaf {

// A place in a text file. Lines and columns count from 1; columns and length in characters (code points), not bytes.
// line 0 = no place (a figure computed from nothing written).
struct SourceSpan {
  FileName file;
  int line = 0, column = 0, length = 0;
  friend auto operator<=>(const SourceSpan&, const SourceSpan&) = default;
};

enum class Severity { error, hold, warning, note };
std::string_view word_for(Severity severity);  // "error", "hold", "warning", "note"

struct Diagnostic {
  std::string code;  // "unknown-key"; every code has its entry in docs/diagnostics.md
  Severity severity = Severity::error;
  SourceSpan at;                 // the narrowest place
  std::vector<SourceSpan> also;  // further places ("the first `waist` is here")
  std::string sentence;          // what was seen, then the rule; one plain sentence
  std::string hint;              // what to type; may be ""
  std::string item;              // name of the item concerned ("slate wool", "sides"): what `accept … at` names
  std::string section;           // "cloths", "pleats", "pieces", "rounds" … or ""
  std::string sheet;             // sheet of the packet where it is shown; "" = at a glance only
  std::string step;              // step id the hold gates ("cut-breadths@slate wool"), or ""
  std::string accepted_because;  // set by `accept`; then it is a recorded decision, not an open hold
  bool is_private = false;       // speaks of body measures, prices, people: left out of `group`
};

class Diagnostics {
 public:
  void add(Diagnostic d);
  void error(std::string code, SourceSpan at, std::string sentence, std::string hint = "");
  bool has_errors() const;
  // Sorted by file, line, column, code; exact repeats removed.
  std::vector<Diagnostic> sorted() const;
  const std::vector<Diagnostic>& in_order_found() const { return all_; }
  std::vector<Diagnostic>& all() { return all_; }

 private:
  std::vector<Diagnostic> all_;
};

// A file's lines, so that a message can show the one it is about.
struct SourceText {
  std::string file;
  std::vector<std::string> lines;
};

// file:line:column: error [code]: sentence / the line / caret / hint. `sources` may lack the file; the line is then left out.
std::string render(const Diagnostic& d, const std::vector<SourceText>& sources);
// Nearest of the choices within a spelling distance worth offering, or "".
std::string did_you_mean(std::string_view seen, const std::vector<std::string>& choices);

}  // namespace gownsheaf
