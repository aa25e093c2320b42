// One piece's outline out of a drawing, mended where the meaning is plain, with the marks that lie in it.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "outline/outline.h"

namespace gownsheaf {

struct PickedMark {
  MarkKind kind = MarkKind::mark;
  Polygon points;
  bool closed = false;
  std::string words;  // of a name
};
struct PickedOutline {
  std::string title;  // of the element, else the words of a name in it, else its id; may be ""
  SourceSpan drawn_at;
  Polygon edge;                // a simple ring, clockwise on the page
  std::vector<Polygon> holes;  // anticlockwise
  std::vector<PickedMark> marks;
};

struct PickAsked {
  std::string_view which;  // `front` (an id, or the id of a group, layer or use), `433 x 617 mm`, `2 of 433 x 617 mm`
  SourceSpan at;           // where it was asked for
  std::optional<Length> square_measures;  // how large the drawing's test square came out; the scale is mended by it
};

constexpr double kSameSizeMm = 1.0;             // a size is meant when width and height are within this
constexpr double kGapMm = 1.0;                  // ends this near are closed, with a warning
constexpr Length kLeastPiece = Length::mm(10);  // a piece that is smaller both ways is none
constexpr double kLoopShare = 0.01;             // loops and parts that together enclose less of the piece are left out

// Errors: no such outline, several, open, crossing itself or in parts so that it is not plain what is meant, too small. All
// coordinates are of the page after the scale is mended, with the edge's box begun at 0, 0.
std::optional<PickedOutline> pick_outline(const SvgDrawing& drawing, const PickAsked& asked, Diagnostics& diag);

// What to write after `#` to pick the outline: its id where that is its own, else its size.
std::string pick_words(const SvgDrawing& drawing, std::size_t outline);
// "433 x 617 mm".
std::string size_words(const Box& box);

// The side that the drawing's test square should have: 50 mm, or what its id or class ends in (`test-square-4in`).
struct TestSquare {
  Length should_be, reads;
  SourceSpan at;
};
std::optional<TestSquare> test_square(const SvgDrawing& drawing);
// Warns when the square reads otherwise than it should by 0.01 mm or more.
void note_test_square(const SvgDrawing& drawing, Diagnostics& diag);

}  // namespace gownsheaf
