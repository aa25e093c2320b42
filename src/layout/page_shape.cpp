#include "layout/lay_out.h"

namespace gownsheaf {

namespace {

// Holes stand evenly about the middle of the sheet: three 108 mm apart, two 80 mm apart, in points.
constexpr double kThreeApart = 306.14, kTwoApart = 226.77;

std::vector<double> holes(double middle, HoleCount count) {
  switch (count) {
    case HoleCount::none: return {};
    case HoleCount::two: return {middle - kTwoApart / 2, middle + kTwoApart / 2};
    case HoleCount::three: return {middle - kThreeApart, middle, middle + kThreeApart};
  }
  return {};
}

}  // namespace

PageShape page_shape(PaperName paper, HoleCount count) {
  PageShape shape;
  if (paper == PaperName::letter) {
    shape.width = Length::points(612);
    shape.height = Length::points(792);
    shape.left = 76;
    shape.bottom = 746;
    shape.mark_x = 576;
    shape.holes_y = holes(396, count);
  } else {
    shape.width = Length::from_points(595.276);
    shape.height = Length::from_points(841.890);
    shape.left = 68;
    shape.bottom = 806;
    shape.mark_x = 559.3;
    shape.holes_y = holes(420.945, count);
  }
  return shape;
}

}  // namespace gownsheaf
