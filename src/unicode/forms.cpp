#include "unicode/forms.h"

#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>

namespace gownsheaf {
namespace {

std::string mapped(std::string_view text, int options) {
  // Letters of ASCII stand for themselves in every composed form, and fold to small ones.
  if (std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) {
    std::string made(text);
    if ((options & UTF8PROC_CASEFOLD) != 0)
      for (char& c : made) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return made;
  }
  utf8proc_uint8_t* out = nullptr;
  const auto size = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                 static_cast<utf8proc_ssize_t>(text.size()), &out, static_cast<utf8proc_option_t>(options));
  if (size < 0 || out == nullptr) return std::string(text);
  std::string made(reinterpret_cast<const char*>(out), static_cast<std::size_t>(size));
  std::free(out);
  return made;
}

}  // namespace

std::string composed_form(std::string_view utf8) { return mapped(utf8, UTF8PROC_STABLE | UTF8PROC_COMPOSE); }

std::string case_folded(std::string_view utf8) { return mapped(utf8, UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD); }

}  // namespace gownsheaf
