// Polygons in whole millimetres, and areas in square millimetres.
#pragma once
#include <initializer_list>
#include <utility>

#include "geometry/shapes.h"

namespace polygons {

inline gownsheaf::Polygon mm(std::initializer_list<std::pair<int, int>> list) {
  gownsheaf::Polygon p;
  for (const auto& [x, y] : list) p.push_back({gownsheaf::Length::mm(x), gownsheaf::Length::mm(y)});
  return p;
}
inline double mm2(gownsheaf::Area a) { return a.in_square_metres() * 1e6; }

}  // namespace polygons
