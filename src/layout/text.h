// Rich text as sheets write it, before any font is chosen: words, lengths with set fractions, tags, tick boxes.
#pragma once
#include <string>
#include <vector>

#include "fonts/font_set.h"
#include "units/print.h"

namespace gownsheaf {

// Sizes of one set in points; two scales: pin-up (60 cm) and binder (40 cm). docs/pages.md gives the table.
struct TypeScale {
  std::string name;                 // "pin-up", "binder"
  int step;                         // base line step: 20 or 14
  int title, title_step;            // 28/40, 20/28
  int answer, answer_step;          // 18/25, 12/16
  int heading, heading_step;        // 18/20, 13/14
  int text;                         // 14, 10
  int length;                       // 18, 12
  int table_head, table_head_step;  // 14/18, 10/12
  int row_height;                   // 25, 19
  double smallest;                  // 12, 8.5
  int step_number;                  // 20, 13
  double tick_box, tick_weight;     // 19 at 1.4, 11 at 1.0
  int inline_box;                   // 15, 9
  int text_width;                   // 400, 286: a block of running text is no wider
  double row_rule;                  // 0.7, 0.5
};
const TypeScale& pin_up_scale();
const TypeScale& binder_scale();

enum class Tag { hold, warning, short_of, guessed, late, decided };
std::string_view word_for(Tag t);  // "HOLD", "WARNING", …

struct Inline {
  enum class Kind { words, length, tag, tick_box, line_break };
  // What size the inline is set in, relative to where it stands.
  enum class Size { as_text, measured, verdict, small };
  Kind kind = Kind::words;
  Face face = Face::regular;
  Size size = Size::as_text;
  std::string words;  // words; NO-BREAK SPACE keeps together
  LengthText length;  // kind length: whole, set fraction, unit (unit may be "")
  Tag tag = Tag::hold;
  bool changed = false;  // of a figure that is another since the packet before: its block gets a bar in the margin
};
using Text = std::vector<Inline>;

// Builders, so that sheets read well.
Text words(std::string s);  // Regular
Text bold(std::string s);
Text condensed(std::string s);
Text measured(const LengthText& length);  // length size, bold: somebody will measure it; never broken over a line
Text checking(const LengthText& length);  // text size, regular: only checks another figure
Text tag(Tag t);
Text tick_box();
Text operator+(Text a, const Text& b);
bool any_changed(const Text& text);
std::string plain(const Text& text);  // for bookmarks, tests, listings

}  // namespace gownsheaf
