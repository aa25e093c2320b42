// Looks at a finished PDF with the tools a stranger would use: qpdf and poppler's pdftotext, pdfinfo, pdffonts,
// pdftoppm. They are test packages (README); without them a check says so and is passed over. Only their standard
// output and exit code count: poppler warns on standard error about every UTF-8 font that libharu writes.
#pragma once
#include <sys/wait.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include "support/catch.h"

namespace gownsheaf::testing {

struct Ran {
  int code = -1;
  std::string out;
};

inline Ran run(const std::string& command) {
  Ran ran;
  std::FILE* pipe = popen((command + " 2>/dev/null").c_str(), "r");
  if (pipe == nullptr) return ran;
  char part[4096];
  for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) ran.out.append(part, n);
  const int status = pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

inline bool have(const std::string& tool) {
  const bool found = run("command -v " + tool).code == 0;
  if (!found) WARN(tool << " is not installed: its checks are passed over");
  return found;
}

// A file below the build folder that goes away again.
class ScratchFile {
 public:
  ScratchFile(const std::string& name, const std::string& bytes) : path_(std::filesystem::path(GOWNSHEAF_BINARY_DIR) / name) {
    std::ofstream(path_, std::ios::binary | std::ios::trunc) << bytes;
  }
  ScratchFile(const ScratchFile&) = delete;
  ScratchFile& operator=(const ScratchFile&) = delete;
  ~ScratchFile() { std::filesystem::remove(path_); }
  std::string path() const { return "'" + path_.string() + "'"; }

 private:
  std::filesystem::path path_;
};

// The file with all streams uncompressed, one object after another; white space is made one space, none before ].
inline std::string plain_objects(const std::string& pdf) {
  const ScratchFile file("plain-objects.pdf", pdf);
  std::string squeezed;
  for (const char c : run("qpdf --qdf --no-original-object-ids --object-streams=disable " + file.path() + " -").out) {
    const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (space && !squeezed.empty() && squeezed.back() == ' ') continue;
    if (c == ']' && !squeezed.empty() && squeezed.back() == ' ') squeezed.pop_back();
    squeezed += space ? ' ' : c;
  }
  return squeezed;
}

}  // namespace gownsheaf::testing
