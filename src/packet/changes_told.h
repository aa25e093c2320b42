// Changes of figures put into groups and counted, for the sheet "what changed".
#pragma once
#include <string>
#include <vector>

#include "figures/changes.h"
#include "layout/text.h"
#include "packet/figure_text.h"

namespace gownsheaf {

// One line of the sheet. A long series that stands on a sheet of its own (marks, places of a lay) is one line.
struct ChangeLine {
  std::string item;     // "bodice front, slate wool"
  std::string what;     // "cut width"
  LengthText now, was;  // a number, or "new" and "no more"
  std::string unit;     // of both; "" when each has its own
};
// Lines of one action in the order of the figures, those of one item together. Private ones only where `private_shown`.
std::vector<ChangeLine> change_lines(const Changes& changes, Action action, ShownIn shown_in, bool private_shown);

// "2 pieces to cut again, 18 marks to move, 1/4 yd more slate wool; all else stands."
Text changes_answer(const Changes& changes, ShownIn shown_in, bool private_shown);

}  // namespace gownsheaf
