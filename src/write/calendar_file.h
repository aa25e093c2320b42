// Days for a calendar program: iCalendar (RFC 5545). All-day events, lines ended by CR LF and folded before the 76th octet,
// never inside a letter; text escaped. Nothing comes from a clock: DTSTAMP is the day that is handed in.
#pragma once
#include <string>
#include <vector>

#include "units/quantities.h"

namespace gownsheaf {

struct CalendarEvent {
  std::string uid;  // the same for the same event each time, whatever its day
  Day day;
  std::string summary, description;  // description may be empty
};
std::string calendar_file(const std::string& name, Day stamp, const std::vector<CalendarEvent>& events);

}  // namespace gownsheaf
