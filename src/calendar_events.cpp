#include "calendar_events.h"

#include <algorithm>

#include "files/files.h"
#include "write/calendar_file.h"

namespace gownsheaf {
namespace {

// A name-based UUID of version 8 (RFC 9562) from the title and what the event is: stable when its day moves.
std::string event_uid(const std::string& title, const std::string& what) {
  std::string hex = sha256(title + "\n" + what).substr(0, 32);
  hex[12] = '8';
  hex[16] = "89ab"[(hex[16] <= '9' ? hex[16] - '0' : hex[16] - 'a' + 10) % 4];
  for (const std::size_t at : {20, 16, 12, 8}) hex.insert(at, "-");
  return hex;
}

std::string act_in_words(const Say& act, const Figures& figures, ShownIn shown) {
  std::string words;
  for (const SayPart& part : act) {
    const Figure* f = part.figure.empty() ? nullptr : figures.find(part.figure);
    words += f != nullptr && !f->is_private ? plain_text(*f, shown) : part.words;
  }
  return words;
}

}  // namespace

std::string work_calendar(const Project& project, const Figures& figures, const Plans& plans) {
  if (!plans.days) return "";
  const WorkPlan& days = *plans.days;
  const ShownIn shown = project.show_lengths_in.value.value_or(ShownIn::inches);
  std::vector<CalendarEvent> events;
  const auto add = [&](const std::string& what, std::optional<Day> day, std::string summary, std::string description = "") {
    if (day) events.push_back({event_uid(project.title, what), *day, std::move(summary), std::move(description)});
  };
  for (const PlannedStep& step : plans.work) {
    if (step.gate.empty() || step.done) continue;
    const std::optional<Day> day = step.first_day ? step.first_day : step.latest;
    std::string words = "Step " + whole_number(step.number) + ". " + act_in_words(step.act, figures, shown);
    if (step.latest && step.first_day) words += "\nAt the latest " + long_day(*step.latest) + ".";
    add("gate " + step.id, day, (step.gate == "dress rehearsal" ? capital(step.gate) : "Fitting: " + step.gate), words);
  }
  for (const Delivery& d : days.deliveries) {
    add("order " + d.what, d.order_by, "Order the " + d.what + " by today",
        d.needed ? "Work on it must begin by " + long_day(*d.needed) + "." : "");
    add("replace " + d.what, d.order_by_to_replace, "Order the " + d.what + " by today, so that it can be ordered once more");
    add("arrives " + d.what, d.arrives, "The " + d.what + " should be here");
  }
  add("last day", days.last, "Last day for work", "The days after it are kept free.");
  add("worn on", days.worn_on, "It is worn today");
  if (events.empty()) return "";
  std::stable_sort(events.begin(), events.end(), [](const CalendarEvent& a, const CalendarEvent& b) { return a.day < b.day; });
  const Day stamp = days.from ? *days.from : *days.worn_on;
  return calendar_file(project.title, stamp, events);
}

}  // namespace gownsheaf
