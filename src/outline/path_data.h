// Path data and basic shapes to flat lines. Internal to outline.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "outline/flatten.h"

namespace gownsheaf {

struct PathFault {
  std::size_t at = 0;
};  // byte of the attribute where it could not be read

// The d of a <path>. A fault is where reading broke off.
std::optional<PathFault> read_path(std::string_view d, FlatPath& out);
// The points of a polygon or polyline; odd: a last number without its pair, which is left out.
std::optional<PathFault> read_points(std::string_view points, bool closed, FlatPath& out, bool& odd);
void add_ellipse(double cx, double cy, double rx, double ry, FlatPath& out);
void add_rectangle(double x, double y, double width, double height, double rx, double ry, FlatPath& out);

}  // namespace gownsheaf
