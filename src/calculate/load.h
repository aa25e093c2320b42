// What pulls at a closing: an estimate, by simple mechanics on inputs that are rough. Pure; doubles in named units.
//
//   hoop      T = p C / 2 pi                    tension of a band that presses p on a body of girth C (thin ring)
//   pressure  p = max(6 mmHg, 3.5 k e)          e shortfall in % of the girth; k 1 on the body, 2 over a corset
//             p = 6 mmHg (1 - ease / 1 in)      looser than the girth: nothing from 1 in on
//   breath    T x 1.3 ... 2.1 by place          movement x 1.5 when dancing, posture x 2 at the waist of one who sits and
//             bends: the largest of the three, never their product
//   hanging   v = (1 - b) w 6 in                w = weight / length of the seam; b the share that a band or stay takes
//   fastener  h = T x pitch;  the lowest also carries v: sqrt(h^2 + v^2)
//   own band  Tb = W / 2 pi tan(slope + arctan friction): what a band must be drawn to so that it does not slide down;
//             its pressure 2 pi Tb / (width x girth), against 32.4 - 0.287 x age mmHg
//
// Sources and their reach: docs/formulas.md#hook-load. The bands R0 to R4 and every capacity are common practice and
// untested: they advise, and never refuse.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "project/rules.h"
#include "units/quantities.h"

namespace gownsheaf {

LoadPerLength hoop_tension(Pressure pressure, Length girth);
constexpr double kPressureEachPercent = 3.5;  // mmHg for each % smaller, on the body
// Pressure of a garment that is `shortfall` smaller than the girth it goes round; negative: looser.
Pressure worn_pressure(Length shortfall, Length girth, bool over_corset, double each_percent = kPressureEachPercent);
// Mean pressure under a laced corset at a place in the file's words, of the study that the rule names.
Pressure corset_pressure(CorsetPressure study, std::string_view place);
// What moving makes of it in that study: 3.2 in a bow of 45 degrees, 2011; nothing was measured moving in 1910, so 1.
double corset_moving_factor(CorsetPressure study, std::string_view moves);
// Factor of a deep breath at a place in the file's words ("ribs", "natural waist"); 1 when nothing is known of it.
double breath_factor(std::string_view place);
double movement_factor(std::string_view moves);                         // dancing 1.5, else 1
double posture_factor(std::string_view place, std::string_view moves);  // 2 at the waist and navel of one who does not only stand
double share_carried(std::string_view skirt_hangs_from, bool stay_small_and_anchored, bool band_loose);
// Weight that the lowest fastener feels: three inches of seam to each side of it.
Force hanging_pull(Mass weight, Length seam, double share_carried_elsewhere);
Force fastener_pull(LoadPerLength along, Length reach);  // reach: half the gap on each side
Force with_hanging(Force across, Force hanging);         // at right angles
// Band R0 to R4 by the line load with breath or movement.
std::string_view load_band(LoadPerLength moving);
// What one fastener holds, untested. `backed`: a strip lies beneath; an eyelet without one tears sooner.
Force usual_capacity(std::string_view fasten, std::string_view size, bool backed = true, bool metal_eyelets = false);

double tangent(Angle angle);     // below a right angle
Angle angle_of(double tangent);  // its inverse, from 0 to 57 degrees; less than nothing as well
// Tangent of the hip's slope from the vertical; nothing where one of the girths is not wider below.
double slope_of_hip(Length waist, Length hip, Length depth);
// What a whole band must be drawn to so that it holds `weight` by friction; nothing where no tension can hold it.
std::optional<Force> band_tension_to_hold(Mass weight, double tangent_of_slope, double friction);
Pressure band_pressure(Force tension, Length width, Length girth);
Pressure comfort_line(std::int64_t age);  // what wearers of that age bear under a belt
double usual_friction(std::string_view slides_on);

}  // namespace gownsheaf
