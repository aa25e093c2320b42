// A project in YAML checked and calculated with the delivered library; an error fails the test.
#pragma once
#include <string>

#include "calculate/calculate.h"
#include "read/entry.h"
#include "support/step_library.h"

namespace gownsheaf::test {

struct Made {
  Project project;
  Worked worked;
  Diagnostics diag;
};

inline Made made(const std::string& yaml) {
  Made m;
  const Entry entry = read_yaml(yaml, "trial.yaml", m.diag);
  m.project = check_project(entry, delivered_library(), m.diag);
  m.worked = calculate(m.project, delivered_library(), {500}, m.diag);
  for (const Diagnostic& d : m.diag.sorted())
    if (d.severity == Severity::error) UNSCOPED_INFO(render(d, {lines_of(yaml, "trial.yaml")}));
  REQUIRE_FALSE(m.diag.has_errors());
  return m;
}

inline const Diagnostic* message_with(const Made& m, const std::string& code) {
  static std::vector<Diagnostic> kept;
  kept = m.diag.sorted();
  for (const Diagnostic& d : kept)
    if (d.code == code) return &d;
  return nullptr;
}

}  // namespace gownsheaf::test
