// What of a cut is laid in one place: one copy or two that are cut double, whole or as a half on the fold. Internal to the lays.
#pragma once
#include <vector>

#include "calculate/lay_strips.h"

namespace gownsheaf {

enum class Lies { flat, doubled, on_fold };

struct LayJob {
  std::size_t cut = 0;
  Lies lies = Lies::flat;
  bool other_hand = false;       // mirrored: the second of each pair
  bool drops = false;            // begins half a repeat lower
  std::vector<int> copies = {};  // as many places as copies
  std::vector<int> also = {};    // of what is cut double: the copy beneath, or -1
};

// In one layer.
std::vector<LayJob> flat_jobs(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies);
// On folded cloth: first what lies double or on the fold, then what does not.
struct FoldedJobs {
  std::vector<LayJob> folded, flat;
};
FoldedJobs folded_jobs(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, Folded folded);

// The half of a ring that is symmetric about the line along its middle: y from that line.
Polygon half_of(const Polygon& ring);
bool symmetric_across(const Polygon& ring);

// The part that nest lays for it; `drawn`: by its outline, else by its box.
nest::Part part_of_job(const Cut& cut, const LayJob& job, const LayAsked& asked, bool drawn);

}  // namespace gownsheaf
