// Scales a tape can read, and the sentences and bars that say them.
#pragma once
#include <string>
#include <vector>

#include "layout/block.h"
#include "layout/lay_out.h"
#include "units/print.h"

namespace gownsheaf {

// One in `one_to` of the real thing: 16 is one sixteenth.
struct DrawingScale {
  std::int64_t one_to = 1;
  Length of(Length real) const { return real.times(1, one_to); }  // on paper
};

// Inches 1, 2, 4, 8, 16, 32; metric 1, 2, 5, 10, 20, 50: largest drawing first.
const std::vector<DrawingScale>& scales(ShownIn shown_in);
// The largest from `largest` on whose drawing of `real` is no longer than `room`; the smallest scale when none is.
DrawingScale largest_that_fits(Length real, Length room, ShownIn shown_in, std::int64_t largest = 1);

// "one sixteenth", "one tenth", "full size".
std::string scale_name(DrawingScale scale);
// "Drawn at one sixteenth: 1/16 in on this sheet is 1 in of cloth." For metric: "1 mm on this sheet is 2 cm of cloth".
Text scale_sentence(DrawingScale scale, ShownIn shown_in, const std::string& of);

// A scale bar of a round length, at `at` (its left end on the line); items are appended. Says its real length in words.
// Returns the bar's width on paper.
Length scale_bar(std::vector<DrawingItem>& items, Point at, DrawingScale scale, ShownIn shown_in, double text_size,
                 Length longest);

// Shapes that drawings share. `pt` is a whole or broken number of points on paper.
inline Length pt(double points) { return Length::from_points(points); }
StrokeMark line(Point from, Point to, double weight, std::vector<int> dash = {});
StrokeMark outline(const Box& box, double weight, std::vector<int> dash = {});
// Filled, 6 long and 4 wide, its tip at `tip`; quarter turns: 0 points right, 1 up, 2 left, 3 down.
FillMark arrowhead(Point tip, int quarter_turns);
// A dimension between two upright extension lines, level at y, two-headed.
void level_dimension(std::vector<DrawingItem>& items, Length from, Length to, Length y, Length lines_from);
// Moves level labels that hang out at the left or right back to the drawing's edge.
void keep_labels_inside(Drawing& drawing, const Typesetter& typesetter);

}  // namespace gownsheaf
