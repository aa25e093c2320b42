#include "packet/breadth_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr double kWide = 480, kHigh = 40;  // the panel on paper: no wider, and as high whatever its length
constexpr double kHighestDrawn = 100;      // of an outline, which is drawn as long as it is

// As high as a panel is drawn; an outline as long as it is.
double high(const BreadthPlan& plan, DrawingScale scale) {
  return plan.outline.empty() ? kHigh : scale.of(plan.along).in_points();
}

// Joins, each with its distance from the left edge below it; of many, those that have room.
void add_joins(const BreadthPlan& plan, DrawingScale scale, Length top, const FigureText& text, const Typesetter& typesetter,
               Drawing& out) {
  const double size = typesetter.scale().text;
  const Length foot = top + pt(high(plan, scale)), words_at = foot + pt(size + 6);
  const std::vector<Length> marks = breadth_marks(plan, scale);
  Length free_from;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    out.items.push_back(line({marks[i], top}, {marks[i], foot + pt(4)}, 1.2));
    const std::string key = plan.key + "/join " + whole_number(static_cast<std::int64_t>(i) + 1);
    const Text says = text.drawn(key, Inline::Size::as_text, Face::condensed_bold);
    const Length half = typesetter.width(says, size).times(1, 2);
    if (marks[i] - half < free_from) continue;
    out.items.push_back(put(says, {marks[i], words_at}, size, Label::Across::middle));
    free_from = marks[i] + half + pt(4);
  }
}

// One breadth along the page: solid to its cut length, broken to the end of what it takes.
void add_breadth(const BreadthPlan& plan, DrawingScale scale, Length from, Length top, Drawing& out) {
  const Length end = from + scale.of(plan.along), taken = from + scale.of(plan.taken), foot = top + pt(kHigh);
  out.items.push_back(outline({from, top, taken - from, pt(kHigh)}, 0.7, {3, 2}));
  out.items.push_back(outline({from, top, end - from, pt(kHigh)}, 1.2));
  for (const Length mark : breadth_marks(plan, scale))
    if (!mark.is_zero()) out.items.push_back(line({from + mark, top}, {from + mark, foot}, 0.7, {1, 2}));
}

}  // namespace

bool seen_across(const BreadthPlan& plan) { return !plan.joins.empty(); }

DrawingScale breadth_scale(const BreadthPlan& plan, ShownIn shown_in) {
  const Length drop = plan.half_drop ? plan.repeat.times(1, 2) : Length{};
  // An outline may be no higher than it has room: as if it were that much wider.
  const Length as_wide =
      plan.outline.empty()
          ? plan.across
          : std::max(plan.across, plan.along.times(static_cast<std::int64_t>(kWide), static_cast<std::int64_t>(kHighestDrawn)));
  return largest_that_fits(seen_across(plan) ? as_wide : plan.taken + drop, pt(kWide), shown_in, 4);
}

std::vector<Length> breadth_marks(const BreadthPlan& plan, DrawingScale scale) {
  std::vector<Length> marks;
  for (const Length at : seen_across(plan) ? plan.joins : plan.repeats_at) marks.push_back(scale.of(at));
  return marks;
}

Drawing draw_breadth(const BreadthPlan& plan, const FigureText& figure_text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const DrawingScale scale = breadth_scale(plan, figure_text.shown_in());
  const Length top = pt(t.text + 6);
  Drawing out;
  out.name = "breadth " + plan.piece;
  out.width = pt(kWide);
  out.items.push_back(put(words_in(Face::bold, capital(plan.piece)), {Length{}, pt(t.text)}, t.text, Label::Across::left));
  if (seen_across(plan)) {
    StrokeMark edge = outline({Length{}, top, scale.of(plan.across), pt(kHigh)}, 1.2);
    if (!plan.outline.empty()) {
      Polygon ring;
      for (const Point& p : plan.outline) ring.push_back({scale.of(p.y), top + scale.of(p.x)});
      edge.path = path_of_polygon(ring);
    }
    out.items.push_back(edge);
    add_joins(plan, scale, top, figure_text, typesetter, out);
    out.height = top + pt(high(plan, scale) + t.text + 12);
    out.caption = scale_sentence(scale, figure_text.shown_in(), "the panel") + condensed(" Seen across, ") +
                  figure_text.drawn(plan.key + "/cut width", Inline::Size::as_text, Face::condensed_bold) +
                  condensed(" when joined; the numbers are the joins\u2019 stitch lines, from the left edge.");
  } else {
    add_breadth(plan, scale, Length{}, top, out);
    Length foot = top + pt(kHigh);
    if (plan.half_drop) {
      add_breadth(plan, scale, scale.of(plan.repeat.times(1, 2)), foot + pt(4), out);
      foot += pt(kHigh + 4);
    }
    out.height = foot + pt(6);
    out.caption = scale_sentence(scale, figure_text.shown_in(), "the breadth") +
                  condensed(" Its top to the left. Dotted: the pattern comes again, every ") +
                  figure_text.drawn(plan.key + "/repeat along", Inline::Size::as_text, Face::condensed_bold) +
                  condensed("; cut ") + figure_text.drawn(plan.key + "/cut length", Inline::Size::as_text, Face::condensed_bold) +
                  condensed(", takes ") + figure_text.drawn(plan.key + "/taken", Inline::Size::as_text, Face::condensed_bold) +
                  condensed(plan.half_drop ? ". Every other breadth begins half a repeat lower." : ".");
  }
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
