// UTF-8 to characters and back (RFC 3629), by utf8proc. A file's bytes may be anything: what is no UTF-8 becomes U+FFFD, one for each byte.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

inline constexpr char32_t kNoCharacter = 0xFFFD;

// The character at `at`, which moves past it; past one byte only where the bytes are no UTF-8 (a written U+FFFD has three).
char32_t next_beyond_ascii(std::string_view utf8, std::size_t& at);
inline char32_t next_character(std::string_view utf8, std::size_t& at) {
  const auto first = static_cast<unsigned char>(utf8[at]);
  if (first >= 0x80) return next_beyond_ascii(utf8, at);
  ++at;
  return first;
}
std::vector<char32_t> decode_utf8(std::string_view utf8);
void append_utf8(std::string& out, char32_t c);  // U+FFFD for what is no character
std::string encode_utf8(char32_t c);

// Of text that is UTF-8: false for the bytes after the first of a character.
inline bool begins_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0u) != 0x80u; }
int count_characters(std::string_view utf8);

// Columns of a terminal that it takes: 0 for marks that combine, 2 for the wide ones of East Asia (Unicode Standard Annex 11), else 1.
int columns_of(char32_t c);

}  // namespace gownsheaf
