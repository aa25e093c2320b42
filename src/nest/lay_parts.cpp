// Which engine lays a request.
#include <algorithm>

#include "nest/nest.h"

namespace gownsheaf::nest {

Lay lay_parts(const Request& request, const LayEffort& effort, const std::function<double(std::int64_t)>& spent) {
  const bool rectangles = std::all_of(request.parts.begin(), request.parts.end(), [](const Part& part) {
    return is_rectangle(part.outline) &&
           std::all_of(part.poses.begin(), part.poses.end(), [](const Pose& pose) { return pose.millidegrees == 0; });
  });
  Request with_work = request;
  with_work.work = rectangles ? effort.rectangles : effort.outlines;
  return rectangles ? lay_rectangles(with_work) : lay_outlines(with_work, spent);
}

}  // namespace gownsheaf::nest
