#include <algorithm>
#include <cstdint>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "files/files.h"
#include "fonts/font_set.h"
#include "fonts/sfnt.h"
#include "support/catch.h"

using namespace gownsheaf;
namespace fs = std::filesystem;

namespace {

const std::string kRoot = "/usr/share/fonts";
constexpr Face kAll[] = {Face::regular, Face::bold, Face::condensed, Face::condensed_bold, Face::fallback};

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void put(const fs::path& path, const std::string& bytes) { std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes; }

std::unique_ptr<FontSet> fonts() {
  FontFault fault;
  auto set = open_fonts(kRoot, fault);
  INFO(fault.sentence);
  REQUIRE(set != nullptr);
  return set;
}

// A root of our own with copies of the five files, so that one of them can be spoiled.
struct OwnRoot {
  fs::path path = fs::path(GOWNSHEAF_BINARY_DIR) / "own-font-root";
  OwnRoot() {
    fs::remove_all(path);
    for (const char* file :
         {"truetype/roboto/unhinted/RobotoTTF/Roboto-Regular.ttf", "truetype/roboto/unhinted/RobotoTTF/Roboto-Bold.ttf",
          "truetype/roboto/unhinted/RobotoCondensed-Regular.ttf", "truetype/roboto/unhinted/RobotoCondensed-Bold.ttf",
          "truetype/dejavu/DejaVuSans.ttf"}) {
      fs::create_directories((path / file).parent_path());
      fs::copy_file(fs::path(kRoot) / file, path / file);
    }
  }
  ~OwnRoot() { fs::remove_all(path); }
  fs::path bold() const { return path / "truetype/roboto/unhinted/RobotoTTF/Roboto-Bold.ttf"; }
  std::string fault() const {
    FontFault f;
    const auto set = open_fonts(path.string(), f);
    CHECK(set == nullptr);
    return f.sentence;
  }
};

}  // namespace

TEST_CASE("advances are cut, not rounded, to 1/1000 em", "[fonts]") {
  const auto set = fonts();
  // DejaVu Sans, 2048 units to the em: one half is 1985 units, 1985 x 1000 / 2048 = 969.2; a is 1255 units, 612.8.
  CHECK(set->advance(Face::fallback, U'½') == 969);
  CHECK(set->advance(Face::fallback, U'a') == 612);
}

TEST_CASE("Roboto's figures are all of one width, so columns line up", "[fonts]") {
  const auto set = fonts();
  for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold}) {
    for (char32_t digit = U'1'; digit <= U'9'; ++digit) {
      CHECK(set->advance(face, digit) == set->advance(face, U'0'));
    }
  }
}

TEST_CASE("the signs of the packet are in the text faces or the fallback", "[fonts]") {
  const auto set = fonts();
  CHECK(not_covered(*set, "½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ⁄ ³ ₁₆ – — ’ ‘ “ ” ′ ″ é ł ó ż ſ × − ≈ ≤ ≥ → ✓ ☐ ✂ · \u00A0 £ €").empty());
  Face face = Face::regular;
  REQUIRE(set->face_for(Face::bold, U'→', face));
  CHECK(face == Face::fallback);  // Roboto has no arrows
}

TEST_CASE("every face holds ASCII and the Latin-1 Supplement, so plain files need no look", "[fonts]") {
  const auto set = fonts();
  for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold}) {
    for (char32_t c = 0x20; c <= 0xFF; ++c) {
      if ((c >= 0x7F && c < 0xA0) || c == 0xAD) continue;
      CAPTURE(static_cast<int>(face), static_cast<unsigned>(c));
      CHECK(set->covers(face, c));
    }
  }
}

TEST_CASE("what libharu cannot set is not covered, glyph or no glyph", "[fonts]") {
  const auto set = fonts();
  for (const char32_t c : {char32_t{0}, char32_t{'\t'}, char32_t{'\n'}, char32_t{7}, char32_t{0x7F}, char32_t{0xAD},
                           char32_t{0x200B}, char32_t{0x05D0}, char32_t{0x0627}, char32_t{0x202E}, char32_t{0xFEFF},
                           char32_t{0xD800}, char32_t{0xFFFF}, char32_t{0x10000}, char32_t{0x1F600}, char32_t{0x10041}}) {
    CAPTURE(static_cast<std::uint32_t>(c));
    for (const Face face : kAll) CHECK_FALSE(set->covers(face, c));
  }
  CHECK(set->advance(Face::regular, 0x10041) != set->advance(Face::regular, U'i'));  // no wrapping round to U+0041
}

TEST_CASE("a glyph made of composites counts as not covered", "[fonts]") {
  const auto set = fonts();
  for (const char32_t c : {U'ŉ', U'Ǆ', U'ǖ', U'ǻ', U'ấ'}) {  // seen to lose their accents in DejaVu Sans
    CAPTURE(static_cast<std::uint32_t>(c));
    CHECK_FALSE(set->covers(Face::fallback, c));
  }
  for (const char32_t c : {U'é', U'š', U'Å', U'½', U'a', U' '}) CHECK(set->covers(Face::fallback, c));  // one level or none
  CHECK_FALSE(set->covers(Face::regular, U'\u2015'));  // the one such character of Roboto
  CHECK(set->covers(Face::regular, U'ǻ'));
}

