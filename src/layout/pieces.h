// Rich text cut into what a line is made of: pieces that never part inside, and where a line may end between them.
#pragma once
#include <string>
#include <vector>

#include "layout/text.h"

namespace gownsheaf {

struct TextPiece {
  Inline of;                 // face, kind, tag, length; its `words` are not used, `letters` are
  Length size;
  std::u32string letters;    // of a piece of words
  bool space_before = false; // a space stood before it, in the face and size below
  Face space_face = Face::regular;
  Inline::Size space_kind = Inline::Size::as_text;
  Length space_size;
  Length gap;                // in place of that space when not at the start of a line: before boxes and tags, and after
  bool may_break = false;    // a line may end before it
  bool must_break = false;   // a line ends before it
};

// base: the size of inlines that have none of their own.
std::vector<TextPiece> pieces_of(const Text& text, Length base, const TypeScale& scale);
// Pieces [first, last) as the text of one line.
Text text_of_pieces(const std::vector<TextPiece>& pieces, std::size_t first, std::size_t last);
// A measured length or a verdict inside a line never falls below the scale's length size.
Length size_of(Inline::Size size, Length base, const TypeScale& scale);

}  // namespace gownsheaf
