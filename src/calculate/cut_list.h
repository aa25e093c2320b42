// What is cut from each cloth: every piece x cloth x number, with its cut size. Formulas in yardage.h.
//
// Left out of the lay, each with a hold or an error that says so: a piece on the bias, one wider than the cloth, one whose
// size is still to be measured. Its cut size is listed where it is known.
#pragma once
#include <vector>

#include "calculate/rounds.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

struct Cut {
  CutPiece piece;
  const Piece* source = nullptr;
  bool in_lay = true;
  bool bias = false;                   // at half a quarter to the length
  bool may_turn = false;               // quarter turns allowed: `lay: any way`
  bool end_for_end = true;             // its top may lie at either end: not with `lay: one way`
  Length takes;                        // of the cloth's length: the cut length, up to the repeat for full breadths
  bool half_drop = false;              // every other copy begins half a repeat lower
  std::optional<BreadthPlan> breadth;  // joins and repeats to be drawn
  std::optional<Length> repeat;        // full breadths begin at a whole repeat
};

struct ClothCuts {
  const Cloth* cloth = nullptr;
  std::vector<Cut> cuts;  // full breadths first, then long before short, then as the maker wrote them
};

// Adds the figures of pieces; in the project's order of cloths, cloths that nothing is cut from left out.
std::vector<ClothCuts> cut_list(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag);

// The lengths on the shelf as they are laid: less straightening, after shrinking.
Length laid_length(const Cloth& cloth, Length bought);
Ratio shrinks_along(const Cloth& cloth);  // 0 when it is shrunk already
Length straighten_each_end(const Cloth& cloth);
Length selvage_of(const Cloth& cloth);

}  // namespace gownsheaf
