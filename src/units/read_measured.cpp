// Mass, force, pressure, line load and angle: exact until the last step, then one multiplication into the unit kept.
#include "units/unit_words.h"

namespace gownsheaf {
namespace {

using namespace written;

template <class T, class Make>
ReadResult<T> read_measured(std::string_view text, std::string_view what, const Wanted& wanted, Make make) {
  const ReadResult<Amount> amount = read_amount(Written(text, what), wanted);
  if (!amount.ok()) return {amount.fault()};
  return {T{make(as_double(amount.value().value), *amount.value().first)}};
}

}  // namespace

ReadResult<Mass> read_mass(std::string_view text, std::string_view what) {
  return read_measured<Mass>(text, what, {Kind::mass, "oz", "g", "lb, oz, kg, g"},
                             [](double n, const Unit& unit) { return unit.system == System::metric ? n : ounces(n).value; });
}

ReadResult<Force> read_force(std::string_view text, std::string_view what) {
  return read_measured<Force>(text, what, {Kind::force, "lbf", "N", "lbf, N"}, [](double n, const Unit& unit) {
    return unit.system == System::metric ? n : n * kNewtonsPerPoundForce;
  });
}

ReadResult<Pressure> read_pressure(std::string_view text, std::string_view what) {
  return read_measured<Pressure>(text, what, {Kind::pressure, "mmHg", "kPa", "mmHg, kPa"}, [](double n, const Unit& unit) {
    return unit.system == System::metric ? n : n * kPascalsPerMillimetreOfMercury;
  });
}

ReadResult<LoadPerLength> read_line_load(std::string_view text, std::string_view what) {
  return read_measured<LoadPerLength>(
      text, what, {Kind::line_load, "lbf/in", "N/cm", "lbf/in, N/cm, N/m"},
      [](double n, const Unit& unit) { return unit.system == System::metric ? n : n * kNewtonsPerMetrePerPoundForcePerInch; });
}

ReadResult<Angle> read_angle(std::string_view text, std::string_view what) {
  return read_measured<Angle>(text, what, {Kind::angle, "deg", "arcmin", "deg, arcmin"}, [](double n, const Unit&) { return n; });
}

}  // namespace gownsheaf
