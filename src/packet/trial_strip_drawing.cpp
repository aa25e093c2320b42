// The trial strip: the first pleats at full size, to be laid on a strip of the cloth and folded.
#include <algorithm>

#include "packet/run_parts.h"

namespace gownsheaf {
namespace {

constexpr int kMostStrips = 3, kPleatsTried = 3;

Length strip_long() { return pt(kRunWide - 2 * kRunMargin); }

// The end of pleat k, from the run's start.
Length end_of(const PleatPlan& plan, int k) {
  Length end;
  for (const PleatMark& m : plan.marks)
    if (m.pleat <= k) end = std::max({end, m.fold, m.lay_on});
  return end;
}

}  // namespace

std::optional<Drawing> draw_trial_strip(const PleatPlan& plan, const FigureText& figure_text, const Typesetter& typesetter) {
  int pleats = 0;
  while (pleats < std::min<std::int64_t>(plan.count, kPleatsTried) && end_of(plan, pleats + 1) <= kMostStrips * strip_long())
    ++pleats;
  if (pleats == 0) return std::nullopt;
  const Length end = end_of(plan, pleats);
  const TypeScale& t = typesetter.scale();
  const double size = t.smallest;
  const std::string key = "pleats/" + plan.run;
  Drawing out;
  Length y = words_over(out.items,
                        "Full size: the first " + (pleats == 1 ? std::string("pleat") : whole_number(pleats) + " pleats") +
                            ". Lay a strip of the cloth along it, join after join; fold each full line onto its dashed line.",
                        typesetter);
  const double high = t.text + 18;
  for (Length from; from < end; from += strip_long()) {
    const Length to = std::min(end, from + strip_long()), left = pt(kRunMargin), top = y + pt(size + 6), low = top + pt(high);
    const auto at = [&](Length real) { return left + (real - from); };
    const auto inside = [&](Length real) { return real >= from && (real < to || (real == to && to == end)); };
    for (const PleatMark& m : plan.marks) {
      if (m.pleat > pleats) continue;
      const Length a = std::max(from, std::min(m.fold, m.lay_on)), b = std::min(to, std::max(m.fold, m.lay_on));
      if (a >= b) continue;
      FillMark under;
      under.path = outline({at(a), top, b - a, pt(high)}, 1).path;
      under.ink = Ink::pale_grey;
      out.items.push_back(under);
    }
    out.items.push_back(line({left, top}, {at(to), top}, 1.4));
    out.items.push_back(line({left, low}, {at(to), low}, 1.4));
    Length free_from = pt(-1000);
    for (std::size_t i = 0; i < plan.marks.size(); ++i) {
      const PleatMark& m = plan.marks[i];
      if (m.pleat > pleats) continue;
      const std::string mark = key + "/mark " + whole_number(static_cast<std::int64_t>(i + 1));
      const struct {
        Length real;
        const char* quantity;
        bool fold;
      } lines[] = {{m.fold, "/fold", true}, {m.lay_on, "/lay on", false}};
      for (const auto& l : lines) {
        if (!inside(l.real)) continue;
        out.items.push_back(l.fold ? line({at(l.real), top}, {at(l.real), low}, 2.0)
                                   : line({at(l.real), top}, {at(l.real), low}, 1.2, {4, 2}));
        const Text number = figure_text.drawn(mark + l.quantity, Inline::Size::small);
        const Length wide = typesetter.width(number, size),
                     x = std::clamp(at(l.real) - wide.times(1, 2), Length{}, pt(kRunWide) - wide);
        if (x < free_from) continue;
        out.items.push_back(put(number, {x, top - pt(3)}, size));
        free_from = x + wide + pt(5);
      }
    }
    if (from > Length{}) out.items.push_back(line({left, top - pt(3)}, {left, low + pt(3)}, 0.7, {2, 2}));
    else out.items.push_back(line({left, top}, {left, low}, 1.4));
    out.items.push_back(to < end ? line({at(to), top - pt(3)}, {at(to), low + pt(3)}, 0.7, {2, 2})
                                 : line({at(to), top}, {at(to), low}, 1.4));
    y = low + pt(8);
  }
  const Length base = y + pt(t.text + 6);
  scale_bar(out.items, {pt(kRunMargin), base}, DrawingScale{1}, figure_text.shown_in(), t.text, pt(180));
  out.width = pt(kRunWide);
  out.height = base + pt(4);
  out.name = "trial strip " + plan.run;
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
