// Blocks to pages of marks: line breaking, tables over page ends, keep rules, page numbers in a second pass.
#pragma once
#include <string>
#include <vector>

#include "layout/block.h"

namespace gownsheaf {

struct PageShape {
  Length width, height;
  double left = 0, top = 66, bottom = 0;  // live area in points; always 486 wide
  double mark_x = 0;                      // section mark's left
  std::vector<double> holes_y;            // centres; x is 34
};
enum class PaperName { letter, a4 };
enum class HoleCount { none, two, three };
PageShape page_shape(PaperName paper, HoleCount holes);

struct Running {  // running matter
  std::string project_title;
  std::string set_and_packet;  // "Pin-up set, packet 4f2a"
};

// Measures and breaks rich text for one type scale. Packet uses it to see whether a label fits.
class Typesetter {
 public:
  Typesetter(const FontSet& fonts, const TypeScale& scale) : fonts_(&fonts), scale_(&scale) {}
  const TypeScale& scale() const { return *scale_; }
  const FontSet& fonts() const { return *fonts_; }
  // Width of text on one line; size in points for as_text inlines (0 = the scale's text size).
  Length width(const Text& text, double size = 0) const;
  // Breaks text to lines no wider than `room`; a word wider than the room is broken between letters.
  std::vector<Text> lines(const Text& text, Length room, double size = 0) const;
  // One line as a mark with its base line origin at `at`, with the strokes and fills of tags and boxes in it.
  std::vector<Mark> set(const Text& line, Point at, double size = 0, int angle = 0) const;

 private:
  const FontSet* fonts_;
  const TypeScale* scale_;
};

// All sheets to pages. Two passes: the first counts pages, the second fills in "Page n of N" and contents lines.
PaperDocument lay_out(const std::vector<Sheet>& sheets, const PageShape& shape, const Running& running,
                      const Typesetter& typesetter);

}  // namespace gownsheaf
