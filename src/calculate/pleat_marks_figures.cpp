#include "calculate/pleat_marks_figures.h"

#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

class Marks {
 public:
  Marks(const RunSum& s, ShownIn in, Figures& figures) : s_(s), run_(*s.run), in_(in), figures_(figures) {}

  // level: "" at the seam, "at hip/" further down.
  void add(const std::string& level, const PleatSolution& sum, const std::vector<PleatMark>& marks) {
    for (std::size_t i = 0; i < marks.size(); ++i) {
      const std::string mark = level + "mark " + whole_number(static_cast<std::int64_t>(i + 1));
      const PleatMark& m = marks[i];
      put(level, mark + "/fold", m.fold, false, working_of(sum, marks, i, true));
      put(level, mark + "/lay on", m.lay_on, m.lay_on == sum.flat, working_of(sum, marks, i, false));
      put(level, mark + "/edge", m.edge, m.edge == sum.finished, {});
    }
  }

  void add_take_up(const std::string& level, const PleatSolution& sum) {
    const Length all = sum.flat - sum.plus - sum.finished;
    const std::string plus = sum.plus.is_zero() ? "" : " − plus", plus_here = plus.empty() ? "" : " − " + worked(sum.plus, in_);
    figure(level + "takes up")
        .is(all)
        .from(key(level + "flat"))
        .from(key(level + "finished"))
        .working("cloth that the pleats take up", "flat" + plus + " − finished",
                 worked(sum.flat, in_) + plus_here + " − " + worked(sum.finished, in_))
        .add();
    std::string said;
    for (const Length t : s_.takes) said += " − " + worked(t, in_);
    for (std::int64_t k = 1; k <= sum.count; ++k) {
      const bool own = k <= static_cast<std::int64_t>(s_.takes.size());
      NewFigure f = figure(level + "pleat " + whole_number(k) + "/takes");
      f.is(taken_by(sum, s_.takes, k));
      if (own) {
        f.written();
      } else {
        f.from(key(level + "takes up"));
        if (k == sum.count)
          f.working(
              "what each of the other pleats takes up", "(to take up − the first) / pleats left",
              "(" + worked(all, in_) + said + ") / " + whole_number(sum.count - static_cast<std::int64_t>(s_.takes.size())));
      }
      f.add();
    }
  }

  void add_level(const PleatLevelSum& l) {
    const std::string level = "at " + l.name + "/";
    NewFigure flat = figure(level + "flat"), finished = figure(level + "finished");
    const Given<Length>& own = l.name == "hip" ? run_.flat_at.hip : run_.flat_at.hem;
    if (own.known()) flat.written().at(own.at);
    else flat.from(key("flat"));
    flat.is(l.sum.flat).add();
    finished.is(l.sum.finished).written().at((l.name == "hip" ? run_.finished_at.hip : run_.finished_at.hem).at).add();
    add_take_up(level, l.sum);
    figure(level + "visible")
        .is(l.sum.visible)
        .from(key(level + "finished"))
        .from(key("count"))
        .working("what shows of each pleat there", "finished / pleats",
                 worked(l.sum.finished, in_) + " / " + whole_number(l.sum.count))
        .add();
  }

 private:
  struct Line {
    std::string what, formula, numbers;
  };

  std::string key(std::string_view quantity) const { return "pleats/" + run_.named.name + "/" + std::string(quantity); }
  NewFigure figure(const std::string& quantity) {
    NewFigure f(figures_, in_, "pleats", run_.named.name, quantity);
    f.at(run_.named.at);
    return f;
  }

  // The last line is the flat width itself, to the usual step whatever step the marks have.
  void put(const std::string& level, const std::string& quantity, Length at, bool whole, const std::optional<Line>& line) {
    NewFigure f = figure(quantity);
    f.is(at).from(key(level + "flat")).from(key(level + "finished")).from(key("count"));
    if (run_.marks_to.known() && run_.marks_to.origin == Origin::written && !whole) f.to_step(*run_.marks_to);
    if (line) f.working(line->what, line->formula, line->numbers);
    f.add();
  }

  // The first and the last line show how all are found; each is divided by itself, so that no rounding adds up.
  std::optional<Line> working_of(const PleatSolution& sum, const std::vector<PleatMark>& marks, std::size_t i, bool fold) const {
    if (run_.kind != PleatKind::knife || !s_.takes.empty() || (i != 0 && i + 1 != marks.size())) return std::nullopt;
    const std::string k = whole_number(marks[i].pleat), n = whole_number(sum.count);
    const std::string plus = sum.plus.is_zero() ? "" : "plus + ",
                      plus_here = sum.plus.is_zero() ? "" : worked(sum.plus, in_) + " + ";
    const std::string flat = sum.plus.is_zero() ? "flat" : "(flat − plus)", flat_here = worked(sum.flat - sum.plus, in_);
    if (fold)
      return Line{"fold line " + k, plus + "((k − 1) × " + flat + " + finished) / pleats",
                  plus_here + "(" + whole_number(marks[i].pleat - 1) + " × " + flat_here + " + " + worked(sum.finished, in_) +
                      ") / " + n};
    return Line{"the line that fold " + k + " is laid to", plus + "k × " + flat + " / pleats",
                plus_here + k + " × " + flat_here + " / " + n};
  }

  const RunSum& s_;
  const PleatRun& run_;
  ShownIn in_;
  Figures& figures_;
};

}  // namespace

void add_pleat_marks(const RunSum& s, ShownIn in, PleatPlan& plan, Figures& figures) {
  Marks marks(s, in, figures);
  marks.add("", s.half, plan.marks);
  plan.uneven = !s.takes.empty();
  plan.takes_said = static_cast<std::int64_t>(s.takes.size());
  if (plan.uneven || !s.levels.empty()) marks.add_take_up("", s.half);
  for (const PleatLevelSum& level : s.levels) {
    marks.add_level(level);
    plan.levels.push_back(
        {level.name, level.sum.flat, level.sum.finished, level.sum.visible, pleat_marks(s.run->kind, level.sum, s.takes)});
    marks.add("at " + level.name + "/", level.sum, plan.levels.back().marks);
  }
}

}  // namespace gownsheaf
