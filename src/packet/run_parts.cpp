#include "packet/run_parts.h"

#include <algorithm>
#include <utility>

namespace gownsheaf {
namespace {

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

}  // namespace

Label put(Text text, Point at, double size, Label::Across across, Label::Up up) {
  Label label;
  label.text = std::move(text);
  label.at = at;
  label.size = size;
  label.across = across;
  label.up = up;
  return label;
}

std::vector<PleatPlan> drawn_parts(const PleatPlan& plan, const DrawnPleats& drawn) {
  if (!drawn.crowded) return {plan};
  return {part_of_run(plan, drawn.first, false), part_of_run(plan, drawn.last, true)};
}

void say_gap(std::vector<DrawingItem>& items, const DrawnPleats& drawn, Length x, Length y, double size) {
  items.push_back(put(condensed("\u2026 " + whole_number(drawn.left_out) + " alike \u2026"), {x, y}, size, Label::Across::middle,
                      Label::Up::middle));
}

Length words_over(std::vector<DrawingItem>& items, const std::string& words, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  Length y{};
  for (Text& line : typesetter.lines(condensed(words), pt(kRunWide), t.text)) {
    items.push_back(put(std::move(line), {Length{}, y + pt(t.text)}, t.text));
    y += pt(t.text + 4);
  }
  return y;
}

}  // namespace gownsheaf
