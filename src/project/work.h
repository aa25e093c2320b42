// When the maker works, what is done, steps of her own, and how fast she sews.
#pragma once
#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "project/given.h"
#include "project/named.h"
#include "units/quantities.h"

namespace gownsheaf {

struct DoneStep {
  std::string step;
  std::optional<Day> day;
  SourceSpan at;
  std::string part = {};
};  // part: "" = all of it
struct OwnStep {
  Named named;
  std::string say, because, cannot_undo;
  std::vector<std::string> after, before, needs, uses;
  SourceSpan after_at, before_at;
  std::optional<Span> takes = {};
};
struct StepPart {
  std::string part;
  std::optional<Span> takes;
};
struct ChangedStep {  // a step done otherwise than the library says
  std::string step;   // id, or id@item
  SourceSpan at;
  bool drop = false;
  std::string because, say;
  std::optional<Span> takes;
  std::vector<std::string> after;  // it waits for these too
  std::vector<StepPart> parts;
};
struct DueStep {
  std::string step;
  Day day;
  SourceSpan at;
};
struct OrderQuestion {
  std::string step, other;
  SourceSpan at;
};  // may `step` come before `other`?

struct Work {
  Given<Ratio> hours_a_week;
  std::optional<std::array<Ratio, 7>> hours_by_weekday;  // where they were given so; 0 = Monday
  std::set<int> hand_sewing_only;                        // weekdays
  std::vector<std::pair<Day, Day>> days_off;             // first and last
  std::map<Day, Ratio> other_days;
  std::optional<std::vector<Day>> helper_here;  // absent: there whenever she is needed
  Given<Day> rehearsal;
  Given<Span> buffer;
  std::vector<DueStep> due;
  std::vector<DoneStep> done;
  std::vector<OwnStep> own_steps;
  std::vector<ChangedStep> changes;
  std::vector<OrderQuestion> questions;
};

struct Pace {
  Given<std::string> i_am;  // practised | expert | new to this
  Given<Percent> threading;
  bool all_by_hand = false;
  std::map<std::string, Rate> own;  // by kind of work, as the library's `rate` names it
};

}  // namespace gownsheaf
