// Each tests/check/*.yaml against the messages at its foot. UPDATE_EXPECTED=1 writes the foot anew; read the difference
// before it is committed.
#include "support/faulty.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>

using namespace gownsheaf;
using namespace gownsheaf::support;

namespace {
const std::string kFolder = std::string(GOWNSHEAF_SOURCE_DIR) + "/tests/check/";
}

TEST_CASE("every faulty file gives exactly the messages at its foot", "[faulty]") {
  const auto names = list_files(kFolder, ".yaml");
  REQUIRE(names.ok());
  CHECK(names.value->size() >= 50);
  const char* update = std::getenv("UPDATE_EXPECTED");
  for (const std::string& name : *names.value) {
    const FaultyFile file = faulty_file(kFolder + name);
    const std::string seen = as_foot(messages_of(kFolder + name));
    if (update != nullptr && std::string(update) == "1") {
      std::ofstream(kFolder + name, std::ios::binary) << file.body << seen;
      continue;
    }
    INFO(name);
    CHECK(seen == file.expected);
  }
}

TEST_CASE("every faulty file is faulty, and its message is the one it is named after", "[faulty]") {
  const auto names = list_files(kFolder, ".yaml");
  REQUIRE(names.ok());
  for (const std::string& name : *names.value) {
    INFO(name);
    const std::string code = name.substr(0, std::min(name.find('.'), name.find('_')));
    const auto messages = messages_of(kFolder + name);
    CHECK(std::any_of(messages.begin(), messages.end(), [&](const Diagnostic& d) { return d.code == code; }));
  }
}
