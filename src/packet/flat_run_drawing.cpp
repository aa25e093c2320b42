// The flat run: a key to the marks, stretched to the page, not for measuring.
#include <algorithm>

#include "packet/run_parts.h"

namespace gownsheaf {
namespace {

struct FlatStrip {
  Length left, top, high;
  std::int64_t on_paper, of_cloth;
};

void draw_flat_part(std::vector<DrawingItem>& items, const PleatPlan& part, const FlatStrip& strip,
                    const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const auto size = static_cast<double>(t.text);
  const auto at = [&](Length real) { return strip.left + real.times(strip.on_paper, strip.of_cloth); };
  const Length low = strip.top + strip.high;
  for (const PleatMark& m : part.marks) {  // fills
    const Length a = at(std::min(m.fold, m.lay_on)), b = at(std::max(m.fold, m.lay_on));
    FillMark under;
    under.path = outline({a, strip.top, b - a, strip.high}, 1).path;
    under.ink = Ink::pale_grey;
    items.push_back(under);
  }
  items.push_back(outline({strip.left, strip.top, at(part.flat) - strip.left, strip.high}, 1.4));
  for (const PleatMark& m : part.marks) {
    const Length f = at(m.fold), l = at(m.lay_on);
    items.push_back(line({f, strip.top}, {f, low}, 2.0));
    items.push_back(line({l, strip.top}, {l, low}, 1.2, {4, 2}));
    StrokeMark arc;
    const Length up = strip.top - pt(14), end = strip.top - pt(5);
    arc.path = {{PathStep::Kind::move, {}, {}, {f, strip.top - pt(2)}}, {PathStep::Kind::curve, {f, up}, {l, up}, {l, end}}};
    arc.weight = pt(0.7);
    items.push_back(arc);
    items.push_back(arrowhead({l, strip.top - pt(1)}, 3));
  }
  for (const Length seam : part.seams_at) {
    items.push_back(line({at(seam), strip.top - pt(2)}, {at(seam), low + pt(6)}, 1.0, {8, 2, 2, 2}));
  }
  int named = 0;
  Length flat{};
  for (std::size_t i = 0; i < part.marks.size(); ++i) {
    const PleatMark& m = part.marks[i];
    const Length start = std::min(m.fold, m.lay_on), end = std::max(m.fold, m.lay_on);
    if (m.pleat != named) {
      named = m.pleat;
      Length a = flat, b = start;
      if (m.fold > m.lay_on) {
        a = m.fold;
        b = i + 1 < part.marks.size() ? std::min(part.marks[i + 1].fold, part.marks[i + 1].lay_on) : part.flat;
      }
      const Text number = words_in(Face::condensed_bold, whole_number(m.pleat));
      const Length room = at(b) - at(a), middle = at(a) + room.times(1, 2);
      if (typesetter.width(number, size) + pt(4) <= room) {
        items.push_back(
            put(number, {middle, strip.top + strip.high.times(1, 2)}, size, Label::Across::middle, Label::Up::middle));
      } else {
        items.push_back(put(number, {middle, low + pt(3)}, t.smallest, Label::Across::middle, Label::Up::top));
      }
    }
    flat = end;
  }
}

void name_seams(std::vector<DrawingItem>& items, const PleatPlan& part, const FlatStrip& strip, Length y,
                const Typesetter& typesetter) {
  const double size = typesetter.scale().smallest;
  const Text word = condensed("seam");
  const Length wide = typesetter.width(word, size);
  Length free_from = pt(-1000);
  for (const Length seam : part.seams_at) {
    Length x = strip.left + seam.times(strip.on_paper, strip.of_cloth) - wide.times(1, 2);
    x = std::clamp(x, Length{}, pt(kRunWide) - wide);
    if (x < free_from) continue;
    items.push_back(put(word, {x, y}, size, Label::Across::left, Label::Up::top));
    free_from = x + wide + pt(6);
  }
}

}  // namespace

Drawing draw_flat_run(const PleatPlan& plan, const FigureText&, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const double room = kRunWide - 2 * kRunMargin;
  const DrawnPleats drawn = drawn_pleats(plan, plan.count > 0 ? room / static_cast<double>(plan.count) : room);
  const std::vector<PleatPlan> parts = drawn_parts(plan, drawn);
  Length together{};
  for (const PleatPlan& p : parts) together += p.flat;

  Drawing out;
  const Length words =
      words_over(out.items,
                 plan.kind == "tucks" ? "Flat. Grey stands out as the tuck. Sew each full line to its dashed line."
                                      : "Flat, right side up. Grey goes under. Bring each full line onto its dashed line.",
                 typesetter);
  FlatStrip strip;
  strip.top = words + pt(22);
  strip.high = pt(t.text + 10);
  strip.left = pt(kRunMargin);
  strip.on_paper = pt(drawn.crowded ? room - kRunGap : room).in_ticks();
  strip.of_cloth = std::max<std::int64_t>(together.in_ticks(), 1);
  const Length low = strip.top + strip.high;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    draw_flat_part(out.items, parts[i], strip, typesetter);
    name_seams(out.items, parts[i], strip, low + pt(7), typesetter);
    strip.left += parts[i].flat.times(strip.on_paper, strip.of_cloth);
    if (drawn.crowded && i == 0) {
      say_gap(out.items, drawn, strip.left + pt(kRunGap / 2), strip.top + strip.high.times(1, 2), t.text);
      strip.left += pt(kRunGap);
    }
  }
  out.width = pt(kRunWide);
  out.height = low + pt(plan.seams_at.empty() ? 4 + t.smallest : 10 + t.smallest);
  out.name = "pleats flat " + plan.run;
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
