#include "calculate/load.h"

#include <algorithm>
#include <cmath>

namespace gownsheaf {
namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kStandardGravity = 9.80665;  // m/s², NIST SP 811
constexpr Pressure mm_of_mercury(double mm) { return {mm * kPascalsPerMillimetreOfMercury}; }
constexpr Force pounds(double lbf) { return {lbf * kNewtonsPerPoundForce}; }

double metres(Length length) { return length.in_mm() / 1000; }

}  // namespace

LoadPerLength hoop_tension(Pressure pressure, Length girth) { return {pressure.value * metres(girth) / (2 * kPi)}; }

Pressure worn_pressure(Length shortfall, Length girth, bool over_corset) {
  const double percent = 100 * shortfall.in_mm() / girth.in_mm();
  if (shortfall < Length{}) {
    const double loose = -shortfall.in_mm() / Length::inches(1).in_mm();
    return mm_of_mercury(std::max(0.0, 6.0 * (1 - loose)));
  }
  return mm_of_mercury(std::max(6.0, 3.5 * (over_corset ? 2 : 1) * percent));
}

double breath_factor(std::string_view place) {
  if (place == "ribs") return 2.1;
  if (place == "upper belly" || place == "natural waist") return 2.0;
  if (place == "navel") return 1.6;
  if (place == "lower belly") return 1.5;
  if (place == "hip bone") return 1.3;
  return 1;
}

double movement_factor(std::string_view moves) { return moves == "dancing" ? 1.5 : 1; }

double share_carried(std::string_view skirt_hangs_from, bool stay_small_and_anchored, bool band_loose) {
  if (skirt_hangs_from == "own band" || skirt_hangs_from == "straps") return band_loose ? 0.5 : 0.9;
  if (skirt_hangs_from == "bodice and stay") return stay_small_and_anchored ? 0.8 : 0.5;
  if (skirt_hangs_from == "nothing") return 1;
  return 0;
}

Force hanging_pull(Mass weight, Length seam, double share_carried_elsewhere) {
  const double per_metre = weight.value / 1000 * kStandardGravity / metres(seam);
  return {(1 - share_carried_elsewhere) * per_metre * metres(Length::inches(6))};
}

Force fastener_pull(LoadPerLength along, Length reach) { return {along.value * metres(reach)}; }

Force with_hanging(Force across, Force hanging) {
  return {std::sqrt(across.value * across.value + hanging.value * hanging.value)};
}

std::string_view load_band(LoadPerLength moving) {
  const double lbf_in = moving.value / kNewtonsPerMetrePerPoundForcePerInch;
  return lbf_in < 0.4 ? "R0" : lbf_in < 1.2 ? "R1" : lbf_in < 2.4 ? "R2" : lbf_in <= 4 ? "R3" : "R4";
}

Force usual_capacity(std::string_view fasten, std::string_view size) {
  if (fasten == "hooks and eyes") return pounds(size.ends_with("0") || size.ends_with("1") ? 2.5 : size.ends_with("3") ? 6 : 4);
  if (fasten == "hooks and bars") return pounds(12);
  if (fasten == "hooks and loops") return pounds(2);
  if (fasten == "lacing") return pounds(8);
  if (fasten == "buttons") return pounds(10);
  if (fasten == "snaps") return pounds(1.5);
  if (fasten == "ties" || fasten == "drawstring") return pounds(20);
  return pounds(15);
}

}  // namespace gownsheaf
