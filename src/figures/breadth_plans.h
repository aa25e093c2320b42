// A panel as it is joined of widths of cloth, and where a pattern's repeats fall on a breadth: what the breadth diagram
// draws. Every length in it that is printed also stands as a Figure below `key`.
#pragma once
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "units/length.h"

namespace gownsheaf {

struct BreadthPlan {
  std::string piece, cloth;
  std::string key;                 // figures below it: "join 1", "repeat along", "taken"
  Length across, along;            // the whole panel as it is when joined, allowances at its own edges counted
  std::vector<Length> joins;       // stitch lines of the joins, from the panel's first long edge, rising
  Length seam;                     // at each join, to both sides
  Length repeat, taken;            // repeat along and what one breadth takes; nothing where there is none
  Polygon outline = {};            // of a drawn piece: x along, y across; empty: a rectangle
  std::vector<Length> repeats_at;  // starts of the repeats, from the breadth's upper end
  bool half_drop = false;          // the next breadth begins half a repeat lower
};

}  // namespace gownsheaf
