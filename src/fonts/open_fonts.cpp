// The five faces of the packet through FreeType. Opening only reads the files; what a character is like is looked up
// when it is first asked for and kept.
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_ADVANCES_H
#include FT_TRUETYPE_TABLES_H

#include <array>
#include <cstdint>
#include <optional>

#include "files/files.h"
#include "fonts/font_set.h"
#include "fonts/sfnt.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kLargestFont = 16u << 20;

struct FaceFile {
  Face face;
  const char* below_root;
  const char* package;  // Debian's
};
constexpr std::array<FaceFile, kFaces> kFaceFiles{{
    {Face::regular, "truetype/roboto/unhinted/RobotoTTF/Roboto-Regular.ttf", "fonts-roboto-unhinted"},
    {Face::bold, "truetype/roboto/unhinted/RobotoTTF/Roboto-Bold.ttf", "fonts-roboto-unhinted"},
    {Face::condensed, "truetype/roboto/unhinted/RobotoCondensed-Regular.ttf", "fonts-roboto-unhinted"},
    {Face::condensed_bold, "truetype/roboto/unhinted/RobotoCondensed-Bold.ttf", "fonts-roboto-unhinted"},
    {Face::fallback, "truetype/dejavu/DejaVuSans.ttf", "fonts-dejavu-core"},
}};

// libharu sets letters one after another from left to right and does not shape them. Characters that then print
// nothing, or print wrong, count as not covered even when the face holds a glyph: controls, invisible format
// characters, scripts that run right to left or join or stack their letters (and all above U+FFFF: see covers).
bool can_be_set(char32_t c) {
  struct Range {
    char32_t first, last;
  };
  static constexpr Range kNotSet[] = {{0x0000, 0x001F}, {0x007F, 0x009F}, {0x00AD, 0x00AD}, {0x0590, 0x109F}, {0x1700, 0x1BFF},
                                      {0x200B, 0x200F}, {0x2028, 0x202E}, {0x2060, 0x206F}, {0xD800, 0xDFFF}, {0xFB1D, 0xFDFF},
                                      {0xFE00, 0xFE0F}, {0xFE70, 0xFEFF}, {0xFFF9, 0xFFFC}, {0xFFFE, 0xFFFF}};
  for (const Range& range : kNotSet) {
    if (c >= range.first && c <= range.last) return false;
  }
  return true;
}

struct Character {
  bool known = false, covered = false;
  std::int16_t advance = 0;  // 1/1000 em
};

struct OpenFace {
  std::string path, bytes;
  FT_Face face = nullptr;
  LineMetrics metrics;
  std::string hash;                                                   // "" until asked for
  std::array<std::unique_ptr<std::array<Character, 256>>, 256> seen;  // by high and low byte
};

int thousandths(std::int64_t font_units, FT_UShort units_per_em) {  // cut toward zero
  return static_cast<int>(font_units * 1000 / units_per_em);
}

// The Windows Unicode map, the one libharu reads; some files hold a second map for characters above U+FFFF.
bool choose_unicode_map(FT_Face face) {
  for (FT_Int i = 0; i < face->num_charmaps; ++i) {
    if (face->charmaps[i]->platform_id == 3 && face->charmaps[i]->encoding_id == 1) {
      return FT_Set_Charmap(face, face->charmaps[i]) == 0;
    }
  }
  return false;
}

int height_of(FT_Face face, char32_t letter) {
  const FT_UInt glyph = FT_Get_Char_Index(face, letter);
  if (glyph == 0 || FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE) != 0) return 0;
  return thousandths(face->glyph->metrics.horiBearingY, face->units_per_EM);
}

LineMetrics line_metrics(FT_Face face) {
  LineMetrics lines;
  lines.ascent = thousandths(face->ascender, face->units_per_EM);  // of hhea, as libharu takes them
  lines.descent = thousandths(face->descender, face->units_per_EM);
  const auto* os2 = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(face, FT_SFNT_OS2));
  if (os2 != nullptr && os2->version >= 2 && os2->version != 0xFFFF) {
    lines.cap_height = thousandths(os2->sCapHeight, face->units_per_EM);
    lines.x_height = thousandths(os2->sxHeight, face->units_per_EM);
  }
  if (lines.cap_height <= 0) lines.cap_height = height_of(face, 'H');
  if (lines.x_height <= 0) lines.x_height = height_of(face, 'x');
  return lines;
}

