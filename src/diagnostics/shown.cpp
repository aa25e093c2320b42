#include "diagnostics/shown.h"

#include "unicode/utf8.h"

namespace gownsheaf::shown {

char32_t as_shown(char32_t c) {
  const bool steers =
      (c < 0x20 && c != U'\t') || (c >= 0x7F && c < 0xA0) || (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
  return steers ? kNoCharacter : c;
}

std::string safe(std::string_view text) {
  std::string out;
  for (const char32_t c : decode_utf8(text)) append_utf8(out, c == U'\n' || c == U'\r' || c == U'\t' ? U' ' : as_shown(c));
  return out;
}

}  // namespace gownsheaf::shown
