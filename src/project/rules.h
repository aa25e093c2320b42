// Where published sources disagree: the maker's choice, or the default with its label. Every rule is always known after
// check. Sources: docs/sources.md#where-sources-disagree.
#pragma once
#include <string_view>

#include "project/given.h"
#include "units/length.h"

namespace gownsheaf {

enum class YardageBy { lay, width_chart };  // the lay of the pieces, or the envelope's length turned by the chart
std::string_view word_for(YardageBy r);
enum class StripsLose { both_seams, one_seam };  // at a join of two widths: the seam of both, or of one of them
std::string_view word_for(StripsLose r);
enum class PlaidExtra { by_the_lay, one_repeat_a_piece };
std::string_view word_for(PlaidExtra r);
enum class PleatSeams { inner_fold, as_they_fall };
std::string_view word_for(PleatSeams r);
enum class ButtonholeIs { across_and_thickness, eighth_more, more_for_a_shank };
std::string_view word_for(ButtonholeIs r);
enum class BoneLengthIs { by_its_kind, casing_less, casing_and_more };  // half an inch less, or more to be turned in
std::string_view word_for(BoneLengthIs r);
enum class CorsetPressure { of_1910, of_2011 };  // of two published studies, where nothing else says how close it is laced
std::string_view word_for(CorsetPressure r);
enum class WaistIs { belt_line, midway };  // midway: between the lowest rib and the hip bone
std::string_view word_for(WaistIs r);

struct Rules {  // `because` is printed beside the rule: whose it is, and who says otherwise
  Given<YardageBy> yardage_by =
      Given<YardageBy>::standing(YardageBy::lay, 'x', "the pieces are laid out; the chart is an average of lays");
  Given<StripsLose> strips_lose = Given<StripsLose>::standing(
      StripsLose::both_seams, 'x', "a seam takes from both edges; some examples take one seam off each strip");
  Given<PlaidExtra> plaid_extra =
      Given<PlaidExtra>::standing(PlaidExtra::by_the_lay, 'x', "repeats are counted in the lay; a shop adds one to each piece");
  Given<PleatSeams> pleat_seams =
      Given<PleatSeams>::standing(PleatSeams::inner_fold, 'a', "seams lie under the pleat: The New Dressmaker, 1921");
  Given<Length> hook_pitch =
      Given<Length>::standing(Length::sixty_fourths(80), 'a', "The New Dressmaker, 1921, and Ingalls; Baldt has 1 in");
  Given<Length> hook_set_back =
      Given<Length>::standing(Length::sixty_fourths(16), 'a', "The New Dressmaker, 1921, and Ingalls; School Sewing has 1/8 in");
  Given<ButtonholeIs> buttonhole_is = Given<ButtonholeIs>::standing(
      ButtonholeIs::across_and_thickness, 'a', "across and thickness of the button; some add 1/8 in always, some for a shank");
  Given<BoneLengthIs> bone_length_is = Given<BoneLengthIs>::standing(
      BoneLengthIs::by_its_kind, 'a', "whalebone stops 1/2 in short of its casing (Baldt), featherbone is turned in (Ingalls)");
  Given<CorsetPressure> corset_pressure = Given<CorsetPressure>::standing(
      CorsetPressure::of_1910, 'a', "the greater of two: 42 to 47 mmHg on average in 1910, 7 in 2011");
  Given<WaistIs> waist_is = Given<WaistIs>::standing(WaistIs::belt_line, 'a',
                                                     "where a tied belt settles; ISO 8559 goes midway between rib and hip bone");
};

}  // namespace gownsheaf
