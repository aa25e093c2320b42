#include "calculate/hidden_seams.h"

#include <algorithm>

#include "calculate/pleat_map.h"
#include "calculate/pleats.h"

namespace gownsheaf {

bool all_hidden(const std::vector<PleatMark>& marks, const std::vector<Length>& places, Length plus) {
  return std::none_of(places.begin(), places.end(), [&](Length at) {
    const Landing l = landing_of(marks, at, plus);
    return l.in == Landing::In::seen && !l.to_hidden.is_zero();
  });
}

std::optional<std::int64_t> count_that_hides(const RunSum& sum, const std::vector<Length>& places) {
  const PleatRun& run = *sum.run;
  const bool free = !run.depth.known() && !run.visible.known() && !run.takes.known() && !run.first_takes.known();
  if (!sum.pleated || !free || places.empty()) return std::nullopt;
  const bool halves = sum.mirrored && !run.half;
  if (halves && sum.half.count * 2 != sum.sum.count) return std::nullopt;  // one of them lies on the middle line
  const std::int64_t under = folds_under(run.kind);
  for (const std::int64_t more : {1, -1, 2, -2, 3, -3}) {
    PleatSolution s = sum.half;
    s.count += more;
    if (s.count < 1) continue;
    s.visible = s.finished.times(1, s.count);
    s.depth = (s.flat - s.plus - s.finished).times(1, under * s.count);
    if (all_hidden(pleat_marks(run.kind, s), places, s.plus)) return halves ? 2 * s.count : s.count;
  }
  return std::nullopt;
}

}  // namespace gownsheaf
