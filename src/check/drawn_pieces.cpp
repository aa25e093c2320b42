#include "check/drawn_pieces.h"

#include <algorithm>

#include "diagnostics/message.h"
#include "geometry/slabs.h"
#include "outline/cut_line.h"
#include "outline/pick.h"

namespace gownsheaf {
namespace {

constexpr Length kOnTheFold = Length::mm(1);

void refuse(Diagnostics& diag, const Piece& piece, const char* code, const SourceSpan& at, std::string sentence,
            std::string hint) {
  diag.add(message({piece.named.name, "pieces", ""}, Severity::error, code, at, std::move(sentence), std::move(hint)));
}

Length apart(Length a, Length b) { return a < b ? b - a : a - b; }

const PickedMark* mark_of(const PickedOutline& picked, MarkKind kind) {
  for (const PickedMark& mark : picked.marks)
    if (mark.kind == kind && mark.points.size() >= 2) return &mark;
  return nullptr;
}

// A line leans less than one part in fifty from upright or from level: as straight as a hand draws it.
enum class Runs { upright, level, askew };
Runs runs(const Polygon& line) {
  const Length across = apart(line.front().x, line.back().x), along = apart(line.front().y, line.back().y);
  if (across * 50 <= along) return Runs::upright;
  if (along * 50 <= across) return Runs::level;
  return Runs::askew;
}

// Where the half ends: the innermost of the outline's corners that lie on the drawn fold. Nothing when the fold is not at the
// outline's left or right end.
struct FoldAt {
  Length x;
  bool half_is_right = false;
};
std::optional<FoldAt> fold_at(const Polygon& edge, Length drawn) {
  const Box box = bounds(edge);
  const bool left = apart(box.x, drawn) <= kOnTheFold;
  if (!left && apart(box.right(), drawn) > kOnTheFold) return std::nullopt;
  FoldAt at{left ? box.x : box.right(), left};
  for (const Point& p : edge)
    if (apart(p.x, drawn) <= kOnTheFold) at.x = left ? std::max(at.x, p.x) : std::min(at.x, p.x);
  return at;
}

// The half and its mirror image about the upright line at the fold, as one ring. What an allowance at the fold's end puts
// beyond the fold is cut off. Nothing when the half does not end on the line in one straight edge.
std::optional<Polygon> opened_out(const Polygon& whole, const FoldAt& fold) {
  const Length x = fold.x;
  const Box box = bounds(whole);
  const Polygon half = fold.half_is_right ? clipped_along(whole, x, box.right()) : clipped_along(whole, box.x, x);
  const std::size_t n = half.size();
  const auto on = [&](std::size_t i) { return half[i % n].x == x; };
  std::size_t begins = n;
  std::size_t runs_on = 0, count = 0;
  for (std::size_t i = 0; i < n; ++i) {
    count += on(i) ? 1 : 0;
    if (!on(i) && on(i + 1)) {
      begins = i + 1;
      ++runs_on;
    }
  }
  if (runs_on != 1 || count < 2) return std::nullopt;
  Polygon ring;  // from the fold's far end round to its near end, then back on the other side
  for (std::size_t k = begins + count - 1; k <= begins + n; ++k) ring.push_back(half[k % n]);
  for (std::size_t k = ring.size() - 1; k-- > 1;) ring.push_back({2 * x - ring[k].x, ring[k].y});
  return ring;
}

}  // namespace

const SvgDrawing* Drawings::drawing(const std::string& relative, const SourceSpan& at) {
  const auto known = read_.find(relative);
  if (known != read_.end()) return known->second ? &*known->second : nullptr;
  std::optional<SvgDrawing>& drawing = read_[relative];
  const DrawingFile file = reader_ ? reader_(relative) : DrawingFile{{}, "Drawings are not read here.", relative};
  if (!file.bytes) {
    diag_.error("drawing-unread", at, file.fault, "its path counts from the folder of the project file");
    return nullptr;
  }
  drawing = read_svg(*file.bytes, file.shown, diag_);
  if (drawing) note_test_square(*drawing, diag_);
  return drawing ? &*drawing : nullptr;
}

std::optional<DrawnPiece> drawn_piece(const DrawnAsked& asked, Drawings& drawings, Diagnostics& diag) {
  const Piece& piece = asked.piece;
  const std::size_t hash = asked.text.find('#');
  if (hash == std::string::npos || hash == 0 || hash + 1 == asked.text.size()) {
    refuse(diag, piece, "outline-unnamed", asked.at, "`" + asked.text + "` names no outline of a drawing.",
           "`outline: pieces.svg#front`; a space before `#` makes the rest a remark");
    return std::nullopt;
  }
  const SvgDrawing* drawing = drawings.drawing(asked.text.substr(0, hash), asked.at);
  if (drawing == nullptr) return std::nullopt;
  const std::string which = asked.text.substr(hash + 1);
  const std::optional<PickedOutline> picked = pick_outline(*drawing, {which, asked.at, asked.square_measures}, diag);
  if (!picked) return std::nullopt;
  const PickedMark* grain = mark_of(*picked, MarkKind::grain);
  const Runs along = grain == nullptr ? Runs::upright : runs(grain->points);
  if (along == Runs::askew) {
    refuse(diag, piece, "grain-askew", asked.at,
           "The grain line of " + piece.named.name + " runs neither up the page nor across it.",
           "turn the piece in the drawing until its grain line is upright");
    return std::nullopt;
  }
  const bool no_hem = !piece.hem.known() || (piece.hem.origin == Origin::standing && piece.hem->is_zero());
  const auto lines = cut_and_seam(*picked, asked.is_cut_line ? OutlineIs::cut_line : OutlineIs::seam_line,
                                  {*piece.seam_allowance, no_hem ? *piece.seam_allowance : *piece.hem}, asked.at, diag);
  if (!lines) return std::nullopt;
  if (lines->hem_guessed)
    diag.add(message({piece.named.name, "pieces", "cutting list"}, Severity::warning, "hem-guessed", asked.at,
                     "No line of the drawing of " + piece.named.name + " is its hem: its lowest side is taken.",
                     "a line of class `hem` along the edge that is hemmed"));
  Polygon cut = lines->cut;
  std::optional<Length> fold_line;
  if (piece.on_fold.known() && *piece.on_fold) {
    const PickedMark* fold = mark_of(*picked, MarkKind::fold);
    std::optional<Polygon> whole;
    if (fold != nullptr && runs(fold->points) == Runs::upright)
      if (const auto at = fold_at(picked->edge, fold->points.front().x)) {
        whole = opened_out(cut, *at);
        fold_line = at->x;
      }
    if (!whole) {
      refuse(diag, piece, "fold-unmarked", asked.at,
             capital(piece.named.name) + " is cut on the fold, and " +
                 (fold == nullptr ? "no line of its drawing is its fold." : "its fold is not one upright edge of its outline."),
             "a line of class `fold` along the straight edge that lies on the fold; or draw it whole, without `on fold`");
      return std::nullopt;
    }
    cut = *whole;
  }
  DrawnPiece out;
  out.drawing = asked.text.substr(0, hash);
  out.which = which;
  out.at = asked.at;
  out.was_cut_line = asked.is_cut_line;
  for (const PickedMark& mark : picked->marks) {
    if (mark.kind != MarkKind::notch && mark.kind != MarkKind::dart && mark.kind != MarkKind::match &&
        mark.kind != MarkKind::join && mark.kind != MarkKind::mark)
      continue;
    out.lines.push_back({std::string(word_for(mark.kind)), mark.words, mark.points, mark.closed});
    if (!fold_line || mark.kind == MarkKind::match) continue;
    out.lines.push_back(out.lines.back());
    for (Point& p : out.lines.back().points) p.x = 2 * *fold_line - p.x;
  }
  const auto on_cloth = [&](Point& p) {
    // Up the page is toward the cloth's first end, the page's right is across: the page turned a quarter. Where the grain runs
    // across the page, the page's left is toward that end.
    const Point page = p;
    p = along == Runs::level ? Point{page.x, -page.y} : Point{page.y, page.x};
  };
  for (Point& p : cut) on_cloth(p);
  const Box box = bounds(cut);
  for (Point& p : cut) p = {p.x - box.x, p.y - box.y};
  for (DrawnPiece::Line& line : out.lines)
    for (Point& p : line.points) {
      on_cloth(p);
      p = {p.x - box.x, p.y - box.y};
    }
  out.cut = std::move(cut);
  return out;
}

}  // namespace gownsheaf
