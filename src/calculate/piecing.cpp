#include "calculate/piecing.h"

#include <algorithm>

#include "calculate/exact.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kMostParts = 200;

// Inner parts and ends; the joins follow from the net widths.
std::vector<Length> net_widths(const PanelInput& in, std::int64_t n, Length lost) {
  const Length inner = in.usable - 2 * lost, end = in.usable - lost;  // widest net width inside, and at an edge
  const auto many = static_cast<std::size_t>(n);
  std::vector<Length> net(many, inner);
  if (in.clear_of_first != in.clear_of_last) {  // whole widths from the edge that is kept clear
    Length rest = in.width - end - (n - 2) * inner;
    net.front() = end;
    if (n >= 2 && rest < 4 * in.seam && n > 2) {  // too narrow an end: the last two share
      const Length two = rest + inner;
      rest = two.times(1, 2);
      net[many - 2] = two - rest;
    }
    net.back() = rest;
    if (in.clear_of_last) std::reverse(net.begin(), net.end());
  } else if (in.clear_of_first && n > 2) {  // both: the rest in the middle
    net.front() = net.back() = end;
    const Length middle = in.width - 2 * end;
    Length left = middle;
    for (std::size_t i = 1; i + 1 < many; ++i) {
      const Length one = i + 2 == many ? left : middle.times(1, n - 2);
      net[i] = one;
      left -= one;
    }
  } else {
    const Length outer = (in.width - (n - 2) * inner).times(1, 2);
    if (n > 2 && outer < 4 * in.seam) {
      Length left = in.width;
      for (std::size_t i = 0; i < many; ++i) {
        net[i] = i + 1 == many ? left : in.width.times(1, n);
        left -= net[i];
      }
    } else {
      net.front() = outer;
      net.back() = in.width - outer - (n - 2) * inner;
    }
  }
  return net;
}

}  // namespace

std::optional<PiecedPanel> piece_panel(const PanelInput& in) {
  PiecedPanel panel;
  if (in.width <= in.usable) {
    panel.parts.push_back({Length{}, in.width, in.width});
    return panel;
  }
  const Length lost = in.lose == StripsLose::both_seams ? in.seam : in.seam.times(1, 2, Rounding::up);  // at each edge of a join
  if (in.usable <= 2 * lost) return std::nullopt;
  std::int64_t n = 2;
  while (n <= kMostParts && n * in.usable < in.width + 2 * (n - 1) * lost) ++n;
  const bool to_an_edge = in.clear_of_first || in.clear_of_last;
  if (in.clear_of_centre && !to_an_edge && n % 2 == 0) ++n;
  if (n > kMostParts) return std::nullopt;
  const std::vector<Length> net = net_widths(in, n, lost);
  Length x;
  for (std::size_t i = 0; i < net.size(); ++i) {
    const bool first = i == 0, last = i + 1 == net.size();
    panel.parts.push_back({x, x + net[i], net[i] + (first ? Length{} : lost) + (last ? Length{} : lost)});
    x += net[i];
    if (!last) panel.joins.push_back(x);
  }
  for (const Length join : panel.joins) {
    if (join < in.clear_from_edge || in.width - join < in.clear_from_edge) panel.kept_clear = false;
    if (in.clear_of_centre && 2 * join == in.width) panel.kept_clear = false;
  }
  return panel;
}

}  // namespace gownsheaf
