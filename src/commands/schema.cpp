#include <cstdio>

#include "check/key_spec.h"
#include "commands/commands.h"

namespace gownsheaf {

int run_schema(const Settings& settings) {
  const std::string schema = settings.key_tables ? key_tables_markdown() : json_schema();
  const bool written = std::fwrite(schema.data(), 1, schema.size(), stdout) == schema.size();
  if (!written || std::fflush(stdout) != 0) {
    say_fault(settings, "Standard output could not be written.");
    return 3;
  }
  return 0;
}

}  // namespace gownsheaf
