// Reading quantities as makers write them: `13 1/2 in`, `13½ in`, `2 yd 6 in`, `34.5 cm`, `8 oz/yd²`, `3 %`, `2 h 30 min`.
// Everything is read as integer rationals; nothing goes through a double before the last step. Pure: text in, value or
// one misreading out, with the place of the fault in characters.
#pragma once
#include <string>
#include <string_view>
#include <variant>

#include "units/quantities.h"

namespace gownsheaf {

// What was wrong with one written quantity. `code` is a message code of docs/diagnostics.md (unit-missing, inch-mark …);
// `at` and `length` are in characters (code points) from the start of the text.
struct Misread {
  std::string code, sentence, hint;
  int at = 0, length = 0;
};

template <class T>
struct ReadResult {
  std::variant<T, Misread> outcome;
  bool ok() const { return outcome.index() == 0; }
  const T& value() const { return std::get<0>(outcome); }
  const Misread& fault() const { return std::get<1>(outcome); }
};

struct WrittenLength {
  Length length;
  LengthUnit unit;    // of the first part written: says how the maker thinks
  bool less = false;  // `1/2 in less`; the length itself is then negative
};
// `what` is the key as the maker wrote it, for the sentence ("`bust: 36` has no unit.").
ReadResult<WrittenLength> read_length(std::string_view text, std::string_view what);
ReadResult<Mass> read_mass(std::string_view text, std::string_view what);
struct WrittenWeight {
  std::optional<MassPerArea> weight;              // absent when spread over a width that is not written here
  std::optional<double> ounces_per_running_yard;  // `13 oz per running yd` without `at 58 in`
};
ReadResult<WrittenWeight> read_cloth_weight(std::string_view text, std::string_view what);
ReadResult<Force> read_force(std::string_view text, std::string_view what);
ReadResult<Pressure> read_pressure(std::string_view text, std::string_view what);
ReadResult<LoadPerLength> read_line_load(std::string_view text, std::string_view what);
ReadResult<Angle> read_angle(std::string_view text, std::string_view what);  // `20 deg`, `20 arcmin`
ReadResult<Percent> read_percent(std::string_view text, std::string_view what);
ReadResult<Ratio> read_ratio(std::string_view text, std::string_view what);         // bare `2.5`, `1 1/3`
ReadResult<std::int64_t> read_count(std::string_view text, std::string_view what);  // whole number, no unit
ReadResult<Ratio> read_number(std::string_view text, std::string_view what);        // bare number of a key that names its unit
ReadResult<Day> read_day(std::string_view text, std::string_view what);
ReadResult<Span> read_span(std::string_view text, std::string_view what);
ReadResult<Money> read_money(std::string_view text, std::string_view what);
ReadResult<Rate> read_rate(std::string_view text, std::string_view what);
ReadResult<Fineness> read_fineness(std::string_view text, std::string_view what);  // `27 tex`, `240 den`, `no. 40` refused here

}  // namespace gownsheaf
