// Days by the proleptic Gregorian calendar of <chrono>; no clock is read and no time zone is looked up.
#include <chrono>

#include "units/quantities.h"

namespace gownsheaf {

Day make_day(int year, int month, int day) {
  const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                         std::chrono::day{static_cast<unsigned>(day)}};
  return Day{static_cast<std::int32_t>(std::chrono::sys_days{date}.time_since_epoch().count())};
}

CalendarDay calendar(Day day) {
  const std::chrono::sys_days days{std::chrono::days{day.serial}};
  const std::chrono::year_month_day date{days};
  const std::chrono::weekday weekday{days};
  return CalendarDay{static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
                     static_cast<int>(static_cast<unsigned>(date.day())), static_cast<int>(weekday.iso_encoding()) - 1};
}

}  // namespace gownsheaf
