#include "fonts/font_set.h"

#include <algorithm>

#include "unicode/utf8.h"

namespace gownsheaf {

bool FontSet::face_for(Face face, char32_t c, Face& out) const {
  for (const Face candidate : {face, Face::fallback}) {
    if (covers(candidate, c)) {
      out = candidate;
      return true;
    }
  }
  return false;
}

FontSet::Letter FontSet::looked_up(Face face, char32_t c) const {
  Face used = face;
  if (!face_for(face, c, used)) used = face;
  return {used, advance(used, c)};
}

std::vector<char32_t> not_covered(const FontSet& fonts, std::string_view utf8) {
  std::vector<char32_t> missing;
  for (const char32_t c : decode_utf8(utf8)) {
    if (c == '\n') continue;  // a line end is set by layout and never reaches a face
    if (std::find(missing.begin(), missing.end(), c) != missing.end()) continue;
    // The same words may be set in any cut, so every one of them must be able to print the character.
    bool printable = true;
    for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold}) {
      Face unused = face;
      printable = printable && fonts.face_for(face, c, unused);
    }
    if (!printable) missing.push_back(c);
  }
  return missing;
}

}  // namespace gownsheaf
