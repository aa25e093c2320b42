#include "units/unit_words.h"

namespace gownsheaf {

using namespace written;

ReadResult<Fineness> read_fineness(std::string_view text, std::string_view what) {
  constexpr Wanted kWanted = {Kind::fineness, "tex", "den", "tex, dtex, den"};
  const Written written(text, what);
  const std::string shown = lower_case(written.text());
  if (shown.rfind("no", 0) == 0 && shown.find_first_of("0123456789") != std::string::npos) {
    const int from = written.chars.past_spaces(0);
    return {fault("unit-unknown", written.alone() + " is a size on a reel, not a weight by length.",
                  "`27 tex` or `240 den`, from the list of whoever spun it", from, written.chars.size())};
  }
  const ReadResult<Amount> amount = read_amount(written, kWanted);
  if (!amount.ok()) return {amount.fault()};
  return {Fineness{as_double(amount.value().value)}};
}

}  // namespace gownsheaf
