// Small marks on a drawn lay: repeats of the design along the edges, what the drawing of a piece holds, match points.
#pragma once
#include <vector>

#include "packet/lay_drawing.h"

namespace gownsheaf {

// Two short crossing lines.
void draw_match(std::vector<DrawingItem>& items, Point at);
// Where a repeat of the design begins, along all edges of what is drawn; `cloth` is the part on paper.
void draw_repeats(std::vector<DrawingItem>& items, const LaidStrip& strip, const LayPart& part, DrawingScale scale,
                  const Box& cloth);
// Notches, darts and other lines of the piece's drawing, as far as they lie on this part; and its match point.
void draw_lines(std::vector<DrawingItem>& items, const LaidPiece& laid, const LaidStrip& strip, const LayPart& part,
                DrawingScale scale);

}  // namespace gownsheaf
