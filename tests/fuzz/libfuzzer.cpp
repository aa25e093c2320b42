// The door for libFuzzer: one program a target (GOWNSHEAF_FUZZED names it).
#include <cstdint>
#include <cstdlib>
#include <string>

#include "fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const gownsheaf::fuzz::Target* const target = gownsheaf::fuzz::target(GOWNSHEAF_FUZZED);
  if (target == nullptr) std::abort();
  target->run(std::string(reinterpret_cast<const char*>(bytes), size));  // what it throws ends the program, and is the finding
  return 0;
}
