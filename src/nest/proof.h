// Do two outlines share more than edges and corners, or come nearer than the gap? Decided in whole numbers on the outlines
// as they are, by another way than the search's, so that a lay is proven before it is handed over.
#pragma once
#include "nest/shape.h"

namespace gownsheaf::nest {

// b lies at (dx, dy) from a. Both tidied.
bool apart(const Ring& a, const Ring& b, std::int64_t dx, std::int64_t dy, std::int64_t gap);

}  // namespace gownsheaf::nest
