// The edge of what is laid on one strip: how far the cloth is taken, along x, at each place y across it; and the holes that
// lie behind that edge. Internal to nest/.
#pragma once
#include <optional>
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf::nest {

struct Spot {  // where a rectangle could lie
  Length x, y, waste_behind;
  Length end;     // x + its length
  int hole = -1;  // index of the hole it lies in, -1 = at the edge
};

struct Wanted {  // a rectangle looking for a place
  Length along, across;
  std::optional<Length> fixed_y;
  std::optional<Length> lattice_step, lattice_phase;
  std::optional<Length> lattice_step_y, lattice_phase_y;
  Length clear;  // least y
};

class Skyline {
 public:
  // gap: kept between rectangles, not at the strip's edges. length: absent for an open strip.
  Skyline(Length width, std::optional<Length> length, Length gap, const std::vector<Box>* obstacles);
  void clear();
  // Best place, or none. by_end: least x + along first, else least x first; then least waste, then least y.
  std::optional<Spot> find(const Wanted& wanted, bool by_end) const;
  void place(const Wanted& wanted, const Spot& spot);

 private:
  struct Segment {
    Length y, height, x;
  };
  std::optional<Spot> at_edge(const Wanted& wanted, Length y) const;
  std::optional<Spot> in_hole(const Wanted& wanted, int hole) const;
  std::optional<Length> settle(const Wanted& wanted, Length x, Length y, Length limit) const;
  Length width_, gap_;
  std::optional<Length> length_;
  const std::vector<Box>* obstacles_;
  std::vector<Segment> segments_;
  std::vector<Box> holes_;
};

}  // namespace gownsheaf::nest
