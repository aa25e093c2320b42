// Puts letters, lengths and tags one after another along a base line and says how far it came.
#pragma once
#include <string_view>
#include <vector>

#include "layout/page.h"
#include "layout/pieces.h"

namespace gownsheaf {

class Pen {
 public:
  // runs: where finished runs go; none when only the width is wanted.
  explicit Pen(const FontSet& fonts, std::vector<TextRun>* runs = nullptr) : fonts_(&fonts), runs_(runs) {}

  // A run is as wide as size × (sum of advances) / 1000, rounded once. Letters in one face, size and rise make one run,
  // whichever piece they came from; a character that the face lacks goes to the fallback face.
  void letters(Face face, Length size, std::string_view utf8, Length rise = Length());
  // The trade's set fraction: whole number, squeezed space, small raised numerator, full stroke, small lowered denominator.
  void length(Face face, Length size, const LengthText& length);
  void piece(const TextPiece& piece, const TypeScale& scale);
  // What stands between this piece and the one before it on the same line.
  void lead(const TextPiece& piece);
  void move(Length by);
  void finish();  // hands the open run to `runs`
  Length at() const { return start_ + size_.times(advance_, 1000); }

 private:
  const FontSet* fonts_;
  std::vector<TextRun>* runs_;
  Length start_;  // of the open run
  Face face_ = Face::regular;
  Length size_, rise_;
  std::int64_t advance_ = 0;
  std::string utf8_;
  bool open_ = false;
};

struct LengthWidths {
  Length whole, fraction, unit;
};  // fraction: without the squeezed space; unit: with its space
LengthWidths widths_of(const FontSet& fonts, Face face, Length size, const LengthText& length);
inline Length squeezed_space(Length size) { return size.times(6, 100); }
inline constexpr Length kTagPadding = Length::points(5);

}  // namespace gownsheaf
