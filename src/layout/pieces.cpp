#include "layout/pieces.h"

#include <algorithm>

namespace gownsheaf {

namespace {

constexpr Length kTagGap = Length::points(5);        // between a tag and the words on either side
constexpr Length kOwnBoxGap = Length::points(5);     // a box to its own word
constexpr Length kOtherBoxGap = Length::points(16);  // … and to the next, or nobody knows which word it belongs to

bool is_blank(char c) { return c == ' ' || c == '\n' || c == '\t' || c == '\r'; }

struct Gatherer {
  const TypeScale& scale;
  Length base;
  std::vector<TextPiece> out;
  const Inline* space = nullptr;
  bool line_end = false;

  TextPiece& next(const Inline& item) {
    const bool first = out.empty();
    TextPiece& piece = out.emplace_back();
    piece.of = &item;
    piece.must_break = line_end;
    piece.size = size_of(item.size, base, scale);
    if (!first && !line_end && space != nullptr) {
      piece.space = space;
      piece.may_break = true;
      piece.space_size = size_of(space->size, base, scale);
    }
    space = nullptr;
    line_end = false;
    return piece;
  }
  void words(const Inline& item) {
    const std::string_view letters = item.words;
    for (auto from = letters.begin(); from != letters.end();) {
      if (is_blank(*from)) {
        if (space == nullptr) space = &item;
        ++from;
        continue;
      }
      const auto to = std::find_if(from, letters.end(), is_blank);
      next(item).letters = std::string_view(from, to);
      from = to;
    }
  }
};

// At least as many as there will be: one more than blanks in each item.
std::size_t most_pieces(const Text& text) {
  std::size_t most = 0;
  for (const Inline& item : text)
    most += 1 + static_cast<std::size_t>(std::count_if(item.words.begin(), item.words.end(), is_blank));
  return most;
}

bool is_kind(const TextPiece& piece, Inline::Kind kind) { return piece.of->kind == kind; }

// A box belongs to the word after it; one with nothing after it on its line belongs to the word before.
void bind_signs(std::vector<TextPiece>& pieces) {
  bool bound = false;  // to the sign before it
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    TextPiece& piece = pieces[i];
    const bool is_tag = is_kind(piece, Inline::Kind::tag), is_box = is_kind(piece, Inline::Kind::tick_box);
    const bool has_next = i + 1 < pieces.size() && !pieces[i + 1].must_break;
    if (is_tag || is_box) {
      piece.gap = std::max(piece.gap, is_tag ? kTagGap : has_next ? kOtherBoxGap : kOwnBoxGap);
      piece.may_break = i > 0 && !bound && (is_tag || has_next);
    }
    bound = (is_tag || is_box) && has_next;
    if (bound) {
      pieces[i + 1].may_break = false;
      pieces[i + 1].gap = is_tag ? kTagGap : kOwnBoxGap;
    }
  }
}

bool same_look(const Inline& item, Face face, Inline::Size size) {
  return item.kind == Inline::Kind::words && item.face == face && item.size == size;
}

void append_words(Text& text, Face face, Inline::Size size, std::string_view s) {
  if (text.empty() || !same_look(text.back(), face, size)) {
    Inline item;
    item.face = face;
    item.size = size;
    text.push_back(item);
  }
  text.back().words += s;
}

}  // namespace

Length size_of(Inline::Size size, Length base, const TypeScale& scale) {
  switch (size) {
    case Inline::Size::measured:
    case Inline::Size::verdict: return std::max(base, Length::points(scale.length));
    case Inline::Size::small: return std::min(base, Length::from_points(scale.smallest));
    case Inline::Size::as_text: break;
  }
  return base;
}

std::vector<TextPiece> pieces_of(const Text& text, Length base, const TypeScale& scale) {
  Gatherer gatherer{scale, base, {}};
  gatherer.out.reserve(most_pieces(text));
  for (const Inline& item : text) {
    switch (item.kind) {
      case Inline::Kind::words: gatherer.words(item); break;
      case Inline::Kind::line_break: gatherer.line_end = true; break;
      case Inline::Kind::length:
      case Inline::Kind::tag:
      case Inline::Kind::tick_box: gatherer.next(item); break;
    }
  }
  bind_signs(gatherer.out);
  return std::move(gatherer.out);
}

Text text_of_pieces(const std::vector<TextPiece>& pieces) {
  Text text;
  for (const TextPiece& piece : pieces) {
    if (&piece != &pieces.front() && piece.space != nullptr) append_words(text, piece.space->face, piece.space->size, " ");
    if (piece.of->kind == Inline::Kind::words) {
      append_words(text, piece.of->face, piece.of->size, piece.letters);
    } else {
      text.push_back(*piece.of);
    }
  }
  return text;
}

}  // namespace gownsheaf