// Not for use by two threads at once: characters are looked up and kept on first use.
class OpenFonts final : public FontSet {
 public:
  OpenFonts() = default;
  OpenFonts(const OpenFonts&) = delete;
  OpenFonts& operator=(const OpenFonts&) = delete;
  ~OpenFonts() override {
    for (OpenFace& open : faces_) {
      if (open.face != nullptr) FT_Done_Face(open.face);
    }
    if (library_ != nullptr) FT_Done_FreeType(library_);
  }

  bool open(const std::string& root, FontFault& fault) {
    if (FT_Init_FreeType(&library_) != 0) {
      library_ = nullptr;
      fault.sentence = "The font library FreeType could not be started.";
      return false;
    }
    for (const FaceFile& file : kFaceFiles) {
      if (const std::string why = open_face(root, file); !why.empty()) {
        fault.sentence = "The font file " + root + "/" + file.below_root + " cannot be used: " + why +
                         ". It belongs to the Debian package " + file.package + ": install that package.";
        return false;
      }
    }
    return true;
  }

  bool covers(Face face, char32_t c) const override { return c <= 0xFFFF && look_up(face, c).covered; }
  int advance(Face face, char32_t c) const override {
    return look_up(face, c > 0xFFFF ? char32_t{0xFFFF} : c).advance;  // U+FFFF is no character: .notdef
  }
  LineMetrics metrics(Face face) const override { return at(face).metrics; }
  std::string file(Face face) const override { return at(face).path; }
  std::string hash(Face face) const override {
    OpenFace& open = at(face);
    if (open.hash.empty()) open.hash = sha256(open.bytes);
    return open.hash;
  }
  bool file_unchanged(Face face) const override { return holds_still(at(face).path, at(face).bytes); }

 private:
  OpenFace& at(Face face) const { return faces_.at(static_cast<std::size_t>(face)); }

  std::string open_face(const std::string& root, const FaceFile& file) {
    OpenFace& open = at(file.face);
    open.path = root + "/" + file.below_root;
    FileResult<std::string> read = read_named_file(open.path, kLargestFont);
    if (!read.ok()) {
      return exists(open.path) ? std::string("it could not be read") : std::string("there is no such file");
    }
    open.bytes = std::move(*read.value);
    if (std::string why = Sfnt(open.bytes).fault(); !why.empty()) return why;
    const auto* data = reinterpret_cast<const FT_Byte*>(open.bytes.data());
    if (FT_New_Memory_Face(library_, data, static_cast<FT_Long>(open.bytes.size()), 0, &open.face) != 0) {
      open.face = nullptr;
      return "it is damaged";
    }
    if (open.face->units_per_EM == 0 || !choose_unicode_map(open.face)) return "it has no Unicode character map";
    open.metrics = line_metrics(open.face);
    return "";
  }

  const Character& look_up(Face face, char32_t c) const {
    OpenFace& open = at(face);
    auto& block = open.seen[(c >> 8) & 0xFF];
    if (!block) block = std::make_unique<std::array<Character, 256>>();
    Character& character = (*block)[c & 0xFF];
    if (character.known) return character;
    character.known = true;
    const FT_UInt glyph = FT_Get_Char_Index(open.face, c);
    character.covered = glyph != 0 && can_be_set(c) && !Sfnt(open.bytes).composite_of_composites(glyph);
    FT_Fixed units = 0;
    if (FT_Get_Advance(open.face, glyph, FT_LOAD_NO_SCALE, &units) == 0) {
      character.advance = static_cast<std::int16_t>(thousandths(units, open.face->units_per_EM));
    }
    return character;
  }

  FT_Library library_ = nullptr;
  mutable std::array<OpenFace, kFaces> faces_;
};

}  // namespace

std::unique_ptr<FontSet> open_fonts(const std::string& root, FontFault& fault) {
  auto fonts = std::make_unique<OpenFonts>();
  if (!fonts->open(root, fault)) return nullptr;
  return fonts;
}

}  // namespace gownsheaf
