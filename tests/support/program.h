// The built program and the sources it came from, as tests of commands, packets and rules meet them.
#pragma once
#include <filesystem>
#include <string>

#include "support/run.h"

namespace gownsheaf_test {

inline const std::string kTop = GOWNSHEAF_SOURCE_DIR;
inline const std::string kProgram = std::string(GOWNSHEAF_BINARY_DIR) + "/gownsheaf";

// An empty folder of that name below the build folder.
inline std::filesystem::path fresh_folder(const std::string& name) {
  const std::filesystem::path folder = std::filesystem::path(GOWNSHEAF_BINARY_DIR) / "tests" / name;
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder;
}

// The program run in a folder; what it says on either stream is caught, unless `arguments` send it elsewhere.
inline Ran in(const std::filesystem::path& folder, const std::string& arguments) {
  return run("cd '" + folder.string() + "' && ( '" + kProgram + "' " + arguments + " ) 2>&1");
}

}  // namespace gownsheaf_test
