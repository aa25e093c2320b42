// Work laid on the days of one maker: as early as it can be done, and as late as it may be. No clock: the first day and the
// last come from the project. Bare numbers, so that a minute-by-minute simulation can be held against it.
//
// Forward: each day from the first, as long as it has minutes left, the first step of the order that is free is gone on with.
// A step is free when all that it waits for ended on this day or earlier (and the days it rests have passed), when its
// material is there, and when the day allows it: on days for hand sewing only what is sewn by hand, with a second person only
// on days when one is there. What is done in one sitting begins only on a day with room for all of it, or as the day's first.
// Backward: the same from the last day, days and order turned round; a step is free when all that wait for it have begun
// later, its rest before them, and not after its own deadline. What it gives are the latest days.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "units/quantities.h"

namespace gownsheaf {

struct DayHours {
  std::array<std::int64_t, 7> minutes{};   // 0 = Monday
  std::set<int> hand_only;                 // weekdays
  std::vector<std::pair<Day, Day>> off;    // first and last
  std::map<Day, std::int64_t> other;       // minutes of single days, days off too
  std::optional<std::vector<Day>> helper;  // rising; absent: always there
  std::int64_t on(Day day) const;
  bool by_hand_only(Day day) const { return hand_only.count(calendar(day).weekday) > 0; }
  bool helper_on(Day day) const;
};

struct DayStep {
  std::int64_t minutes = 0;  // 0: done already
  bool by_hand = false, helper = false, one_sitting = false;
  std::int32_t rests = 0;                    // days between its last day and the first of what waits for it
  std::optional<Day> not_before, not_after;  // not_after: its own deadline, looked at only backward
  std::vector<std::size_t> after;
};

struct DayWork {
  Day day;
  std::size_t step = 0;
  std::int64_t minutes = 0;
};
struct DayPlan {
  std::vector<std::optional<Day>> first, last;  // of each step; absent where it found no room (or is done)
  std::vector<DayWork> work;                    // in the order done; backward: from the last day
  std::int64_t left = 0;                        // minutes that found no room
};

// `order`: all steps, each after what it waits for.
DayPlan plan_forward(const std::vector<DayStep>& steps, const std::vector<std::size_t>& order, const DayHours& hours, Day first,
                     Day last);
DayPlan plan_backward(const std::vector<DayStep>& steps, const std::vector<std::size_t>& order, const DayHours& hours, Day first,
                      Day last);

}  // namespace gownsheaf
