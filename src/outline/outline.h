// Drawings of pieces: SVG text to outlines and marks in millimetres of the page, from its top left, y down.
//
// Source of the rules: W3C, Scalable Vector Graphics (SVG) 1.1, second edition, 2011: coordinate systems (7), paths (8),
// basic shapes (9), arcs (F.6); CSS 2 for what decides whether a shape is shown. One px is 1/96 in. Curves are flattened to
// chords no further than kFlat from the curve. Nothing outside the file is ever opened: no entity of the document is
// expanded, no reference to another file is followed.
//
// Library: pugixml. Reads leniently spelled files of editors and leaves entities alone; depth, uses, points and text that is
// gone through again and again are limited here. svgpp gave 21 of 39 known drawings right and hung on one; libxml2 is a good
// second choice, four times the size.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "geometry/region.h"

namespace gownsheaf {

constexpr double kFlatMm = 0.005;
constexpr std::size_t kLargestDrawing = 2u << 20;                // bytes
constexpr int kDeepestDrawing = 200;                             // elements within each other, through uses too
constexpr std::size_t kMostUses = 10'000, kMostDrawn = 100'000;  // uses followed; elements gone through
constexpr std::size_t kMostOutlinePoints = 50'000, kMostDrawingPoints = 300'000;

// What a line says of the piece it lies in; docs/outlines.md gives the ids and classes.
enum class MarkKind { grain, fold, hem, notch, dart, match, join, mark, name, test_square };
std::string_view word_for(MarkKind kind);

// Where an element stands: its own id (may be "") and the ids of uses, groups and layers round it, outermost first.
struct DrawnAt {
  std::string id;
  std::vector<std::string> within;
  SourceSpan at;
};

struct DrawnOutline {
  DrawnAt drawn;
  std::string title;           // <title> of the element, or ""
  std::vector<Polygon> lines;  // closed lines as drawn
  FillRule rule = FillRule::nonzero;
  Region region;                 // what they enclose; never empty
  std::vector<Point> crossings;  // where the lines cross or touch
  double area_mm2 = 0;           // of the region, its corners as they are written and not rounded to ticks
  Box box;                       // of the lines as drawn
};
struct OpenLine {
  DrawnAt drawn;
  Polygon points;
};  // two points or more, not closed
struct DrawnMark {
  DrawnAt drawn;
  MarkKind kind = MarkKind::mark;
  Polygon points;  // of a name: where it begins
  bool closed = false;
  std::string words;  // of a name
};

struct SvgDrawing {
  std::string file;
  std::vector<DrawnOutline> outlines;  // in drawing order
  std::vector<OpenLine> open_lines;    // marks too
  std::vector<DrawnMark> marks;
};

// Errors and warnings (docs/diagnostics.md, Of drawings) go to diag with line and column. After an error nothing is
// returned: never half the pieces. A drawing without any outline is returned empty.
std::optional<SvgDrawing> read_svg(const std::string& bytes, const std::string& file_name, Diagnostics& diag);

// The text in lines, for messages.
SourceText drawing_lines(const std::string& bytes, const std::string& file_name);

}  // namespace gownsheaf
