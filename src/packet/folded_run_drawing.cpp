// The folded run seen from the top edge: true along the edge, layers drawn apart.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "packet/run_parts.h"

namespace gownsheaf {
namespace {

// Faces are differences of running marks, each rounded to the tick.
bool about_the_same(Length a, Length b) { return a - b <= Length::ticks(4) && b - a <= Length::ticks(4); }

constexpr double kLayer = 8, kTurn = 4;

struct Extent {
  Length least, most;
};
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
  bool slanted = false;  // pleats lie over each other like shingles: drawn aslant, so that no two layers fall together
  bool rightward = true;
  double rise = 0;  // points a layer sinks over one visible width
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
    const auto turns = [](const Stretch* a, const Stretch& b) { return a != nullptr && (a->to >= a->from) != (b.to >= b.from); };
    const bool turn_before = turns(before, s), turn_after = after != nullptr && turns(&s, *after);
    if (turn_before) x1 += way * turn;
    if (i == 0) {
      out.path.push_back({PathStep::Kind::move, {}, {}, point(x1, y1)});
    } else if (turn_before) {
      // A cubic whose outermost point lies exactly at the fold.
      const Point last = out.path.back().to;
      const double fold = x_of(s.from), out_by = turn / 3;
      out.path.push_back(
          {PathStep::Kind::curve, point(fold - way * out_by, last.y.in_points()), point(fold - way * out_by, y1), point(x1, y1)});
    } else if (before->layer != s.layer && !style.slanted) {
      const double slip = std::min(kTurn * 2, std::abs(x2 - x1) / 2);
      const Point last = out.path.back().to;
      if (before->layer == 2) {  // up to the next face, past the fold
        out.path.push_back(
            {PathStep::Kind::curve, {last.x + pt(slip * 0.6), last.y}, point(x1 + slip * 0.4, y1), point(x1 + slip, y1)});
      } else {  // down below the next face, before its fold
        out.path.push_back(
            {PathStep::Kind::curve, {last.x + pt(slip * 0.6), last.y}, point(x1 + slip * 0.4, y1), point(x1 + slip, y1)});
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
  style.slanted =
      one_direction && plan.marks.size() > 1 && plan.visible > Length{} && scale.of(plan.depth) > scale.of(plan.visible) - pt(14);
  if (style.slanted) {
    // Past five layers the drawing would outgrow its place; the layers then lie closer.
    const double under = plan.depth / plan.visible;
    style.rise = std::min(2 * kLayer, 80 / std::max(under, 1.0));
  }
  return style;
}

// The dimension of one stretch below the drawing; returns where its words stand.
struct Dimension {
  Length from, to;
  Text words;
};
void dimension(std::vector<DrawingItem>& items, const Dimension& d, Length y, Length lines_from, double size) {
  if (d.to - d.from >= pt(14)) {
    level_dimension(items, d.from, d.to, y, lines_from);
  } else {
    for (const Length x : {d.from, d.to}) items.push_back(line({x, lines_from}, {x, y + pt(4)}, 0.5));
    items.push_back(line({d.from, y}, {d.to, y}, 0.7));
  }
  const Length middle = d.from + (d.to - d.from).times(1, 2);
  items.push_back(put(d.words, {middle, y + pt(6)}, size, Label::Across::middle, Label::Up::top));
}

}  // namespace

Drawing draw_folded_run(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const auto size = static_cast<double>(t.text);
  const ShownIn shown_in = figure_text.shown_in();
  const Length room = pt(kRunWide - 2 * kRunMargin - 2);
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
  if (drawn.crowded) scale = largest_that_fits(together, room - pt(kRunGap), shown_in, 1);
  const FoldedStyle style = style_of(plan, scale);

  Drawing out;
  const Length words = words_over(
      out.items,
      std::string(plan.kind == "tucks" ? "Sewn, seen from its end, right side below, at " : "Folded, from above, at ") +
          scale_name(scale) + " along the edge. Layers drawn apart.",
      typesetter);
  const Length numbers = words + pt(size + 4), top = numbers + pt(8);
  Length low = top;
  Length left = pt(kRunMargin + 1);
  std::optional<Dimension> shows, deep;
  std::vector<Label> labels;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Extent e = extent_of(paths[i]);
    const Length zero = left - scale.of(e.least);
    StrokeMark cloth = folded_line(paths[i], style, zero, top);
    for (const PathStep& s : cloth.path) low = std::max(low, s.to.y);
    out.items.push_back(std::move(cloth));
    // Numbers over the faces; what shows is measured near the start of the run, the depth at its last fold.
    std::size_t mark = 0;
    int named = 0;
    for (const Stretch& s : paths[i]) {
      const Length a = zero + scale.of(std::min(s.from, s.to)), b = zero + scale.of(std::max(s.from, s.to));
      if (s.layer == 0) {
        if (about_the_same(s.to - s.from, plan.visible) && !shows && i == 0 && mark > 0) {
          shows = Dimension{a, b, condensed("shows ") + figure_text.drawn("pleats/" + plan.run + "/visible")};
        }
        const bool fold_follows = mark < parts[i].marks.size() && parts[i].marks[mark].fold < parts[i].marks[mark].lay_on;
        const std::size_t owner = fold_follows ? mark : mark > 0 ? mark - 1 : 0;
        const int pleat = owner < parts[i].marks.size() ? parts[i].marks[owner].pleat : 0;
        const bool owned = fold_follows || (mark > 0 && parts[i].marks[mark - 1].fold > parts[i].marks[mark - 1].lay_on);
        if (owned && pleat != named) {
          named = pleat;
          labels.push_back(put(words_in(Face::condensed_bold, whole_number(pleat)), {a + (b - a).times(1, 2), numbers}, size,
                               Label::Across::middle));
        }
      }
      if (s.layer % 2 == 1) {
        deep = Dimension{a, b, figure_text.drawn("pleats/" + plan.run + "/depth") + condensed(" deep")};
        ++mark;
      }
    }
    left = zero + scale.of(e.most);
    if (drawn.crowded && i == 0) {
      say_gap(out.items, drawn, left + pt(kRunGap / 2), top + pt(kLayer), size);
      left += pt(kRunGap);
    }
  }
  const Length dims = low + pt(14);
  Length bottom = dims + pt(6 + size);
  if (shows) dimension(out.items, *shows, dims, low + pt(4), size);
  if (deep) {
    Length y = dims;
    if (shows) {
      const auto middle = [](const Dimension& d) { return d.from + (d.to - d.from).times(1, 2); };
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
  scale_bar(out.items, {pt(kRunMargin), base}, scale, shown_in, size, pt(180));
  bool right = true;
  for (const PleatMark& m : plan.marks) right = right && m.fold < m.lay_on;
  bool left_only = !plan.marks.empty();
  for (const PleatMark& m : plan.marks) left_only = left_only && m.fold > m.lay_on;
  if (!plan.toward.empty() && (right || left_only)) {
    const Text toward = condensed(
        (plan.toward == "left" || plan.toward == "right" ? "folds lie to the wearer\u2019s " : "folds lie to ") + plan.toward);
    const Length wide = typesetter.width(toward, size);
    const Length x = pt(kRunWide - kRunMargin) - wide, y = base - pt(size * 0.3);
    out.items.push_back(line({x - pt(right ? 76 : 70), y}, {x - pt(right ? 12 : 6), y}, 0.7));
    out.items.push_back(right ? arrowhead({x - pt(6), y}, 0) : arrowhead({x - pt(76), y}, 2));
    out.items.push_back(put(toward, {x, base}, size));
  }
  out.width = pt(kRunWide);
  out.height = base + pt(4);
  out.name = "pleats folded " + plan.run;
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
