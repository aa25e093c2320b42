#include "read/missing_colon.h"

#include <string>

namespace gownsheaf {

std::optional<std::size_t> word_without_space(std::string_view line, std::size_t at, bool number_only) {
  const std::size_t colon = line.find(':', at);
  if (colon == line.npos || colon == at || colon + 1 >= line.size()) return std::nullopt;
  for (std::size_t i = at; i < colon; ++i)
    if (line[i] != ' ' && line[i] != '-' && !((line[i] | 32) >= 'a' && (line[i] | 32) <= 'z') &&
        static_cast<unsigned char>(line[i]) < 0x80)
      return std::nullopt;
  if (line[colon + 1] == '/' || is_blank(line[colon + 1])) return std::nullopt;
  if (number_only && !(line[colon + 1] >= '0' && line[colon + 1] <= '9')) return std::nullopt;
  return colon;
}

void report_missing_colon(Findings& found, Place place) {
  const std::size_t i = place.line, at = place.column;
  const std::string_view line = found.lines.line(i);
  std::size_t end = at;
  for (std::size_t k = at; k < line.size() && next_text(line, k) < line.size(); ++k)
    if (!is_blank(line[k])) end = k + 1;
  const std::string_view seen = line.substr(at, end - at);
  if (const auto colon = word_without_space(line, at, false)) {
    found.report(
        "no-space", {i, at}, seen.size(), named(seen) + " is one word without a space after the colon.",
        named(std::string(line.substr(at, *colon - at)) + ": " + std::string(line.substr(*colon + 1, end - *colon - 1))));
  } else {
    // Where the value begins is a guess: at the first figure, else at the last word.
    std::size_t cut = seen.find_first_of("0123456789");
    if (cut == seen.npos || cut == 0 || seen[cut - 1] != ' ') cut = seen.rfind(' ') + 1;
    const std::string hint = cut == 0 ? named(std::string(seen) + ":")
                                      : named(std::string(seen.substr(0, cut - 1)) + ": " + std::string(seen.substr(cut)));
    found.report("no-colon", {i, at}, seen.size(), named(seen) + " has no colon.", hint);
  }
  found.add_colon_after(i);
}

}  // namespace gownsheaf
