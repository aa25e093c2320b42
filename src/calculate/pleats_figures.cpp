#include "calculate/pleats_figures.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "calculate/pleat_map.h"
#include "calculate/pleat_marks_figures.h"

namespace gownsheaf {
namespace {

class Run {
 public:
  Run(const Project& project, RoundSums& sums, const RunSum& s, Figures& figures)
      : project_(project), sums_(sums), s_(s), run_(*s.run), in_(shown_in(project)), figures_(figures),
        folds_(whole_number(folds_under(run_.kind))) {}

  void add_sum() {
    figure("kind").is(std::string(word_for(run_.kind))).at(run_.kind_at).written().add();
    if (s_.pleated) add_count();
    add_flat();
    if (s_.finished) add_finished();
    if (s_.pleated && !s_.sum.plus.is_zero()) figure("plus").is(s_.sum.plus).from("", run_.plus).written().at(run_.plus.at).add();
    NewFigure begins = figure("begins at");
    begins.is(s_.begins_at).at(run_.begins_at.at);
    if (run_.begins_at.known()) begins.from("", run_.begins_at).written();
    else begins.plain_input("pleats");  // the runs before it
    begins.add();
    if (s_.pleated) {
      add_depth();
      add_visible();
      const Length flat = s_.sum.flat - s_.sum.plus;
      figure("fullness")
          .is(Ratio::of(flat.in_ticks(), s_.sum.finished.in_ticks()))
          .from(key("flat"))
          .from(key("finished"))
          .working("fullness", plus_words("flat", " − plus") + " / finished",
                   worked(flat, in_) + " / " + worked(s_.sum.finished, in_))
          .add();
    } else if (s_.fullness) {
      figure("fullness").is(*s_.fullness).from("", run_.fullness).written().add();
    }
    if (s_.pleated && s_.mirrored && !run_.half) add_half();
    if (s_.pleated && run_.stitched_down.known()) add_stitching();
    add_tiers();
    if (s_.pleated && run_.kind == PleatKind::inverted_at_seams && s_.takes.empty()) add_seam_edges();
  }

  PleatPlan add_plan() {
    PleatPlan plan;
    plan.run = run_.named.name;
    plan.kind = std::string(word_for(run_.kind));
    plan.half = s_.mirrored;
    plan.count = s_.half.count;
    plan.flat = s_.half.flat;
    plan.finished = s_.half.finished;
    plan.depth = s_.half.depth;
    plan.visible = s_.half.visible;
    plan.plus = s_.half.plus;
    plan.overlaps = s_.half.overlaps;
    plan.toward = std::string(word_for(toward()));
    plan.marks = pleat_marks(run_.kind, s_.half, s_.takes);
    plan.measured_from = measured_from();
    plan.at = run_.named.at;
    add_pleat_marks(s_, in_, plan, figures_);
    return plan;
  }

  // Gathers and cartridge pleats have no fold lines: their quarters are marked instead.
  PleatPlan gathered_plan() const {
    PleatPlan plan;
    plan.run = run_.named.name;
    plan.kind = std::string(word_for(run_.kind));
    plan.half = run_.half;
    plan.flat = *s_.flat;
    plan.finished = *s_.finished;
    plan.plus = run_.plus.known() ? *run_.plus : Length{};
    plan.toward = std::string(word_for(toward()));
    for (const TierSum& tier : s_.tiers) plan.tiers.push_back(tier.name);
    plan.at = run_.named.at;
    return plan;
  }

 private:
  std::string key(std::string_view quantity) const { return "pleats/" + run_.named.name + "/" + std::string(quantity); }
  NewFigure figure(std::string_view quantity) {
    NewFigure f(figures_, in_, "pleats", run_.named.name, quantity);
    f.at(run_.named.at);
    return f;
  }
  std::string plus_words(const std::string& words, const std::string& plus) const {
    return s_.sum.plus.is_zero() ? words : "(" + words + plus + ")";
  }
  std::string n() const { return whole_number(s_.sum.count); }
  Toward toward() const { return run_.toward.known() ? *run_.toward : Toward::centre_back; }
  Length flat_to_pleat() const { return s_.sum.flat - s_.sum.plus; }

