// The cut size of one piece from one cloth, with its figures and their working. Formulas: yardage.h, piece_edges.h.
// Internal to the cut list.
#pragma once
#include <optional>
#include <string>

#include "calculate/piece_edges.h"
#include "calculate/rounds.h"
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// Nothing while the cloth's width or the piece's size is not known. full: from selvage to selvage.
std::optional<Length> cut_width(const Project& project, const Piece& piece, const Cloth& cloth, bool full, Figures& figures);
// copies: how many are cut, for a length that is a share of what was bought.
std::optional<Length> cut_length(const Project& project, const Piece& piece, const Cloth& cloth, std::int64_t copies,
                                 Figures& figures);

// A layer cut with the shell, of narrower cloth: the width between seam lines of the shell's breadth that each of its own
// breadths covers. Nothing where its cloth is as wide as the shell's.
std::optional<Length> to_cover(const Project& project, const Piece& piece, const Cloth& cloth);

// "seams 1/2 in, hem 2 in, top 5/8 in": what the cut size adds to the finished one.
std::string allowances_in_words(const Project& project, const Piece& piece, const Allowed& allowed, bool full);

}  // namespace gownsheaf
