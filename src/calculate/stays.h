// Ribbon of a waist stay and tape that stays edges, to be bought. Formulas: docs/formulas.md#stays.
#pragma once
#include "diagnostics/diagnostics.h"
#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

// A waist stay: the waist it goes round and 2 in more at each end, to be turned in and hooked; in one piece.
Length stay_ribbon(Length waist);
// Tape along an edge: 1 in more at each end, a ring's ends laid over each other by as much.
Length stay_tape(Length edge);

// notions/NAME/stay needed, of the notion that a strain's stay is made of and of tape that has "stay" in its name: the tape
// goes round neck and armholes, on a waistcoat, coat or spencer down the fronts as well. Hold: stay-short.
void add_stays(const Project& project, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
