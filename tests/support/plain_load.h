// The load of a closing reckoned a second time, by another road and in other units: inches, pounds-force and mmHg, the edge
// walked in sixty-fourths of an inch, each small step of it given to the nearest fastener. For tests only.
#pragma once
#include <cmath>
#include <cstdlib>
#include <vector>

namespace plain_load {

struct Zone {
  int from, to;
  double girth, short_by, mmhg, factor;
};  // from, to in 64ths of an inch; mmhg < 0: by the shortfall
struct Edge {
  int length = 0;       // 64ths of an inch
  std::vector<int> at;  // fasteners, even numbers of 64ths
  int rows = 1;
  std::vector<Zone> zones;
  bool corset = false;
  double pounds = 0, seam = 26, elsewhere = 0;
};

inline double mmhg_of(const Edge& e, const Zone& z) {
  if (z.mmhg >= 0) return z.mmhg;
  if (z.short_by < 0) return z.short_by <= -1 ? 0 : 6 * (1 + z.short_by);
  const double pressed = (e.corset ? 7.0 : 3.5) * z.short_by / z.girth * 100;
  return pressed < 6 ? 6 : pressed;
}

// 1 mmHg on a girth of 1 in: 133.322387415 Pa x 0.0254 m / 2 pi, in lbf/in.
inline double tension(const Edge& e, const Zone& z) { return 0.0030775 * mmhg_of(e, z) * z.girth; }

inline double hanging(const Edge& e) { return e.pounds / e.seam * (1 - e.elsewhere) * 6; }

// Each 64th of the edge pulls at the fastener nearest to its middle; a middle between two goes half to each.
inline std::vector<double> pulls(const Edge& e, const std::vector<int>& at) {
  std::vector<double> out(at.size(), 0);
  for (int step = 0; step < e.length; ++step) {
    double line = 0;
    for (const Zone& z : e.zones)
      if (step >= z.from && step < z.to) line = tension(e, z) * z.factor;
    int nearest = 1 << 30;
    for (const int a : at) nearest = std::min(nearest, std::abs(2 * a - (2 * step + 1)));
    int sharing = 0;
    for (const int a : at) sharing += std::abs(2 * a - (2 * step + 1)) == nearest;
    for (std::size_t i = 0; i < at.size(); ++i)
      if (std::abs(2 * at[i] - (2 * step + 1)) == nearest) out[i] += line / 64 / sharing;
  }
  for (double& pull : out) pull /= e.rows;
  out.back() = std::hypot(out.back(), hanging(e));
  return out;
}

// The worst that a neighbour comes to take when any one opens; a single row of two or more.
inline double when_one_opens(const Edge& e) {
  double worst = 0;
  for (std::size_t gone = 0; gone < e.at.size(); ++gone) {
    std::vector<int> left = e.at;
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(gone));
    const std::vector<double> now = pulls(e, left);
    if (gone > 0) worst = std::max(worst, now[gone - 1]);
    if (gone < now.size()) worst = std::max(worst, now[gone]);
  }
  return worst;
}

inline int band(const Edge& e) {
  int most = 0;
  for (const Zone& z : e.zones) {
    const bool lowest = z.from <= e.at.back() && z.to >= e.at.back();
    const double each = std::hypot(tension(e, z) * z.factor * 1.25, lowest ? hanging(e) : 0) / 1.25;
    most = std::max(most, each < 0.4 ? 0 : each < 1.2 ? 1 : each < 2.4 ? 2 : each <= 4 ? 3 : 4);
  }
  return most;
}

}  // namespace plain_load
