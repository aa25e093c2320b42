// The arithmetic of cloth that needs no lay; formulas in yardage.h. Tests: tests/calculate/yardage_test.cpp.
#include "calculate/yardage.h"

#include <algorithm>
#include <stdexcept>

#include "calculate/exact.h"

namespace gownsheaf {

Length joined_round(std::int64_t breadths, Length cloth_width, Length seam, Length selvage) {
  return breadths * (cloth_width - 2 * std::max(seam, selvage));
}

std::int64_t breadths_for(Length joined, Length cloth_width, Length seam, Length selvage) {
  const Length one = joined_round(1, cloth_width, seam, selvage);
  if (one <= Length{}) throw std::domain_error("a breadth is narrower than its seams");
  return std::max<std::int64_t>(1, count_of(joined, one, Rounding::up));
}

Length up_to_repeat(Length cut, Length repeat) {
  if (repeat <= Length{}) throw std::domain_error("a repeat is longer than nothing");
  return cut.to_step(repeat, Rounding::up);
}

Length length_to_buy(Length lay, Ratio shrinks_along, Length straighten_each_end, Length sold_by) {
  const std::int64_t left = shrinks_along.d - shrinks_along.n;
  if (left <= 0) throw std::domain_error("cloth cannot shrink to nothing");
  const Length before = lay.times(shrinks_along.d, left, Rounding::up) + 2 * straighten_each_end;
  return sold_by > Length{} ? before.to_step(sold_by, Rounding::up) : before;
}

}  // namespace gownsheaf
