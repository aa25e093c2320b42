#include "calculate/accepted.h"

namespace gownsheaf {

void apply_accepted(const Project& project, Diagnostics& diag) {
  // With errors about, calculators were left out: what an `accept` names may only not have been found.
  const bool all_ran = !diag.has_errors();
  for (const Accepted& accepted : project.accept) {
    bool used = false, is_error = false;
    for (Diagnostic& d : diag.all()) {
      if (d.code != accepted.code) continue;
      if (!accepted.item.empty() && !same_name(d.item, accepted.item)) continue;
      if (d.severity == Severity::error) is_error = true;
      if (d.severity != Severity::hold && d.severity != Severity::warning) continue;
      d.accepted_because = accepted.because;
      used = true;
    }
    const std::string at = accepted.item.empty() ? "" : " at " + accepted.item;
    if (is_error) {
      diag.error("accept-error", accepted.at, "`" + accepted.code + "` cannot be accepted: it is arithmetic.", "mend it");
    } else if (!used && all_ran) {
      Diagnostic d;
      d.code = "accept-unused";
      d.severity = Severity::warning;
      d.at = accepted.at;
      d.sentence = "Nothing called `" + accepted.code + "` is left" + at + ".";
      d.hint = "take the line out";
      d.section = "accept";
      diag.add(d);
    }
  }
}

}  // namespace gownsheaf