  void add_stitching() {
    const std::int64_t lines = s_.sum.count * folds_under(run_.kind) / 2 * (run_.half ? 2 : 1);
    figure("stitched down").is(*run_.stitched_down).from("", run_.stitched_down).written().at(run_.stitched_down.at).add();
    figure("stitching")
        .is(*run_.stitched_down * lines)
        .from(key("count"))
        .from(key("stitched down"))
        .working("stitching that holds the pleats down", "folds × stitched down",
                 whole_number(lines) + " × " + worked(*run_.stitched_down, in_))
        .add();
  }

  void add_tiers() {
    Length deep;
    bool all_deep = !s_.tiers.empty();
    for (std::size_t i = 0; i < s_.tiers.size(); ++i) {
      const TierSum& sum = s_.tiers[i];
      const Tier& tier = run_.tiers[i];
      const std::string part = "tier " + sum.name + "/";
      NewFigure flat = figure(part + "flat");
      flat.is(sum.flat).at(tier.named.at).from(i == 0 ? key("finished") : key("tier " + s_.tiers[i - 1].name + "/flat"));
      if (tier.flat.known()) flat.written();
      else
        flat.working("tier " + sum.name, "fullness × the edge above", text_of(*tier.fullness) + " × " + worked(sum.above, in_));
      flat.add();
      figure(part + "fullness").is(sum.fullness).at(tier.named.at).from(key(part + "flat")).add();
      all_deep = all_deep && tier.finished_length.known();
      if (!tier.finished_length.known()) continue;
      figure(part + "finished length").is(*tier.finished_length).written().at(tier.finished_length.at).add();
      deep += *tier.finished_length;
    }
    if (all_deep) {
      NewFigure f = figure("tiers deep");
      f.is(deep).working("all tiers together", "the sum of their lengths", "");
      for (const TierSum& tier : s_.tiers) f.from(key("tier " + tier.name + "/finished length"));
      f.add();
    }
  }

  void add_count() {
    NewFigure f = figure("count");
    f.is(s_.sum.count);
    if (run_.count.known()) {
      f.from("", run_.count).written().at(run_.count.at).add();
      return;
    }
    const std::string finished = worked(s_.sum.finished, in_);
    const bool fullness_wished = s_.sum.count_rounded && !run_.visible.known() && run_.fullness.known() && run_.depth.known();
    if (fullness_wished && run_.finished.known())
      f.from(key("finished"), run_.finished)
          .from(key("fullness"), run_.fullness)
          .from(key("depth"), run_.depth)
          .working("number of pleats", "finished × (fullness wished − 1) / (" + folds_ + " × depth), to the nearest",
                   finished + " × (" + text_of(*run_.fullness) + " − 1) / (" + folds_ + " × " + worked(*run_.depth, in_) + ")");
    else if (fullness_wished)
      f.from(key("flat"))
          .from(key("fullness"), run_.fullness)
          .from(key("depth"), run_.depth)
          .working("number of pleats", "(flat − flat / fullness wished) / (" + folds_ + " × depth), to the nearest",
                   "(" + worked(flat_to_pleat(), in_) + " − " + worked(flat_to_pleat(), in_) + " / " + text_of(*run_.fullness) +
                       ") / (" + folds_ + " × " + worked(*run_.depth, in_) + ")");
    else if (run_.depth.known() && (!run_.visible.known() || (run_.flat.known() && run_.finished.known())))
      f.from(key("flat"))
          .from(key("finished"))
          .from(key("depth"), run_.depth)
          .working(
              "number of pleats", "(flat − finished) / (" + folds_ + " × depth)",
              "(" + worked(flat_to_pleat(), in_) + " − " + finished + ") / (" + folds_ + " × " + worked(*run_.depth, in_) + ")");
    else if (run_.visible.known() && (run_.finished.known() || run_.fullness.known()))
      f.from(key("finished"), run_.finished)
          .from(key("visible"), run_.visible)
          .working("number of pleats",
                   run_.half || !s_.mirrored || s_.sum.count % 2 != 0
                       ? "finished / visible wished, to the nearest, a tie to fewer"
                       : "finished / visible wished, to the nearest that gives two halves",
                   finished + " / " + worked(*run_.visible, in_));
    else if (run_.visible.known() && run_.depth.known())
      f.from(key("flat"))
          .from(key("visible"), run_.visible)
          .from(key("depth"), run_.depth)
          .working("number of pleats", "flat / (visible wished + " + folds_ + " × depth), to the nearest",
                   worked(flat_to_pleat(), in_) + " / (" + worked(*run_.visible, in_) + " + " + folds_ + " × " +
                       worked(*run_.depth, in_) + ")");
    f.add();
  }

