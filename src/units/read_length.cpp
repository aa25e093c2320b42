#include "units/rounded_division.h"
#include "units/unit_words.h"

namespace gownsheaf {
namespace written {

const Wanted kLengthWanted = {Kind::length, "in", "cm", "in, ft, yd, nails, mm, cm, m"};

namespace {

LengthUnit unit_of(const Unit& unit) {
  if (unit.symbol == "in") return LengthUnit::inch;
  if (unit.symbol == "nail") return LengthUnit::nail;
  if (unit.symbol == "ft") return LengthUnit::foot;
  if (unit.symbol == "yd") return LengthUnit::yard;
  if (unit.symbol == "mm") return LengthUnit::millimetre;
  if (unit.symbol == "cm") return LengthUnit::centimetre;
  return LengthUnit::metre;
}

}  // namespace

ReadResult<WrittenLength> length_of(const Written& written, const Parts& parts, std::size_t from) {
  const ReadResult<Amount> amount = amount_of(written, parts, kLengthWanted, from);
  if (!amount.ok()) return {amount.fault()};
  const Int128 ticks = divided(amount.value().value.n, amount.value().value.d, Rounding::nearest);
  if (ticks > Length::kCap || ticks < -static_cast<Int128>(Length::kCap))
    return {out_of_range(written, "500 m, the longest length kept")};
  return {WrittenLength{Length::ticks(in_64_bits(ticks)), unit_of(*amount.value().first), false}};
}

}  // namespace written

using namespace written;

ReadResult<WrittenLength> read_length(std::string_view text, std::string_view what) {
  const Written written(text, what);
  ReadResult<Parts> read = read_parts(written);
  if (!read.ok()) return {read.fault()};
  Parts parts = read.value();

  for (const Part& part : parts.parts) {
    for (const Word& word : part.words) {
      if (word.text == "to" && &part != &parts.parts.back())
        return {fault("number-form", written.with_key() + " is a range; one length is wanted here.", "", word.at, word.end)};
    }
  }
  std::vector<Word>& last = parts.parts.back().words;
  const bool less = !last.empty() && last.back().text == "less";
  if (less) {
    if (parts.negative)
      return {
          fault("number-form", written.alone() + " says less twice, by the minus sign and by the word.",
                quoted(written.chars.slice(written.chars.past_spaces(written.chars.past_spaces(0) + 1), written.chars.size())),
                last.back().at, last.back().end)};
    last.pop_back();
    parts.negative = true;
  }
  ReadResult<WrittenLength> length = length_of(written, parts);
  if (!length.ok()) return length;
  WrittenLength value = length.value();
  value.less = less;
  return {value};
}

}  // namespace gownsheaf
