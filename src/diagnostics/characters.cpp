#include "diagnostics/characters.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

namespace gownsheaf::shown {
namespace {

constexpr char32_t kNoCharacter = 0xFFFD;

struct Range {
  char32_t first, last;
};

// Wide (W and F) blocks, coarsely, after Unicode Standard Annex 11.
constexpr Range kWide[] = {{0x1100, 0x115F},   {0x2E80, 0x303E},   {0x3041, 0x33FF},   {0x3400, 0x4DBF},
                           {0x4E00, 0x9FFF},   {0xA000, 0xA4CF},   {0xA960, 0xA97F},   {0xAC00, 0xD7A3},
                           {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6},
                           {0x1F300, 0x1F64F}, {0x1F680, 0x1F6FF}, {0x1F900, 0x1FAFF}, {0x20000, 0x3FFFD}};
constexpr Range kCombining[] = {{0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x0610, 0x061A},
                                {0x064B, 0x065F}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF}, {0x200B, 0x200F},
                                {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}};

template <std::size_t N>
bool is_in(const Range (&ranges)[N], char32_t c) {
  return std::any_of(std::begin(ranges), std::end(ranges), [&](const Range& r) { return c >= r.first && c <= r.last; });
}

}  // namespace

std::vector<char32_t> characters(std::string_view text) {
  std::vector<char32_t> out;
  for (std::size_t i = 0; i < text.size();) {
    const auto byte = [&](std::size_t at) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[at])); };
    const std::uint32_t first = byte(i);
    const std::size_t more = first < 0x80                    ? 0
                             : first >= 0xC2 && first < 0xE0 ? 1
                             : first >= 0xE0 && first < 0xF0 ? 2
                             : first >= 0xF0 && first < 0xF5 ? 3
                                                             : 4;
    std::uint32_t point = more == 0 ? first : first & (0x3FU >> more);
    bool sound = more < 4 && i + more < text.size();
    for (std::size_t k = 1; sound && k <= more; ++k) {
      sound = (byte(i + k) & 0xC0) == 0x80;
      point = (point << 6) | (byte(i + k) & 0x3F);
    }
    sound = sound && !(more == 2 && (point < 0x800 || (point >= 0xD800 && point < 0xE000))) &&
            !(more == 3 && (point < 0x10000 || point > 0x10FFFF));
    out.push_back(sound ? static_cast<char32_t>(point) : kNoCharacter);
    i += sound ? more + 1 : 1;
  }
  return out;
}

void append(std::string& out, char32_t c) {
  const auto byte = [&](std::uint32_t b) { out += static_cast<char>(static_cast<unsigned char>(b)); };
  if ((c < 0x20 && c != U'\t') || (c >= 0x7F && c < 0xA0) || (c >= 0x202A && c <= 0x202E) ||
      (c >= 0x2066 && c <= 0x2069))
    c = kNoCharacter;
  const auto point = static_cast<std::uint32_t>(c);
  if (point < 0x80) {
    byte(point);
  } else if (point < 0x800) {
    byte(0xC0 | (point >> 6));
    byte(0x80 | (point & 0x3F));
  } else if (point < 0x10000) {
    byte(0xE0 | (point >> 12));
    byte(0x80 | ((point >> 6) & 0x3F));
    byte(0x80 | (point & 0x3F));
  } else {
    byte(0xF0 | (point >> 18));
    byte(0x80 | ((point >> 12) & 0x3F));
    byte(0x80 | ((point >> 6) & 0x3F));
    byte(0x80 | (point & 0x3F));
  }
}

std::string safe(std::string_view text) {
  std::string out;
  for (const char32_t c : characters(text)) append(out, c == U'\n' || c == U'\r' || c == U'\t' ? U' ' : c);
  return out;
}

int columns(char32_t c) { return is_in(kCombining, c) ? 0 : is_in(kWide, c) ? 2 : 1; }

}  // namespace gownsheaf::shown