  void add_flat() {
    if (!s_.flat) return;
    NewFigure f = figure("flat");
    f.is(*s_.flat);
    const Round* round = sums_.round_of(run_);
    const std::string half = run_.half ? "half of " : "";
    if (s_.flat_by == RunSum::FlatBy::written) {
      f.written().from("", run_.flat);
      if (run_.flat.known()) f.at(run_.flat.at);
    } else if (s_.flat_by == RunSum::FlatBy::worked && s_.pleated) {
      f.from(key("finished"), run_.finished).from(key("count")).from(key("depth"), run_.depth);
      f.working("cloth for the pleated edge",
                "finished + " + folds_ + " × pleats × depth" + (s_.sum.plus.is_zero() ? "" : " + plus"),
                worked(s_.sum.finished, in_) + " + " + folds_ + " × " + n() + " × " + worked(s_.sum.depth, in_) +
                    (s_.sum.plus.is_zero() ? "" : " + " + worked(s_.sum.plus, in_)));
    } else if (s_.flat_by == RunSum::FlatBy::tiers) {
      f.from("pleats/" + run_.named.name + "/tier " + s_.tiers.front().name + "/flat").add();
      return;
    } else if (s_.flat_by == RunSum::FlatBy::worked) {
      f.from(key("finished"), run_.finished).from(key("fullness"), run_.fullness).from(key("plus"), run_.plus);
      f.working("cloth for the gathered edge", "finished × fullness + plus",
                worked(*s_.finished, in_) + " × " + text_of(*s_.fullness) + " + " +
                    worked(run_.plus.known() ? *run_.plus : Length{}, in_));
    } else if (s_.flat_by == RunSum::FlatBy::rest && round != nullptr) {
      f.from("rounds/" + round->named.name + "/joined round");
      std::string before;
      for (const std::string& name : round->runs) {
        if (same_name(name, run_.named.name)) break;
        for (const RunSum& other : sums_.runs())
          if (same_name(other.run->named.name, name) && other.flat) {
            const Length own = run_.half == other.run->half ? *other.flat : run_.half ? other.flat->times(1, 2) : 2 * *other.flat;
            before += " − " + worked(own, in_);
            f.from("pleats/" + other.run->named.name + "/flat");
          }
      }
      const auto all = sums_.joined(run_.of.empty() ? round->of : run_.of).length;
      if (all)
        f.working("what is left of the round", half + "the joined round − the runs before",
                  (run_.half ? worked(*all, in_) + " / 2" : worked(*all, in_)) + before);
    } else {
      const std::vector<std::string>& of = run_.of.empty() && round != nullptr ? round->of : run_.of;
      const JoinedLine line = joined_line(project_, sums_, of);
      for (const std::string& input : line.inputs) f.from(input);
      f.working("the run laid open", half + line.formula, run_.half ? "(" + line.numbers + ") / 2" : line.numbers);
    }
    f.add();
  }

  void add_finished() {
    NewFigure f = figure("finished");
    f.is(*s_.finished);
    if (run_.finished.known()) {
      f.written().from("", run_.finished).at(run_.finished.at).add();
      return;
    }
    if (s_.pleated && run_.count.known() && run_.visible.known())
      f.from(key("count"))
          .from(key("visible"), run_.visible)
          .working("finished width", "pleats × visible", n() + " × " + worked(*run_.visible, in_));
    else if (s_.pleated && run_.depth.known())
      f.from(key("flat"))
          .from(key("count"))
          .from(key("depth"), run_.depth)
          .working("finished width", plus_words("flat", " − plus") + " − " + folds_ + " × pleats × depth",
                   worked(flat_to_pleat(), in_) + " − " + folds_ + " × " + n() + " × " + worked(*run_.depth, in_));
    else if (s_.fullness || run_.fullness.known())
      f.from(key("flat"))
          .from(key("fullness"), run_.fullness)
          .working("finished width", "(flat − plus) / fullness",
                   worked(s_.pleated ? flat_to_pleat() : *s_.flat - (run_.plus.known() ? *run_.plus : Length{}), in_) + " / " +
                       text_of(run_.fullness.known() ? *run_.fullness : *s_.fullness));
    else f.from(key("flat"));
    f.add();
  }

