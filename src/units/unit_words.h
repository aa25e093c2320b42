// The units of the trade and the ways makers spell them: one table. Internal to units.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "units/written_parts.h"

namespace gownsheaf::written {

enum class Kind { length, area, cloth_weight, running_weight, mass, force, pressure, line_load, angle, percent, span, fineness };
// Units of one system may follow each other in one quantity (`2 yd 6 in`); those of two may not.
enum class System { yard_and_pound, metric, other };

// n/d of the base that the kind and the system share: ticks for lengths, ounces or grams for masses, oz/yd² or g/m²,
// lbf or N, mmHg or Pa, lbf/in or N/m, degrees, per cent, milliseconds, tex.
struct Unit {
  std::string_view symbol;  // as the canonical words give it: "oz/yd2"
  std::string_view shown;   // as it is printed: "oz/yd²"
  Kind kind;
  System system;
  std::int64_t n, d;
};

// The words after a number as one symbol: "ounces per sq yd" is "oz/yd2". Words that are not known stay as they are.
std::string canonical(const std::vector<Word>& words, std::size_t from, std::size_t to);
inline std::string canonical(const std::vector<Word>& words) { return canonical(words, 0, words.size()); }
const Unit* find_unit(std::string_view symbol);  // nullptr when there is none
// The unit of that kind whose name is one or two letters away from what was typed, or nullptr.
const Unit* nearest_unit(std::string_view typed, Kind kind);

// What a reader wants, in words for its messages.
struct Wanted {
  Kind kind;
  std::string_view first, second;  // two units to offer; second may be ""
  std::string_view all;            // "in, ft, yd, nails, mm, cm or m"
};
// An amount summed over all its parts, in the base of its system.
struct Amount {
  Exact value;
  const Unit* first = nullptr;
};
// parts.parts[from..], each with a known unit of the kind wanted, larger units before smaller, of one system.
ReadResult<Amount> amount_of(const Written& written, const Parts& parts, const Wanted& wanted, std::size_t from = 0);
Misread unit_missing(const Written& written, const Part& part, const Wanted& wanted);
Misread out_of_range(const Written& written, std::string rule);
// The same for a text that is nothing but such an amount.
ReadResult<Amount> read_amount(const Written& written, const Wanted& wanted);

extern const Wanted kLengthWanted, kSpanWanted;
// parts.parts[from..] as a length within 500 m.
ReadResult<WrittenLength> length_of(const Written& written, const Parts& parts, std::size_t from = 0);

}  // namespace gownsheaf::written
