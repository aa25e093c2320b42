// Edges of pieces by their written names, "side of bodice front".
#pragma once
#include <string>
#include <string_view>

#include "project/project.h"

namespace gownsheaf {

struct EdgeOfPiece {
  const Piece* piece = nullptr;
  std::string edge;
  Given<Length> length;
};  // finished length, as the piece has it
// No piece and no length where nothing of that name is known.
EdgeOfPiece edge_of_piece(const Project& project, std::string_view name);
// At armhole, wrist and knee there is one to each side of the body.
bool comes_twice(const EdgeLine& edge);
// Single pieces that are made; 1 where that is not settled.
std::int64_t pieces_made(const Piece& piece);

}  // namespace gownsheaf
