// Parts on strips. Knows shapes and strips, no garment words. An engine that cannot honour a field of the request
// answers `unsupported` with words; it never ignores one. Same request and seed, same lay, on every machine: effort is
// counted in steps of work, never in seconds.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf::nest {

// Turns are quarter turns anticlockwise; other angles are for a later engine.
struct Pose { int quarter_turns = 0; bool mirrored = false; friend auto operator<=>(const Pose&, const Pose&) = default; };

struct Part {
  Polygon outline;                    // x along the strip, y across
  std::vector<Pose> poses{{0, false}};
  int copies = 1;
  std::optional<Length> fixed_y;      // must lie at this distance from the strip's first edge
  struct Lattice { Length step, phase; };
  std::optional<Lattice> lattice;     // x must be phase + k * step
  std::vector<int> strips;            // allowed strips; empty = all
};

struct Strip {
  Length width;
  std::optional<Length> length;       // absent = open: as long as needed (at most one open strip, the last)
  std::vector<Box> obstacles;         // bad places, in the strip's coordinates
  double cost = 1;                    // per unit of length, to choose between strips
};

struct Request {
  std::vector<Part> parts;
  std::vector<Strip> strips;
  Length gap;                         // between parts
  std::int64_t work = 20000;          // steps of search
  std::uint32_t seed = 1;
};

struct Placed {
  int part = 0, copy = 0, strip = 0;
  Pose pose;
  Point at;                           // least corner of the posed part's bounds
  friend auto operator<=>(const Placed&, const Placed&) = default;
};

struct Lay {
  std::vector<Placed> placed;         // sorted by strip, x, y
  std::vector<std::pair<int, int>> left_out;  // part, copy
  std::vector<Length> used;           // per strip: right-most end of a part
  Length bound;                       // of the open strip, or of all strips' length together: no lay is shorter
  bool proven = false;                // one strip, everything placed, used == bound
  std::int64_t work = 0;              // steps done
  std::string unsupported;            // not empty: nothing was placed; says which field cannot be honoured
};

// Rectangles by skylines over many orders, deterministic. Supports: rectangle outlines, quarter turns, copies, fixed_y,
// lattice, several strips, obstacles (as blocked rectangles), gap, cost ignored only when there is one strip.
Lay lay_rectangles(const Request& request);

// Largest empty axis-parallel rectangles of a strip of this width and length, biggest area first, each at least
// least x least, not overlapping one another.
std::vector<Box> left_over(Length width, Length length, const std::vector<Box>& taken, Length least, int at_most);

}  // namespace gownsheaf::nest
