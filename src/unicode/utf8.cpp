#include "unicode/utf8.h"

#include <utf8proc.h>

#include <algorithm>

namespace gownsheaf {

char32_t next_beyond_ascii(std::string_view utf8, std::size_t& at) {
  utf8proc_int32_t c = 0;
  const auto size = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(utf8.data() + at),
                                     static_cast<utf8proc_ssize_t>(utf8.size() - at), &c);
  at += size > 0 ? static_cast<std::size_t>(size) : 1;
  return size > 0 ? static_cast<char32_t>(c) : kNoCharacter;
}

std::vector<char32_t> decode_utf8(std::string_view utf8) {
  std::vector<char32_t> characters;
  characters.reserve(utf8.size());
  for (std::size_t at = 0; at < utf8.size();) characters.push_back(next_character(utf8, at));
  return characters;
}

void append_utf8(std::string& out, char32_t c) {
  if (c < 0x80) {
    out += static_cast<char>(c);
    return;
  }
  const bool is_character = utf8proc_codepoint_valid(static_cast<utf8proc_int32_t>(c));
  utf8proc_uint8_t bytes[4];
  const auto size = utf8proc_encode_char(static_cast<utf8proc_int32_t>(is_character ? c : kNoCharacter), bytes);
  out.append(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
}

std::string encode_utf8(char32_t c) {
  std::string out;
  append_utf8(out, c);
  return out;
}

int count_characters(std::string_view utf8) {
  return static_cast<int>(std::count_if(utf8.begin(), utf8.end(), begins_character));
}

int columns_of(char32_t c) { return utf8proc_charwidth(static_cast<utf8proc_int32_t>(c)); }

}  // namespace gownsheaf
