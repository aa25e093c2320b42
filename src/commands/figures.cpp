#include <cstdio>

#include "commands/commands.h"

namespace gownsheaf {

int run_figures(const Settings& settings) {
  Diagnostics diag;
  const Made made = make_figures(order_from(settings), diag);
  if (const int code = stopped(settings, made, diag); code >= 0) return code;
  const bool written = std::fwrite(made.figures_json.data(), 1, made.figures_json.size(), stdout) == made.figures_json.size();
  if (!written || std::fflush(stdout) != 0) {
    say_fault(settings, "Standard output could not be written.");
    return 3;
  }
  return 0;
}

}  // namespace gownsheaf
