// Golden texts: the expected text lies in a file beside the test; UPDATE_GOLDEN=1 rewrites it, then `git diff` is read.
#pragma once
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "support/catch.h"

namespace gownsheaf_test {

inline std::string slurp(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

inline void check_golden(const std::string& name, const std::string& seen) {
  const std::string path = std::string(GOWNSHEAF_SOURCE_DIR) + "/tests/" + name;
  if (std::getenv("UPDATE_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << seen;
    SUCCEED("rewritten");
    return;
  }
  std::istringstream expected_lines(slurp(path)), seen_lines(seen);
  std::string expected_line, seen_line;
  for (int line = 1;; ++line) {  // the first line that differs says more than two whole files
    const bool more_expected = static_cast<bool>(std::getline(expected_lines, expected_line));
    const bool more_seen = static_cast<bool>(std::getline(seen_lines, seen_line));
    if (!more_expected && !more_seen) break;
    INFO(name << ":" << line);
    REQUIRE(more_expected == more_seen);
    REQUIRE(seen_line == expected_line);
  }
}

}  // namespace gownsheaf_test
