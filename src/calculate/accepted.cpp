#include "calculate/accepted.h"

#include <algorithm>
#include <string>
#include <vector>

#include "calculate/lay_checked.h"

namespace gownsheaf {
namespace {

// A lay was not searched for: what was accepted may be found when it is.
bool unsearched(const Accepted& accepted, const Diagnostics& diag) {
  const auto& all = diag.in_order_found();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) {
    return d.code == "lay-unsearched" && (accepted.item.empty() || same_name(d.item, accepted.item));
  });
}

}  // namespace

void apply_accepted(const Project& project, bool compared, Diagnostics& diag) {
  for (const Accepted& accepted : project.accept) {
    const auto meets = [&](const Diagnostic& d) {
      return d.code == accepted.code && (accepted.item.empty() || same_name(d.item, accepted.item));
    };
    bool used = false;
    bool is_error = false;
    for (Diagnostic& d : diag.all()) {
      if (!meets(d)) continue;
      if (d.severity == Severity::error) is_error = true;
      if (d.severity != Severity::hold && d.severity != Severity::warning) continue;
      d.accepted_because = accepted.because;
      used = true;
    }
    if (used) continue;
    Diagnostic d;
    d.at = accepted.at;
    d.section = "accept";
    d.item = accepted.item;
    if (is_error) {
      d.code = "accept-error";
      d.severity = Severity::error;
      d.sentence = "`" + accepted.code + "` cannot be accepted: it is arithmetic.";
      d.hint = "mend what it speaks of, and take this line out";
    } else {
      // With sections that did not check clean, what it speaks of may come back when they do.
      if (!project.failed_sections.empty()) continue;
      if (!compared && accepted.code == "already-cut") continue;
      if (of_the_search(accepted.code) && unsearched(accepted, diag)) continue;
      d.code = "accept-unused";
      d.severity = Severity::warning;
      d.sentence = "Nothing called `" + accepted.code + "` is left" + (accepted.item.empty() ? "" : " at " + accepted.item) + ".";
      std::vector<std::string> there;
      for (const Diagnostic& other : diag.in_order_found())
        if (other.severity == Severity::hold || other.severity == Severity::warning) there.push_back(other.code);
      const std::string meant = did_you_mean(accepted.code, there);
      d.hint = meant.empty() || meant == accepted.code ? "take the line out"
                                                       : "did you mean `" + meant + "`? If not, take the line out";
    }
    diag.add(std::move(d));
  }
}

}  // namespace gownsheaf
