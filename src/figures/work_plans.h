// The work on its days: what the calendar sheet and the calendar file are made of. Steps are named by their printed number.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "units/quantities.h"

namespace gownsheaf {

struct CalendarDayPlan {
  Day day;
  std::int64_t minutes = 0;  // there are for work
  bool by_hand_only = false, helper = false, off = false;
  struct Stint {
    int step = 0;
    std::int64_t minutes = 0;
  };
  std::vector<Stint> does;
};
// A cloth, or a notion, that is still to come.
struct Delivery {
  std::string what;
  std::optional<Day> arrives, order_by, order_by_to_replace;  // ..to_replace: so early that it can be ordered once more
  std::optional<Day> needed;                                  // the latest day to begin what uses it
  bool late = false;                                          // it arrives after that, or should have been ordered before today
  std::vector<int> uses_it, meanwhile;                        // steps; meanwhile: what can be done before it is there, in order
};
// step 0: no step, the words say it; also: what goes with the step.
struct TimeSaved {
  std::string what;
  int step = 0;
  Span saves;
  std::vector<int> also;
};

struct WorkPlan {
  std::optional<Day> from, last;                // first day of work (today), last day for work
  std::optional<Day> rehearsal, worn_on, ends;  // ends: the day on which the last step is done, at this pace
  int rehearsal_step = 0;
  Span needed, there;                 // work that is left; hours from `from` to `last`
  Span unfinished;                    // what is not done by the end of `last`; nothing: it fits
  std::vector<CalendarDayPlan> days;  // from `from` to the later of `last` and `ends`, every day
  std::vector<Delivery> deliveries;
  std::vector<TimeSaved> gives_way;  // only where it does not fit
  bool one_is_enough = false;        // each of them would do by itself; else they are wanted together
  Span still_wanting;                // with all of them given way
  std::vector<int> chain;            // the longest chain of steps that wait for each other
  Span chain_takes;
  std::vector<Day> helper_days;  // of those written, the ones that are used
};

}  // namespace gownsheaf
