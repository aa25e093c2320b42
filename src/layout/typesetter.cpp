#include <algorithm>
#include <deque>

#include "layout/lay_out.h"
#include "layout/marks.h"
#include "layout/pen.h"
#include "unicode/utf8.h"

namespace gownsheaf {

namespace {

Length base_size(double size, const TypeScale& scale) {
  return size > 0 ? Length::from_points(size) : Length::points(scale.text);
}

// Gathers pieces to lines no wider than the room.
class LineBreaker {
 public:
  LineBreaker(const FontSet& fonts, const TypeScale& scale, Length room)
      : fonts_(&fonts), scale_(&scale), room_(room), pen_(fonts) {}

  std::vector<Text> lines(const std::vector<TextPiece>& pieces) {
    for (std::size_t i = 0; i < pieces.size();) {
      std::size_t end = i + 1;
      while (end < pieces.size() && !pieces[end].may_break && !pieces[end].must_break) ++end;
      if (pieces[i].must_break) end_line();
      if (!add_if_fits(pieces, i, end)) {
        end_line();
        if (!add_if_fits(pieces, i, end))
          for (std::size_t k = i; k < end; ++k) add_in_parts(pieces[k]);
      }
      i = end;
    }
    end_line();
    return std::move(lines_);
  }

 private:
  void put(Pen& pen, const TextPiece& piece, bool at_start) const {
    if (!at_start) pen.lead(piece);
    pen.piece(piece, *scale_);
  }
  bool fits(const TextPiece& piece) const {
    Pen pen = pen_;
    put(pen, piece, line_.empty());
    return pen.at() <= room_;
  }
  bool add_if_fits(const std::vector<TextPiece>& pieces, std::size_t first, std::size_t last) {
    Pen pen = pen_;
    for (std::size_t i = first; i < last; ++i) put(pen, pieces[i], line_.empty() && i == first);
    if (pen.at() > room_) return false;
    pen_ = std::move(pen);
    const auto from = pieces.begin();
    line_.insert(line_.end(), from + static_cast<std::ptrdiff_t>(first), from + static_cast<std::ptrdiff_t>(last));
    return true;
  }
  void add(const TextPiece& piece) {
    put(pen_, piece, line_.empty());
    line_.push_back(piece);
  }
  void end_line() {
    if (line_.empty()) return;
    lines_.push_back(text_of_pieces(line_));
    line_.clear();
    pen_ = Pen(*fonts_);
  }
  // Longer than a whole line: broken between letters. A length or a sign goes over whole as long as it fits at all.
  void add_in_parts(TextPiece piece) {
    if (fits(piece)) return add(piece);
    if (piece.of->kind != Inline::Kind::words) {
      end_line();
      if (piece.of->kind != Inline::Kind::length || fits(piece)) return add(piece);
      piece = as_letters(piece);
    }
    while (!piece.letters.empty()) {
      TextPiece part = piece;
      std::size_t end = 0, next = 0;  // bytes of the letters that fit, and with one more
      while (end < piece.letters.size()) {
        next_character(piece.letters, next);
        part.letters = piece.letters.substr(0, next);
        // One letter wider than the room: nothing narrower is left.
        if (!fits(part) && !(end == 0 && line_.empty())) break;
        end = next;
      }
      if (end > 0) {
        part.letters = piece.letters.substr(0, end);
        add(part);
        piece.letters.remove_prefix(end);
        piece.gap = Length();
        piece.space = nullptr;
      }
      if (!piece.letters.empty()) end_line();
    }
  }
  TextPiece as_letters(const TextPiece& piece) {
    Inline& item = as_words_.emplace_back(*piece.of);
    item.kind = Inline::Kind::words;
    item.words.clear();
    for (const char c : piece.of->length.plain()) item.words += c == ' ' ? std::string("\xC2\xA0") : std::string(1, c);
    TextPiece letters = piece;
    letters.of = &item;
    letters.letters = item.words;
    return letters;
  }

