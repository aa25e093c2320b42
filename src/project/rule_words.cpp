// The words of the project file for each rule.
#include "project/rules.h"

namespace gownsheaf {

std::string_view word_for(YardageBy r) {
  switch (r) {
    case YardageBy::lay: return "lay";
    case YardageBy::width_chart: return "width chart";
  }
  return "";
}

std::string_view word_for(StripsLose r) {
  switch (r) {
    case StripsLose::both_seams: return "both seams";
    case StripsLose::one_seam: return "one seam";
  }
  return "";
}

std::string_view word_for(PlaidExtra r) {
  switch (r) {
    case PlaidExtra::by_the_lay: return "by the lay";
    case PlaidExtra::one_repeat_a_piece: return "one repeat a piece";
  }
  return "";
}

std::string_view word_for(PleatSeams r) {
  switch (r) {
    case PleatSeams::inner_fold: return "inner fold";
    case PleatSeams::as_they_fall: return "as they fall";
  }
  return "";
}

std::string_view word_for(ButtonholeIs r) {
  switch (r) {
    case ButtonholeIs::across_and_thickness: return "across and thickness";
    case ButtonholeIs::eighth_more: return "and 1/8 in more";
    case ButtonholeIs::more_for_a_shank: return "more for a shank";
  }
  return "";
}

std::string_view word_for(BoneLengthIs r) {
  switch (r) {
    case BoneLengthIs::by_its_kind: return "by its kind";
    case BoneLengthIs::casing_less: return "casing less 1/2 in";
    case BoneLengthIs::casing_and_more: return "casing and 1/2 in more";
  }
  return "";
}

std::string_view word_for(CorsetPressure r) {
  switch (r) {
    case CorsetPressure::of_1910: return "measured 1910";
    case CorsetPressure::of_2011: return "measured 2011";
  }
  return "";
}

std::string_view word_for(WaistIs r) {
  switch (r) {
    case WaistIs::belt_line: return "belt line";
    case WaistIs::midway: return "midway";
  }
  return "";
}

}  // namespace gownsheaf
