// Plain words that several sheets put together: lists, ranges of steps, names of figures.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "project/sizes.h"
#include "units/print.h"

namespace gownsheaf {

inline constexpr const char* kNoBreak = "\u00A0";

std::string listed(const std::vector<std::string>& words);  // "a, b and c"
// The first three, then "and 31 more".
std::string listed_few(const std::vector<std::string>& words);
std::string counted(std::int64_t n, std::string_view one, std::string_view many);  // "1 piece", "3 pieces"
std::string ranges(const std::vector<int>& rising);                                // {1,2,3,5} -> "1 to 3 and 5"
std::string nth_step(int number);                                                  // "step 7", never parted
// A figure's key as a maker would say it: "cut length of skirt breadth".
std::string figure_name(std::string_view key);
std::vector<std::string> parts_of_key(std::string_view key);
std::string short_day(Day day);                    // "Sat 19 June", never parted
std::string ends_with_stop(std::string sentence);  // adds a full stop when there is no mark yet
// Every `3/4 in` and `3 lb` of a template's own words in the unit that the packet shows.
std::string in_unit_of(std::string_view words, ShownIn shown_in);
std::string replaced(std::string text, std::string_view what, std::string_view with);

std::string size_word(const SizeChoice& choice);  // "Size 14 is made"

}  // namespace gownsheaf
