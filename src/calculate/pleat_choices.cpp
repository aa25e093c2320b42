#include "calculate/pleat_choices.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "calculate/pleat_waist.h"

namespace gownsheaf {
namespace {

std::int64_t to_step(std::int64_t count, std::int64_t step) { return std::max(step, count / step * step); }

PleatChoice choice_of(PleatKind kind, Length flat, Length finished, std::int64_t count) {
  return {kind, flat, finished, (flat - finished).times(1, folds_under(kind) * count), finished.times(1, count), count};
}

// What one more breadth adds to the run, in its own measure.
std::optional<Length> breadth_of(const Project& project, const RoundSums& sums, const PleatRun& run) {
  const Round* round = sums.round_of(run);
  const std::vector<std::string>& of = run.of.empty() && round != nullptr ? round->of : run.of;
  if (of.size() != 1) return std::nullopt;
  const Piece* piece = project.piece(of.front());
  const Cloth* cloth = piece != nullptr && !piece->from.empty() ? project.cloth(piece->from.front()) : nullptr;
  if (cloth == nullptr || !is_full_width(*piece)) return std::nullopt;
  const auto one = joined_width(*piece, *cloth);
  return one && run.half ? std::optional(one->times(1, 2)) : one;
}

}  // namespace

std::vector<PleatChoice> pleat_choices(PleatKind kind, const PleatSolution& as_is, std::int64_t step,
                                       std::optional<Length> breadth) {
  const Length flat = as_is.flat - as_is.plus, finished = as_is.finished, one = breadth.value_or((flat - finished).times(1, 4));
  const std::int64_t n = as_is.count;
  const bool fewer_whole = folds_under(kind) > 2;
  const std::int64_t other = fewer_whole ? 2 * n : to_step((n + 1) / 2, 1);
  const std::int64_t fewer = std::min(to_step(n * 3 / 4, step), std::max(step, n - step)),
                     more = std::max(to_step((n * 5 + 3) / 4, step), n + step);
  return {choice_of(kind, flat, finished, n), choice_of(kind, flat, finished, fewer), choice_of(kind, flat, finished, more),
          choice_of(kind, flat - one > finished ? flat - one : flat + one, finished, n),
          choice_of(fewer_whole ? PleatKind::knife : PleatKind::box, flat, finished, other)};
}

void add_pleat_choices(const Project& project, RoundSums& sums, std::vector<PleatPlan>& plans, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const RunSum& s : sums.runs()) {
    if (!s.run->show_plans || !s.pleated || s.run->kind == PleatKind::tucks) continue;
    const std::string& run = s.run->named.name;
    const bool pairs = s.mirrored && !s.run->half && folds_under(s.run->kind) == 2;
    const auto layers = layers_at_top(project, sums, *s.run);
    const auto choices = pleat_choices(s.run->kind, s.sum, pairs ? 2 : 1, breadth_of(project, sums, *s.run));
    for (std::size_t i = 0; i < choices.size(); ++i) {
      const PleatChoice& c = choices[i];
      const std::string plan = "plan " + whole_number(static_cast<std::int64_t>(i + 1)) + "/", key = "pleats/" + run + "/" + plan;
      const auto figure = [&](const char* quantity) {
        NewFigure f(figures, in, "pleats", run, plan + quantity);
        f.at(s.run->named.at);
        return f;
      };
      figure("kind").is(std::string(word_for(c.kind))).add();
      figure("count").is(c.count).from("pleats/" + run + "/count").add();
      figure("flat").is(c.flat + s.sum.plus).from("pleats/" + run + "/flat").add();
      figure("visible").is(c.visible).from("pleats/" + run + "/finished").from(key + "count").add();
      figure("depth").is(c.depth).from(key + "flat").from("pleats/" + run + "/finished").from(key + "count").add();
      figure("cloths thick")
          .is(Ratio::of(c.flat.in_ticks(), c.finished.in_ticks()))
          .from(key + "flat")
          .from("pleats/" + run + "/finished")
          .add();
      if (layers) figure("waist thickness").is(pleated_thickness(c.flat, c.finished, *layers)).from(key + "cloths thick").add();
    }
    for (PleatPlan& plan : plans)
      if (same_name(plan.run, run)) plan.choices = static_cast<int>(choices.size());
  }
}

}  // namespace gownsheaf
