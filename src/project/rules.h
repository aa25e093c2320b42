// Where published sources disagree: the maker's choice, or the default with its label. Every rule is always known after
// check. Sources: docs/sources.md#where-sources-disagree.
#pragma once
#include <string_view>

#include "project/given.h"
#include "units/length.h"

namespace gownsheaf {

enum class YardageBy { lay, width_chart };            // the lay of the pieces, or the envelope's length turned by the chart
std::string_view word_for(YardageBy r);
enum class StripsLose { both_seams, one_seam };       // at a join of two widths: the seam of both, or of one of them
std::string_view word_for(StripsLose r);
enum class PlaidExtra { by_the_lay, one_repeat_a_piece };
std::string_view word_for(PlaidExtra r);
enum class PleatSeams { inner_fold, as_they_fall };
std::string_view word_for(PleatSeams r);
enum class ButtonholeIs { across_and_thickness, eighth_more, more_for_a_shank };
std::string_view word_for(ButtonholeIs r);
enum class WaistIs { belt_line, midway };
std::string_view word_for(WaistIs r);

struct Rules {
  Given<YardageBy> yardage_by = Given<YardageBy>::standing(YardageBy::lay, 'x', "the pieces are laid out");
  Given<StripsLose> strips_lose = Given<StripsLose>::standing(StripsLose::both_seams, 'x', "a seam takes from both edges");
  Given<PlaidExtra> plaid_extra = Given<PlaidExtra>::standing(PlaidExtra::by_the_lay, 'x', "repeats are counted in the lay");
  Given<PleatSeams> pleat_seams = Given<PleatSeams>::standing(PleatSeams::inner_fold, 'a', "seams lie under the pleat");
  Given<Length> hook_set_back = Given<Length>::standing(Length::sixty_fourths(16), 'a', "the bill 1/4 in behind the edge");
  Given<ButtonholeIs> buttonhole_is =
      Given<ButtonholeIs>::standing(ButtonholeIs::across_and_thickness, 'a', "across and thickness of the button");
  Given<WaistIs> waist_is = Given<WaistIs>::standing(WaistIs::belt_line, 'a', "where a tied belt settles");
};

}  // namespace gownsheaf
