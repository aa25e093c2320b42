// A lay drawn to scale: the cloth's length left to right, tops to the left, a ruler below and one for the width at the
// right. A lay longer than the page is broken where no piece crosses; where there is no such place, the next part begins again
// before the pieces that do, so that each is drawn whole in one of them.
#pragma once
#include <vector>

#include "figures/plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"
#include "packet/scale.h"

namespace gownsheaf {

struct LayPart {
  Length from, to;             // along the cloth
  bool starts_at_cut = false;  // the cloth is cut straight across here; false at the cloth's own end
  bool repeats = false;        // begins before the end of the part before it
};
struct LayParts {
  DrawingScale scale;
  std::vector<LayPart> parts;  // only those on which a piece lies
  Length drawn_to;             // of the cloth's length
};
// `room_high`: the tallest that one part may be on paper, or all of them `together`; ruler and key included.
LayParts lay_parts(const LaidStrip& strip, const Typesetter& typesetter, ShownIn shown_in, Length room_high,
                   bool together = false);

struct LayDrawing {
  Drawing drawing;
  Text numbered;  // "1 cuff 4 × 11 in, 2 …": pieces too small for their names; empty when there are none
};
// `lay_key` is "cloths/CLOTH"; `first_left_over` the number of the strip's first left-over rectangle among the lay's.
LayDrawing draw_lay_part(const LayPlan& plan, const LaidStrip& strip, const LayParts& parts, std::size_t which,
                         std::size_t first_left_over, const FigureText& figure_text, const Typesetter& typesetter);

// Where the strip's part of the drawing puts a laid piece, on paper: for tests and for the drawing itself.
Box on_paper(const Box& laid, const LaidStrip& strip, const LayPart& part, DrawingScale scale);

Polygon ring_on_paper(const Polygon& laid, const LaidStrip& strip, const LayPart& part, DrawingScale scale);

// The cut size of a laid piece as its figures' keys, or "" when the plan does not know the piece.
std::string cut_key(const LayPlan& plan, const std::string& piece);
// "skirt breadth 2", or the bare name when there is but one copy.
std::string copy_name(const LayPlan& plan, const LaidPiece& laid);

}  // namespace gownsheaf
