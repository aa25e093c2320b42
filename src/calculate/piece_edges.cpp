#include "calculate/piece_edges.h"

#include <algorithm>

#include "calculate/closures.h"
#include "calculate/rounds.h"

namespace gownsheaf {
namespace {

bool says(std::string_view name, std::string_view word) {
  for (std::size_t at = name.find(word); at != std::string_view::npos; at = name.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || name[at - 1] == ' ') && (end == name.size() || name[end] == ' ')) return true;
  }
  return false;
}

bool is_long_side(std::string_view edge) {
  for (const char* end : {"neck", "shoulder", "armhole", "waist", "hem", "top", "lower"})
    if (says(edge, end)) return false;
  for (const char* side : {"side", "front", "back", "centre"})
    if (says(edge, side)) return true;
  return false;
}

// The edge of this piece that the closing lies on, as the project's edges say; "" when they do not.
std::string edge_on(const Project& project, const Closure& closing, const Piece& piece) {
  const EdgeLine* line = project.edge(closing.edge);
  if (line == nullptr) return "";
  for (const std::string& of : line->of) {
    const auto cut = of.find(" of ");
    if (cut != std::string::npos && same_name(of.substr(cut + 4), piece.named.name)) return of.substr(0, cut);
  }
  return "";
}

SideAllowance at_closing(const Closure& closing, const Piece& piece) {
  // One piece for both sides is cut alike for both: as far as the side that reaches further.
  SideCut cut = side_cut(closing, &piece, false);
  if (closing.sides.size() == 1) {
    const SideCut under = side_cut(closing, &piece, true);
    if (under.past() > cut.past()) cut = under;
  } else if (closing.sides.size() > 1 && !same_name(closing.sides.front(), piece.named.name)) {
    cut = side_cut(closing, &piece, true);
  }
  SideAllowance side;
  side.closing = &closing;
  side.faced = cut.faced;
  const DrawnTo to = closing.drawn_to.known() ? *closing.drawn_to : DrawnTo::meeting_line;
  if (to == DrawnTo::meeting_line) side.lap = cut.lap;
  if (to != DrawnTo::cut_edge) side.turn = cut.turn;
  side.past = side.lap + side.turn;
  return side;
}

}  // namespace

LongSides long_sides(const Project& project, const Piece& piece) {
  const Allowed allowed = allowed_on(piece);
  LongSides out;
  std::vector<SideAllowance> sides;
  std::vector<std::string> closed;
  for (const Closure& closing : project.closures) {
    if (std::none_of(closing.sides.begin(), closing.sides.end(),
                     [&](const std::string& s) { return same_name(s, piece.named.name); }))
      continue;
    SideAllowance side = at_closing(closing, piece);
    side.edge = edge_on(project, closing, piece);
    closed.push_back(side.edge);
    const auto own = std::find_if(piece.edge_allowances.begin(), piece.edge_allowances.end(),
                                  [&](const auto& e) { return same_name(e.first, side.edge); });
    const bool has_own = own != piece.edge_allowances.end() && own->second.known();
    if (has_own || piece.width.kind == Size::Kind::cut) {
      const Length has = has_own ? *own->second : allowed.seam;
      if (has < side.past) out.too_short.push_back({&closing, has, side.past, has_own ? own->second.at : piece.width.at});
      else if (has_own) side.past = has;
    }
    sides.push_back(side);
  }
  const bool on_fold = piece.on_fold.known() && *piece.on_fold;
  for (const auto& [name, given] : piece.edge_allowances) {
    if (!given.known() || (on_fold && says(name, "centre"))) continue;  // the centre lies on the fold
    const std::string& edge = name;
    if (std::any_of(closed.begin(), closed.end(), [&](const std::string& c) { return same_name(c, edge); })) continue;
    if (is_long_side(edge)) {
      SideAllowance side;
      side.past = *given;
      side.edge = edge;
      sides.push_back(side);
    } else if (*given > allowed.seam) {
      out.longer_by += *given - allowed.seam;
    }
  }
  std::stable_sort(sides.begin(), sides.end(), [](const SideAllowance& a, const SideAllowance& b) { return a.past > b.past; });
  out.one.past = out.other.past = allowed.seam;
  if (!sides.empty()) out.one = sides.front();
  if (on_fold) out.other = out.one;
  else if (sides.size() > 1) out.other = sides[1];
  return out;
}

}  // namespace gownsheaf
