// Faces by role: what they hold, how wide it is. Advances are whole 1/1000 em, cut (not rounded) as libharu cuts them,
// so that layout and PDF agree. No libharu type here.
#pragma once
#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "units/length.h"

namespace gownsheaf {

enum class Face { regular, bold, condensed, condensed_bold, fallback };
inline constexpr int kFaces = 5;

struct LineMetrics {
  int ascent = 0, descent = 0, cap_height = 0, x_height = 0;
};  // 1/1000 em, descent negative

class FontSet {  // interface, so that tests can use a face whose every letter is half an em
 public:
  virtual ~FontSet() = default;
  virtual bool covers(Face face, char32_t c) const = 0;
  virtual int advance(Face face, char32_t c) const = 0;  // 1/1000 em; of .notdef when not covered
  virtual LineMetrics metrics(Face face) const = 0;
  virtual std::string file(Face face) const = 0;  // path that libharu opens; "" for a test face
  virtual std::string hash(Face face) const = 0;  // sha256 of the file
  // Whether the file still holds what was opened; libharu opens it a second time, by path. True for a test face.
  virtual bool file_unchanged(Face) const { return true; }
  // The face to set c in: `face` when it covers it, else fallback; no value when neither does.
  bool face_for(Face face, char32_t c, Face& out) const;
  // c as it is set in `face`, by the fallback where that is the one that covers it; .notdef of `face` when neither does.
  struct Letter {
    Face face = Face::regular;
    int advance = -1;
  };
  Letter letter(Face face, char32_t c) const {
    if (c >= kept_.front().size()) return looked_up(face, c);
    Letter& kept = kept_[static_cast<std::size_t>(face)][c];
    if (kept.advance < 0) kept = looked_up(face, c);
    return kept;
  }

 private:
  Letter looked_up(Face face, char32_t c) const;
  mutable std::array<std::array<Letter, 128>, kFaces>
      kept_;  // most letters are of these, and each is asked for thousands of times
};

struct FontFault {
  std::string sentence;
};
// Opens the four Roboto cuts and DejaVu Sans below root (…/truetype/roboto/unhinted, …/truetype/dejavu). A missing or
// damaged face is a fault that names the file and the Debian package, never a silent substitute. A character whose glyph
// is a composite of composites counts as not covered (libharu 2.3.0 drops its accent), and so do characters that libharu
// cannot set: controls, invisible format characters, right-to-left and joining scripts, all above U+FFFF.
// A set is for one thread at a time.
std::unique_ptr<FontSet> open_fonts(const std::string& root, FontFault& fault);

// Characters of text that cannot be printed in one of the four cuts or the fallback, each once, in the order met. A line
// end is not counted: layout sets it and it never reaches a face.
std::vector<char32_t> not_covered(const FontSet& fonts, std::string_view utf8);

}  // namespace gownsheaf
