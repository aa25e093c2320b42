// What the flat and the folded drawing of a pleat run share: which stretches are drawn, and the words of the gap.
#pragma once
#include <string>
#include <vector>

#include "packet/pleat_drawing.h"

namespace gownsheaf {

inline constexpr double kRunWide = 486;  // points on paper
inline constexpr double kRunMargin = 2;  // half an arrowhead, so that no ink leaves the drawing
inline constexpr double kRunGap = 96;    // the gap of a crowded run holds "... 14 alike ..."

// The run as it is drawn: whole, or its two ends with a gap between, each moved to its own zero.
std::vector<PleatPlan> drawn_parts(const PleatPlan& plan, const DrawnPleats& drawn);
void say_gap(std::vector<DrawingItem>& items, const DrawnPleats& drawn, Length x, Length y, double size);
Label put(Text text, Point at, double size, Label::Across across = Label::Across::left, Label::Up up = Label::Up::base);
// Words over a drawing, broken to its width; returns their height.
Length words_over(std::vector<DrawingItem>& items, const std::string& words, const Typesetter& typesetter);

}  // namespace gownsheaf
