// Rich text cut into what a line is made of: pieces that never part inside, and where a line may end between them.
// Pieces point into the text they were cut from, which must outlive them.
#pragma once
#include <string_view>
#include <vector>

#include "layout/text.h"

namespace gownsheaf {

struct TextPiece {
  const Inline* of = nullptr;
  std::string_view letters;  // of a piece of words, UTF-8
  Length size;
  const Inline* space = nullptr;  // where a space stood before it: what that was a part of, its face and size
  Length space_size;
  Length gap;               // in place of that space when not at the start of a line: before boxes and tags, and after
  bool may_break = false;   // a line may end before it
  bool must_break = false;  // a line ends before it
};

// base: the size of inlines that have none of their own.
std::vector<TextPiece> pieces_of(const Text& text, Length base, const TypeScale& scale);
// Pieces as the text of one line.
Text text_of_pieces(const std::vector<TextPiece>& pieces);
// A measured length or a verdict inside a line never falls below the scale's length size.
Length size_of(Inline::Size size, Length base, const TypeScale& scale);

}  // namespace gownsheaf
