// Names, sizes and grain arrows of a drawn lay: inside where they fit, smaller where they do not, a number last.
#pragma once
#include <vector>

#include "figures/plans.h"
#include "layout/lay_out.h"
#include "packet/figure_text.h"

namespace gownsheaf {

struct LabelPlan {
  const FigureText& figure_text;
  const Typesetter& typesetter;
  std::vector<Label> in_order;
  Text numbered;  // pieces that have a number in place of a name
  std::int64_t count = 0;
  struct Small {
    std::string name;
    Text size;
    Box box, whole;
  };                         // the room in it; all of it
  std::vector<Small> small;  // found no room for their names
  Box cloth;                 // on paper
  std::vector<Box> taken;    // by pieces and bad places, on paper
};

// `whole` is the piece on paper, `box` the room in it; grain arrows go to `grain`.
void label_piece(LabelPlan& labels, const LayPlan& plan, const LaidPiece& laid, const Box& box, const Box& whole,
                 std::vector<DrawingItem>& grain);
// Names of the small ones beside them, each with a line to its piece, where a free place is near; else numbers. After all other
// labels; the lines go to `lines`.
void label_small_pieces(LabelPlan& labels, std::vector<DrawingItem>& lines);
// A left-over rectangle with its size in figures, when it has room for the words.
void label_left_over(LabelPlan& labels, const std::string& key, const Box& box);

}  // namespace gownsheaf
