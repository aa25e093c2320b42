// A garment worked through, with its messages, for tests of calculators.
#pragma once
#include <string>
#include <vector>

#include "calculate/calculate.h"
#include "support/catch.h"

namespace gownsheaf::testing {

struct WorkedGarment {
  Worked worked;
  std::vector<Diagnostic> messages;

  const Figures& figures() const { return worked.figures; }
  Length length(const std::string& key) const {
    INFO(key);
    const auto l = worked.figures.length(key);
    REQUIRE(l.has_value());
    return *l;
  }
  std::int64_t count(const std::string& key) const {
    INFO(key);
    const auto n = worked.figures.count(key);
    REQUIRE(n.has_value());
    return *n;
  }
  bool has(const std::string& key) const { return worked.figures.find(key) != nullptr; }
  const Diagnostic* message(const std::string& code) const {
    for (const Diagnostic& d : messages)
      if (d.code == code) return &d;
    return nullptr;
  }
  // Every message as "severity code: sentence", one a line.
  std::string said() const {
    std::string all;
    for (const Diagnostic& d : messages) all += std::string(word_for(d.severity)) + " " + d.code + ": " + d.sentence + "\n";
    return all;
  }
  const LayPlan& lay(const std::string& cloth) const {
    for (const LayPlan& plan : worked.plans.lays)
      if (plan.cloth == cloth) return plan;
    FAIL("no lay of " + cloth);
    return worked.plans.lays.front();
  }
};

inline WorkedGarment work_through(const Project& project, std::int64_t lay_work = 20000) {
  Diagnostics diag;
  WorkedGarment g{calculate(project, Templates{}, WorkOptions{lay_work}, diag), {}};
  g.messages = diag.sorted();
  return g;
}

}  // namespace gownsheaf::testing
