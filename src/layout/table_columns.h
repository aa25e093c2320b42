// How wide each column of a table is, and how its numbers stand in it.
#pragma once
#include <optional>
#include <vector>

#include "layout/pen.h"
#include "layout/slab.h"

namespace gownsheaf {

// A number cell taken apart: `before` ends at the number (a tag), `whole` ends at one x of the column, the fraction begins
// there, `after` stands behind the widest fraction. Estimates part at the point instead.
struct NumberCell {
  Text before, whole, fraction, after;
  Text joined;  // whole and fraction as one, so that they copy as one; empty when only one of them is there
  bool has_fraction = false;
};
struct ColumnPlace {
  Length x, content;    // left edge and width, right padding taken off
  bool number = false;  // numbers align; else lines of words
  Length slot;          // widest fraction with its squeezed space, or the widest part from the point on
  Length after;         // widest text behind the slot, its gap included
};

// Sizes of numbers: those that are acted on or explain one stand in the length size.
double number_size(const Column& column, const TypeScale& scale);
bool aligns_numbers(Column::Kind kind);
NumberCell number_cell(const Column& column, const Cell& cell, bool all_bold);
// Widths of the parts of a number cell.
struct NumberWidths {
  Length left, slot, after;
};
NumberWidths widths_of(const NumberCell& cell, const Column& column, const Bench& bench);
inline constexpr Length kPartGap = Length::points(5);  // tag to number, number to its unit

std::vector<ColumnPlace> place_columns(const Table& table, const Bench& bench);

}  // namespace gownsheaf
