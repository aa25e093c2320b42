// Days are year-month-day and nothing else: 3/4/2027 is a spring day in two different months.
#include <array>
#include <optional>

#include "units/print.h"
#include "units/written_parts.h"

namespace gownsheaf {

using namespace written;

namespace {

struct Group {
  int value = 0, at = 0, end = 0;
  bool is_month_name = false;
  int digits() const { return is_month_name ? 0 : end - at; }
};

constexpr std::array<const char*, 12> kMonths = {"January", "February", "March",     "April",   "May",      "June",
                                                 "July",    "August",   "September", "October", "November", "December"};

int month_named(const std::string& typed) {  // by its first three letters or more; 0 if none
  if (typed.size() < 3) return 0;
  for (std::size_t i = 0; i < kMonths.size(); ++i)
    if (lower_case(kMonths[i]).rfind(typed, 0) == 0 || (typed == "sept" && i == 8)) return static_cast<int>(i) + 1;
  return 0;
}

bool is_leap(int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }
int days_in(int year, int month) {
  static constexpr std::array<int, 12> kDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap(year) ? 29 : kDays[static_cast<std::size_t>(month - 1)];
}

// "2027-06-14", or "" if the calendar has no such day.
std::string iso_if_real(int year, int month, int day) {
  if (year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 || day > days_in(year, month)) return "";
  return iso_day(make_day(year, month, day));
}

// The three numbers of a date with whatever stands between them; nothing if the text is no date at all.
std::optional<std::array<Group, 3>> three_groups(const Characters& chars, int from, int to, bool& only_hyphens) {
  std::array<Group, 3> groups;
  std::size_t n = 0;
  only_hyphens = true;
  for (int i = from; i < to;) {
    if (n == groups.size()) return std::nullopt;
    Group& group = groups[n];
    group.at = i;
    if (is_digit(chars[i])) {
      while (i < to && is_digit(chars[i])) {
        if (i - group.at >= 4) return std::nullopt;
        group.value = group.value * 10 + static_cast<int>(chars[i] - U'0');
        ++i;
      }
    } else {
      while (i < to && is_letter(chars[i])) ++i;
      group.value = month_named(lower_case(chars.slice(group.at, i)));
      group.is_month_name = true;
      if (group.value == 0) return std::nullopt;
    }
    group.end = i;
    ++n;
    if (i == to) break;
    const int between = i;
    while (i < to && !is_digit(chars[i]) && !is_letter(chars[i])) {
      const char32_t c = chars[i];
      if (!is_dash(c) && !is_slash(c) && c != U'.' && c != U',' && !is_space(c)) return std::nullopt;
      ++i;
    }
    if (i - between != 1 || chars[between] != U'-') only_hyphens = false;
    if (i == to) return std::nullopt;
  }
  if (n != groups.size()) return std::nullopt;
  return groups;
}

Misread day_form(const Written& written, const std::string& rule, std::string hint, int from, int to) {
  if (hint.empty()) hint = "year-month-day: `2027-06-14`";
  return fault("day-form", written.alone() + rule, std::move(hint), from, to);
}

Misread no_such_day(const Written& written, const std::array<Group, 3>& g) {
  const int year = g[0].value, month = g[1].value, day = g[2].value;
  const std::string text = written.text() + ": ";
  if (year < 1) return fault("no-such-day", text + "years count from 1.", "", g[0].at, g[0].end);
  if (month < 1 || month > 12) {
    const std::string swapped = iso_if_real(year, day, month);
    return fault("no-such-day", text + "a year has 12 months.", swapped.empty() ? "" : quoted(swapped) + "?", g[1].at, g[1].end);
  }
  const int last = days_in(year, month);
  const std::string name = kMonths[static_cast<std::size_t>(month - 1)];
  return fault("no-such-day", text + (month == 2 ? "that " + name : name) + " has " + whole_number(last) + " days.",
               quoted(iso_if_real(year, month, day < 1 ? 1 : last)) + "?", g[2].at, g[2].end);
}

}  // namespace

ReadResult<Day> read_day(std::string_view text, std::string_view what) {
  const Written written(text, what);
  const Characters& chars = written.chars;
  const int from = chars.past_spaces(0);
  int to = chars.size();
  while (to > from && is_space(chars[to - 1])) --to;
  if (from == to)
    return {fault("value-empty", quoted(written.key + ":") + " is followed by nothing.", "not known yet: `to measure`", 0, to)};

  bool only_hyphens = false;
  const auto groups = three_groups(chars, from, to, only_hyphens);
  if (!groups) return {day_form(written, " is not the way days are written.", "", from, to)};
  const auto& g = *groups;
  if (g[0].digits() == 4 && !g[1].is_month_name && !g[2].is_month_name) {
    const std::string iso = iso_if_real(g[0].value, g[1].value, g[2].value);
    if (!only_hyphens || g[1].digits() != 2 || g[2].digits() != 2)
      return {day_form(written, " is not the way days are written.", iso.empty() ? "" : quoted(iso), from, to)};
    if (iso.empty()) return {no_such_day(written, g)};
    return {make_day(g[0].value, g[1].value, g[2].value)};
  }
  if (g[1].is_month_name || g[0].is_month_name) {
    const Group &month = g[1].is_month_name ? g[1] : g[0], &day = g[1].is_month_name ? g[0] : g[1];
    const std::string iso = g[2].digits() == 4 && !day.is_month_name ? iso_if_real(g[2].value, month.value, day.value) : "";
    return {day_form(written, " is not the way days are written.", iso.empty() ? "" : quoted(iso), from, to)};
  }
  if (g[2].digits() == 4) {
    const std::string day_first = iso_if_real(g[2].value, g[1].value, g[0].value);
    const std::string month_first = iso_if_real(g[2].value, g[0].value, g[1].value);
    std::string hint = day_first.empty() ? "" : quoted(day_first);
    if (!month_first.empty() && month_first != day_first) hint += (hint.empty() ? "" : " or ") + quoted(month_first);
    const bool two = !day_first.empty() && !month_first.empty() && day_first != month_first;
    return {day_form(written, two ? " can be read two ways." : " is not the way days are written.", hint, from, to)};
  }
  return {day_form(written, " can be read more than one way.", "", from, to)};
}

}  // namespace gownsheaf
