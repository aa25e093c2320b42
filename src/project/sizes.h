// Between the rows of a size table: where a girth lies, which row is made, and what lies between two rows. All exact:
// fractions are rationals of whole ticks, a length between two rows is rounded once, to the tick.
#pragma once
#include <string>
#include <vector>

#include "project/project.h"

namespace gownsheaf {

// Where `girth` lies among rows that rise strictly. Fills lies, below, above, fraction and halfway; never beyond the
// ends: under the first row it is the first, over the last the last. `rising` holds one row or more.
// fraction = (girth - below) / (above - below), 0 on a row and beyond the ends.
SizeChoice place_in_table(const std::vector<Length>& rising, Length girth);
// The row that is made of a place: nearest (halfway takes the larger) or the next larger. Beyond the ends: the end.
std::size_t nearest_row(const SizeChoice& place);
std::size_t larger_row(const SizeChoice& place);
// low + (high - low) * fraction, to the nearest tick.
Length between_rows(Length low, Length high, Ratio fraction);

// The measure of the body, all round: girths of the trunk given apart for left and right are its two halves; of limbs
// given apart the larger. Nothing when it is not known.
std::optional<Length> all_round(const Project& project, std::string_view measure);
bool is_of_the_trunk(std::string_view measure);
// A row's girth, or nothing.
std::optional<Length> girth_of(const SizeRow& row, std::string_view measure);
// Every measure that the table has or that has an ease written: girths from the top down, then the rest by name.
std::vector<std::string> measures_sized(const Project& project);

}  // namespace gownsheaf
