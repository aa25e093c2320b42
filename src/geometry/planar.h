// Segments split until none cross. Internal to geometry.
#pragma once
#include <optional>
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf {

// from < to by x, then y. `wind`: how often lines run from → to, less how often back.
struct PlanarEdge {
  Point from, to;
  int wind = 0;
};

struct Planar {
  std::vector<PlanarEdge> edges;  // sorted, each pair of ends once, wind never 0; they meet at their ends only
  std::vector<Point> crossings;   // of the lines as given, sorted, each once
};
// Nothing when there are more than `most` crossings.
std::optional<Planar> split_crossings(const std::vector<Polygon>& polygons, std::size_t most);

}  // namespace gownsheaf
