#include "fonts/font_set.h"

#include "support/catch.h"
#include "support/half_em_font.h"

using namespace gownsheaf;

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

TEST_CASE("a letter is set in its face or the fallback, as wide as it is there; asked again it is the same", "[fonts]") {
  struct TwoFaces : testing::HalfEmFont {
    bool covers(Face face, char32_t c) const override { return face == Face::fallback ? c != U'b' : c == U'a'; }
    int advance(Face face, char32_t) const override { return face == Face::fallback ? 700 : 400; }
  } fonts;
  for (int again = 0; again < 2; ++again) {
    CHECK(fonts.letter(Face::bold, U'a').face == Face::bold);
    CHECK(fonts.letter(Face::bold, U'a').advance == 400);
    CHECK(fonts.letter(Face::bold, U'c').face == Face::fallback);
    CHECK(fonts.letter(Face::bold, U'c').advance == 700);
    CHECK(fonts.letter(Face::bold, U'b').face == Face::bold);  // in none: .notdef of its own face
    CHECK(fonts.letter(Face::bold, U'b').advance == 400);
    CHECK(fonts.letter(Face::bold, 0x4E00).face == Face::fallback);
  }
}
