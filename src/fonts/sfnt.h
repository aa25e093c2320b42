// The parts of a TrueType file that FreeType does not answer directly: is the file whole, and is a glyph built from
// glyphs that are themselves built from others? Table layouts: OpenType specification 1.9 (ISO/IEC 14496-22), chapters
// "OpenType font file", "glyf", "loca", "head". Views into the file's bytes, which must outlive the Sfnt.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

class Sfnt {
 public:
  explicit Sfnt(std::string_view file) : file_(file) {}
  // Why libharu could not embed this file, or "" when it can: TrueType outlines, every table inside the file, and the
  // tables that libharu reads all present. It returns nothing, and no error, for a file that was cut short.
  std::string fault() const;
  // The table's bytes; empty when the file has none or it lies outside the file.
  std::string_view table(std::string_view tag) const;
  // libharu 2.3.0 embeds one level of components only, so such a glyph loses its accent on paper.
  bool composite_of_composites(std::uint32_t glyph) const;

 private:
  std::string_view glyph(std::uint32_t id) const;
  std::vector<std::uint32_t> components(std::uint32_t glyph) const;  // none for a simple glyph
  std::string_view file_;
};

}  // namespace gownsheaf
