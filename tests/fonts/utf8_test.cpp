#include <random>

#include "fonts/font_set.h"
#include "support/catch.h"
#include "support/half_em_font.h"

using namespace gownsheaf;

namespace {
#ifdef GOWNSHEAF_SANITIZED
constexpr int kRounds = 500;
#else
constexpr int kRounds = 10000;
#endif
}  // namespace

// Well-formed and ill-formed sequences: Unicode Standard 15, table 3-7.
TEST_CASE("UTF-8 is read one character at a time", "[utf8]") {
  CHECK(decode_utf8("") == std::vector<char32_t>{});
  CHECK(decode_utf8("a½⅛") == std::vector<char32_t>{'a', 0xBD, 0x215B});
  CHECK(decode_utf8("\xF0\x9D\x84\x9E") == std::vector<char32_t>{0x1D11E});
  CHECK(decode_utf8(std::string_view("a\0b", 3)) == std::vector<char32_t>{'a', 0, 'b'});
}

TEST_CASE("bytes that are not UTF-8 become U+FFFD, one each", "[utf8]") {
  CHECK(decode_utf8("caf\xE9") == std::vector<char32_t>{'c', 'a', 'f', 0xFFFD});             // Latin-1
  CHECK(decode_utf8("\xC0\xAF") == std::vector<char32_t>{0xFFFD, 0xFFFD});                   // overlong solidus
  CHECK(decode_utf8("\xE0\x80\xAF") == std::vector<char32_t>{0xFFFD, 0xFFFD, 0xFFFD});       // overlong, three bytes
  CHECK(decode_utf8("\xED\xA0\x80") == std::vector<char32_t>{0xFFFD, 0xFFFD, 0xFFFD});       // a surrogate
  CHECK(decode_utf8("\xF4\x90\x80\x80").size() == 4);                                        // above U+10FFFF
  CHECK(decode_utf8("\xE2\x82") == std::vector<char32_t>{0xFFFD, 0xFFFD});                   // cut short
  CHECK(decode_utf8("\xE2\x41\x42") == std::vector<char32_t>{0xFFFD, 'A', 'B'});             // what follows is kept
}

TEST_CASE("every character survives writing and reading", "[utf8][law]") {
  for (char32_t c = 0; c <= 0x10FFFF; ++c) {
    if (c >= 0xD800 && c <= 0xDFFF) continue;
    const std::vector<char32_t> back = decode_utf8(encode_utf8(c));
    if (back.size() != 1 || back[0] != c) FAIL("U+" << std::hex << static_cast<std::uint32_t>(c));
  }
  CHECK(encode_utf8(0xD800) == "\xEF\xBF\xBD");
  CHECK(encode_utf8(0x110000) == "\xEF\xBF\xBD");
}

TEST_CASE("random bytes never lose a well-formed character after them", "[utf8][law]") {
  std::mt19937 dice(1866);
  for (int round = 0; round < kRounds; ++round) {
    std::string bytes;
    for (auto n = dice() % 12; n > 0; --n) bytes += static_cast<char>(dice() & 0xFF);
    const std::vector<char32_t> back = decode_utf8(bytes + "|⅝");
    REQUIRE(back.size() >= 2);
    REQUIRE(back[back.size() - 2] == U'|');
    REQUIRE(back.back() == 0x215D);
  }
}

TEST_CASE("a character goes to its own face, else to the fallback, else nowhere", "[fonts]") {
  struct TwoFaces : testing::HalfEmFont {
    bool covers(Face face, char32_t c) const override { return face == Face::fallback ? c == 0x2713 : c < 0x100; }
  } fonts;
  Face face = Face::regular;
  REQUIRE(fonts.face_for(Face::bold, 'a', face));
  CHECK(face == Face::bold);
  REQUIRE(fonts.face_for(Face::bold, 0x2713, face));
  CHECK(face == Face::fallback);
  CHECK_FALSE(fonts.face_for(Face::bold, 0x4E00, face));
}

TEST_CASE("what no face can print is named once, in the order met; line ends do not count", "[fonts]") {
  const testing::HalfEmFont fonts(U'ð');
  CHECK(not_covered(fonts, "við\nveið\tar \xF0\x9F\x98\x80") == std::vector<char32_t>{U'ð', '\t', 0x1F600});
  CHECK(not_covered(fonts, "all well").empty());
}
