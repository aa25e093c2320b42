// A project file read, checked and worked through without lays, for tests of figures that rest on what the checker fills in.
#pragma once
#include <string>

#include "calculate/calculate.h"
#include "check/check.h"
#include "support/catch.h"
#include "support/faulty.h"

namespace gownsheaf::testing {

struct CheckedGarment {
  Project project;
  Worked worked;
};

// `rest`: the file below its title. It must have no errors.
inline CheckedGarment checked(const std::string& rest) {
  CheckedGarment c;
  Diagnostics diag;
  const Entry source = read_yaml("gownsheaf: 1\ntitle: Quay suit\nshow lengths in: inches\n" + rest, "quay.yaml", diag);
  c.project = check_project(source, support::the_library(), diag);
  WorkOptions quick;
  quick.lay_work = 0;
  c.worked = calculate(c.project, support::the_library(), quick, diag);
  for (const Diagnostic& d : diag.sorted())
    if (d.severity == Severity::error) UNSCOPED_INFO(d.code << ": " << d.sentence);
  CHECK_FALSE(diag.has_errors());
  return c;
}

}  // namespace gownsheaf::testing
