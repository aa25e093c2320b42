#include <cstdio>

#include "commands/commands.h"

namespace gownsheaf {

int run_check(const Settings& settings) {
  Diagnostics diag;
  const Made made = check_only(order_from(settings), diag);
  if (const int code = stopped(settings, made, diag); code >= 0) return code;
  int holds = 0, warnings = 0;
  for (const Diagnostic& d : diag.sorted()) {
    if (!d.accepted_because.empty()) continue;
    holds += d.severity == Severity::hold;
    warnings += d.severity == Severity::warning;
  }
  const auto many = [](int n, const char* one) { return std::to_string(n) + " " + one + (n == 1 ? "" : "s"); };
  std::printf("No errors, %s, %s.\n", many(holds, "hold").c_str(), many(warnings, "warning").c_str());
  return 0;
}

}  // namespace gownsheaf
