#include "calculate/day_plan.h"

#include <algorithm>

namespace gownsheaf {
namespace {

// One pass over the days. `ahead`: what must be over before a step is free; forward what it waits for, backward what waits
// for it. A rest lies between the two whichever way the days run.
class Pass {
 public:
  Pass(const std::vector<DayStep>& steps, const DayHours& hours, bool backward)
      : steps_(steps), hours_(hours), backward_(backward), ahead_(steps.size()), left_(steps.size()), ended_(steps.size()) {
    plan_.first.resize(steps.size());
    plan_.last.resize(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
      left_[i] = steps[i].minutes;
      for (const std::size_t a : steps[i].after) {
        if (backward) ahead_[a].push_back(i);
        else ahead_[i].push_back(a);
      }
    }
  }

  DayPlan over(std::vector<std::size_t> order, Day from, Day to) {
    order.erase(std::remove_if(order.begin(), order.end(), [&](std::size_t i) { return left_[i] == 0; }), order.end());
    for (const std::size_t i : order) plan_.left += left_[i];
    const std::int32_t step = backward_ ? -1 : 1;
    for (Day day = from; plan_.left > 0 && (backward_ ? day >= to : day <= to); day.serial += step) work_on(day, order);
    return std::move(plan_);
  }

 private:
  void work_on(Day day, std::vector<std::size_t>& order) {
    const std::int64_t whole = hours_.on(day);
    std::int64_t room = whole;
    const bool by_hand = hours_.by_hand_only(day), helper = hours_.helper_on(day);
    while (room > 0) {
      const auto at = std::find_if(order.begin(), order.end(), [&](std::size_t i) {
        const DayStep& s = steps_[i];
        if ((by_hand && !s.by_hand) || (s.helper && !helper) || !free(i, day)) return false;
        const bool begun = left_[i] < s.minutes;
        return !s.one_sitting || begun || left_[i] <= room || room == whole;
      });
      if (at == order.end()) return;
      const std::size_t i = *at;
      const std::int64_t minutes = std::min(room, left_[i]);
      note(i, day);
      plan_.work.push_back({day, i, minutes});
      plan_.left -= minutes;
      room -= minutes;
      left_[i] -= minutes;
      if (left_[i] > 0) continue;
      ended_[i] = day;
      order.erase(at);
    }
  }

  bool free(std::size_t i, Day day) const {
    const DayStep& s = steps_[i];
    if (backward_ ? s.not_after && *s.not_after < day : s.not_before && *s.not_before > day) return false;
    return std::all_of(ahead_[i].begin(), ahead_[i].end(), [&](std::size_t a) {
      if (left_[a] > 0) return false;
      if (!ended_[a]) return true;  // done before the first day
      return backward_ ? day.serial <= ended_[a]->serial - s.rests : day.serial >= ended_[a]->serial + steps_[a].rests;
    });
  }

  void note(std::size_t i, Day day) {
    auto& first = plan_.first[i];
    auto& last = plan_.last[i];
    if (!first || day < *first) first = day;
    if (!last || day > *last) last = day;
  }

  const std::vector<DayStep>& steps_;
  const DayHours& hours_;
  bool backward_;
  std::vector<std::vector<std::size_t>> ahead_;
  std::vector<std::int64_t> left_;
  std::vector<std::optional<Day>> ended_;
  DayPlan plan_;
};

}  // namespace

std::int64_t DayHours::on(Day day) const {
  if (const auto at = other.find(day); at != other.end()) return at->second;
  for (const auto& [first, last] : off)
    if (first <= day && day <= last) return 0;
  return minutes[static_cast<std::size_t>(calendar(day).weekday)];
}

bool DayHours::helper_on(Day day) const { return !helper || std::binary_search(helper->begin(), helper->end(), day); }

DayPlan plan_forward(const std::vector<DayStep>& steps, const std::vector<std::size_t>& order, const DayHours& hours, Day first,
                     Day last) {
  return Pass(steps, hours, false).over(order, first, last);
}

DayPlan plan_backward(const std::vector<DayStep>& steps, const std::vector<std::size_t>& order, const DayHours& hours, Day first,
                      Day last) {
  return Pass(steps, hours, true).over({order.rbegin(), order.rend()}, last, first);
}

}  // namespace gownsheaf
