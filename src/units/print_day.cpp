#include <array>

#include "units/print.h"

namespace gownsheaf {
namespace {

std::string padded(int n, std::size_t width) {
  std::string digits = whole_number(n < 0 ? -n : n);
  if (digits.size() < width) digits.insert(0, width - digits.size(), '0');
  return n < 0 ? "-" + digits : digits;
}

}  // namespace

std::string long_day(Day day) {
  static constexpr std::array<const char*, 7> kWeekdays = {"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                           "Friday", "Saturday", "Sunday"};
  static constexpr std::array<const char*, 12> kMonths = {"January", "February", "March",     "April",   "May",      "June",
                                                          "July",    "August",   "September", "October", "November", "December"};
  const CalendarDay date = calendar(day);
  return std::string(kWeekdays[static_cast<std::size_t>(date.weekday)]) + " " + whole_number(date.day) + " " +
         kMonths[static_cast<std::size_t>(date.month - 1)] + " " + whole_number(date.year);
}

std::string iso_day(Day day) {
  const CalendarDay date = calendar(day);
  return padded(date.year, 4) + "-" + padded(date.month, 2) + "-" + padded(date.day, 2);
}

}  // namespace gownsheaf
