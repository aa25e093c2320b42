// An outline in a pose. Sine and cosine are worked out here, by + - * / alone, so that every machine rounds corners alike.
#include <algorithm>
#include <cmath>

#include "nest/nest.h"

namespace gownsheaf::nest {
namespace {

struct CosSin {
  double c, s;
};

// Of 0 <= millidegrees < 90,000: Taylor's series, exact to the last places below 45 degrees.
CosSin cos_sin(int millidegrees) {
  const bool beyond = millidegrees > 45000;
  const double t = (beyond ? 90000 - millidegrees : millidegrees) * (3.14159265358979323846 / 180000);
  double c = 1, s = t, term = t;
  for (int k = 2; k < 24; ++k) {
    term = term * t / k;
    const double sign = k % 4 < 2 ? 1 : -1;
    (k % 2 == 0 ? c : s) += sign * term;
  }
  return beyond ? CosSin{s, c} : CosSin{c, s};
}

Length rounded(double v) { return Length::ticks(static_cast<std::int64_t>(std::floor(v + 0.5))); }

}  // namespace

Polygon posed(const Polygon& outline, const Pose& pose) {
  const std::int64_t whole = (static_cast<std::int64_t>(pose.quarter_turns) % 4 * 90000 + pose.millidegrees) % 360000;
  const int turn = static_cast<int>((whole + 360000) % 360000);
  Polygon out = outline;
  if (turn % 90000 != 0) {
    const CosSin a = cos_sin(turn % 90000);
    for (Point& p : out) {
      const double x = static_cast<double>(pose.mirrored ? -p.x.in_ticks() : p.x.in_ticks()),
                   y = static_cast<double>(p.y.in_ticks());
      p = {rounded(x * a.c - y * a.s), rounded(x * a.s + y * a.c)};
    }
  } else if (pose.mirrored) {
    for (Point& p : out) p.x = -p.x;
  }
  for (int q = turn / 90000; q > 0; --q) {
    for (Point& p : out) p = {-p.y, p.x};
  }
  if (out.empty()) return out;
  const Box box = bounds(out);
  for (Point& p : out) p = {p.x - box.x, p.y - box.y};
  return out;
}

}  // namespace gownsheaf::nest
