// The program as it runs: its own file and the shared libraries that were loaded with it, by their bytes.
#include <link.h>

#include <algorithm>

#include "files/files.h"
#include "service/workroom.h"

namespace gownsheaf {

std::string program_mark() {
  constexpr std::size_t kLargest = 1u << 30;
  std::vector<std::string> libraries;
  ::dl_iterate_phdr(
      [](dl_phdr_info* about, std::size_t, void* list) {
        const std::string name = about->dlpi_name == nullptr ? "" : about->dlpi_name;
        if (name.starts_with('/')) static_cast<std::vector<std::string>*>(list)->push_back(name);
        return 0;
      },
      &libraries);
  std::sort(libraries.begin(), libraries.end());
  std::string all;
  for (const std::string& file : libraries)
    if (const auto bytes = read_named_file(file, kLargest); bytes.ok())
      all += file_name_of(file) + " " + sha256(*bytes.value) + "\n";
  if (const auto bytes = read_named_file("/proc/self/exe", kLargest); bytes.ok()) all += sha256(*bytes.value) + "\n";
  return sha256(all);
}

}  // namespace gownsheaf
