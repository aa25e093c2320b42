// Text of a file as it is shown on a terminal: no file can steer one.
#pragma once
#include <string>
#include <string_view>

namespace gownsheaf::shown {

// The character, or U+FFFD for control characters other than the tab and those that turn the direction of writing.
char32_t as_shown(char32_t c);
// A sentence made safe in the same way; line breaks and tabs become spaces.
std::string safe(std::string_view text);

}  // namespace gownsheaf::shown
