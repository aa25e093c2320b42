// Where work or wear can hurt someone: what to say, when, and whose word goes before the packet's.
#pragma once
#include <string>

#include "diagnostics/diagnostics.h"
#include "templates/condition.h"

namespace gownsheaf {

struct Caution {
  std::string about;      // "Drawstring"
  std::string say;        // may hold lengths in braces, printed in the project's own unit
  std::string defers_to;  // "the venue's fire officer"
  Condition when;         // what ends unknown counts as met, and is printed with its question
  char label = 'c';
  std::string source;
  SourceSpan at;
};

}  // namespace gownsheaf
