#include "packet/pleat_drawing.h"

#include <algorithm>
#include <utility>

namespace gownsheaf {
namespace {

constexpr double kLive = 486, kMargin = 1, kGap = 96;  // the gap holds "… 14 alike …"

Label put(Text text, Point at, double size, Label::Across across = Label::Across::left,
          Label::Up up = Label::Up::base) {
  Label label;
  label.text = std::move(text);
  label.at = at;
  label.size = size;
  label.across = across;
  label.up = up;
  return label;
}

// A stretch of the run from the end of one pleat to the end of another, moved to its own zero.
PleatPlan part_of_run(const PleatPlan& plan, const std::vector<std::size_t>& marks, bool to_the_end) {
  PleatPlan part = plan;
  part.marks.clear();
  Length flat{};
  if (!marks.empty() && marks.front() > 0) {
    const PleatMark& before = plan.marks[marks.front() - 1];
    flat = std::max(before.fold, before.lay_on);
  }
  Length end = flat;
  for (const std::size_t i : marks) {
    PleatMark m = plan.marks[i];
    end = std::max(m.fold, m.lay_on);
    m.fold -= flat;
    m.lay_on -= flat;
    part.marks.push_back(m);
  }
  part.flat = (to_the_end ? plan.flat : end) - flat;
  part.seams_at.clear();
  for (const Length seam : plan.seams_at) {
    if (seam >= flat && seam <= flat + part.flat) part.seams_at.push_back(seam - flat);
  }
  return part;
}

// The run as it is drawn: whole, or its two ends with a gap between.
std::vector<PleatPlan> drawn_parts(const PleatPlan& plan, const DrawnPleats& drawn) {
  if (!drawn.crowded) return {plan};
  return {part_of_run(plan, drawn.first, false), part_of_run(plan, drawn.last, true)};
}

void say_gap(std::vector<DrawingItem>& items, const DrawnPleats& drawn, Length x, Length y, double size) {
  items.push_back(put(condensed("\u2026 " + whole_number(drawn.left_out) + " alike \u2026"), {x, y}, size,
                      Label::Across::middle, Label::Up::middle));
}

// ---- flat -----------------------------------------------------------------------------------------------------------

struct FlatStrip { Length left, top, high; std::int64_t on_paper, of_cloth; };

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
    arc.path = {{PathStep::Kind::move, {}, {}, {f, strip.top - pt(2)}},
                {PathStep::Kind::curve, {f, up}, {l, up}, {l, end}}};
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
        items.push_back(put(number, {middle, strip.top + strip.high.times(1, 2)}, size, Label::Across::middle,
                            Label::Up::middle));
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
    x = std::clamp(x, Length{}, pt(kLive) - wide);
    if (x < free_from) continue;
    items.push_back(put(word, {x, y}, size, Label::Across::left, Label::Up::top));
    free_from = x + wide + pt(6);
  }
}

}  // namespace

Drawing draw_flat_run(const PleatPlan& plan, const FigureText&, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const double room = kLive - 2 * kMargin;
  const DrawnPleats drawn = drawn_pleats(plan, plan.count > 0 ? room / static_cast<double>(plan.count) : room);
  const std::vector<PleatPlan> parts = drawn_parts(plan, drawn);
  Length together{};
  for (const PleatPlan& p : parts) together += p.flat;

  Drawing out;
  out.items.push_back(put(condensed("Flat, right side up. Grey goes under. Bring each full line onto the dashed line "
                                    "its arrow points to."), {Length{}, pt(t.text)}, t.text));
  FlatStrip strip;
  strip.top = pt(t.text + 26);
  strip.high = pt(t.text + 10);
  strip.left = pt(kMargin);
  strip.on_paper = pt(drawn.crowded ? room - kGap : room).in_ticks();
  strip.of_cloth = std::max<std::int64_t>(together.in_ticks(), 1);
  const Length low = strip.top + strip.high;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    draw_flat_part(out.items, parts[i], strip, typesetter);
    name_seams(out.items, parts[i], strip, low + pt(7), typesetter);
    strip.left += parts[i].flat.times(strip.on_paper, strip.of_cloth);
    if (drawn.crowded && i == 0) {
      say_gap(out.items, drawn, strip.left + pt(kGap / 2), strip.top + strip.high.times(1, 2), t.text);
      strip.left += pt(kGap);
    }
  }
  out.width = pt(kLive);
  out.height = low + pt(plan.seams_at.empty() ? 4 + t.smallest : 10 + t.smallest);
  out.name = "pleats flat " + plan.run;
  return out;
}

