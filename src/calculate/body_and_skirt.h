// The body against the skirt: what is written of both must be about the same person. A waist edge that cannot go round the
// waist, or a breadth that cannot reach where the hem is to hang, is said before the cloth is cut.
#pragma once
#include "calculate/rounds.h"

namespace gownsheaf {

// Only when the measures are written. Limits are common practice, no source: the edge may be 1 in smaller or 4 in larger than
// waist and ease together (lap and turnings), a breadth 1 in off the floor line, and shorter by the height of a band.
// Of several edges on the skirt the one nearest to the waist is taken: the others are flounces or an overskirt.
// A joined skirt's edge is held against the bodice's waist as last measured, to 1/8 in.
// Holds: waist-measure-differs, skirt-meets-no-bodice, short-of-floor. Warning: long-for-floor. All are private: they speak of the body.
void judge_by_the_body(const Project& project, const RoundSums& sums, Diagnostics& diag);

}  // namespace gownsheaf
