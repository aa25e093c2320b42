#include "packet/load_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"
#include "packet/scale.h"

namespace gownsheaf {
namespace {

constexpr double kEdgeX = 120, kBarsX = 150, kLongestBar = 170, kLongestBarBesideZones = 110;  // points from the left

FillMark bar(Length x, Length y, Length wide, Length high) {
  FillMark mark;
  mark.path = outline({x, y, wide, high}, 1).path;
  mark.ink = Ink::mid_grey;
  return mark;
}

}  // namespace

Drawing draw_load(const ClosingPlan& plan, const LoadPlan& load, const FigureText& text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const std::string key = "closures/" + plan.closure + "/";
  const std::size_t n = plan.fasteners.size();
  const double row = t.text + 3.0;
  // At true heights where the rows then keep apart, else in even rows: the distances stand on the closing's own sheet.
  const double points_high = std::max(120.0, std::min(380.0, row * static_cast<double>(n)));
  const auto height = [&](Length from_top) {
    return pt(t.smallest + 14) +
           pt(points_high).times(from_top.in_ticks(), std::max<std::int64_t>(1, plan.edge_length.in_ticks()));
  };
  Length least = pt(points_high);
  for (std::size_t i = 1; i < n; ++i)
    least = std::min(least, height(plan.fasteners[i].from_top) - height(plan.fasteners[i - 1].from_top));
  const bool even = least < pt(row);
  const auto y_of = [&](std::size_t i) {
    return even ? pt(t.smallest + 14 + row * (static_cast<double>(i) + 0.5)) : height(plan.fasteners[i].from_top);
  };
  const Length top = pt(t.smallest + 14), foot = top + (even ? pt(row * static_cast<double>(n)) : pt(points_high));

  Drawing out;
  double most = 0;
  for (const Force& f : load.pulls) most = std::max(most, f.value);
  out.items.push_back(put(bold("from the top"), {pt(kEdgeX - 12), pt(t.smallest)}, t.smallest, Label::Across::right));
  out.items.push_back(put(bold("pull at each, an estimate"), {pt(kBarsX), pt(t.smallest)}, t.smallest));
  out.items.push_back(line({pt(kEdgeX), top}, {pt(kEdgeX), foot}, 2.0));
  std::vector<Label> labels;
  const bool zoned = load.zones.size() > 1;
  const double longest = zoned ? kLongestBarBesideZones : kLongestBar;
  // Where a zone begins: at its height, or in even rows between the fasteners on both sides of it.
  const auto zone_at = [&](Length from_top) {
    if (!even) return height(from_top);
    const auto above =
        std::count_if(plan.fasteners.begin(), plan.fasteners.end(), [&](const Fastener& f) { return f.from_top < from_top; });
    return top + pt(row * static_cast<double>(above));
  };
  for (std::size_t z = 0; zoned && z < load.zones.size(); ++z) {
    const LoadZone& zone = load.zones[z];
    const Length from = zone_at(zone.starts), to = zone_at(zone.ends);
    if (z > 0) {  // clear of the bars and their words between
      out.items.push_back(line({pt(kEdgeX - 8), from}, {pt(kBarsX - 4), from}, 0.7, {4, 2}));
      out.items.push_back(line({pt(kRunWide - 70), from}, {pt(kRunWide), from}, 0.7, {4, 2}));
    }
    labels.push_back(put(bold(zone.name), {pt(kRunWide), from + (to - from).times(1, 2) - pt(t.smallest * 0.6)}, t.smallest,
                         Label::Across::right, Label::Up::middle));
    labels.push_back(put(words(text.about(key + "zone " + zone.name + "/line load")),
                         {pt(kRunWide), from + (to - from).times(1, 2) + pt(t.smallest * 0.6)}, t.smallest, Label::Across::right,
                         Label::Up::middle));
  }
  for (std::size_t i = 0; i < n && i < load.pulls.size(); ++i) {
    const std::string k = whole_number(static_cast<std::int64_t>(i + 1));
    const Length y = y_of(i);
    const double share = most > 0 ? load.pulls[i].value / most : 0;
    const Length wide = pt(longest).times(static_cast<std::int64_t>(share * 1000), 1000);
    out.items.push_back(bar(pt(kBarsX), y - pt(4), wide, pt(8)));
    labels.push_back(put(bold(k), {pt(24), y}, t.text, Label::Across::right, Label::Up::middle));
    labels.push_back(
        put(text.drawn(key + "fastener " + k), {pt(kEdgeX - 12), y}, t.text, Label::Across::right, Label::Up::middle));
    Text said = words(text.about(key + "pull " + k));
    if (!plan.fasteners[i].level.empty()) said = said + bold(" " + plan.fasteners[i].level);
    if (i + 1 == n && text.has(key + "hanging pull")) said = said + words(", with the skirt");
    labels.push_back(put(said, {pt(kBarsX) + wide + pt(5), y}, t.text, Label::Across::left, Label::Up::middle));
  }
  for (Label& label : labels) out.items.push_back(std::move(label));
  out.width = pt(kRunWide);
  out.height = foot + pt(8);
  out.name = "load " + plan.closure;
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
