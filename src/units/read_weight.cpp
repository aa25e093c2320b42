// Weight of cloth: by its area, or by the running yard as shops quote wool (the full width, 36 in long).
#include "units/unit_words.h"

namespace gownsheaf {

using namespace written;

namespace {

constexpr Wanted kWeightWanted = {Kind::cloth_weight, "oz/yd²", "g/m²", "oz/yd², g/m², momme, oz per running yd"};
constexpr Wanted kRunningWanted = {Kind::running_weight, "oz per running yd", "", "oz per running yd"};

// What is meant by plain ounces cannot be guessed: over 58 in the two yards differ by more than half.
Misread which_yard(const Written& written, const Part& part) {
  return fault("unit-kind",
               written.with_key() + ": cloth is weighed by the square yard or by the running yard; this says neither.",
               quoted(part.typed + " oz/yd²") + " or " + quoted(part.typed + " oz per running yd"), part.words.front().at,
               part.words.back().end);
}

}  // namespace

ReadResult<WrittenWeight> read_cloth_weight(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = "a number, then its unit: `8 oz/yd²` or `270 g/m²`";
  const ReadResult<Parts> read = read_parts(written);
  if (!read.ok()) return {read.fault()};
  Parts weight = read.value();
  std::vector<Word>& words = weight.parts.front().words;
  const std::string symbol = canonical(words);
  if (weight.parts.size() == 1 && (symbol == "oz" || symbol == "oz/yd")) return {which_yard(written, weight.parts.front())};

  std::optional<Length> width;
  if (weight.parts.size() > 1 && !words.empty() && words.back().text == "at") {
    Parts spread = weight;
    spread.negative = false;
    const ReadResult<WrittenLength> at = length_of(written, spread, 1);
    if (!at.ok()) return {at.fault()};
    width = at.value().length;
    const Part& first = spread.parts[1];
    if (width->in_ticks() <= 0)
      return {fault("out-of-range", written.with_key() + ": cloth has a width above zero.", "", first.at, first.end)};
    words.pop_back();
    weight.parts.resize(1);
  }
  const bool by_the_running_yard = canonical(words) == "oz/running yd";
  if (width && !by_the_running_yard && find_unit(canonical(words)) != nullptr &&
      find_unit(canonical(words))->kind == Kind::cloth_weight)
    return {fault("unit-kind", written.with_key() + ": a weight by area is the same at any width.",
                  quoted(written.chars.slice(weight.parts.front().at, words.back().end)), words.back().end,
                  written.chars.size())};
  const ReadResult<Amount> amount = amount_of(written, weight, by_the_running_yard || width ? kRunningWanted : kWeightWanted);
  if (!amount.ok()) return {amount.fault()};
  const double n = as_double(amount.value().value);
  WrittenWeight value;
  if (amount.value().first->kind == Kind::running_weight) {
    if (width) value.weight = ounces_per_running_yard(n, *width);
    else value.ounces_per_running_yard = n;
    return {value};
  }
  switch (amount.value().first->system) {
    case System::yard_and_pound: value.weight = ounces_per_square_yard(n); break;
    case System::metric: value.weight = MassPerArea{n}; break;
    case System::other: value.weight = momme(n); break;
  }
  return {value};
}

}  // namespace gownsheaf
