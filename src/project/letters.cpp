#include "project/letters.h"

namespace gownsheaf {

char32_t next_letter(std::string_view& text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  std::size_t size = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (first >= 0x80 && first < 0xC0) size = 1;
  if (size > text.size()) size = 1;
  char32_t letter = size == 1 ? first : size == 2 ? first & 0x1Fu : size == 3 ? first & 0x0Fu : first & 0x07u;
  for (std::size_t i = 1; i < size; ++i) letter = (letter << 6) | (byte(i) & 0x3Fu);
  text.remove_prefix(size);
  return letter;
}

char32_t small_letter(char32_t c) {
  if (c >= U'A' && c <= U'Z') return c + 32;
  if (c < 0xC0) return c;
  if (c <= 0xDE) return c == 0xD7 ? c : c + 32;              // À … Þ without ×
  if (c >= 0x100 && c <= 0x137) return c == 0x130 ? U'i' : c == 0x131 ? c : (c | 1);  // even is large
  if (c >= 0x139 && c <= 0x148) return (c & 1) ? c + 1 : c;  // odd is large
  if (c >= 0x14A && c <= 0x177) return c | 1;
  if (c == 0x178) return 0xFF;
  if (c >= 0x179 && c <= 0x17E) return (c & 1) ? c + 1 : c;
  if (c >= 0x1E00 && c <= 0x1EFF && !(c >= 0x1E96 && c <= 0x1E9F)) return c | 1;
  if (c >= 0x391 && c <= 0x3A9) return c + 32;               // Greek
  if (c == 0x3C2) return 0x3C3;                              // the sigma that ends a word
  if (c >= 0x400 && c <= 0x40F) return c + 80;               // Cyrillic
  if (c >= 0x410 && c <= 0x42F) return c + 32;
  return c;
}

}  // namespace gownsheaf
