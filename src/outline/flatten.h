// Curves to chords in mm of the page. Internal to outline.
#pragma once
#include <vector>

#include "outline/transform.h"

namespace gownsheaf {

// One sub-path in mm. closed: by z.
struct FlatLine {
  std::vector<Spot> spots;
  bool closed = false;
};

// Collects sub-paths given in user units, mapped to mm; curves are mapped first, so that the chords are within kFlatMm
// there. Stops collecting when a path has more than kMostOutlinePoints or a coordinate out of reach.
class FlatPath {
 public:
  explicit FlatPath(const Affine& to_mm) : to_mm_(to_mm) {}
  void move(Spot to);
  void line(Spot to);
  void quadratic(Spot control, Spot to);
  void cubic(Spot control, Spot control2, Spot to);
  // As SVG F.6: radii too small are grown, a radius of 0 is a straight line.
  void arc(double rx, double ry, double degrees, bool large, bool sweep, Spot to);
  void close();
  Spot at() const { return at_; }
  const std::vector<FlatLine>& lines() const { return lines_; }
  bool too_many() const { return too_many_; }
  bool too_far() const { return too_far_; }

 private:
  void begin();  // a sub-path at the current point, where none is open
  void add(Spot mm);
  void bend(const Affine& from_circle, Spot u, Spot v, bool sweep, int depth);
  Affine to_mm_;
  std::vector<FlatLine> lines_;
  Spot at_, start_;
  std::size_t count_ = 0;
  bool open_ = false, too_many_ = false, too_far_ = false;
};

}  // namespace gownsheaf
