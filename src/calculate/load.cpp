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

Pressure worn_pressure(Length shortfall, Length girth, bool over_corset, double each_percent) {
  const double percent = 100 * shortfall.in_mm() / girth.in_mm();
  if (shortfall < Length{}) {
    const double loose = -shortfall.in_mm() / Length::inches(1).in_mm();
    return mm_of_mercury(std::max(0.0, 6.0 * (1 - loose)));
  }
  return mm_of_mercury(std::max(6.0, each_percent * (over_corset ? 2 : 1) * percent));
}

// Dickinson, Toleration of the Corset (1910), p. 1034, means at rest; at the natural waist that of the navel, the nearest
// place measured. The study of 2011: 0.938 kPa, one mean for all places (docs/sources.md#dickinson-1910, #corset-korea-2011).
Pressure corset_pressure(CorsetPressure study, std::string_view place) {
  if (study == CorsetPressure::of_2011) return {938};
  if (place == "ribs") return mm_of_mercury(42);
  if (place == "upper belly") return mm_of_mercury(25);
  if (place == "lower belly") return mm_of_mercury(31);
  if (place == "hip bone") return mm_of_mercury(47);
  return mm_of_mercury(44);
}

double corset_moving_factor(CorsetPressure study, std::string_view moves) {
  return study == CorsetPressure::of_2011 && moves != "standing" ? 3.006 / 0.938 : 1;
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

double posture_factor(std::string_view place, std::string_view moves) {
  return moves != "standing" && (place == "natural waist" || place == "navel") ? 2 : 1;
}

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

Force usual_capacity(std::string_view fasten, std::string_view size, bool backed, bool metal_eyelets) {
  if (fasten == "hooks and eyes") return pounds(size.ends_with("0") || size.ends_with("1") ? 2.5 : size.ends_with("3") ? 6 : 4);
  if (fasten == "hooks and bars") return pounds(12);
  if (fasten == "hooks and loops") return pounds(2);
  if (fasten == "lacing") return pounds(!backed ? 3 : metal_eyelets ? 15 : 8);
  if (fasten == "buttons") return pounds(10);
  if (fasten == "snaps") return pounds(1.5);
  if (fasten == "ties" || fasten == "drawstring") return pounds(20);
  return pounds(15);
}

// By its continued fraction x/(1 - x^2/(3 - x^2/(5 - ...))): the same bits on every machine, exact to a double below one
// radian after nine terms.
double tangent(Angle angle) {
  const double radians = angle.value * kPi / 180, square = radians * radians;
  double tail = 19;
  for (int odd = 17; odd >= 1; odd -= 2) tail = odd - square / tail;
  return radians / tail;
}

Angle angle_of(double wanted) {
  double low = -57, high = 57;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (tangent({middle}) < wanted ? low : high) = middle;
  }
  return {(low + high) / 2};
}

double slope_of_hip(Length waist, Length hip, Length depth) {
  return depth <= Length{} ? 0 : (metres(hip) - metres(waist)) / (2 * kPi * metres(depth));
}

// tan(slope + arctan friction) needs no arc: the sum of two angles by their tangents.
std::optional<Force> band_tension_to_hold(Mass weight, double tangent_of_slope, double friction) {
  const double below = 1 - tangent_of_slope * friction, above = tangent_of_slope + friction;
  if (above <= 0) return std::nullopt;  // the hip narrows faster than friction holds
  if (below <= 0) return Force{0};      // a shelf: it lies there by itself
  return Force{weight.value / 1000 * kStandardGravity / (2 * kPi * above / below)};
}

Pressure band_pressure(Force tension, Length width, Length girth) {
  return {2 * kPi * tension.value / (metres(width) * metres(girth))};
}

Pressure comfort_line(std::int64_t age) { return mm_of_mercury(32.4 - 0.287 * static_cast<double>(age)); }

double usual_friction(std::string_view slides_on) {
  if (slides_on == "silk") return 0.2;
  if (slides_on == "skin") return 0.31;
  return 0.3;
}

}  // namespace gownsheaf
