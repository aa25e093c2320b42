// The wearer beyond bare measures: who, over what, which size, and what each fitting showed. Private but for `over`.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "project/given.h"
#include "project/named.h"
#include "units/quantities.h"

namespace gownsheaf {

struct Wearer {
  Given<std::string> name;
  Given<std::int64_t> age;
};
struct StillToMake {
  std::string layer;
  std::optional<Day> ready_by;
  SourceSpan at;
};

struct Taken {  // how the measures were taken
  Given<Day> day;
  std::vector<std::string> over;  // layers, innermost first, as written
  Given<std::string> measured_by;
  Given<Length> corset_gap;
  SourceSpan at;
};

struct SizeRow {
  std::string label;
  std::map<std::string, Given<Length>> girths;
  SourceSpan at;
};
struct SizeTable {
  std::string name;
  Given<std::string> chosen_by;  // measure
  bool girths_finished = false;  // else of the body
  std::vector<SizeRow> sizes;    // rising by `chosen_by`
  SourceSpan at;
};

// Which rows of the table the maker's girth lies between, and what is made. A label alone needs no girth.
struct SizeChoice {
  enum class By { label, nearest, larger, between } by = By::label;
  std::string made;                  // the label as the table writes it; the lower of two when `between_to` is given
  std::string between_to;            // made between two rows: the upper label; else ""
  Ratio between;                     // how far from `made` to `between_to`; nothing when one row is made
  std::optional<std::size_t> row;    // of `made` in the table; absent without a table
  std::string chosen_by;             // the measure; "" without a table
  std::optional<Length> girth;       // what was held against the table: of the body, or finished
  std::size_t below = 0, above = 0;  // rows on either side of the girth; the same on a row and beyond the ends
  Ratio fraction;                    // where the girth lies from `below` to `above`, whatever is made
  enum class Lies { on_a_row, between_rows, under_the_table, over_the_table } lies = Lies::on_a_row;
  bool halfway = false;  // as near to the one row as to the other
};

// What was taken from a piece's `by size`.
struct SizedPiece {
  std::string piece, quantity;     // "finished width", "length of side", "number made"
  Length of_made, of_upper, made;  // of_upper: the same as of_made when one row is made
  SourceSpan at;
  std::optional<std::int64_t> number;  // of "number made": single pieces; the lengths are then nothing
};

struct Finding {
  std::string where;  // a measure or an edge
  std::string is;     // loose | tight | long | short | gapes | rides up
  Length by;
  std::vector<std::string> shared_over;  // seams; empty: all that cross it
  Given<Length> at_most;                 // each edge
  SourceSpan at;
};
struct Fitting {
  Named named;
  Given<Day> day;
  std::vector<std::string> wore;
  Given<Length> cloth_thickness;
  std::vector<Finding> found;
  std::map<std::string, Given<Length>> girths;
  Given<Day> signed_on;  // `not yet`: no value, Origin::written
};

}  // namespace gownsheaf
