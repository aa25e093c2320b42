// Work laid on days, against a simulation that goes minute by minute and knows nothing of stretches.
#include "calculate/day_plan.h"

#include <algorithm>
#include <numeric>

#include "support/catch.h"
#include "support/random_draws.h"

using namespace gownsheaf;

namespace {

using Places = std::vector<std::size_t>;

struct Trial {
  std::vector<DayStep> steps;
  DayHours hours;
  Day first = make_day(2031, 3, 3), last = make_day(2031, 4, 6);
};

Trial any_trial(draws::Draws& dice) {
  Trial t;
  for (auto& m : t.hours.minutes) m = dice.of(0, 2) == 0 ? 0 : 5 * dice.of(1, 20);
  if (dice.of(0, 1) == 0) t.hours.hand_only.insert(static_cast<int>(dice.of(0, 6)));
  if (dice.of(0, 2) == 0)
    t.hours.off.push_back({make_day(2031, 3, 10), Day{make_day(2031, 3, 10).serial + static_cast<int>(dice.of(0, 4))}});
  if (dice.of(0, 2) == 0) t.hours.other[make_day(2031, 3, 12)] = 5 * dice.of(0, 40);
  if (dice.of(0, 2) == 0) {
    t.hours.helper.emplace();
    for (int d = static_cast<int>(dice.of(0, 3)); d < 35; d += static_cast<int>(dice.of(2, 6)))
      t.hours.helper->push_back(Day{t.first.serial + d});
  }
  const auto n = static_cast<std::size_t>(dice.of(1, 7));
  for (std::size_t i = 0; i < n; ++i) {
    DayStep s;
    s.minutes = dice.of(0, 6) == 0 ? 0 : 5 * dice.of(1, 30);
    s.by_hand = dice.of(0, 1) == 0;
    s.helper = dice.of(0, 4) == 0;
    s.one_sitting = dice.of(0, 3) == 0;
    if (dice.of(0, 4) == 0) s.rests = static_cast<std::int32_t>(dice.of(1, 3));
    if (dice.of(0, 5) == 0) s.not_before = Day{t.first.serial + static_cast<std::int32_t>(dice.of(0, 12))};
    if (dice.of(0, 5) == 0) s.not_after = Day{t.last.serial - static_cast<std::int32_t>(dice.of(0, 12))};
    for (std::size_t k = 0; k < i; ++k)
      if (dice.of(0, 2) == 0) s.after.push_back(k);
    t.steps.push_back(s);
  }
  return t;
}

struct Simulated {
  std::vector<std::optional<Day>> first, last;
  std::int64_t left = 0;
};

// One minute of one day after the other; of the steps in the order the first that may be worked on.
Simulated minute_by_minute(const Trial& t, bool backward) {
  const std::size_t n = t.steps.size();
  Simulated out{std::vector<std::optional<Day>>(n), std::vector<std::optional<Day>>(n), 0};
  std::vector<std::int64_t> todo(n);
  for (std::size_t i = 0; i < n; ++i) todo[i] = t.steps[i].minutes;
  Places order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  if (backward) std::reverse(order.begin(), order.end());
  for (Day day = backward ? t.last : t.first; day >= t.first && day <= t.last; day.serial += backward ? -1 : 1) {
    const std::int64_t minutes = t.hours.on(day);
    for (std::int64_t minute = 0; minute < minutes; ++minute)
      for (const std::size_t i : order) {
        const DayStep& s = t.steps[i];
        if (todo[i] == 0 || (t.hours.by_hand_only(day) && !s.by_hand) || (s.helper && !t.hours.helper_on(day))) continue;
        if (backward ? s.not_after && day > *s.not_after : s.not_before && day < *s.not_before) continue;
        const bool begun = todo[i] < s.minutes;
        if (s.one_sitting && !begun && minute > 0 && todo[i] > minutes - minute) continue;
        bool waits = false;
        for (std::size_t other = 0; other < n; ++other) {
          const bool before = std::count(s.after.begin(), s.after.end(), other) > 0;
          const bool behind = std::count(t.steps[other].after.begin(), t.steps[other].after.end(), i) > 0;
          if (!(backward ? behind : before)) continue;
          if (todo[other] > 0) waits = true;
          else if (t.steps[other].minutes > 0 && !backward)
            waits = waits || day.serial < out.last[other]->serial + t.steps[other].rests;
          else if (t.steps[other].minutes > 0) waits = waits || day.serial + s.rests > out.first[other]->serial;
        }
        if (waits) continue;
        --todo[i];
        if (!out.first[i] || day < *out.first[i]) out.first[i] = day;
        if (!out.last[i] || day > *out.last[i]) out.last[i] = day;
        break;
      }
  }
  for (const std::int64_t m : todo) out.left += m;
  return out;
}

}  // namespace

TEST_CASE("days: a week by hand", "[days]") {
  // 60 min on Mondays and Wednesdays, the latter for hand sewing only. 3 March 2031 is a Monday.
  DayHours hours;
  hours.minutes[0] = hours.minutes[2] = 60;
  hours.hand_only = {2};
  std::vector<DayStep> steps(3);
  steps[0].minutes = 90;  // at the machine: Monday 60, the Monday after 30
  steps[1].minutes = 40;  // by hand, waits for nothing: Wednesday
  steps[1].by_hand = true;
  steps[2].minutes = 30;  // waits for the machine's
  steps[2].after = {0};
  const Day monday = make_day(2031, 3, 3);
  const DayPlan plan = plan_forward(steps, {0, 1, 2}, hours, monday, Day{monday.serial + 27});
  CHECK(plan.left == 0);
  CHECK(*plan.first[0] == monday);
  CHECK(*plan.last[0] == Day{monday.serial + 7});
  CHECK(*plan.first[1] == Day{monday.serial + 2});
  CHECK(*plan.first[2] == Day{monday.serial + 7});
  // Backward from Wednesday the 26th: the last on Monday the 24th with 30 min of the first, its other 60 on the 17th.
  const DayPlan late = plan_backward(steps, {0, 1, 2}, hours, monday, Day{monday.serial + 23});
  CHECK(*late.first[2] == Day{monday.serial + 21});
  CHECK(*late.first[0] == Day{monday.serial + 14});
  CHECK(*late.first[1] == Day{monday.serial + 23});
}

TEST_CASE("days: as minute by minute, forward and backward", "[days][law]") {
  draws::Draws dice(1866);
  for (int round = 0; round < kLawRounds / 10; ++round) {
    const Trial t = any_trial(dice);
    Places order(t.steps.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (const bool backward : {false, true}) {
      INFO("round " << round << (backward ? " backward" : " forward"));
      const DayPlan plan = backward ? plan_backward(t.steps, order, t.hours, t.first, t.last)
                                    : plan_forward(t.steps, order, t.hours, t.first, t.last);
      const Simulated simulated = minute_by_minute(t, backward);
      REQUIRE(plan.first == simulated.first);
      REQUIRE(plan.last == simulated.last);
      REQUIRE(plan.left == simulated.left);
    }
  }
}
