#include "calculate/pulled_edge.h"

#include <algorithm>

namespace gownsheaf {
namespace {

const Length kUsualReach = Length::sixty_fourths(80);  // 1 1/4 in to itself

// The pull over a stretch of the edge, zone by zone.
Force over_stretch(const std::vector<PulledZone>& zones, const std::vector<ZonePull>& pulls, Length from, Length to) {
  Force sum;
  for (std::size_t z = 0; z < zones.size(); ++z) {
    const Length reach = std::min(to, zones[z].ends) - std::max(from, zones[z].starts);
    if (reach > Length{}) sum.value += fastener_pull(pulls[z].moving, reach).value;
  }
  return sum;
}

// Each place pulls over half the distance to its neighbours; an end one over its inset as well.
std::vector<Force> across_each(const PulledEdge& edge, const std::vector<ZonePull>& zones) {
  std::vector<Force> across;
  const auto& p = edge.places;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Length from = i == 0 ? Length{} : p[i] - (p[i] - p[i - 1]).times(1, 2);
    const Length to = i + 1 == p.size() ? std::max(edge.edge, p[i]) : p[i] + (p[i + 1] - p[i]).times(1, 2);
    Force pull = over_stretch(edge.zones, zones, from, to);
    pull.value /= static_cast<double>(std::max<std::int64_t>(1, edge.rows));
    across.push_back(pull);
  }
  return across;
}

// What hangs counts as the pull on a fastener with the usual distance to itself.
std::string_view band_of(LoadPerLength moving, Force hanging) {
  const Force one = with_hanging(fastener_pull(moving, kUsualReach), hanging);
  return load_band({one.value / (kUsualReach.in_mm() / 1000)});
}

}  // namespace

EdgePull pull_of(const PulledEdge& edge) {
  EdgePull out;
  for (const PulledZone& z : edge.zones) {
    ZonePull pull;
    pull.pressure = z.pressure ? *z.pressure : worn_pressure(z.shortfall, z.girth, edge.over_corset, edge.each_percent);
    pull.at_rest = hoop_tension(pull.pressure, z.girth);
    pull.moving = {pull.at_rest.value * z.factor};
    out.zones.push_back(pull);
  }
  if (edge.hung.value > 0) out.hanging = hanging_pull(edge.hung, edge.seam, edge.share);
  out.across = out.pulls = across_each(edge, out.zones);
  out.pulls.back() = with_hanging(out.pulls.back(), out.hanging);
  for (std::size_t i = 1; i < out.pulls.size(); ++i)
    if (out.pulls[i] > out.pulls[out.most]) out.most = i;
  out.band = "R0";
  for (std::size_t z = 0; z < out.zones.size(); ++z) {
    if (out.zones[z].moving > out.zones[out.heaviest].moving) out.heaviest = z;
    const bool lowest = edge.zones[z].ends >= edge.places.back() && edge.zones[z].starts <= edge.places.back();
    out.band = std::max(out.band, band_of(out.zones[z].moving, lowest ? out.hanging : Force{}));
  }
  return out;
}

std::optional<GivesWay> worst_failure(const PulledEdge& edge) {
  const EdgePull whole = pull_of(edge);
  std::optional<GivesWay> worst;
  const auto take = [&](std::size_t fastener, std::size_t neighbour, Force takes) {
    if (!worst || takes > worst->takes) worst = GivesWay{fastener, neighbour, takes};
  };
  if (edge.rows > 1) {
    const double times = static_cast<double>(edge.rows) / static_cast<double>(edge.rows - 1);
    for (std::size_t i = 0; i < whole.pulls.size(); ++i) take(i, i, {whole.pulls[i].value * times});
    return worst;
  }
  for (std::size_t i = 0; i < edge.places.size() && edge.places.size() > 1; ++i) {
    PulledEdge without = edge;
    without.places.erase(without.places.begin() + static_cast<std::ptrdiff_t>(i));
    std::vector<Force> left = across_each(without, whole.zones);
    left.back() = with_hanging(left.back(), whole.hanging);
    if (i > 0) take(i, i - 1, left[i - 1]);
    if (i < left.size()) take(i, i + 1, left[i]);
  }
  return worst;
}

std::optional<Length> let_out_to_lower_band(const PulledEdge& edge, Length step, Length at_most) {
  const std::string_view now = pull_of(edge).band;
  PulledEdge eased = edge;
  for (Length by = step; by <= at_most; by += step) {
    for (PulledZone& z : eased.zones) z.shortfall -= step;
    if (pull_of(eased).band < now) return by;
  }
  return std::nullopt;
}

std::vector<Varied> sensitivity(const PulledEdge& edge, const std::vector<Variation>& variations) {
  std::vector<Varied> out;
  for (const Variation& v : variations) {
    PulledEdge one = edge, other = edge;
    v.least(one);
    v.most(other);
    const Force a = pull_of(one).greatest(), b = pull_of(other).greatest();
    out.push_back({v.input, std::min(a, b), std::max(a, b)});
  }
  std::sort(out.begin(), out.end(), [](const Varied& a, const Varied& b) {
    const double wide = a.high.value - a.low.value, other = b.high.value - b.low.value;
    return wide != other ? wide > other : a.input < b.input;
  });
  return out;
}

}  // namespace gownsheaf
