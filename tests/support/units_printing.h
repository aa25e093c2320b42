// What a failed check prints for the quantities of src/units.
#pragma once
#include <ostream>

#include "units/print.h"
#include "units/read.h"

namespace gownsheaf {

inline std::ostream& operator<<(std::ostream& out, Length length) {
  return out << length.in_ticks() << " ticks ("
             << text_of(length, ShownIn::inches, Length::sixty_fourths(1), Rounding::nearest).plain() << ", "
             << text_of(length, ShownIn::centimetres, Length::tenth_mm(1), Rounding::nearest).plain() << ")";
}
inline std::ostream& operator<<(std::ostream& out, const LengthText& text) { return out << text.plain(); }
inline std::ostream& operator<<(std::ostream& out, Area area) { return out << decimal(area.in_square_inches(), 6) << " sq in"; }
inline std::ostream& operator<<(std::ostream& out, const Ratio& r) { return out << r.n << "/" << r.d; }
inline std::ostream& operator<<(std::ostream& out, const Percent& p) { return out << text_of(p); }
inline std::ostream& operator<<(std::ostream& out, Day day) { return out << iso_day(day); }
inline std::ostream& operator<<(std::ostream& out, Span span) { return out << span.milliseconds << " ms"; }
inline std::ostream& operator<<(std::ostream& out, const Money& m) {
  return out << m.hundredths << " hundredths per '" << m.per << "'";
}
inline std::ostream& operator<<(std::ostream& out, const Rate& r) {
  return out << r.amount << " '" << r.of << "' per '" << r.per << "'";
}
inline std::ostream& operator<<(std::ostream& out, const Misread& m) {
  return out << "[" << m.code << "] " << m.sentence << " -> " << m.hint << " at " << m.at << "+" << m.length;
}
template <class Tag>
std::ostream& operator<<(std::ostream& out, const Measured<Tag>& m) {
  return out << decimal(m.value, 9);
}

}  // namespace gownsheaf