// ---- folded ---------------------------------------------------------------------------------------------------------

namespace {

constexpr double kLayer = 8, kTurn = 4;

struct Extent { Length least, most; };
Extent extent_of(const std::vector<Stretch>& path) {
  Extent e;
  for (const Stretch& s : path) {
    e.least = std::min({e.least, s.from, s.to});
    e.most = std::max({e.most, s.from, s.to});
  }
  return e;
}

struct FoldedStyle {
  DrawingScale scale;
  bool slanted = false;    // pleats lie over each other like shingles: drawn aslant, so that no two layers fall together
  bool rightward = true;
  double rise = 0;         // points a layer sinks over one visible width
  Length visible;
};

double sunk(const FoldedStyle& style, const Stretch& s, Length x) {
  if (s.layer == 0 || !style.slanted) return kLayer * s.layer;
  const Length edge = s.layer == 1 ? (style.rightward ? s.from : s.to) : (style.rightward ? s.to : s.from);
  const Length away = x > edge ? x - edge : edge - x;
  return kLayer * s.layer + style.rise * (away / style.visible);
}

// The folded cloth as one line: stretches, round turns, and slips from the lowest layer to the next face.
StrokeMark folded_line(const std::vector<Stretch>& path, const FoldedStyle& style, Length zero, Length top) {
  StrokeMark out;
  out.weight = pt(2.0);
  out.join = Join::round;
  const auto x_of = [&](Length real) { return (zero + style.scale.of(real)).in_points(); };
  const double y0 = top.in_points();
  const auto point = [](double x, double y) { return Point{pt(x), pt(y)}; };
  for (std::size_t i = 0; i < path.size(); ++i) {
    const Stretch& s = path[i];
    const Stretch* before = i > 0 ? &path[i - 1] : nullptr;
    const Stretch* after = i + 1 < path.size() ? &path[i + 1] : nullptr;
    const double way = s.to >= s.from ? 1 : -1;
    double x1 = x_of(s.from), x2 = x_of(s.to);
    double y1 = y0 + sunk(style, s, s.from), y2 = y0 + sunk(style, s, s.to);
    if (s.layer == 0 && style.slanted) {
      y1 = y0 + (style.rightward && before != nullptr ? 2 * kLayer : 0);
      y2 = y0 + (!style.rightward && after != nullptr ? 2 * kLayer : 0);
    }
    const double turn = std::min(kTurn, std::abs(x2 - x1) / 3);
    const auto turns = [](const Stretch* a, const Stretch& b) {
      return a != nullptr && (a->to >= a->from) != (b.to >= b.from);
    };
    const bool turn_before = turns(before, s), turn_after = after != nullptr && turns(&s, *after);
    if (turn_before) x1 += way * turn;
    if (i == 0) {
      out.path.push_back({PathStep::Kind::move, {}, {}, point(x1, y1)});
    } else if (turn_before) {
      // A cubic whose outermost point lies exactly at the fold.
      const Point last = out.path.back().to;
      const double fold = x_of(s.from), out_by = turn / 3;
      out.path.push_back({PathStep::Kind::curve, point(fold - way * out_by, last.y.in_points()),
                          point(fold - way * out_by, y1), point(x1, y1)});
    } else if (before->layer != s.layer && !style.slanted) {
      const double slip = std::min(kTurn * 2, std::abs(x2 - x1) / 2);
      const Point last = out.path.back().to;
      if (before->layer == 2) {  // up to the next face, past the fold
        out.path.push_back({PathStep::Kind::curve, {last.x + pt(slip * 0.6), last.y},
                            point(x1 + slip * 0.4, y1), point(x1 + slip, y1)});
      } else {                   // down below the next face, before its fold
        out.path.push_back({PathStep::Kind::curve, {last.x + pt(slip * 0.6), last.y}, point(x1 + slip * 0.4, y1),
                            point(x1 + slip, y1)});
      }
    }
    if (turn_after) x2 -= way * turn;
    const bool slip_after = after != nullptr && !turn_after && after->layer != s.layer && !style.slanted;
    if (slip_after && s.layer == 0) x2 -= std::min(kTurn * 2, std::abs(x2 - x1) / 2);
    out.path.push_back({PathStep::Kind::line, {}, {}, point(x2, y2)});
  }
  return out;
}

FoldedStyle style_of(const PleatPlan& plan, DrawingScale scale) {
  FoldedStyle style;
  style.scale = scale;
  style.visible = plan.visible;
  bool right = false, left = false;
  for (const PleatMark& m : plan.marks) (m.fold < m.lay_on ? right : left) = true;
  style.rightward = right;
  const bool one_direction = right != left;
  style.slanted = one_direction && plan.marks.size() > 1 && plan.visible > Length{} &&
                  scale.of(plan.depth) > scale.of(plan.visible) - pt(14);
  if (style.slanted) {
    // Past five layers the drawing would outgrow its place; the layers then lie closer.
    const double under = plan.depth / plan.visible;
    style.rise = std::min(2 * kLayer, 80 / std::max(under, 1.0));
  }
  return style;
}

// The dimension of one stretch below the drawing; returns where its words stand.
struct Measured1 { Length from, to; Text words; };
void dimension(std::vector<DrawingItem>& items, const Measured1& d, Length y, Length lines_from, double size) {
  if (d.to - d.from >= pt(14)) {
    level_dimension(items, d.from, d.to, y, lines_from);
  } else {
    for (const Length x : {d.from, d.to}) items.push_back(line({x, lines_from}, {x, y + pt(4)}, 0.5));
    items.push_back(line({d.from, y}, {d.to, y}, 0.7));
  }
  items.push_back(put(d.words, {d.from + (d.to - d.from).times(1, 2), y + pt(6)}, size, Label::Across::middle,
                      Label::Up::top));
}

}  // namespace

