// The only way to any file (libharu loading a font by path is the one exception). Reading is confined to a root folder
// and limited in size; writing is whole or nothing.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

struct FileFault { std::string sentence; };  // plain words, with the path as the caller gave it

template <class T>
struct FileResult {
  std::optional<T> value;
  FileFault fault;
  bool ok() const { return value.has_value(); }
};

constexpr std::size_t kLargestProjectFile = 2u << 20;  // 2 MiB

// A file the user named on the command line. Regular files only; larger than limit is a fault.
FileResult<std::string> read_named_file(const std::string& path, std::size_t limit);
// A file below `root` named by a relative path in a project: `..`, absolute paths and links that lead out are refused.
FileResult<std::string> read_below(const std::string& root, const std::string& relative, std::size_t limit);
// Names (not paths) of the regular files in a folder that end in `suffix`, sorted by bytes.
FileResult<std::vector<std::string>> list_files(const std::string& folder, std::string_view suffix);
// Whether it holds these bytes and no more; false when it cannot be read. Read in parts, however large.
bool holds_still(const std::string& path, std::string_view bytes);
bool exists(const std::string& path);
std::string folder_of(const std::string& path);      // "." for a bare name
std::string file_name_of(const std::string& path);

// Several files that belong together: all are written to temporary names in their folders and flushed, then renamed in
// order (the last one is the one that counts, the PDF), then the folders are flushed. On any fault nothing at the final
// names has changed before the first rename, and no temporary file is left. Returns a fault or nothing.
struct FileToWrite { std::string path; std::string bytes; };
std::optional<FileFault> write_whole(const std::vector<FileToWrite>& files);

// SHA-256 in lower-case hex: fingerprints of projects, templates and font files.
std::string sha256(std::string_view bytes);

}  // namespace gownsheaf
