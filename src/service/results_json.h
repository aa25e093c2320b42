// What the service says to programs: batch.json, the lines of `--log json`, the health file. Members stay in the order written; what is
// not UTF-8 becomes U+FFFD.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "service/batch.h"

namespace gownsheaf {

// All results of a pass, indented, the counts at the end.
std::string batch_json(const std::vector<PacketResult>& results);

// One object on a line, with its line end: {"project":…,"state":…} with "problem" or "packet"; {"made":…,"current":…,"failed":…}.
std::string result_json_line(const PacketResult& result);
std::string pruned_json_line(const std::string& file, bool removed);  // {"file":…,"state":"gone" or "removed"}
std::string counts_json_line(const PacketCounts& counts);

// The health file: {"state":…,"projects":…,"failed":…,"waiting":…} on a line.
struct Health {
  std::string state;
  std::size_t projects = 0, failed = 0, waiting = 0;
};
std::string health_json_line(const Health& health);

}  // namespace gownsheaf
