// What stands past the written width of a piece at its two long sides: seam allowances, an edge's own allowance, or what
// a closing asks.
//
//   cut width = finished width + one side + other side      on a fold both sides are alike
//
// An edge counts as a long side when its name says side, front, back or centre and not neck, shoulder, armhole, waist,
// hem, top or lower. Of more than two the largest two count. Any other edge that asks more than the seam adds the
// difference to the length; one that asks less takes nothing off. At a closing the turn or the facing's seam replaces the seam allowance.
#pragma once
#include <string>
#include <vector>

#include "project/project.h"

namespace gownsheaf {

struct SideAllowance {
  Length past;       // past where the written width ends
  std::string edge;  // "" = an ordinary seam
  const Closure* closing = nullptr;
  Length lap, turn;  // of a closing: the parts of `past`; 0 where the written width holds them
  bool faced = false;
};
struct ClosingShort {
  const Closure* closing = nullptr;
  Length has, wants;
  SourceSpan at;
};
struct LongSides {
  SideAllowance one, other;
  Length longer_by;                     // from edges that are no long side
  std::vector<ClosingShort> too_short;  // written cut width or edge allowance leaves too little at a closing
};
LongSides long_sides(const Project& project, const Piece& piece);

}  // namespace gownsheaf
