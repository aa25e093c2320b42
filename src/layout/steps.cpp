// One step of the order of work: box and number, then the act and what belongs to it, the figure at the right.
#include <algorithm>

#include "layout/slab.h"

namespace gownsheaf {

namespace {

constexpr Length kFigureRoom = Length::points(140), kGutter = Length::points(12), kBarWidth = Length::points(5);

// First column, then the five that are left. The binder's smaller box and number need less of it.
Length number_end(const Bench& bench) { return pt(bench.either(59, 40)); }
Length act_start(const Bench& bench) { return number_end(bench) + kGutter; }

// Lines of the step from the top down, with a little more white about holds and the line that cannot be undone.
class StepLines {
 public:
  StepLines(Slab& slab, const Bench& bench, Length top) : slab_(slab), bench_(bench), y_(top) {}

  void white() { y_ += pt(bench_.tight() ? bench_.either(2, 1) : bench_.either(4, 2.5)); }
  void lines(const std::vector<Text>& lines, Length x) {
    set_lines(slab_.marks, bench_, lines, {x, y_ + bench_.text_base()}, bench_.step());
    for (std::size_t k = 0; k < lines.size(); ++k) {
      y_ += bench_.step();
      slab_.cuts.push_back(y_);
    }
  }
  void bar(std::size_t lines) {  // at the left of the next lines
    const Length x = act_start(bench_) - kGutter;
    const Box box{x, y_, kBarWidth, bench_.step() * static_cast<std::int64_t>(lines)};
    slab_.marks.push_back(fill(path_of(box), Ink::black));
  }
  Length bottom() const { return y_; }

 private:
  Slab& slab_;
  const Bench& bench_;
  Length y_;
};

void box_and_number(Slab& slab, const Bench& bench, const StepBlock& step, Length base) {
  const TypeScale& scale = bench.scale();
  const Length side = pt(scale.tick_box), middle = base - bench.capital(scale.text).times(1, 2);
  slab.marks.push_back(box_outline(Box{Length(), middle - side.times(1, 2), side, side}, scale.tick_weight));
  const Text number = bold(whole_number(step.number));
  set_ending_at(slab.marks, bench, number, {number_end(bench), base}, scale.step_number);
}

// Longer than its room a name breaks after what the step does, before what it does it to: no word of it is broken.
Text id_in_lines(const std::string& id, const Bench& bench) {
  const std::size_t at = id.find('@');
  if (at == std::string::npos || bench.type.width(condensed(id), bench.scale().smallest) <= kFigureRoom) return condensed(id);
  Inline line_break;
  line_break.kind = Inline::Kind::line_break;
  return condensed(id.substr(0, at + 1)) + Text{line_break} + condensed(id.substr(at + 1));
}

}  // namespace

Slabs slabs_of(const StepBlock& step, const Bench& bench) {
  const Length top = pt(bench.row_padding()), x = act_start(bench);
  const Length room = kLiveWidth - kFigureRoom - kGutter - x;
  Slab slab;
  slab.rule_above = step.gate ? kHeavyRule : bench.scale().row_rule;
  slab.rule_at_top = kHeavyRule;
  if (!step.anchor.empty()) slab.marks.push_back({AnchorMark{step.anchor, Point{}}});
  box_and_number(slab, bench, step, top + bench.text_base());

  StepLines left(slab, bench, top);
  for (const Text& hold : step.holds) {
    left.lines(bench.type.lines(hold, room), x);
    left.white();
  }
  const Length act_room = step.gate ? kLiveWidth - x : room;
  left.lines(bench.type.lines(made_bold(step.act), act_room), x);
  left.lines(bench.type.lines(with_faces(step.reason, Face::condensed), act_room), x);
  left.lines(bench.type.lines(with_faces(step.remark, Face::condensed), act_room), x);
  for (const Text& part : step.parts) left.lines(bench.type.lines(with_faces(part, Face::condensed), act_room), x);
  if (!step.cannot_undo.empty()) {
    left.white();
    const std::vector<Text> lines = bench.type.lines(bold("Cannot be undone: " + step.cannot_undo + "."), room);
    left.bar(lines.size());
    left.lines(lines, x);
  }

  Length figures_end = top;
  if (!step.gate) {
    for (const Text& figure : step.figures) {
      for (const Text& line : bench.type.lines(figure, kFigureRoom)) {
        set_ending_at(slab.marks, bench, line, {kLiveWidth, figures_end + bench.text_base()});
        figures_end += bench.step();
      }
    }
  }
  if (!step.takes.empty() && !step.gate) {
    set_ending_at(slab.marks, bench, with_faces(step.takes, Face::condensed), {kLiveWidth, figures_end + bench.text_base()});
    figures_end += bench.step();
  }
  if (!step.id.empty()) {
    // A gate's act takes the whole width: its name stands under the last line.
    const double small = bench.scale().smallest;
    if (step.gate) figures_end = left.bottom();
    const Text id = id_in_lines(step.id, bench);
    const Text name = step.gate && !step.takes.empty() ? with_faces(step.takes, Face::condensed) + condensed("   ") + id : id;
    for (const Text& line : bench.type.lines(name, kFigureRoom, small)) {
      set_ending_at(slab.marks, bench, line, {kLiveWidth, figures_end + bench.text_base()}, small);
      figures_end += bench.step();
    }
  }
  const auto any = [](const std::vector<Text>& texts) { return std::any_of(texts.begin(), texts.end(), any_changed); };
  slab.changed = any(step.holds) || any_changed(step.act) || any_changed(step.reason) || any(step.figures);
  slab.height = std::max(left.bottom(), figures_end) + top;
  if (!slab.cuts.empty()) slab.cuts.pop_back();  // nothing but white after the last line
  if (step.gate) {
    slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, kHeavyRule));
    slab.ends_page = bench.pin_up();
  }
  return {slab};
}

}  // namespace gownsheaf
