#include "calculate/step_times.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kFive = 5 * kMinute;
constexpr Span kOwnStep{30 * kMinute};           // common practice, no source
constexpr Ratio kBackStitch{48'000, 1};          // milliseconds an inch
constexpr std::int64_t kStitchesToTheInch = 10;  // common practice, no source

Ratio product_of(const Ratio& a, const Ratio& b) { return Ratio::of(a.n * b.n, a.d * b.d); }
Ratio sum_of(const Ratio& a, const Ratio& b) { return Ratio::of(a.n * b.d + b.n * a.d, a.d * b.d); }

// How many of what the step is timed by: a count, or inches.
struct HowMany {
  Ratio number;
  bool inches = false;
};
std::optional<HowMany> how_many(const StepInstance& s, const Project& project, const Figures& figures) {
  const SayReference r = read_reference(s.step->hours_times);
  std::string key = s.step->hours_times;
  if (!r.item_word.empty()) key = r.section + "/" + s.item + "/" + r.quantity;
  if (r.item_word == "piece")
    if (const Piece* piece = project.piece(s.item); piece != nullptr && !piece->from.empty() && figures.find(key) == nullptr)
      key = r.section + "/" + s.item + "/" + piece->from.front() + "/" + r.quantity;
  if (const auto n = figures.count(key)) return HowMany{Ratio{*n, 1}, false};
  if (const auto length = figures.length(key))
    return HowMany{Ratio::of((10 * length->in_ticks() + Length::inches(1).in_ticks() / 2) / Length::inches(1).in_ticks(), 10),
                   true};
  return {};
}

// Milliseconds for one by the maker's own rate.
std::optional<Ratio> own_each(const Rate& rate, bool inches) {
  constexpr std::int64_t kMost = 100'000;  // beyond that it is a slip, and sums would not hold it
  if (rate.amount.n <= 0 || rate.amount.n > kMost || rate.amount.d > kMost) return {};
  if (rate.per == "each" && rate.of == "min" && !inches) return product_of(rate.amount, Ratio{kMinute, 1});
  if (!inches) return {};
  if (rate.of == "min" && rate.per == "in") return product_of(rate.amount, Ratio{kMinute, 1});
  if (rate.of == "min" && rate.per == "cm") return product_of(rate.amount, Ratio::of(kMinute * 254, 100));
  if (rate.of == "stitches" && rate.per == "min") return Ratio::of(kStitchesToTheInch * kMinute * rate.amount.d, rate.amount.n);
  return {};
}

bool by_machine(const Step& step) { return std::find(step.needs.begin(), step.needs.end(), "machine") != step.needs.end(); }

Span rounded(const Ratio& ms) {
  const std::int64_t fives = (2 * ms.n + kFive * ms.d) / (2 * kFive * ms.d);
  return Span{std::max<std::int64_t>(1, fives) * kFive};
}

Span less_parts_done(Span whole, const StepInstance& s) {
  if (s.change == nullptr) return whole;
  for (const StepPart& part : s.change->parts)
    if (part.takes && s.parts_done.count(part.part) > 0) whole.milliseconds -= part.takes->milliseconds;
  return Span{std::max<std::int64_t>(whole.milliseconds, 0)};
}

}  // namespace

void add_step_times(const Project& project, const std::vector<PlannedStep>& work, Figures& figures) {
  for (const PlannedStep& s : work)
    NewFigure(figures, shown_in(project), "steps", s.id, "takes").is(s.takes).at(s.at).label('c').plain_input("pace").add();
}

std::int64_t minutes_of(Span span) { return (span.milliseconds + kMinute - 1) / kMinute; }

Span time_of(const StepInstance& s, const Project& project, const Figures& figures) {
  if (s.change != nullptr && s.change->takes) return less_parts_done(*s.change->takes, s);
  if (s.own != nullptr) return s.own->takes.value_or(kOwnStep);
  const Step& step = *s.step;
  if (!step.hours_each) return kOwnStep;
  const Pace& pace = project.pace;
  Ratio each{step.hours_each->milliseconds, 1}, fixed{step.hours_plus ? step.hours_plus->milliseconds : 0, 1};
  Ratio number{1, 1};
  bool own = false, counted = step.hours_times.empty();
  const bool by_hand = pace.all_by_hand && by_machine(step);
  bool slower = by_hand;
  if (!counted)
    if (const auto many = how_many(s, project, figures)) {
      counted = true;
      number = many->number;
      if (by_hand && many->inches) each = kBackStitch, slower = false;
      if (const auto rate = pace.own.find(step.hours_rate); rate != pace.own.end())
        if (const auto mine = own_each(rate->second, many->inches)) each = *mine, own = true, slower = false;
    }
  if (!counted && step.hours_else) each = Ratio{step.hours_else->milliseconds, 1}, fixed = Ratio{0, 1};
  Ratio worked = product_of(each, number);
  if (slower) worked = product_of(worked, Ratio{2, 1});
  if (!step.gate.empty()) return rounded(sum_of(worked, fixed));
  const std::string practice = pace.i_am.known() ? *pace.i_am : "practised";
  Ratio factor = practice == "expert" ? Ratio{7, 10} : practice == "new to this" ? Ratio{3, 2} : Ratio{1, 1};
  if (pace.threading.known()) factor = product_of(factor, sum_of(Ratio{1, 1}, pace.threading->of_one));
  return rounded(sum_of(own ? worked : product_of(worked, factor), product_of(fixed, factor)));
}

}  // namespace gownsheaf
