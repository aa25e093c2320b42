#include "write/calendar_file.h"

#include "unicode/utf8.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kOctets = 75;  // RFC 5545, 3.1, without the line break

std::string escaped_text(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\' || c == ';' || c == ',') out += '\\';
    if (c == '\n') out += "\\n";
    else if (static_cast<unsigned char>(c) >= 0x20) out += c;
  }
  return out;
}

void put_line(std::string& out, const std::string& line) {
  std::size_t room = kOctets, from = 0;
  while (line.size() - from > room) {
    std::size_t end = from + room;
    while (end > from && !begins_character(line[end])) --end;  // not inside a letter
    out.append(line, from, end - from);
    out += "\r\n ";
    from = end;
    room = kOctets - 1;  // the blank counts
  }
  out.append(line, from, std::string::npos);
  out += "\r\n";
}

std::string date(Day day) {
  std::string digits;
  for (const char c : iso_day(day))
    if (c != '-') digits += c;
  return digits;
}

}  // namespace

std::string calendar_file(const std::string& name, Day stamp, const std::vector<CalendarEvent>& events) {
  std::string out;
  for (const char* line : {"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Gownsheaf//Order of work//EN", "CALSCALE:GREGORIAN"})
    put_line(out, line);
  for (const CalendarEvent& event : events) {
    put_line(out, "BEGIN:VEVENT");
    put_line(out, "UID:" + event.uid);
    put_line(out, "DTSTAMP:" + date(stamp) + "T000000Z");
    put_line(out, "DTSTART;VALUE=DATE:" + date(event.day));
    put_line(out, "DTEND;VALUE=DATE:" + date(Day{event.day.serial + 1}));
    put_line(out, "SUMMARY:" + escaped_text(event.summary));
    const std::string whole = name + (event.description.empty() ? "" : "\n" + event.description);
    put_line(out, "DESCRIPTION:" + escaped_text(whole));
    put_line(out, "TRANSP:TRANSPARENT");
    put_line(out, "END:VEVENT");
  }
  put_line(out, "END:VCALENDAR");
  return out;
}

}  // namespace gownsheaf
