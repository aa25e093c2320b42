#include "diagnostics/diagnostics.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace gownsheaf {
namespace {

// Every field, the ones that order messages first, so that the order never depends on the order of finding.
auto key(const Diagnostic& d) {
  return std::tie(d.at.file, d.at.line, d.at.column, d.code, d.at.length, d.severity, d.sentence, d.hint, d.item, d.section,
                  d.sheet, d.step, d.accepted_because, d.is_private, d.also);
}

}  // namespace

std::string_view word_for(Severity severity) {
  switch (severity) {
    case Severity::error: return "error";
    case Severity::hold: return "hold";
    case Severity::warning: return "warning";
    case Severity::note: return "note";
  }
  return "error";
}

void Diagnostics::add(Diagnostic d) { all_.push_back(std::move(d)); }

void Diagnostics::error(std::string code, SourceSpan at, std::string sentence, std::string hint) {
  Diagnostic d;
  d.code = std::move(code);
  d.at = std::move(at);
  d.sentence = std::move(sentence);
  d.hint = std::move(hint);
  add(std::move(d));
}

bool Diagnostics::has_errors() const {
  return std::any_of(all_.begin(), all_.end(), [](const Diagnostic& d) { return d.severity == Severity::error; });
}

std::vector<Diagnostic> Diagnostics::sorted() const {
  std::vector<Diagnostic> out = all_;
  std::sort(out.begin(), out.end(), [](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
  out.erase(std::unique(out.begin(), out.end(), [](const Diagnostic& a, const Diagnostic& b) { return key(a) == key(b); }),
            out.end());
  return out;
}

}  // namespace gownsheaf
