// Layout measures with FontSet and libharu draws with its own widths; both must be the same number for every character,
// or right-aligned columns drift.
#include <hpdf.h>

#include <cstdint>

#include "fonts/font_set.h"
#include "support/catch.h"
#include "unicode/utf8.h"

using namespace gownsheaf;

TEST_CASE("advances agree with libharu's own widths for every character of every face", "[pdf][fonts][law]") {
  FontFault fault;
  const auto fonts = open_fonts("/usr/share/fonts", fault);
  REQUIRE(fonts != nullptr);
  for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold, Face::fallback}) {
    const HPDF_Doc doc = HPDF_New(nullptr, nullptr);
    REQUIRE(doc != nullptr);
    HPDF_UseUTFEncodings(doc);
    const char* name = HPDF_LoadTTFontFromFile(doc, fonts->file(face).c_str(), HPDF_TRUE);
    REQUIRE(name != nullptr);
    const HPDF_Font font = HPDF_GetFont(doc, name, "UTF-8");
    REQUIRE(font != nullptr);
    int covered = 0, different = 0;
    for (std::uint32_t c = 0; c < 0x10000; ++c) {
      if (!fonts->covers(face, c)) continue;
      ++covered;
      if (HPDF_Font_GetUnicodeWidth(font, static_cast<HPDF_UNICODE>(c)) != fonts->advance(face, c)) {
        ++different;
        UNSCOPED_INFO("U+" << std::hex << c);
      }
    }
    CAPTURE(fonts->file(face));
    CHECK(different == 0);
    CHECK(covered > 800);
    // A whole line: the sum of the parts at 14 pt.
    const HPDF_Page page = HPDF_AddPage(doc);
    HPDF_Page_SetFontAndSize(page, font, 14);
    int thousandths = 0;
    const std::string line = "Cut 2 breadths, 1½ yd each: £4 – naïve façade";
    for (const char32_t c : decode_utf8(line)) thousandths += fonts->advance(face, c);
    const double difference = static_cast<double>(HPDF_Page_TextWidth(page, line.c_str())) - 14.0 * thousandths / 1000;
    CHECK(difference < 0.01);
    CHECK(difference > -0.01);
    HPDF_Free(doc);
  }
}
