#include <random>

#include "support/catch.h"
#include "support/rounds.h"
#include "unicode/forms.h"
#include "unicode/utf8.h"

using namespace gownsheaf;

// Well-formed and ill-formed sequences: Unicode Standard 15, table 3-7.
TEST_CASE("UTF-8 is read one character at a time", "[utf8]") {
  CHECK(decode_utf8("") == std::vector<char32_t>{});
  CHECK(decode_utf8("a½⅛") == std::vector<char32_t>{'a', 0xBD, 0x215B});
  CHECK(decode_utf8("\xF0\x9D\x84\x9E") == std::vector<char32_t>{0x1D11E});
  CHECK(decode_utf8(std::string_view("a\0b", 3)) == std::vector<char32_t>{'a', 0, 'b'});
}

TEST_CASE("bytes that are not UTF-8 become U+FFFD, one each", "[utf8]") {
  CHECK(decode_utf8("caf\xE9") == std::vector<char32_t>{'c', 'a', 'f', 0xFFFD});        // Latin-1
  CHECK(decode_utf8("\xC0\xAF") == std::vector<char32_t>{0xFFFD, 0xFFFD});              // overlong solidus
  CHECK(decode_utf8("\xE0\x80\xAF") == std::vector<char32_t>{0xFFFD, 0xFFFD, 0xFFFD});  // overlong, three bytes
  CHECK(decode_utf8("\xED\xA0\x80") == std::vector<char32_t>{0xFFFD, 0xFFFD, 0xFFFD});  // a surrogate
  CHECK(decode_utf8("\xF4\x90\x80\x80").size() == 4);                                   // above U+10FFFF
  CHECK(decode_utf8("\xE2\x82") == std::vector<char32_t>{0xFFFD, 0xFFFD});              // cut short
  CHECK(decode_utf8("\xE2\x41\x42") == std::vector<char32_t>{0xFFFD, 'A', 'B'});        // what follows is kept
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
  for (int round = 0; round < kLawRounds; ++round) {
    std::string bytes;
    for (auto n = dice() % 12; n > 0; --n) bytes += static_cast<char>(dice() & 0xFF);
    const std::vector<char32_t> back = decode_utf8(bytes + "|⅝");
    REQUIRE(back.size() >= 2);
    REQUIRE(back[back.size() - 2] == U'|');
    REQUIRE(back.back() == 0x215D);
  }
}

TEST_CASE("characters are counted by their first bytes", "[utf8]") {
  CHECK(count_characters("") == 0);
  CHECK(count_characters("Gru\xC3\x9F \xE2\x85\x9D in") == 9);
}

// Unicode Standard Annex 11 and the tables of utf8proc.
TEST_CASE("a terminal gives two columns to wide characters and none to marks that combine", "[utf8]") {
  CHECK(columns_of(U'a') == 1);
  CHECK(columns_of(0xDF) == 1);
  CHECK(columns_of(0x301) == 0);
  CHECK(columns_of(0x82B1) == 2);
  CHECK(columns_of(0x1F9F5) == 2);
  CHECK(columns_of(0xFFFD) == 1);
}

// Unicode Standard Annex 15, and CaseFolding.txt of the Unicode database.
TEST_CASE("composed forms and folded letters", "[forms]") {
  CHECK(composed_form("e\xCC\x81") == "\xC3\xA9");
  CHECK(composed_form("caf\xE9") == "caf\xE9");
  CHECK(case_folded("Slate Wool") == "slate wool");
  CHECK(case_folded("GRU\xC3\x9F") == "gruss");
  CHECK(case_folded("\xCE\xA3\xCF\x82") == case_folded("\xCF\x83\xCF\x83"));  // both sigmas
}
