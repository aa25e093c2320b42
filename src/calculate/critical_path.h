// Earliest and latest times of activities that wait for each other: the critical path method (J. E. Kelley and M. R. Walker,
// "Critical-path planning and scheduling", Proc. Eastern Joint Computer Conference, 1959; from memory). Whole units of time.
//
// Forward: an activity starts when the last of those it waits for has finished. Backward from the longest: it finishes when
// the first of those that wait for it must start. Slack is the difference; the critical path is the chain without slack.
#pragma once
#include <cstddef>
#include <cstdint>
#include <vector>

namespace gownsheaf {

struct Activity {
  std::int64_t takes = 0;
  std::vector<std::size_t> after;  // must be finished first; no rings
};
struct ActivityTimes {
  std::int64_t earliest_start = 0, earliest_finish = 0, latest_start = 0, latest_finish = 0;
  std::int64_t slack() const { return latest_start - earliest_start; }
};
struct CriticalPath {
  std::int64_t length = 0;
  std::vector<ActivityTimes> times;
  std::vector<std::size_t> path;  // one chain without slack from a first activity to a last; of several the first by number
};
CriticalPath critical_path(const std::vector<Activity>& activities);

}  // namespace gownsheaf
