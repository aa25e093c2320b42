// A pleated run settled a second time, by another road: the count is found by trying every whole number, the widths then
// from three linear equations by elimination, in doubles and in ticks. For tests only.
#pragma once
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <vector>

namespace plain_pleats {

// flat is less `plus`; 0 is "not said". fullness is top / bottom. within: half the step that lengths are printed in.
struct Said {
  std::int64_t folds = 2, flat = 0, finished = 0, count = 0, depth = 0, visible = 0, top = 0, bottom = 1, within = 0;
};
enum class How { settled, too_few, refused };
// near_limit: something lies so near to a limit that doubles cannot tell on which side.
struct Answer {
  How how = How::too_few;
  std::int64_t count = 0;
  double flat = 0, finished = 0, depth = 0, visible = 0;
  bool near_limit = false;
};

inline constexpr std::int64_t kMost = 2000;

// The whole number from 1 whose multiple of `one` comes nearest to `all`, the smaller of two; kMost + 1 stands for more.
inline std::int64_t nearest(std::int64_t all, std::int64_t one) {
  std::int64_t best = 1;
  for (std::int64_t n = 2; n <= kMost + 1; ++n)
    if (std::llabs(all - n * one) < std::llabs(all - best * one)) best = n;
  return best;
}

using Equation = std::array<double, 4>;  // of flat, finished, depth: a W + b F + c d = e

// As many of the equations, in their order, as bring something new; false when they are not enough.
inline bool solve(const std::vector<Equation>& all, std::array<double, 3>& out) {
  std::vector<std::pair<int, Equation>> kept;  // the column each is solved for
  for (Equation e : all) {
    for (const auto& [column, k] : kept) {
      const double by = e[static_cast<std::size_t>(column)] / k[static_cast<std::size_t>(column)];
      for (std::size_t i = 0; i < 4; ++i) e[i] -= by * k[i];
      e[static_cast<std::size_t>(column)] = 0;
    }
    int most = 0;
    for (int i = 1; i < 3; ++i)
      if (std::abs(e[static_cast<std::size_t>(i)]) > std::abs(e[static_cast<std::size_t>(most)])) most = i;
    if (std::abs(e[static_cast<std::size_t>(most)]) < 1e-9) continue;
    kept.emplace_back(most, e);
    if (kept.size() == 3) break;
  }
  if (kept.size() < 3) return false;
  for (int i = 2; i >= 0; --i) {
    const auto& [column, e] = kept[static_cast<std::size_t>(i)];
    double rest = e[3];
    for (int j = i + 1; j < 3; ++j)
      rest -= e[static_cast<std::size_t>(kept[static_cast<std::size_t>(j)].first)] *
              out[static_cast<std::size_t>(kept[static_cast<std::size_t>(j)].first)];
    out[static_cast<std::size_t>(column)] = rest / e[static_cast<std::size_t>(column)];
  }
  return true;
}

inline Answer settle(const Said& s) {
  Answer a;
  a.how = How::refused;
  if (s.flat > 0 && s.finished > 0 && s.flat <= s.finished) return a;
  if (s.top > 0 && s.top <= s.bottom) return a;
  a.how = How::too_few;

  bool visible_wish = false, fullness_wish = false;
  const std::int64_t takes = s.folds * s.depth, more = s.top - s.bottom;
  if (s.count > 0) {
    a.count = s.count;
  } else if (s.flat > 0 && s.finished > 0 && s.depth > 0) {
    a.count = nearest(s.flat - s.finished, takes);
  } else if (s.visible > 0) {
    visible_wish = true;
    if (s.finished > 0) a.count = nearest(s.finished, s.visible);
    else if (s.flat > 0 && s.depth > 0) a.count = nearest(s.flat, s.visible + takes);
    else if (s.flat > 0 && s.top > 0) a.count = nearest(s.flat * s.bottom, s.top * s.visible);
    else return a;
  } else if (s.top > 0 && s.depth > 0 && (s.flat > 0 || s.finished > 0)) {
    fullness_wish = true;
    a.count = s.finished > 0 ? nearest(s.finished * more, s.bottom * takes) : nearest(s.flat * more, s.top * takes);
  } else {
    return a;
  }
  const auto n = static_cast<double>(a.count), full = static_cast<double>(s.top) / static_cast<double>(s.bottom);
  std::vector<Equation> equations = {{1, -1, -static_cast<double>(s.folds) * n, 0}};
  if (s.flat > 0) equations.push_back({1, 0, 0, static_cast<double>(s.flat)});
  if (s.finished > 0) equations.push_back({0, 1, 0, static_cast<double>(s.finished)});
  if (s.depth > 0) equations.push_back({0, 0, 1, static_cast<double>(s.depth)});
  if (s.visible > 0 && !visible_wish) equations.push_back({0, 1, 0, n * static_cast<double>(s.visible)});
  if (s.top > 0 && !fullness_wish) equations.push_back({1, -full, 0, 0});
  std::array<double, 3> x{};
  if (!solve(equations, x)) return a;

  a.flat = x[0];
  a.finished = x[1];
  a.how = How::refused;
  const auto past = [&](double off, double limit) {
    a.near_limit = a.near_limit || std::abs(off - limit) < 1e-4;
    return off > limit;
  };
  if (a.count > kMost || !past(a.finished, 0) || !past(a.flat, a.finished)) return a;
  a.visible = a.finished / n;
  a.depth = (a.flat - a.finished) / (static_cast<double>(s.folds) * n);
  const auto within = static_cast<double>(s.within);
  if (s.depth > 0 && past(std::abs(static_cast<double>(s.depth) - a.depth), within)) return a;
  if (s.visible > 0 && !visible_wish && past(std::abs(static_cast<double>(s.visible) - a.visible), within)) {
    const bool same_count = s.count == 0 && nearest(s.finished, s.visible) == a.count;
    if (!same_count) return a;
  }
  if (s.top > 0 && !fullness_wish) {
    const bool off = past(std::abs(full * a.finished - a.flat), within);
    if (past(std::abs(full - a.flat / a.finished) * 1e4, 50) && off) return a;
  }
  a.how = How::settled;
  return a;
}

}  // namespace plain_pleats
