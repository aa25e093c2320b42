// Keys whose colon was forgotten, or stands without a space behind it.
#pragma once
#include <cstddef>
#include <optional>
#include <string_view>

#include "read/findings.h"

namespace gownsheaf {

// "bust:36 in": letters and spaces up to a colon that has no space after it, but no web address. Where the colon stands.
std::optional<std::size_t> word_without_space(std::string_view line, std::size_t at, bool number_only);
// Tells of the text at this place, to the end of its line: no-colon or no-space, with the line as it was meant; a colon is
// taken to stand there from then on.
void report_missing_colon(Findings& found, Place place);

}  // namespace gownsheaf
