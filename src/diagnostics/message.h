// How a section or a calculator says what it found: the item and section it speaks of and the sheet it is shown on stand
// once, beside the words of each message.
#pragma once
#include <string>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

struct Subject {
  std::string item, section, sheet;  // as in Diagnostic
  bool is_private = false;
};
Diagnostic message(const Subject& about, Severity severity, std::string code, const SourceSpan& at, std::string sentence,
                   std::string hint);

}  // namespace gownsheaf
