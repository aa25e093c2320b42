#include "layout/pen.h"

#include <utility>

#include "unicode/utf8.h"

namespace gownsheaf {

namespace {

constexpr char32_t kNoBreakSpace = 0xA0;
constexpr const char* kMinus = "\xE2\x88\x92";

std::string whole_of(const LengthText& length) { return (length.negative ? kMinus : "") + length.whole; }

}  // namespace

void Pen::finish() {
  if (open_) {
    const Length end = at();
    if (runs_ != nullptr) runs_->push_back({face_, size_, start_, rise_, std::exchange(utf8_, {})});
    start_ = end;
  }
  open_ = false;
  advance_ = 0;
}

void Pen::move(Length by) {
  finish();
  start_ += by;
}

void Pen::letters(Face face, Length size, std::string_view utf8, Length rise) {
  for (std::size_t at = 0; at < utf8.size();) {
    char32_t c = next_character(utf8, at);
    // Kept together is settled once lines are broken; on paper, and when copied, it is a space like any other.
    if (c == kNoBreakSpace) c = U' ';
    const auto [used, advance] = fonts_->letter(face, c);
    if (!open_ || used != face_ || size != size_ || rise != rise_) {
      finish();
      open_ = true;
      face_ = used;
      size_ = size;
      rise_ = rise;
    }
    advance_ += advance;
    if (runs_ == nullptr) continue;
    if (c < 0x80) utf8_ += static_cast<char>(c);
    else utf8_ += encode_utf8(c);
  }
}

void Pen::length(Face face, Length size, const LengthText& length) {
  const bool has_fraction = !length.numerator.empty();
  letters(face, size, whole_of(length));
  if (has_fraction) {
    if (!length.whole.empty()) {
      // The space is there to be copied; it moves the pen by less than its own width.
      const Length end = at();
      if (runs_ != nullptr && open_) utf8_ += ' ';
      finish();
      start_ = end + squeezed_space(size);
    }
    const Length small = size.times(2, 3), pulled_in = size.times(45, 1000);
    letters(face, small, length.numerator, size.times(30, 100));
    move(-pulled_in);
    letters(Face::regular, size, "/");
    move(-pulled_in);
    letters(face, small, length.denominator, -size.times(3, 100));
  }
  if (!length.unit.empty()) letters(face, size, " " + length.unit);
}

void Pen::lead(const TextPiece& piece) {
  if (!piece.gap.is_zero()) {
    move(piece.gap);
  } else if (piece.space != nullptr) {
    letters(piece.space->face, piece.space_size, " ");
  }
}

void Pen::piece(const TextPiece& piece, const TypeScale& scale) {
  switch (piece.of->kind) {
    case Inline::Kind::words: letters(piece.of->face, piece.size, piece.letters); break;
    case Inline::Kind::length: length(piece.of->face, piece.size, piece.of->length); break;
    case Inline::Kind::tag:
      move(kTagPadding);
      letters(Face::condensed_bold, Length::points(scale.text), word_for(piece.of->tag));
      move(kTagPadding);
      break;
    case Inline::Kind::tick_box: move(Length::points(scale.inline_box)); break;
    case Inline::Kind::line_break: break;
  }
}

LengthWidths widths_of(const FontSet& fonts, Face face, Length size, const LengthText& length) {
  LengthText whole = length, fraction = length;
  whole.numerator.clear();
  whole.denominator.clear();
  whole.unit.clear();
  fraction.negative = false;
  fraction.whole.clear();
  fraction.unit.clear();
  const auto width = [&](const LengthText& part) {
    Pen pen(fonts);
    pen.length(face, size, part);
    return pen.at();
  };
  LengthWidths widths{width(whole), width(fraction), Length()};
  if (!length.unit.empty()) {
    Pen pen(fonts);
    pen.letters(face, size, " " + length.unit);
    widths.unit = pen.at();
  }
  return widths;
}

}  // namespace gownsheaf
