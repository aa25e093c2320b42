// The calendar file, read back by a small reader of RFC 5545 that shares nothing with the writer.
#include "write/calendar_file.h"

#include <map>
#include <stdexcept>

#include "support/catch.h"

using namespace gownsheaf;

namespace {

struct ReadEvent {
  std::map<std::string, std::string> values;
};  // name with parameters -> value, escapes taken back

// Content lines as section 3.1 has them: ended by CR LF, no longer than 75 octets, unfolded at CR LF and a blank.
std::vector<std::string> content_lines(const std::string& bytes) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < bytes.size();) {
    const std::size_t end = bytes.find("\r\n", from);
    if (end == std::string::npos) throw std::runtime_error("a line without its end");
    const std::string physical = bytes.substr(from, end - from);
    if (physical.size() > 75) throw std::runtime_error("a line of more than 75 octets");
    if (physical.find_first_of("\r\n") != std::string::npos) throw std::runtime_error("a bare line break");
    if (!physical.empty() && (static_cast<unsigned char>(physical[0]) & 0xC0) == 0x80)
      throw std::runtime_error("a letter cut in two");
    if (!physical.empty() && (physical[0] == ' ' || physical[0] == '\t')) {
      if (lines.empty()) throw std::runtime_error("nothing to unfold to");
      if (physical.size() > 1 && (static_cast<unsigned char>(physical[1]) & 0xC0) == 0x80)
        throw std::runtime_error("a letter cut in two");
      lines.back() += physical.substr(1);
    } else {
      lines.push_back(physical);
    }
    from = end + 2;
  }
  return lines;
}

std::string unescaped(const std::string& text) {  // 3.3.11
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == ',' || text[i] == ';') throw std::runtime_error("not escaped: " + text);
    if (text[i] != '\\') {
      out += text[i];
      continue;
    }
    const char next = i + 1 < text.size() ? text[++i] : '\0';
    if (next == 'n' || next == 'N') out += '\n';
    else if (next == '\\' || next == ';' || next == ',') out += next;
    else throw std::runtime_error("no such escape");
  }
  return out;
}

std::vector<ReadEvent> read_back(const std::string& bytes) {
  const std::vector<std::string> lines = content_lines(bytes);
  std::vector<std::string> open;
  std::map<std::string, int> calendar;
  std::vector<ReadEvent> events;
  for (const std::string& line : lines) {
    const auto colon = line.find(':');
    if (colon == std::string::npos) throw std::runtime_error("no colon: " + line);
    const std::string name = line.substr(0, colon), value = line.substr(colon + 1);
    if (name == "BEGIN") {
      open.push_back(value);
      if (value == "VEVENT") events.emplace_back();
    } else if (name == "END") {
      if (open.empty() || open.back() != value) throw std::runtime_error("ends what is not open");
      open.pop_back();
    } else if (open == std::vector<std::string>{"VCALENDAR"}) {
      ++calendar[name];
    } else if (open == std::vector<std::string>{"VCALENDAR", "VEVENT"}) {
      const bool text = name == "SUMMARY" || name == "DESCRIPTION";
      if (!events.back().values.emplace(name, text ? unescaped(value) : value).second) throw std::runtime_error("twice: " + name);
    } else {
      throw std::runtime_error("outside: " + line);
    }
  }
  if (!open.empty() || lines.front() != "BEGIN:VCALENDAR" || calendar["PRODID"] != 1 || calendar["VERSION"] != 1)
    throw std::runtime_error("no calendar");
  for (const ReadEvent& e : events)
    for (const char* needed : {"UID", "DTSTAMP", "DTSTART;VALUE=DATE"})
      if (e.values.count(needed) == 0) throw std::runtime_error(std::string("missing: ") + needed);
  return events;
}

}  // namespace

TEST_CASE("calendar file: what is written is read back by RFC 5545", "[calendar]") {
  std::string longest;
  for (int i = 0; i < 40; ++i) longest += "\u00e9\u2014\u82b1x";  // letters of 2, 3, 3 and 1 octets: folds fall everywhere
  const std::vector<CalendarEvent> events{
      {"first", make_day(2031, 2, 28), "Fitting: mock-up; over all, petticoats too", "Step 4.\nC:\\steps"},
      {"second", make_day(2031, 12, 31), longest, ""},
  };
  const std::string bytes = calendar_file("Dress; of wool, and sateen", make_day(2031, 1, 5), events);
  const std::vector<ReadEvent> read = read_back(bytes);
  REQUIRE(read.size() == 2);
  CHECK(read[0].values.at("UID") == "first");
  CHECK(read[0].values.at("SUMMARY") == events[0].summary);
  CHECK(read[0].values.at("DESCRIPTION") == "Dress; of wool, and sateen\nStep 4.\nC:\\steps");
  CHECK(read[0].values.at("DTSTAMP") == "20310105T000000Z");
  CHECK(read[0].values.at("DTSTART;VALUE=DATE") == "20310228");
  CHECK(read[0].values.at("DTEND;VALUE=DATE") == "20310301");  // not included: the day after
  CHECK(read[1].values.at("SUMMARY") == longest);
  CHECK(read[1].values.at("DTEND;VALUE=DATE") == "20320101");
  CHECK(bytes == calendar_file("Dress; of wool, and sateen", make_day(2031, 1, 5), events));
  for (std::size_t n = 60; n < 90; ++n) {  // every length about the fold
    const std::vector<CalendarEvent> one{{"u", make_day(2031, 1, 1), std::string(n, 'a') + "\u00e9", ""}};
    CHECK(read_back(calendar_file("t", make_day(2031, 1, 1), one)).front().values.at("SUMMARY") == one.front().summary);
  }
}
