#include "calculate/fitting.h"

#include <algorithm>
#include <stdexcept>

namespace gownsheaf {

std::vector<Length> shared_out(Length whole, std::int64_t edges) {
  if (edges < 1) throw std::invalid_argument("a change needs an edge");
  std::vector<Length> each;
  Length before;
  for (std::int64_t i = 1; i <= edges; ++i) {
    const Length sofar = whole.times(i, edges);
    each.push_back(sofar - before);
    before = sofar;
  }
  return each;
}

Shared share(Length whole, std::int64_t edges, Length at_most) {
  if (edges < 1 || whole < Length{} || at_most < Length{}) throw std::invalid_argument("a change that cannot be shared");
  Shared s;
  s.taken = std::min(whole, at_most * edges);
  s.left = whole - s.taken;
  s.each = s.taken.times(1, edges, Rounding::up);
  return s;
}

ClosingGap closing_gap(Length top, Length bottom, Length wanted) {
  return {(top + bottom).times(1, 2) - wanted, (top - bottom).times(1, 2)};
}

Length girth_of_layer(Length thickness) {
  // 5419351 / 1725033 is pi to 14 places: exact to the tick for any cloth.
  return thickness.times(2 * 5419351, 1725033);
}

}  // namespace gownsheaf
