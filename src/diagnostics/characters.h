// Text of a file as it is shown on a terminal. Internal to diagnostics.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf::shown {

// UTF-8 to characters; bytes that are not UTF-8 become U+FFFD, one each.
std::vector<char32_t> characters(std::string_view text);
// One character as UTF-8. Control characters other than the tab become U+FFFD, so that no file can steer a terminal.
void append(std::string& out, char32_t c);
// A sentence made safe in the same way; line breaks become spaces.
std::string safe(std::string_view text);
// Columns of a terminal that a character takes: 0 for marks that combine, 2 for the wide ones of East Asia, else 1.
int columns(char32_t c);

}  // namespace gownsheaf::shown
