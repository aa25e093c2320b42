// The sums behind a lay, in words for its working. Internal to the lays.
#pragma once
#include <string>
#include <vector>

#include "calculate/cut_list.h"
#include "units/print.h"

namespace gownsheaf {

inline constexpr const char* kBoundBoxes =
    "the most of: area / usable width; the longest piece; pieces too wide to lie side by side, end to end";
inline constexpr const char* kBoundDrawn =
    "the most of: area of the outlines / usable width; the longest piece; behind full breadths, end to end";
inline constexpr const char* kBoundFolded =
    "what is cut double on half the width, then the rest in one layer: of each the area / width, or the longest piece";

// "3 × 48 in by 50 in, 2 × …".
std::string lay_in_words(const std::vector<Cut>& cuts, ShownIn in);
// The sums of which the bound is the most.
std::string bound_in_words(const std::vector<Cut>& cuts, Length usable, bool as_drawn, ShownIn in);

}  // namespace gownsheaf
