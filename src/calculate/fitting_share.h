// Which edges take a change at some place of the garment.
#pragma once
#include <string>
#include <vector>

#include "project/project.h"

namespace gownsheaf {

enum class ChangeRule {
  girth,         // shared over the seams that cross it
  closing,       // over the two closing edges
  wedge,         // at an edge, to nothing at the bust point
  point,         // at one place, to nothing at the next mark
  shoulder_tip,  // at the tip, to nothing at the neck; the underarm moves with it
  top,           // at the top edge of the skirt, or at its hem
  pleats         // over the pleats of the run
};

struct Sharing {
  ChangeRule rule = ChangeRule::point;
  std::int64_t edges = 1;          // that take the change; pleats in all for `pleats`
  std::vector<std::string> seams;  // whose edges they are
  bool known = true;               // false: nothing says which seams cross the place
};

Sharing sharing_at(const Project& project, const Finding& finding);
// Seams that cross a girth of the body: two edges each, as many as the garment has of it.
Sharing seams_across(const Project& project, const std::string& girth);

}  // namespace gownsheaf
