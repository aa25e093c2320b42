#include "outline/joined_lines.h"

#include <algorithm>

namespace gownsheaf {

JoinedLines join_lines(const std::vector<const OpenLine*>& lines, double gap_mm) {
  JoinedLines out;
  std::vector<bool> used(lines.size());
  used[0] = true;
  out.ring = lines[0]->points;
  for (std::size_t joined = 1; joined < lines.size(); ++joined) {
    std::size_t best = lines.size();
    bool turned = false;
    double least = gap_mm;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (used[i]) continue;
      const double begins = distance_mm(out.ring.back(), lines[i]->points.front(), lines[i]->points.front());
      const double ends = distance_mm(out.ring.back(), lines[i]->points.back(), lines[i]->points.back());
      if (std::min(begins, ends) > least) continue;
      best = i;
      turned = ends < begins;
      least = std::min(begins, ends);
    }
    if (best == lines.size()) break;
    used[best] = true;
    Polygon next = lines[best]->points;
    if (turned) std::reverse(next.begin(), next.end());
    out.ring.insert(out.ring.end(), next.begin(), next.end());
    out.gap_mm = std::max(out.gap_mm, least);
  }
  const double last = distance_mm(out.ring.back(), out.ring.front(), out.ring.front());
  out.closed = last <= gap_mm && std::find(used.begin(), used.end(), false) == used.end();
  out.gap_mm = std::max(out.gap_mm, last);
  out.from = out.ring.back();
  out.to = out.ring.front();
  return out;
}

}  // namespace gownsheaf
