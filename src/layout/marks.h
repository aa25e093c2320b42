// Small makers of marks, for the rest of this room. Arguments in points become ticks here and nowhere else.
#pragma once
#include <utility>
#include <vector>

#include "layout/page.h"

namespace gownsheaf {

inline Length pt(double points) { return Length::from_points(points); }

Mark stroke(Path path, double weight, std::vector<int> dash = {});
Mark level_line(Length from_x, Length to_x, Length y, double weight);
Mark box_outline(const Box& box, double weight, std::vector<int> dash = {});  // drawn inside the box, so that it keeps its size
Mark fill(Path path, Ink ink);

Point moved(Point p, Length dx, Length dy);
Path moved(Path path, Length dx, Length dy);
Mark moved(const Mark& mark, Length dx, Length dy);
void append_moved(std::vector<Mark>& to, const std::vector<Mark>& marks, Length dx, Length dy);

Box bounds(const Path& path);       // of all its points, control points too
Length middle_y(const Mark& mark);  // of what it covers; of text its base line: says on which line of a row a mark stands

}  // namespace gownsheaf