Drawing draw_folded_run(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const auto size = static_cast<double>(t.text);
  const ShownIn shown_in = figure_text.shown_in();
  const Length room = pt(kLive - 2 * kMargin - 2);
  const Extent whole = extent_of(folded_path(plan));
  DrawingScale scale = largest_that_fits(whole.most - whole.least, room, shown_in, 2);
  const DrawnPleats drawn = drawn_pleats(plan, scale.of(plan.visible).in_points());
  std::vector<PleatPlan> parts = drawn_parts(plan, drawn);
  std::vector<std::vector<Stretch>> paths;
  Length together{};
  for (const PleatPlan& p : parts) {
    paths.push_back(folded_path(p));
    const Extent e = extent_of(paths.back());
    together += e.most - e.least;
  }
  if (drawn.crowded) scale = largest_that_fits(together, room - pt(kGap), shown_in, 1);
  const FoldedStyle style = style_of(plan, scale);

  Drawing out;
  out.items.push_back(put(condensed("Folded, from above, at " + scale_name(scale) +
                                    " along the edge. Layers drawn apart."), {Length{}, pt(size)}, size));
  const Length numbers = pt(2 * size + 10), top = pt(2 * size + 18);
  Length low = top;
  Length left = pt(kMargin + 1);
  std::optional<Measured1> shows, deep;
  std::vector<Label> labels;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Extent e = extent_of(paths[i]);
    const Length zero = left - scale.of(e.least);
    StrokeMark cloth = folded_line(paths[i], style, zero, top);
    for (const PathStep& s : cloth.path) low = std::max(low, s.to.y);
    out.items.push_back(std::move(cloth));
    // Numbers over the faces; the two dimensions at faces and depths near a third and two thirds of what is drawn.
    std::size_t mark = 0;
    int named = 0;
    for (const Stretch& s : paths[i]) {
      const Length a = zero + scale.of(std::min(s.from, s.to)), b = zero + scale.of(std::max(s.from, s.to));
      if (s.layer == 0) {
        if (s.to - s.from == plan.visible && (!shows || b <= room.times(2, 5))) {
          shows = Measured1{a, b, condensed("shows ") + figure_text.drawn("pleats/" + plan.run + "/visible")};
        }
        const bool fold_follows = mark < parts[i].marks.size() && parts[i].marks[mark].fold < parts[i].marks[mark].lay_on;
        const std::size_t owner = fold_follows ? mark : mark > 0 ? mark - 1 : 0;
        const int pleat = owner < parts[i].marks.size() ? parts[i].marks[owner].pleat : 0;
        const bool owned = fold_follows || (mark > 0 && parts[i].marks[mark - 1].fold > parts[i].marks[mark - 1].lay_on);
        if (owned && pleat != named) {
          named = pleat;
          labels.push_back(put(words_in(Face::condensed_bold, whole_number(pleat)), {a + (b - a).times(1, 2), numbers},
                               size, Label::Across::middle));
        }
      }
      if (s.layer == 1) {
        if (!deep || b <= room.times(4, 5)) {
          deep = Measured1{a, b, figure_text.drawn("pleats/" + plan.run + "/depth") + condensed(" deep")};
        }
        ++mark;
      }
    }
    left = zero + scale.of(e.most);
    if (drawn.crowded && i == 0) {
      say_gap(out.items, drawn, left + pt(kGap / 2), top + pt(kLayer), size);
      left += pt(kGap);
    }
  }
  const Length dims = low + pt(14);
  Length bottom = dims + pt(6 + size);
  if (shows) dimension(out.items, *shows, dims, low + pt(4), size);
  if (deep) {
    Length y = dims;
    if (shows) {
      const auto middle = [](const Measured1& d) { return d.from + (d.to - d.from).times(1, 2); };
      const Length apart = middle(*deep) > middle(*shows) ? middle(*deep) - middle(*shows) : middle(*shows) - middle(*deep);
      const Length wide = typesetter.width(shows->words, size) + typesetter.width(deep->words, size);
      if (apart < wide.times(1, 2) + pt(10) || (shows->from < deep->to && deep->from < shows->to)) {
        y = bottom + pt(8);
        bottom = y + pt(6 + size);
      }
    }
    dimension(out.items, *deep, y, low + pt(4), size);
  }
  for (Label& l : labels) out.items.push_back(std::move(l));
  const Length base = bottom + pt(10 + size);
  scale_bar(out.items, {pt(kMargin), base}, scale, shown_in, size, pt(180));
  bool right = true;
  for (const PleatMark& m : plan.marks) right = right && m.fold < m.lay_on;
  bool left_only = !plan.marks.empty();
  for (const PleatMark& m : plan.marks) left_only = left_only && m.fold > m.lay_on;
  if (!plan.toward.empty() && (right || left_only)) {
    const Text toward = condensed("folds lie to " + plan.toward);
    const Length wide = typesetter.width(toward, size);
    const Length x = pt(kLive - kMargin) - wide, y = base - pt(size * 0.3);
    out.items.push_back(line({x - pt(right ? 76 : 70), y}, {x - pt(right ? 12 : 6), y}, 0.7));
    out.items.push_back(right ? arrowhead({x - pt(6), y}, 0) : arrowhead({x - pt(76), y}, 2));
    out.items.push_back(put(toward, {x, base}, size));
  }
  out.width = pt(kLive);
  out.height = base + pt(4);
  out.name = "pleats folded " + plan.run;
  return out;
}

}  // namespace gownsheaf
