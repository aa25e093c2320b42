// What is looked at when the garment is tried on, gate by gate. Data of packet-templates/fitting-checks*.yaml.
#pragma once
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "templates/condition.h"

namespace gownsheaf {

// Texts may hold lengths in braces, printed in the project's own unit ({1/4 in}; {one}: 1 in or
// 1 cm), and whole figures ({girths/waist/finished}).
struct FittingLine {
  std::string look;            // "Waist"
  std::string how;             // "pinch all round, add it up"
  std::string allowed;         // "within {1/8 in}"
  std::string plainly;         // said where a figure of `allowed` is not known, or may not be shown
  std::string remedy;          // what to do outside the range
  std::string remedy_plainly;  // the same where one of its figures is not known
  Condition when;
  char label = 'c';
  std::string source;  // anchor in docs/sources.md
  SourceSpan at;
};

struct FittingChecks {
  std::string gate;  // as the steps name it; a gate that no step names is a stage of its own
  std::string title;
  Condition when;
  std::vector<std::string> wear;  // beyond the layers that the measures were taken over
  std::vector<FittingLine> lines;
  std::vector<std::string> moves;  // movement tests, each: passes, tight, gapes
  SourceSpan at;
};

}  // namespace gownsheaf
