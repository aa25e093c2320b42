// Prices: `24 per yd`, `1.20 each`. The word for the money is given once for the project, so no sign stands here.
#include "units/rounded_division.h"
#include "units/unit_words.h"

namespace gownsheaf {

using namespace written;

ReadResult<Money> read_money(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = "`24 per yd` or `1.20 each`";
  const int from = written.chars.past_spaces(0);
  const char32_t first = written.chars[from];
  if (first == U'$' || (first >= U'\u00A2' && first <= U'\u00A5') || (first >= U'\u20A0' && first <= U'\u20CF'))
    return {fault("number-form", written.with_key() + ": a price is a number without a money sign.",
                  quoted(written.chars.slice(written.chars.past_spaces(from + 1), written.chars.size())), from, from + 1)};
  const ReadResult<Parts> read = read_parts(written);
  if (!read.ok()) return {read.fault()};
  const Part& part = read.value().parts.front();
  const std::string symbol = canonical(part.words);
  Money money;
  if (symbol == "each" || symbol == "/each") money.per = "each";
  else if (symbol == "/yd") money.per = "yd";
  else if (symbol == "/m") money.per = "m";
  if (read.value().parts.size() > 1 || (money.per.empty() && !symbol.empty()))
    return {fault(find_unit(symbol) != nullptr ? "unit-kind" : "unit-unknown",
                  written.with_key() + ": prices are each, per yd or per m.",
                  quoted(part.typed + " per yd") + " or " + quoted(part.typed + " each"),
                  part.words.empty() ? part.at : part.words.front().at, written.chars.size())};
  const auto hundredths = product(part.number, 100, 1);
  if (!hundredths || hundredths->d != 1)
    return {fault("number-form", written.with_key() + ": a price goes to hundredths.", "", part.at, part.end)};
  money.hundredths = in_64_bits(read.value().negative ? -hundredths->n : hundredths->n);
  return {money};
}

}  // namespace gownsheaf
