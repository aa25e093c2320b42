#include "diagnostics/message.h"

#include <utility>

namespace gownsheaf {

Diagnostic message(const Subject& about, Severity severity, std::string code, const SourceSpan& at, std::string sentence,
                   std::string hint) {
  Diagnostic d;
  d.code = std::move(code);
  d.severity = severity;
  d.at = at;
  d.sentence = std::move(sentence);
  d.hint = std::move(hint);
  d.item = about.item;
  d.section = about.section;
  d.sheet = about.sheet;
  d.is_private = about.is_private;
  return d;
}

}  // namespace gownsheaf
