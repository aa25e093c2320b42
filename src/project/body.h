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

struct Wearer { Given<std::string> name; Given<std::int64_t> age; };
struct StillToMake { std::string layer; std::optional<Day> ready_by; SourceSpan at; };

struct Taken {                          // how the measures were taken
  Given<Day> day;
  std::vector<std::string> over;        // layers, innermost first, as written
  Given<std::string> measured_by;
  Given<Length> corset_gap;
  SourceSpan at;
};

struct SizeRow { std::string label; std::map<std::string, Given<Length>> girths; SourceSpan at; };
struct SizeTable {
  std::string name;
  Given<std::string> chosen_by;         // measure
  bool girths_finished = false;         // else of the body
  std::vector<SizeRow> sizes;           // rising by `chosen_by`
  SourceSpan at;
};

struct Finding {
  std::string where;                    // a measure or an edge
  std::string is;                       // loose | tight | long | short | gapes | rides up
  Length by;
  std::vector<std::string> shared_over; // seams; empty: all that cross it
  Given<Length> at_most;                // each edge
  SourceSpan at;
};
struct Fitting {
  Named named;
  Given<Day> day;
  std::vector<std::string> wore;
  Given<Length> cloth_thickness;
  std::vector<Finding> found;
  std::map<std::string, Given<Length>> girths;
  Given<Day> signed_on;                 // `not yet`: no value, Origin::written
};

}  // namespace gownsheaf
