// Pieces given as outlines in a drawing (`outline: pieces.svg#front`): read, picked, and set with their allowances in the
// cloth's directions. What a drawing must hold: docs/outlines.md.
#pragma once
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "outline/outline.h"
#include "project/project.h"

namespace gownsheaf {

// The bytes of a file named by a path relative to the project's folder, or why they cannot be had; `shown` is the name by
// which messages call it.
struct DrawingFile {
  std::optional<std::string> bytes;
  std::string fault, shown;
};
using DrawingReader = std::function<DrawingFile(const std::string& relative)>;

// The drawings of one project, each read once, however many pieces it holds.
class Drawings {
 public:
  Drawings(DrawingReader reader, Diagnostics& diag) : reader_(std::move(reader)), diag_(diag) {}
  // Nothing, and an error at `at` or in the drawing, when it cannot be read. The error is given once.
  const SvgDrawing* drawing(const std::string& relative, const SourceSpan& at);

 private:
  DrawingReader reader_;
  Diagnostics& diag_;
  std::map<std::string, std::optional<SvgDrawing>> read_;
};

struct DrawnAsked {
  const Piece& piece;  // its name, fold, seam allowance and hem are known
  std::string text;    // `pieces.svg#front`
  SourceSpan at;
  bool is_cut_line = false;
  std::optional<Length> square_measures;
};
// The grain runs up the page, or along the piece's line of the kind `grain`, which may run up or across it. A piece on the fold
// is drawn as a half with an upright line of the kind `fold`, and opened out there. Errors go to diag.
std::optional<DrawnPiece> drawn_piece(const DrawnAsked& asked, Drawings& drawings, Diagnostics& diag);

}  // namespace gownsheaf
