#include "figures/plans.h"

#include <algorithm>

namespace gownsheaf {

std::string parts_in_words(const LayPlan& plan, const std::string& piece) {
  static constexpr const char* kWords[] = {"none", "one", "two", "three", "four"};
  const auto parts = std::count_if(plan.cut.begin(), plan.cut.end(), [&](const CutPiece& c) { return c.part_of == piece; });
  return parts < 5 ? kWords[parts] : "several";
}

}  // namespace gownsheaf
