// UTF-8 in and out, and the questions about coverage that need more than one face.
#include <algorithm>

#include "fonts/font_set.h"

namespace gownsheaf {
namespace {

constexpr char32_t kReplacement = 0xFFFD;

// Length of the sequence that starts with this byte, 0 when none may.
std::size_t sequence_length(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

}  // namespace

char32_t next_character(std::string_view text, std::size_t& at) {
  const auto first = static_cast<unsigned char>(text[at]);
  const std::size_t length = sequence_length(first);
  if (length == 0 || length > text.size() - at) {
    ++at;
    return kReplacement;
  }
  char32_t c = length == 1 ? first : first & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    const auto byte = static_cast<unsigned char>(text[at + i]);
    if ((byte & 0xC0u) != 0x80u) {
      ++at;
      return kReplacement;
    }
    c = (c << 6) | (byte & 0x3Fu);
  }
  const bool overlong = (length == 3 && c < 0x800) || (length == 4 && c < 0x10000);
  const bool surrogate = c >= 0xD800 && c <= 0xDFFF;
  if (overlong || surrogate || c > 0x10FFFF) {
    ++at;
    return kReplacement;
  }
  at += length;
  return c;
}

bool FontSet::face_for(Face face, char32_t c, Face& out) const {
  for (const Face candidate : {face, Face::fallback}) {
    if (covers(candidate, c)) {
      out = candidate;
      return true;
    }
  }
  return false;
}

FontSet::Letter FontSet::looked_up(Face face, char32_t c) const {
  Face used = face;
  if (!face_for(face, c, used)) used = face;
  return {used, advance(used, c)};
}

std::vector<char32_t> not_covered(const FontSet& fonts, std::string_view utf8) {
  std::vector<char32_t> missing;
  for (const char32_t c : decode_utf8(utf8)) {
    if (c == '\n') continue;  // a line end is set by layout and never reaches a face
    if (std::find(missing.begin(), missing.end(), c) != missing.end()) continue;
    // The same words may be set in any cut, so every one of them must be able to print the character.
    bool printable = true;
    for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold}) {
      Face unused = face;
      printable = printable && fonts.face_for(face, c, unused);
    }
    if (!printable) missing.push_back(c);
  }
  return missing;
}

std::vector<char32_t> decode_utf8(std::string_view utf8) {
  std::vector<char32_t> characters;
  characters.reserve(utf8.size());
  for (std::size_t at = 0; at < utf8.size();) characters.push_back(next_character(utf8, at));
  return characters;
}

std::string encode_utf8(char32_t c) {
  if (c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) c = kReplacement;
  const auto tail = [c](unsigned shift) { return static_cast<char>(0x80u | ((c >> shift) & 0x3Fu)); };
  if (c < 0x80) return {static_cast<char>(c)};
  if (c < 0x800) return {static_cast<char>(0xC0u | (c >> 6)), tail(0)};
  if (c < 0x10000) return {static_cast<char>(0xE0u | (c >> 12)), tail(6), tail(0)};
  return {static_cast<char>(0xF0u | (c >> 18)), tail(12), tail(6), tail(0)};
}

}  // namespace gownsheaf
