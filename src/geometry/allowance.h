// Seam allowances round a seam line, and the seam line within a cut line.
//
// Each edge has its own allowance (a hem is deeper than a side). The region within the allowances is the union of the
// piece, of a strip along each edge as deep as its allowance, and of what fills the corner between two strips: both strips'
// outer lines carried on to where they meet, cut square across where that is further from the corner than `mitre` times
// the greater allowance (its ends are then sqrt(mitre² + 1) allowances off at most); straight from one to the other where a deep strip passes the shallow one's line before its end.
// It is made as one line whose winding number is that of the union (a convolution), so the piece lies inside it everywhere but
// for rounding to ticks. No angle is computed: roots and products only.
// Source: elementary; the square cut of a long corner is common practice, no source.
#pragma once
#include <optional>
#include <vector>

#include "geometry/region.h"

namespace gownsheaf {

struct Allowances {
  std::vector<Length> of_edges;  // of the edge from each corner to the next; 0 = a fold or a cut edge
  double mitre = 2.0;            // 1 or more
};

constexpr Length kAllowanceShift = Length::ticks(4);  // how far rounding may move the cut line: 0.0014 mm

// The cut line round a simple ring (clockwise on the page). Nothing when an allowance is negative, their number is not the
// ring's, or the ring encloses nothing. Where strips meet across a gap narrower than both, the gap is closed; a hole so
// made is returned as a hole.
std::optional<Region> with_allowances(const Polygon& seam_line, const Allowances& allowances);

// The seam line of a cut line: what is left when each edge's strip is taken off inside. May be in parts, or empty, where
// allowances meet.
std::optional<Region> within_allowances(const Polygon& cut_line, const Allowances& allowances);

}  // namespace gownsheaf
