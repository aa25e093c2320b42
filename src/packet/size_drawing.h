// A line for each girth of the trunk, all to one scale and from one cut-off: the rows of the size table as ticks, the
// body as a black upright, the finished garment as an open one, the ease between them. Numbers come from the figures.
#pragma once
#include <string>
#include <vector>

#include "layout/lay_out.h"
#include "packet/compose.h"
#include "packet/figure_text.h"
#include "packet/scale.h"

namespace gownsheaf {

struct GirthLine {
  std::string name;
  std::vector<std::pair<std::string, Length>> sizes;  // labels of the rows that are drawn
  std::optional<Length> body, finished;
};
// Girths of the trunk that are measured. Of a long table two rows on either side of the girth that decides.
std::vector<GirthLine> girth_lines(const PacketInput& input);

struct GirthScale {
  DrawingScale scale;
  Length cut_off;                   // where every line begins
  Length x_of(Length girth) const;  // on the drawing
};
GirthScale girth_scale(const std::vector<GirthLine>& lines, ShownIn shown_in);

Drawing draw_girths(const std::vector<GirthLine>& lines, const FigureText& figure_text, const Typesetter& typesetter);

}  // namespace gownsheaf
