#include "packet/gathered_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"

namespace gownsheaf {
namespace {

constexpr double kCloth = 34, kBetween = 30, kEdge = 12;  // points high

}  // namespace

Drawing draw_gathered_run(const PleatPlan& plan, const FigureText& text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const double size = t.smallest;
  const std::string key = "pleats/" + plan.run;
  const DrawingScale scale = largest_that_fits(plan.flat, pt(kRunWide - 2 * kRunMargin), text.shown_in(), 2);
  Drawing out;
  const Length said = words_over(out.items,
                                 "Above the flat cloth with its rows of stitches, below the edge it is drawn up to, both at " +
                                     scale_name(scale) + ". Bring quarter to quarter.",
                                 typesetter);
  const Length left = pt(kRunMargin), numbers = said + pt(size + 2), top = numbers + pt(3), low = top + pt(kCloth);
  const Length edge_top = low + pt(kBetween), edge_low = edge_top + pt(kEdge);
  const auto flat_at = [&](int k) {
    return left + scale.of(k == 0 ? plan.plus : *text.figures().length(key + "/quarter " + whole_number(k) + "/flat"));
  };
  const Length edge_left = left + (scale.of(plan.flat) - scale.of(plan.finished)).times(1, 2);
  const auto edge_at = [&](int k) {
    return edge_left + scale.of(k == 0 ? Length{} : *text.figures().length(key + "/quarter " + whole_number(k) + "/edge"));
  };

  out.items.push_back(outline({left, top, scale.of(plan.flat), pt(kCloth)}, 1.4));
  out.items.push_back(outline({edge_left, edge_top, scale.of(plan.finished), pt(kEdge)}, 1.4));
  const std::int64_t rows = std::min<std::int64_t>(text.count(key + "/rows"), 5);
  for (std::int64_t r = 1; r <= rows; ++r) {  // the rows themselves are too near together for this scale
    const Length y = top + pt(5.0 * static_cast<double>(r));
    out.items.push_back(line({flat_at(0), y}, {flat_at(4), y}, 0.5, {3, 3}));
  }
  const auto seam_at = [&](Length seam) {
    out.items.push_back(line({left + scale.of(seam), top}, {left + scale.of(seam), low}, 1.0, {8, 2, 2, 2}));
  };
  for (const Length seam : plan.seams_at) {
    seam_at(seam);
    if (!plan.half) seam_at(plan.flat - seam);  // what was found is of one half; the other mirrors it
  }
  for (int k = 0; k <= 4; ++k) {
    out.items.push_back(line({flat_at(k), top}, {flat_at(k), low}, 2.0));
    out.items.push_back(line({flat_at(k), low}, {edge_at(k), edge_top}, 0.5, {4, 2}));
    out.items.push_back(line({edge_at(k), edge_top}, {edge_at(k), edge_low}, 2.0));
  }
  const Length under = edge_low + pt(3),
               widest = typesetter.width(text.drawn(key + "/quarter 4/edge", Inline::Size::small), size) + pt(6);
  const std::int64_t apart = std::max<std::int64_t>(1, (widest.in_ticks() + scale.of(plan.finished).in_ticks() / 4 - 1) /
                                                           std::max<std::int64_t>(1, scale.of(plan.finished).in_ticks() / 4));
  for (int k = 1; k <= 4; ++k) {
    const std::string quarter = key + "/quarter " + whole_number(k);
    out.items.push_back(put(text.drawn(quarter + "/flat", Inline::Size::small), {flat_at(k), numbers}, size,
                            k == 4 ? Label::Across::right : Label::Across::middle));
    const Text edge = text.drawn(quarter + "/edge", Inline::Size::small);
    if (k == 4 || apart == 1 || (k == 2 && apart == 2))  // a number wants room beside the next
      out.items.push_back(put(edge, {edge_at(k), under}, size, Label::Across::middle, Label::Up::top));
  }
  const Length base = under + pt(2 * size + 8);
  scale_bar(out.items, {left, base}, scale, text.shown_in(), t.text, pt(180));
  out.width = pt(kRunWide);
  out.height = base + pt(4);
  out.name = "gathers " + plan.run;
  keep_labels_inside(out, typesetter);
  return out;
}

Drawing draw_ridges(const PleatPlan& plan, const FigureText& text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const double size = t.text;
  const std::string key = "pleats/" + plan.run;
  const std::int64_t ridges = std::max<std::int64_t>(text.count(key + "/ridges"), 1);
  const Length stitch = *text.figures().length(key + "/stitch"), room = pt(kRunWide - 2 * kRunMargin), left = pt(kRunMargin);
  Drawing out;
  const Length said = words_over(
      out.items, "Full size: above the stitches, over and under by turns; below, from above, the ridges that they make.",
      typesetter);
  const std::int64_t shown = std::clamp<std::int64_t>(room.in_ticks() / std::max<std::int64_t>((2 * stitch).in_ticks(), 1), 1,
                                                      std::min<std::int64_t>(ridges, 8));
  const Length thread = said + pt(12);
  for (std::int64_t i = 0; i < 2 * shown; ++i) {
    const Length a = left + i * stitch, b = a + stitch;
    out.items.push_back(line({a, thread - pt(5)}, {a, thread + pt(5)}, 0.5));
    out.items.push_back(
        line({a, thread}, {b, thread}, i % 2 == 0 ? 2.0 : 0.7, i % 2 == 0 ? std::vector<int>{} : std::vector<int>{2, 2}));
  }
  const Length end = left + 2 * shown * stitch;
  out.items.push_back(line({end, thread - pt(5)}, {end, thread + pt(5)}, 0.5));
  const Length dim = thread + pt(16);
  if (stitch >= pt(14)) level_dimension(out.items, left, left + stitch, dim, thread + pt(6));
  out.items.push_back(
      put(condensed("stitch ") + text.drawn(key + "/stitch"), {left, dim + pt(8)}, size, Label::Across::left, Label::Up::top));
  // Ridge k stands over finished x k / ridges: cloth up and cloth down.
  const Length high = std::min(stitch, pt(40)), foot = dim + pt(size + 18) + high;
  StrokeMark cloth;
  cloth.weight = pt(1.6);
  cloth.join = Join::round;
  for (std::int64_t k = 0; k <= shown; ++k) {
    const Length x = left + plan.finished.times(k, ridges);
    cloth.path.push_back({k == 0 ? PathStep::Kind::move : PathStep::Kind::line, {}, {}, {x, foot}});
    if (k < shown)
      cloth.path.push_back({PathStep::Kind::line, {}, {}, {left + plan.finished.times(2 * k + 1, 2 * ridges), foot - high}});
  }
  out.items.push_back(std::move(cloth));
  out.items.push_back(put(condensed(whole_number(shown) + (shown == 1 ? " ridge" : " ridges")),
                          {left + plan.finished.times(shown, ridges) + pt(10), foot - pt(2)}, size));
  out.width = pt(kRunWide);
  out.height = foot + pt(6);
  out.name = "gauging " + plan.run;
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
