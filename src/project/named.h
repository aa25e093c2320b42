// The name that an item of the project goes by.
#pragma once
#include <string>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

struct Named {
  std::string name;  // as the maker wrote it, spaces made one, NFC
  std::string was;   // an older name, or ""
  std::string note;
  SourceSpan at;  // of the name
};

}  // namespace gownsheaf
