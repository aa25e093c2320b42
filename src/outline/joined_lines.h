// Open lines put end to end. Internal to outline.
#pragma once
#include <vector>

#include "outline/outline.h"

namespace gownsheaf {

struct JoinedLines {
  bool closed = false;
  Polygon ring;       // when closed: all lines, each once
  Point from, to;     // when open: the first two ends that meet no other
  double gap_mm = 0;  // the widest gap that was closed
};
// lines: not empty. Ends no further apart than `gap` are joined, the nearest first.
JoinedLines join_lines(const std::vector<const OpenLine*>& lines, double gap_mm);

}  // namespace gownsheaf
