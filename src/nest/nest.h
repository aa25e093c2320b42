// Parts on strips. Knows shapes and strips, no garment words. An engine that cannot honour a field of the request
// answers `unsupported` with words; it never ignores one. Same request and seed, same lay, on every machine: effort is
// counted in steps of work, never in seconds.
#pragma once
#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace gownsheaf::nest {

// Mirrored first (x to -x), then turned anticlockwise: by quarter turns, which are exact, and thousandths of a degree, after
// which corners are rounded to the nearest tick.
struct Pose {
  int quarter_turns = 0;
  bool mirrored = false;
  int millidegrees = 0;
  friend auto operator<=>(const Pose&, const Pose&) = default;
};
// The outline in this pose, least corner of its bounds at 0, 0.
Polygon posed(const Polygon& outline, const Pose& pose);

struct Part {
  Polygon outline;  // x along the strip, y across
  std::vector<Pose> poses{{0, false}};
  int copies = 1;
  std::optional<Length> fixed_y;  // must lie at this distance from the strip's first edge
  struct Lattice {
    Length step, phase;
  };
  std::optional<Lattice> lattice;         // x must be phase + k * step
  std::optional<Lattice> lattice_across;  // y must be phase + k * step
  Length clear_of_first_edge = {};        // least y: left between the part and the strip's first edge
  std::vector<int> strips;                // allowed strips; empty = all
};

struct Strip {
  Length width;
  std::optional<Length> length;  // absent = open: as long as needed (at most one open strip, the last)
  std::vector<Box> obstacles;    // bad places, in the strip's coordinates
  double cost = 1;               // per unit of length, to choose between strips
};

struct Request {
  std::vector<Part> parts;
  std::vector<Strip> strips;
  Length gap;                 // between parts
  std::int64_t work = 20000;  // steps of search: placements of rectangles, or trials of outlines
  std::uint32_t seed = 1;
  int threads = 1;  // changes the time taken, never the lay
  // Set from outside, the search ends with the best it has, and that can be had no second time. Never set: the lay is as without it.
  const std::atomic<bool>* stop = nullptr;
  std::function<void(double)> told = {};  // now and then: the share of the effort that is spent, 0 to 1; by one thread at a time
  bool stopped() const { return stop != nullptr && stop->load(std::memory_order_relaxed); }
};

struct Placed {
  int part = 0, copy = 0, strip = 0;
  Pose pose;
  Point at;  // least corner of the posed part's bounds
  friend auto operator<=>(const Placed&, const Placed&) = default;
};

struct Lay {
  std::vector<Placed> placed;                 // sorted by strip, x, y
  std::vector<std::pair<int, int>> left_out;  // part, copy
  std::vector<Length> used;                   // per strip: right-most end of a part
  Length bound;                               // of the open strip, or of all strips' length together: no lay is shorter
  bool proven = false;                        // one strip, everything placed, used == bound
  std::int64_t work = 0;                      // steps done
  bool cut_short = false;                     // `stop` ended the search
  std::string unsupported;                    // not empty: nothing was placed; says which field cannot be honoured
};

// Rectangles by skylines over many orders, deterministic. Supports: rectangle outlines, quarter turns, copies, fixed_y,
// lattices, several strips, obstacles (as blocked rectangles), gap, cost ignored only when there is one strip.
Lay lay_rectangles(const Request& request);

// Outlines by separation with guided local search (Gardeyn, Vanden Berghe, Wauters 2025). Supports: any outline that does
// not touch itself, any poses, copies, gap, fixed_y, lattices, several strips, obstacles; cost only when all cost the same.
// A lay is proven free of overlap in whole numbers on the outlines as given. Parts no longer than 16 m, strips together no
// longer than 350 m. Where all strips have a length, what does not go is left out, and what goes is not laid any
// shorter. A part tied to closed strips beside an open one is refused where bounds do not go there.
// spent, if given: the share of the effort used up, 0 to 1, from the work done so far, in place of work / request.work. A
// lay is then only as repeatable as that is.
Lay lay_outlines(const Request& request, const std::function<double(std::int64_t)>& spent = {});

// Work for lay_outlines that takes about 1, 10 and 60 seconds on two cores.
inline constexpr std::int64_t kQuickWork = 16'000'000, kUsualWork = 160'000'000, kPatientWork = 960'000'000;

// The door for both: rectangles where every part is one in quarter turns, outlines where one is not. Rectangles are never
// laid worse than by skylines alone.
// work: in steps of the one and of the other, instead of request.work.
struct LayEffort {
  std::int64_t rectangles = 20'000, outlines = kUsualWork;
};
Lay lay_parts(const Request& request, const LayEffort& effort = {}, const std::function<double(std::int64_t)>& spent = {});

// Largest empty axis-parallel rectangles of a strip of this width and length, biggest area first, each at least
// least x least, not overlapping one another.
std::vector<Box> left_over(Length width, Length length, const std::vector<Box>& taken, Length least, int at_most);

}  // namespace gownsheaf::nest
