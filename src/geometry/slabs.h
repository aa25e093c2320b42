// A ring seen in slabs: upright strips of one width, side by side along x. For covering it with boxes, for finding room in it,
// and for drawing a part of it. Places where an edge crosses a slab's side are rounded to the nearest tick.
#pragma once
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf {

// The y of the ring's crossings of the upright line at x, growing, two and two: inside between the first and the second. Edges
// that lie on the line count as just to its right.
std::vector<Length> crossings_at(const Polygon& ring, Length x);

// Boxes that together cover the ring, one a slab: from the least to the greatest y of what lies there, a tick more on either
// side for the rounding. Fewer than `slabs` where nothing lies in one.
std::vector<Box> boxes_over(const Polygon& ring, int slabs);

// The largest box inside the ring among those that begin and end at slabs: room for a name. Never larger than a box that is
// inside at every slab's sides and middle and at every corner of the ring; empty where no slab has room.
Box box_inside(const Polygon& ring, int slabs);

// What of the ring lies at x from `from` to `to`; parts that hang together only along the two lines stay one ring.
Polygon clipped_along(const Polygon& ring, Length from, Length to);

}  // namespace gownsheaf
