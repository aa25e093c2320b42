// Who says so: for each formula the anchor of docs/sources.md that it stands on, or that it is arithmetic or common practice.
#pragma once
#include <string_view>

namespace gownsheaf {

// What a figure rests on that no work was read for: written by the maker, plain arithmetic, common practice.
inline constexpr std::string_view kFromProjectFile = "project-file", kArithmetic = "arithmetic",
                                  kCommonPractice = "common-practice";

// "" where no formula of that name is known. A formula that joins a published rule with arithmetic names the work.
std::string_view source_of_formula(std::string_view formula);

}  // namespace gownsheaf
