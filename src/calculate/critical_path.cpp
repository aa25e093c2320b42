#include "calculate/critical_path.h"

#include <algorithm>

namespace gownsheaf {

CriticalPath critical_path(const std::vector<Activity>& activities) {
  CriticalPath result;
  const std::size_t n = activities.size();
  result.times.resize(n);
  std::vector<std::vector<std::size_t>> next(n);
  std::vector<std::size_t> waits(n), order;
  for (std::size_t i = 0; i < n; ++i) {
    waits[i] = activities[i].after.size();
    for (const std::size_t a : activities[i].after) next[a].push_back(i);
    if (waits[i] == 0) order.push_back(i);
  }
  for (std::size_t at = 0; at < order.size(); ++at) {
    const std::size_t i = order[at];
    ActivityTimes& t = result.times[i];
    for (const std::size_t a : activities[i].after)
      t.earliest_start = std::max(t.earliest_start, result.times[a].earliest_finish);
    t.earliest_finish = t.earliest_start + activities[i].takes;
    result.length = std::max(result.length, t.earliest_finish);
    for (const std::size_t w : next[i])
      if (--waits[w] == 0) order.push_back(w);
  }
  for (std::size_t at = order.size(); at-- > 0;) {
    const std::size_t i = order[at];
    ActivityTimes& t = result.times[i];
    t.latest_finish = result.length;
    for (const std::size_t w : next[i]) t.latest_finish = std::min(t.latest_finish, result.times[w].latest_start);
    t.latest_start = t.latest_finish - activities[i].takes;
  }
  const auto goes_on = [&](std::size_t i) {
    const bool first = result.path.empty();
    return result.times[i].slack() == 0 &&
           (first ? activities[i].after.empty() || result.times[i].earliest_start == 0
                  : result.times[i].earliest_start == result.times[result.path.back()].earliest_finish);
  };
  for (std::size_t i = 0; i < n; ++i)
    if (goes_on(i)) {
      result.path.push_back(i);
      break;
    }
  while (!result.path.empty() && result.times[result.path.back()].earliest_finish < result.length) {
    std::vector<std::size_t> after = next[result.path.back()];
    std::sort(after.begin(), after.end());
    const auto at = std::find_if(after.begin(), after.end(), goes_on);
    if (at == after.end()) break;
    result.path.push_back(*at);
  }
  return result;
}

}  // namespace gownsheaf
