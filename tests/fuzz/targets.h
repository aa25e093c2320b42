// What strangers' bytes reach, each as one function that must come back: for the fuzzers (fuzz.sh) and for the replay in CI.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf::fuzz {

struct Target {
  const char* name;
  void (*run)(const std::string& bytes);  // throws std::runtime_error where a promise is broken
};

// yaml: the reader; check: reader, checker and calculators of a project; svg: drawings; templates: any file of that folder;
// quantities: one line for each reading, as long as the text has lines.
const std::vector<Target>& targets();
const Target* target(std::string_view name);

}  // namespace gownsheaf::fuzz
