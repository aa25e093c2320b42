// Drawings: labels are set, hatches become lines under a clip, everything else is taken as it is.
#include <algorithm>

#include "layout/slab.h"

namespace gownsheaf {

namespace {

// First multiple of `apart` that is not below `from`; hatches of neighbouring areas then run on into each other.
Length first_multiple(Length from, Length apart) { return from.to_step(apart, Rounding::up); }

StrokeMark hatch_line(Point from, Point to, double weight) {
  StrokeMark mark;
  mark.path = path_of(from, to);
  mark.weight = pt(weight);
  return mark;
}

// Level: y = c. Rising to the right: x + y = c, as y grows downwards. Falling: x - y = c. Lines stand `apart` along a
// level edge, so c grows by exactly that and no angle is computed.
Mark lines_under_clip(const Hatch& hatch) {
  ClipMark clip{hatch.inside, {}};
  const Box box = bounds(hatch.inside);
  const Length apart = pt(hatch.apart);
  if (apart <= Length()) return {std::move(clip)};
  const auto add = [&](Point from, Point to) {
    if (from != to) clip.inside.push_back({hatch_line(from, to, hatch.weight)});
  };
  if (hatch.degrees == 0) {
    for (Length y = first_multiple(box.y, apart); y <= box.bottom(); y += apart) add({box.x, y}, {box.right(), y});
  } else if (hatch.degrees > 0) {
    for (Length c = first_multiple(box.x + box.y, apart); c <= box.right() + box.bottom(); c += apart) {
      const Length left = std::max(box.x, c - box.bottom()), right = std::min(box.right(), c - box.y);
      add({left, c - left}, {right, c - right});
    }
  } else {
    for (Length c = first_multiple(box.x - box.bottom(), apart); c <= box.right() - box.y; c += apart) {
      const Length left = std::max(box.x, c + box.y), right = std::min(box.right(), c + box.bottom());
      add({left, left - c}, {right, right - c});
    }
  }
  return {std::move(clip)};
}

void set_label(std::vector<Mark>& marks, const Label& label, const Bench& bench) {
  const Length size = label.size > 0 ? pt(label.size) : Length::points(bench.scale().text);
  const Length capital = size.times(bench.type.fonts().metrics(Face::regular).cap_height, 1000);
  const Length width = bench.type.width(label.text, label.size);
  Length along, down;  // from the anchor point to the start of the base line, in the label's own direction
  if (label.across == Label::Across::middle) along = -width.times(1, 2);
  if (label.across == Label::Across::right) along = -width;
  if (label.up == Label::Up::middle) down = capital.times(1, 2);
  if (label.up == Label::Up::top) down = capital;
  const bool upwards = label.angle == 90;
  const Point start = upwards ? Point{label.at.x + down, label.at.y - along} : Point{label.at.x + along, label.at.y + down};
  if (label.on_white) {
    const Length pad = pt(2), tail = size.times(1, 5);
    const Length high = capital + pad, low = tail + pad;
    const Box box = upwards ? Box{start.x - high, start.y - width - pad, high + low, width + 2 * pad}
                            : Box{start.x - pad, start.y - high, width + 2 * pad, high + low};
    marks.push_back(fill(path_of(box), Ink::white));
  }
  for (Mark& mark : bench.type.set(label.text, start, label.size, label.angle)) marks.push_back(std::move(mark));
}

struct Drawer {
  std::vector<Mark>& marks;
  const Bench& bench;
  void operator()(const StrokeMark& mark) const { marks.push_back({mark}); }
  void operator()(const FillMark& mark) const { marks.push_back({mark}); }
  void operator()(const Hatch& hatch) const { marks.push_back(lines_under_clip(hatch)); }
  void operator()(const Label& label) const { set_label(marks, label, bench); }
};

}  // namespace

Slabs slabs_of(const Drawing& drawing, const Bench& bench) {
  Slab slab;
  for (const DrawingItem& item : drawing.items) std::visit(Drawer{slab.marks, bench}, item);
  const std::vector<Text> lines = bench.type.lines(drawing.caption, kLiveWidth);
  const Length caption_top = drawing.height + pt(bench.either(4, 3));
  set_lines(slab.marks, bench, lines, {Length(), caption_top + bench.text_base()}, bench.step());
  slab.height = lines.empty() ? drawing.height : caption_top + bench.step() * static_cast<std::int64_t>(lines.size());
  slab.changed = any_changed(drawing.caption);
  for (const DrawingItem& item : drawing.items)
    if (const auto* label = std::get_if<Label>(&item)) slab.changed = slab.changed || any_changed(label->text);
  if (!drawing.below_last) slab.space_before = pt(bench.either(6, 5));
  if (drawing.head != nullptr) slab.again = std::make_shared<const Slabs>(slabs_of(*drawing.head, bench));
  slab.drawing = drawing.name.empty() ? "a drawing" : drawing.name;
  return {slab};
}

}  // namespace gownsheaf
