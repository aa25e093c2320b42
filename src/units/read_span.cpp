#include "units/rounded_division.h"
#include "units/unit_words.h"

namespace gownsheaf {
namespace written {

const Wanted kSpanWanted = {Kind::span, "min", "h", "s, min, h, days, weeks"};

}  // namespace written

using namespace written;

ReadResult<Span> read_span(std::string_view text, std::string_view what) {
  constexpr std::int64_t kCentury = 36525LL * 24 * 60 * 60 * 1000;
  const Written written(text, what);
  const ReadResult<Amount> amount = read_amount(written, kSpanWanted);
  if (!amount.ok()) return {amount.fault()};
  const Int128 ms = divided(amount.value().value.n, amount.value().value.d, Rounding::nearest);
  if (ms > kCentury || ms < -static_cast<Int128>(kCentury)) return {out_of_range(written, "a hundred years")};
  return {Span{in_64_bits(ms)}};
}

}  // namespace gownsheaf