  const FontSet* fonts_;
  const TypeScale* scale_;
  Length room_;
  Pen pen_;
  std::vector<TextPiece> line_;
  std::deque<Inline> as_words_;  // lengths that no line holds; pieces point at them
  std::vector<Text> lines_;
};

// Places what stands `along` the line and `up` from it, for lines that read across or upwards.
struct Turned {
  Point origin;
  int angle;
  Point at(Length along, Length up) const {
    return angle == 90 ? Point{origin.x - up, origin.y - along} : Point{origin.x + along, origin.y - up};
  }
  Box box(Length along, Length up, Length length, Length height) const {  // up: of its lower edge
    const Point corner = angle == 90 ? at(along + length, up + height) : at(along, up + height);
    return angle == 90 ? Box{corner.x, corner.y, height, length} : Box{corner.x, corner.y, length, height};
  }
};

class LineSetter {
 public:
  LineSetter(const FontSet& fonts, const TypeScale& scale, Turned turned)
      : fonts_(&fonts), scale_(&scale), turned_(turned), pen_(fonts, &runs_) {}

  std::vector<Mark> set(const std::vector<TextPiece>& pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const TextPiece& piece = pieces[i];
      if (i > 0) pen_.lead(piece);
      if (piece.of->kind == Inline::Kind::tag) {
        tag(piece);
      } else if (piece.of->kind == Inline::Kind::tick_box) {
        flush();
        box();
      } else {
        pen_.piece(piece, *scale_);
      }
    }
    flush();
    return std::move(marks_);
  }

 private:
  Length capital(Face face, Length size) const { return size.times(fonts_->metrics(face).cap_height, 1000); }

  void flush(bool white = false) {
    pen_.finish();
    if (runs_.empty()) return;
    TextMark mark;
    const Length start = runs_.front().offset;
    mark.at = turned_.at(start, Length());
    mark.angle = turned_.angle;
    mark.white = white;
    mark.runs.swap(runs_);
    for (TextRun& run : mark.runs) run.offset -= start;
    marks_.push_back({std::move(mark)});
  }
  void tag(const TextPiece& piece) {
    flush();
    const Length from = pen_.at();
    pen_.piece(piece, *scale_);
    pen_.finish();
    // Two points outside the room of the letters, tails included (a fifth of the size); never taller than a line.
    const Length size = Length::points(scale_->text), letters = capital(Face::condensed_bold, size);
    const Length tallest = Length::points(scale_->step - 1);
    const Length height = std::min(letters + 2 * (Length::points(2) + size.times(1, 5)), tallest);
    const Box box = turned_.box(from, -(height - letters).times(1, 2), pen_.at() - from, height);
    const bool outlined = piece.of->tag == Tag::warning || piece.of->tag == Tag::decided;
    if (piece.of->tag == Tag::guessed) {
      marks_.push_back(box_outline(box, 1.4, {4, 2}));
    } else {
      marks_.push_back(outlined ? box_outline(box, 1.4) : fill(path_of(box), Ink::black));
    }
    flush(!outlined && piece.of->tag != Tag::guessed);
  }
  void box() {
    const Length side = Length::points(scale_->inline_box);
    const Length lower = (capital(Face::regular, Length::points(scale_->text)) - side).times(1, 2);
    marks_.push_back(box_outline(turned_.box(pen_.at(), lower, side, side), scale_->tick_weight));
    pen_.move(side);
  }

  const FontSet* fonts_;
  const TypeScale* scale_;
  Turned turned_;
  std::vector<TextRun> runs_;
  Pen pen_;
  std::vector<Mark> marks_;
};

}  // namespace

Length Typesetter::width(const Text& text, double size) const {
  Pen pen(*fonts_);
  bool first = true;
  for (const TextPiece& piece : pieces_of(text, base_size(size, *scale_), *scale_)) {
    if (!first) pen.lead(piece);
    first = false;
    pen.piece(piece, *scale_);
  }
  return pen.at();
}

std::vector<Text> Typesetter::lines(const Text& text, Length room, double size) const {
  return LineBreaker(*fonts_, *scale_, room).lines(pieces_of(text, base_size(size, *scale_), *scale_));
}

std::vector<Mark> Typesetter::set(const Text& line, Point at, double size, int angle) const {
  return LineSetter(*fonts_, *scale_, {at, angle}).set(pieces_of(line, base_size(size, *scale_), *scale_));
}

}  // namespace gownsheaf
