// From a request to the world of a search, and from a lay found there back to a Lay. Internal to nest/.
#pragma once
#include <string>

#include "nest/hunt.h"

namespace gownsheaf::nest {

// What of the request cannot be honoured, or nothing.
std::string unsupported_outlines(const Request& request);

struct Prepared {
  World world;
  bool overflow = false;                     // the open strip is none of the request's: what lies there is left out
  std::vector<std::pair<int, int>> nowhere;  // part, copy: goes on no strip in any pose
  std::string unsupported;
};
void prepare(const Request& request, Prepared& prepared);

// A first lay, from the parts' bounds.
Found first_lay(const Request& request, const Prepared& prepared);

// No overlap, everything inside its strip, its poses, lines and lattices.
bool proven(const Prepared& prepared, const Found& found);
Length bound_of_outlines(const Request& request);

}  // namespace gownsheaf::nest
