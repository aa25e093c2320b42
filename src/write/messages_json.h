// Messages as JSON, one object a line, for programs that read `--log json`.
#pragma once
#include <string>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

// {"severity":"hold","code":"cloth-short","file":…,"line":…,"column":…,"length":…,"sentence":…,"hint":…,"item":…}; no line end.
std::string message_json(const Diagnostic& d);
// A line about the run itself: {"severity":"info","sentence":…}.
std::string info_json(const std::string& sentence);

}  // namespace gownsheaf