TEST_CASE("line metrics are the face's own", "[fonts]") {
  const LineMetrics dejavu = fonts()->metrics(Face::fallback);
  CHECK(dejavu.ascent == 928);    // hhea 1901 of 2048
  CHECK(dejavu.descent == -235);  // hhea -483 of 2048
  CHECK(dejavu.cap_height == 729);
  for (const Face face : kAll) {
    const LineMetrics m = fonts()->metrics(face);
    CHECK(m.x_height > 400);
    CHECK(m.x_height < m.cap_height);
    CHECK(m.cap_height < m.ascent);
    CHECK(m.descent < 0);
  }
}

TEST_CASE("a face names its file and its hash", "[fonts]") {
  const auto set = fonts();
  CHECK(set->file(Face::fallback) == kRoot + "/truetype/dejavu/DejaVuSans.ttf");
  CHECK(set->hash(Face::bold) == sha256(bytes_of(set->file(Face::bold))));
  CHECK(set->hash(Face::bold).size() == 64);
  CHECK(set->hash(Face::bold) != set->hash(Face::regular));
}

TEST_CASE("a face that is missing, cut short or no font is a fault that names file and package", "[fonts]") {
  const OwnRoot root;
  const std::string whole = bytes_of(root.bold());
  SECTION("all well") {
    FontFault fault;
    CHECK(open_fonts(root.path.string(), fault) != nullptr);
  }
  SECTION("missing") {
    fs::remove(root.bold());
    CHECK(root.fault() == "The font file " + root.bold().string() + " cannot be used: there is no such file. It belongs " +
                              "to the Debian package fonts-roboto-unhinted: install that package.");
  }
  SECTION("cut short anywhere") {
    for (const std::size_t size :
         {std::size_t{0}, std::size_t{3}, std::size_t{40}, std::size_t{300}, whole.size() / 2, whole.size() - 1}) {
      put(root.bold(), whole.substr(0, size));
      CAPTURE(size);
      const std::string sentence = root.fault();
      CHECK(sentence.find("Roboto-Bold.ttf cannot be used: it ") != std::string::npos);
      CHECK(sentence.find("fonts-roboto-unhinted") != std::string::npos);
    }
  }
  SECTION("not a font") {
    put(root.bold(), std::string(5000, 'x'));
    CHECK(root.fault().find("it is not a font with TrueType outlines") != std::string::npos);
  }
  SECTION("an OpenType file with other outlines") {
    put(root.bold(), "OTTO" + whole.substr(4));
    CHECK(root.fault().find("it is not a font with TrueType outlines") != std::string::npos);
  }
  SECTION("a table gone") {
    std::string bytes = whole;
    bytes.replace(bytes.find("loca"), 4, "XXXX");
    put(root.bold(), bytes);
    CHECK(root.fault().find("its table loca is missing") != std::string::npos);
  }
}

TEST_CASE("a font file that was changed after opening is noticed", "[fonts]") {
  const OwnRoot root;
  FontFault fault;
  const auto set = open_fonts(root.path.string(), fault);
  REQUIRE(set != nullptr);
  CHECK(set->file_unchanged(Face::bold));
  put(root.bold(), bytes_of(root.bold()) + "x");
  CHECK_FALSE(set->file_unchanged(Face::bold));
  CHECK(set->file_unchanged(Face::regular));
}

TEST_CASE("damaged glyph tables are read without leaving them", "[fonts]") {
  // Glyph offsets that point anywhere; the sanitizer build would see a read outside the file.
  std::string bytes = bytes_of(kRoot + "/truetype/roboto/unhinted/RobotoTTF/Roboto-Regular.ttf");
  const std::string_view loca = Sfnt(bytes).table("loca");
  REQUIRE_FALSE(loca.empty());
  const auto at = static_cast<std::size_t>(loca.data() - bytes.data());
  for (std::size_t i = 0; i < loca.size(); ++i) bytes[at + i] = static_cast<char>(i * 37 % 251);
  int nested = 0;
  for (std::uint32_t glyph = 0; glyph < 70000; ++glyph) nested += Sfnt(bytes).composite_of_composites(glyph) ? 1 : 0;
  CHECK(nested < 70000);
}

TEST_CASE("opening and measuring a page of text takes a few milliseconds", "[fonts]") {
  // Processor time, the best of five, so that a busy machine does not fail it. Measured here: 0.4 to 5 ms.
  double best = 1e9;
  for (int round = 0; round < 5; ++round) {
    const std::clock_t start = std::clock();
    const auto set = fonts();
    int width = 0;
    for (int line = 0; line < 60; ++line) {
      for (char32_t c = U' '; c < 0x7F; ++c) width += set->covers(Face::regular, c) ? set->advance(Face::regular, c) : 0;
    }
    CHECK(width > 0);
    best = std::min(best, 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
#ifdef GOWNSHEAF_SANITIZED
  CHECK(best < 500);
#else
  CHECK(best < 20);  // what the whole of `check` may take
#endif
}
