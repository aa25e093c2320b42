#include "packet/lay_drawing.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "geometry/slabs.h"
#include "packet/lay_labels.h"
#include "packet/lay_marks.h"

namespace gownsheaf {
namespace {

constexpr double kLive = 486;
constexpr double kLayEdge = 1;      // half the weight of the cloth's edge, so that no ink leaves the drawing
constexpr double kWidthRuler = 48;  // ticks and numbers at the right
constexpr std::int64_t kMostParts = 4;
constexpr int kSlabsForNames = 24;  // the finer, the more room is found in an outline for its name

Length room_wide() { return pt(kLive - kWidthRuler - 2 * kLayEdge); }

Length below_cloth(const TypeScale& t) { return pt(6 + 10 + 4 + t.text + 10 + t.text + 4 + t.text + 7); }

Length repeated(ShownIn shown_in) { return shown_in == ShownIn::inches ? Length::inches(10) : Length::cm(25); }

const CutPiece* cut_piece(const LayPlan& plan, const std::string& name) {
  for (const std::vector<CutPiece>* list : {&plan.cut, &plan.kept})
    for (const CutPiece& c : *list)
      if (c.piece == name) return &c;
  return nullptr;
}

// A break at `to`, and where the part after it begins: there, where no piece crosses; else before the pieces that do, so that each
// is whole in one of the two. Not so early that little is gained: then a long piece is broken, and a stretch of it is drawn twice.
struct Break {
  Length to, next;
  bool whole = true;
  bool straight() const { return next == to; }
  bool operator<(const Break& o) const {
    return std::make_tuple(straight(), whole, next, to) < std::make_tuple(o.straight(), o.whole, o.next, o.to);
  }
};
Break break_at(const LaidStrip& strip, Length from, Length to, Length most, ShownIn shown_in) {
  Break at{to, to};
  for (const LaidPiece& p : strip.placed)
    if (p.at.x < to && to < p.at.right()) at.next = std::min(at.next, p.at.x);
  at.whole = at.next >= from + most.times(1, 4);
  if (!at.whole) at.next = to - std::min(repeated(shown_in), most.times(1, 3));
  return at;
}

std::vector<LayPart> break_up(const LaidStrip& strip, Length most, ShownIn shown_in) {
  std::vector<LayPart> parts;
  LayPart part{Length{}, strip.length, false, false};
  while (strip.length - part.from > most) {
    Break best = break_at(strip, part.from, part.from + most, most, shown_in);
    for (const LaidPiece& p : strip.placed) {
      const Length x = p.at.right();
      if (x > part.from + most.times(1, 4) && x <= part.from + most)
        best = std::max(best, break_at(strip, part.from, x, most, shown_in));
    }
    part.to = best.to;
    parts.push_back(part);
    part = {best.next, strip.length, best.straight(), !best.straight()};
  }
  parts.push_back(part);
  return parts;
}

bool piece_lies_on(const LaidStrip& strip, const LayPart& part) {
  return std::any_of(strip.placed.begin(), strip.placed.end(),
                     [&](const LaidPiece& p) { return p.at.x < part.to && p.at.right() > part.from; });
}

struct RulerSteps {
  Length tick, longer, number;
};
RulerSteps length_ruler(DrawingScale scale, ShownIn shown_in) {
  if (shown_in == ShownIn::inches) {
    if (scale.one_to <= 8) return {Length::inches(1), Length::inches(3), Length::inches(9)};
    return {Length::inches(3), Length::inches(9), Length::inches(18)};
  }
  if (scale.one_to <= 10) return {Length::cm(2), Length::cm(10), Length::cm(20)};
  return {Length::cm(5), Length::cm(10), Length::cm(50)};
}
RulerSteps width_ruler(DrawingScale scale, ShownIn shown_in) {
  if (shown_in == ShownIn::inches) {
    if (scale.one_to <= 8) return {Length::inches(2), Length::inches(4), Length::inches(4)};
    if (scale.one_to <= 16) return {Length::inches(4), Length::inches(8), Length::inches(8)};
    return {Length::inches(8), Length::inches(16), Length::inches(16)};
  }
  if (scale.one_to <= 10) return {Length::cm(5), Length::cm(10), Length::cm(10)};
  if (scale.one_to <= 20) return {Length::cm(10), Length::cm(20), Length::cm(20)};
  return {Length::cm(20), Length::cm(50), Length::cm(50)};
}

Label ruler_number(Length value, Point at, Label::Across across, Label::Up up, const Typesetter& typesetter, ShownIn shown_in) {
  const Length unit = shown_in == ShownIn::inches ? Length::inches(1) : Length::cm(1);
  Label label;
  label.text = condensed(whole_number(count_of(value, unit, Rounding::nearest)));
  label.at = at;
  label.across = across;
  label.up = up;
  label.size = typesetter.scale().text;
  return label;
}

void draw_length_ruler(std::vector<DrawingItem>& items, const LayPart& part, DrawingScale scale, Length y,
                       const Typesetter& typesetter, ShownIn shown_in) {
  const RulerSteps steps = length_ruler(scale, shown_in);
  const Length left = pt(kLayEdge), right = left + scale.of(part.to - part.from);
  items.push_back(line({left, y}, {right, y}, 0.7));
  std::vector<Label> numbers;
  const std::int64_t first = count_of(part.from, steps.tick, Rounding::up);
  for (std::int64_t i = first; steps.tick * i <= part.to; ++i) {
    const Length real = steps.tick * i;
    const Length x = left + scale.of(real - part.from);
    const bool number = real.in_ticks() % steps.number.in_ticks() == 0;
    const bool longer = real.in_ticks() % steps.longer.in_ticks() == 0;
    items.push_back(line({x, y}, {x, y + pt(number ? 10 : longer ? 7 : 4)}, 0.7));
    if (!number) continue;
    // The first number stands right of its tick and the last left of the drawing's end, so that neither hangs out.
    Label label = ruler_number(real, {x, y + pt(13)}, Label::Across::middle, Label::Up::top, typesetter, shown_in);
    if (x < typesetter.width(label.text, label.size).times(1, 2)) label.across = Label::Across::left;
    numbers.push_back(std::move(label));
  }
  if (!numbers.empty() && numbers.size() > 1) {
    numbers.back().text = numbers.back().text + condensed("\u00A0" + unit_of(shown_in));
  }
  for (Label& n : numbers) items.push_back(std::move(n));
}

void draw_width_ruler(std::vector<DrawingItem>& items, const LaidStrip& strip, DrawingScale scale, Length x,
                      const Typesetter& typesetter, ShownIn shown_in) {
  const RulerSteps steps = width_ruler(scale, shown_in);
  const Length bottom = pt(kLayEdge) + scale.of(strip.width);
  items.push_back(line({x, pt(kLayEdge)}, {x, bottom}, 0.7));
  std::vector<Label> numbers;
  for (std::int64_t i = 0; steps.tick * i <= strip.width; ++i) {
    const Length real = steps.tick * i;
    const Length y = bottom - scale.of(real);
    const bool number = real.in_ticks() % steps.number.in_ticks() == 0;
    items.push_back(line({x, y}, {x + pt(number ? 10 : 5), y}, 0.7));
    if (!number) continue;
    auto up = Label::Up::middle;
    if (i == 0) up = Label::Up::base;
    else if (y < pt(typesetter.scale().text / 2.0)) up = Label::Up::top;
    numbers.push_back(ruler_number(real, {x + pt(13), y}, Label::Across::left, up, typesetter, shown_in));
  }
  for (Label& n : numbers) items.push_back(std::move(n));
}

const std::vector<int> kFoldDash{12, 3, 2, 3};
constexpr double kFoldWeight = 2.0;

// What the hatch and the arrow mean, and the scale bar: on the same page as the drawing.
Length draw_key(std::vector<DrawingItem>& items, Length y, const LayPlan& plan, const LaidStrip& strip, DrawingScale scale,
                const Typesetter& typesetter, ShownIn shown_in) {
  const double size = typesetter.scale().text;
  const Length base = y + pt(size);
  const Box swatch{pt(kLayEdge), base - pt(size - 1), pt(26), pt(size)};
  Hatch hatch;
  hatch.inside = outline(swatch, 1.0).path;
  items.insert(items.begin(), hatch);
  items.push_back(outline(swatch, 0.7));
  const auto say = [&](const std::string& s, Length x) {
    Label label;
    label.text = condensed(s);
    label.at = {x, base};
    label.size = size;
    const Length wide = typesetter.width(label.text, size);
    items.push_back(label);
    return x + wide;
  };
  Length x = say("left over", pt(34)) + pt(22);
  const Length arrow_y = base - pt(size * 0.3);
  items.push_back(line({x + pt(5), arrow_y}, {x + pt(36), arrow_y}, 0.7));
  items.push_back(arrowhead({x, arrow_y}, 2));
  x = say("grain, toward the top", x + pt(42)) + pt(22);
  const Length second = base + pt(size + 7);
  bool more = false;
  Length left = pt(kLayEdge);
  const auto entry = [&](const std::string& s, const auto& draw) {
    draw(left, second - pt(size * 0.3));
    Label label;
    label.text = condensed(s);
    label.at = {left + pt(40), second};
    label.size = size;
    left += pt(40) + typesetter.width(label.text, size) + pt(18);
    items.push_back(label);
    more = true;
  };
  if (plan.one_way)
    entry(plan.repeats_one_way ? "design, this way up" : "nap, this way", [&](Length at, Length mid) {
      items.push_back(line({at + pt(6), mid}, {at + pt(34), mid}, 2.0));
      items.push_back(arrowhead({at, mid}, 2));
    });
  if (strip.folded != Folded::no)
    entry(strip.folded == Folded::lengthwise ? "fold, along the top" : "fold, at the right end", [&](Length at, Length mid) {
      items.push_back(line({at, mid}, {at + pt(34), mid}, kFoldWeight, kFoldDash));
    });
  if (strip.repeat_along || strip.repeat_across)
    entry("repeat of the design", [&](Length at, Length mid) {
      for (const double dx : {4.0, 16.0, 28.0})
        items.push_back(line({at + pt(dx), mid - pt(4)}, {at + pt(dx), mid + pt(3)}, 1.4));
    });
  if (std::any_of(strip.placed.begin(), strip.placed.end(), [](const LaidPiece& p) { return p.match.has_value(); }))
    entry("lies on a line of it", [&](Length at, Length mid) { draw_match(items, {at + pt(17), mid}); });
  const Length words_room = pt(size * 3.2);
  scale_bar(items, {x, base}, scale, shown_in, size, pt(kLive) - x - words_room);
  return (more ? second : base) + pt(4);
}

}  // namespace

std::string cut_key(const LayPlan& plan, const std::string& piece) {
  const CutPiece* c = cut_piece(plan, piece);
  return c == nullptr ? "" : c->key;
}

std::string copy_name(const LayPlan& plan, const LaidPiece& laid) {
  const CutPiece* c = cut_piece(plan, laid.piece);
  if (c != nullptr && laid.also > 0)
    return c->copies == 2 ? laid.piece + ", both"
                          : laid.piece + "\u00A0" + whole_number(laid.copy) + " and\u00A0" + whole_number(laid.also);
  return c != nullptr && c->copies > 1 ? laid.piece + "\u00A0" + whole_number(laid.copy) : laid.piece;
}

LayParts lay_parts(const LaidStrip& strip, const Typesetter& typesetter, ShownIn shown_in, Length room_high, bool together) {
  const Length high = room_high - below_cloth(typesetter.scale()) - pt(2 * kLayEdge);
  LayParts out;
  const std::int64_t largest = shown_in == ShownIn::inches ? 8 : 10;
  const std::int64_t usual = shown_in == ShownIn::inches ? 16 : 20;
  for (const DrawingScale scale : scales(shown_in)) {
    if (scale.one_to < largest) continue;
    out.scale = scale;
    const bool last = scale.one_to == scales(shown_in).back().one_to;
    if (!last && scale.of(strip.width) > high) continue;
    const Length most = room_wide() * scale.one_to;
    out.parts = break_up(strip, most, shown_in);
    while (out.parts.size() > 1 && !piece_lies_on(strip, out.parts.back())) out.parts.pop_back();
    const auto count = static_cast<std::int64_t>(out.parts.size());
    if (together && !last && (scale.of(strip.width) + below_cloth(typesetter.scale()) + pt(2 * kLayEdge)) * count > room_high)
      continue;
    if (last || count == 1 || (scale.one_to == usual && count <= kMostParts)) break;
  }
  if (!out.parts.empty()) out.drawn_to = out.parts.back().to;
  return out;
}

Box on_paper(const Box& laid, const LaidStrip& strip, const LayPart& part, DrawingScale scale) {
  const Length x = scale.of(laid.x - part.from);
  const Length far = scale.of(laid.right() - part.from);
  // Both edges are scaled from the same zero, so that pieces that touch on the cloth touch on paper.
  const Length low = scale.of(strip.width - laid.y), high = scale.of(strip.width - laid.bottom());
  return {pt(kLayEdge) + x, pt(kLayEdge) + high, far - x, low - high};
}

Polygon ring_on_paper(const Polygon& laid, const LaidStrip& strip, const LayPart& part, DrawingScale scale) {
  Polygon ring;
  for (const Point& p : laid)
    ring.push_back({pt(kLayEdge) + scale.of(p.x - part.from), pt(kLayEdge) + scale.of(strip.width - p.y)});
  return ring;
}

LayDrawing draw_lay_part(const LayPlan& plan, const LaidStrip& strip, const LayParts& parts, std::size_t which,
                         std::size_t first_left_over, const FigureText& figure_text, const Typesetter& typesetter) {
  const LayPart& part = parts.parts.at(which);
  const DrawingScale scale = parts.scale;
  const ShownIn shown_in = figure_text.shown_in();
  LayDrawing out;
  std::vector<DrawingItem>& items = out.drawing.items;
  const Box cloth = on_paper({part.from, Length{}, part.to - part.from, strip.width}, strip, part, scale);

  Hatch left_over;
  left_over.inside = outline(cloth, 0.5).path;
  items.push_back(left_over);

  LabelPlan labels{figure_text, typesetter, {}, {}, 0, {}, cloth, {}};
  std::vector<DrawingItem> outlines, grain;
  for (const LaidPiece& laid : strip.placed) {
    if (laid.at.x >= part.to || laid.at.right() <= part.from) continue;
    Box shown = laid.at;
    const Length right = std::min(laid.at.right(), part.to);
    shown.x = std::max(laid.at.x, part.from);
    shown.width = right - shown.x;
    const Box box = on_paper(shown, strip, part, scale);
    StrokeMark edge = outline(box, 1.4);
    Box room = box;
    if (laid.outline.empty()) labels.taken.push_back(box);
    if (!laid.outline.empty()) {
      const Polygon visible = clipped_along(laid.outline, part.from, part.to);
      edge.path = path_of_polygon(ring_on_paper(visible, strip, part, scale));
      room = on_paper(box_inside(visible, kSlabsForNames), strip, part, scale);
      for (const Box& slab : boxes_over(visible, kSlabsForNames)) labels.taken.push_back(on_paper(slab, strip, part, scale));
    }
    FillMark white;
    white.path = edge.path;
    white.ink = Ink::white;
    items.push_back(white);
    outlines.push_back(edge);
    label_piece(labels, plan, laid, room, box, grain);
    draw_lines(grain, laid, strip, part, scale);
  }
  for (std::size_t i = 0; i < strip.left_over.size(); ++i) {
    const Box& rest = strip.left_over[i];
    if (rest.x < part.from || rest.right() > part.to) continue;
    const std::string key = "cloths/" + plan.cloth + "/left over " + whole_number(static_cast<std::int64_t>(first_left_over + i));
    label_left_over(labels, key, on_paper(rest, strip, part, scale));
  }

  for (const Box& bad : strip.bad_places) {
    if (bad.x >= part.to || bad.right() <= part.from) continue;
    Box shown = bad;
    shown.x = std::max(bad.x, part.from);
    shown.width = std::min(bad.right(), part.to) - shown.x;
    const Box box = on_paper(shown, strip, part, scale);
    FillMark grey;
    grey.path = outline(box, 1).path;
    grey.ink = Ink::mid_grey;
    items.push_back(grey);
    labels.taken.push_back(box);
    Label label;
    label.text = condensed("bad place");
    label.size = typesetter.scale().smallest;
    const bool inside = typesetter.width(label.text, label.size) + pt(6) <= box.width && pt(label.size + 4) <= box.height;
    label.at = {inside ? box.x + box.width.times(1, 2) : box.right() + pt(4), box.y + box.height.times(1, 2)};
    label.across = inside ? Label::Across::middle : Label::Across::left;
    label.up = Label::Up::middle;
    label.on_white = true;
    labels.in_order.push_back(label);
  }

  label_small_pieces(labels, grain);
  for (DrawingItem& o : outlines) items.push_back(std::move(o));
  const Length sel_top = cloth.y + scale.of(strip.selvage), sel_low = cloth.bottom() - scale.of(strip.selvage);
  const bool lengthwise = strip.folded == Folded::lengthwise, crosswise = strip.folded == Folded::crosswise;
  if (!strip.selvage.is_zero()) {
    if (!lengthwise) items.push_back(line({cloth.x, sel_top}, {cloth.right(), sel_top}, 0.5));
    items.push_back(line({cloth.x, sel_low}, {cloth.right(), sel_low}, 0.5));
  }
  items.push_back(lengthwise ? line({cloth.x, cloth.y}, {cloth.right(), cloth.y}, kFoldWeight, kFoldDash)
                             : line({cloth.x, cloth.y}, {cloth.right(), cloth.y}, 2.0));
  items.push_back(line({cloth.x, cloth.bottom()}, {cloth.right(), cloth.bottom()}, 2.0));
  const auto end_line = [&](Length x, bool true_end) {
    if (true_end) items.push_back(line({x, cloth.y}, {x, cloth.bottom()}, 2.0));
    else items.push_back(line({x, cloth.y}, {x, cloth.bottom()}, 1.2, {10, 4}));
  };
  end_line(cloth.x, part.from.is_zero());
  if (crosswise && part.to == strip.length)
    items.push_back(line({cloth.right(), cloth.y}, {cloth.right(), cloth.bottom()}, kFoldWeight, kFoldDash));
  else end_line(cloth.right(), part.to == strip.length && !strip.open);
  draw_repeats(items, strip, part, scale, cloth);
  for (DrawingItem& g : grain) items.push_back(std::move(g));

  const Length ruler_y = cloth.bottom() + pt(kLayEdge + 6);
  draw_width_ruler(items, strip, scale, cloth.right() + pt(kLayEdge + 6), typesetter, shown_in);
  draw_length_ruler(items, part, scale, ruler_y, typesetter, shown_in);
  const Length key_y = ruler_y + pt(13 + typesetter.scale().text + 8);
  const Length bottom = draw_key(items, key_y, plan, strip, scale, typesetter, shown_in);
  for (Label& l : labels.in_order) items.push_back(std::move(l));

  out.drawing.width = pt(kLive);
  out.drawing.height = bottom;
  out.drawing.caption = scale_sentence(scale, shown_in, "cloth");
  out.drawing.name =
      "cutting layout " + plan.cloth + " " + strip.name + " part " + whole_number(static_cast<std::int64_t>(which + 1));
  keep_labels_inside(out.drawing, typesetter);
  out.numbered = labels.numbered;
  return out;
}

}  // namespace gownsheaf
