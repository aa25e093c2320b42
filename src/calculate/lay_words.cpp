#include "calculate/lay_words.h"

#include <algorithm>

#include "calculate/lay_shelf.h"
#include "calculate/new_figure.h"

namespace gownsheaf {

std::string lay_in_words(const std::vector<Cut>& cuts, ShownIn in) {
  std::string words;
  for (const Cut& cut : cuts) {
    if (!cut.in_lay) continue;
    words += (words.empty() ? "" : ", ") + whole_number(cut.piece.copies) + " × " + worked(cut.takes, in);
    if (cut.repeat) words += " (" + worked(cut.piece.along, in) + " up to whole repeats of " + worked(*cut.repeat, in) + ")";
    if (!cut.piece.full_width) words += " by " + worked(cut.piece.across, in);
  }
  return words;
}

std::string bound_in_words(const std::vector<Cut>& cuts, Length usable, bool as_drawn, ShownIn in) {
  Area area;
  Length longest, stacked;
  for (const Cut& cut : cuts) {
    if (!cut.in_lay) continue;
    const Length across = cut.piece.full_width ? usable : cut.piece.across;
    const Length least_along = cut.may_turn ? std::min(cut.takes, across) : cut.takes;
    const Length least_across = cut.may_turn ? std::min(cut.takes, across) : across;
    const Area own = as_drawn ? area_of(cut, usable) : Area::of(cut.takes, across);
    area += own * cut.piece.copies;
    longest = std::max(longest, least_along);
    if (2 * least_across > usable) stacked += cut.piece.copies * least_along;
  }
  const std::string first_two = worked(area.over(usable, Rounding::up), in) + "; " + worked(longest, in);
  return as_drawn ? first_two : first_two + "; " + worked(stacked, in);
}

}  // namespace gownsheaf
