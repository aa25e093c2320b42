#include "project/edges.h"

namespace gownsheaf {

EdgeOfPiece edge_of_piece(const Project& project, std::string_view name) {
  EdgeOfPiece found;
  const auto of = name.find(" of ");
  if (of == std::string_view::npos) return found;
  found.piece = project.piece(name.substr(of + 4));
  if (found.piece == nullptr) return found;
  for (const auto& [edge, length] : found.piece->edges)
    if (same_name(edge, name.substr(0, of))) {
      found.edge = edge;
      found.length = length;
    }
  return found;
}

bool comes_twice(const EdgeLine& edge) { return edge.kind == "armhole" || edge.kind == "wrist" || edge.kind == "knee"; }

std::int64_t pieces_made(const Piece& piece) {
  if (!piece.make.known()) return 1;
  if (piece.make->kind == Make::Kind::number) return piece.make->number;
  return piece.make->kind == Make::Kind::pairs ? 2 * piece.make->number : 1;
}

}  // namespace gownsheaf