  void add_depth() {
    NewFigure f = figure("depth");
    if (!s_.takes.empty()) {  // of the pleats that are alike
      const Length each = taken_by(s_.half, s_.takes, s_.half.count);
      f.is(each.times(1, folds_under(run_.kind)))
          .from(key("flat"))
          .from(key("finished"))
          .from(key("count"))
          .working("depth of the pleats that are alike", "what each takes up / " + folds_, worked(each, in_) + " / " + folds_)
          .add();
      return;
    }
    f.is(s_.sum.depth);
    const bool divides = s_.flat_by != RunSum::FlatBy::worked || !run_.depth.known();
    if (run_.depth.known()) f.from("", run_.depth).at(run_.depth.at);
    if (divides)
      f.from(key("flat"))
          .from(key("finished"))
          .from(key("count"))
          .working(
              "depth of each pleat", "(flat − finished) / (" + folds_ + " × pleats)",
              "(" + worked(flat_to_pleat(), in_) + " − " + worked(s_.sum.finished, in_) + ") / (" + folds_ + " × " + n() + ")");
    else f.written();
    f.add();
  }

  // The seam lies in the inner fold, where it cannot be seen: one pleat's cloth is shared out to its two edges.
  void add_seam_edges() {
    const std::string deep = worked(s_.sum.depth, in_);
    figure("near edge")
        .is(s_.sum.depth)
        .from(key("depth"))
        .working("cloth added to the first edge of each seam", "depth", deep)
        .add();
    figure("far edge")
        .is(s_.sum.depth * 3)
        .from(key("depth"))
        .working("cloth added to the other edge of each seam", "3 × depth", "3 × " + deep)
        .add();
  }

  void add_visible() {
    figure("visible")
        .is(s_.sum.visible)
        .from(key("finished"))
        .from(key("count"))
        .working("what shows of each pleat", "finished / pleats", worked(s_.sum.finished, in_) + " / " + n())
        .add();
  }

  // A whole run in two mirrored halves: the marks are of one half, so its sums stand here too.
  void add_half() {
    figure("half count").is(s_.half.count).from(key("count")).working("pleats in one half", "pleats / 2", n() + " / 2").add();
    figure("half flat")
        .is(s_.half.flat)
        .from(key("flat"))
        .working("one half laid open", "flat / 2", worked(s_.sum.flat, in_) + " / 2")
        .add();
    figure("half finished")
        .is(s_.half.finished)
        .from(key("finished"))
        .working("one half pleated", "finished / 2", worked(s_.sum.finished, in_) + " / 2")
        .add();
  }

  // Half the joined round, or nothing when it is not known.
  std::optional<Length> half_round() const {
    const Round* round = sums_.round_of(run_);
    const auto all = sums_.joined(run_.of.empty() && round != nullptr ? round->of : run_.of).length;
    return all ? std::optional(all->times(1, 2)) : std::nullopt;
  }

  bool from_the_back() const { return marked_from_the_back(s_); }

  // Marks run the way the pleats are laid, so that the last line is the run's flat width: toward centre back they are
  // measured from centre front, toward centre front from centre back.
  std::string measured_from() const {
    if (!s_.mirrored) {
      if (run_.of.empty() && sums_.round_of(run_) == nullptr)
        return toward() == Toward::left ? "the end at the wearer’s right" : "the end at the wearer’s left";
      return s_.begins_at.is_zero() ? "centre front" : "the run's start";
    }
    if (!from_the_back()) return s_.begins_at.is_zero() ? "centre front" : "its end nearer centre front";
    const auto half = half_round();
    const bool reaches = half && s_.begins_at + s_.half.flat + Length::ticks(1) >= *half;
    return reaches ? "centre back" : "its end nearer centre back";
  }

  const Project& project_;
  RoundSums& sums_;
  const RunSum& s_;
  const PleatRun& run_;
  ShownIn in_;
  Figures& figures_;
  std::string folds_;
};

}  // namespace

std::vector<PleatPlan> add_pleats(const Project& project, RoundSums& sums, Figures& figures) {
  std::vector<PleatPlan> plans;
  for (const RunSum& s : sums.runs()) {
    Run run(project, sums, s, figures);
    run.add_sum();
    if (s.pleated) plans.push_back(run.add_plan());
    else if (s.flat && s.finished && s.run->kind != PleatKind::plain) plans.push_back(run.gathered_plan());
  }
  return plans;
}

}  // namespace gownsheaf
