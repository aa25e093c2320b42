// What pulls at a closing: an estimate, by simple mechanics on inputs that are rough. Pure; doubles in named units.
//
//   hoop      T = p C / 2 pi                    tension of a band that presses p on a body of girth C (thin ring)
//   pressure  p = max(6 mmHg, 3.5 k e)          e shortfall in % of the girth; k 1 on the body, 2 over a corset
//             p = 6 mmHg (1 - ease / 1 in)      looser than the girth: nothing from 1 in on
//   breath    T x 1.3 ... 2.1 by place          movement x 1.5 when dancing: the larger of the two, never both
//   hanging   v = (1 - b) w 6 in                w = weight / length of the seam; b the share that a band or stay takes
//   fastener  h = T x pitch;  the lowest also carries v: sqrt(h^2 + v^2)
//
// Sources and their reach: docs/formulas.md#hook-load. The bands R0 to R4 and every capacity are common practice and
// untested: they advise, and never refuse.
#pragma once
#include <string>
#include <string_view>

#include "units/quantities.h"

namespace gownsheaf {

LoadPerLength hoop_tension(Pressure pressure, Length girth);
// Pressure of a garment that is `shortfall` smaller than the girth it goes round; negative: looser.
Pressure worn_pressure(Length shortfall, Length girth, bool over_corset);
// Factor of a deep breath at a place in the file's words ("ribs", "natural waist"); 1 when nothing is known of it.
double breath_factor(std::string_view place);
double movement_factor(std::string_view moves);        // dancing 1.5, else 1
double share_carried(std::string_view skirt_hangs_from, bool stay_small_and_anchored, bool band_loose);
// Weight that the lowest fastener feels: three inches of seam to each side of it.
Force hanging_pull(Mass weight, Length seam, double share_carried_elsewhere);
Force fastener_pull(LoadPerLength along, Length reach);                    // reach: half the gap on each side
Force with_hanging(Force across, Force hanging);                           // at right angles
// Band R0 to R4 by the line load with breath or movement.
std::string_view load_band(LoadPerLength moving);
Force usual_capacity(std::string_view fasten, std::string_view size);      // one fastener, untested

}  // namespace gownsheaf
