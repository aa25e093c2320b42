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

struct FileFault {
  std::string sentence;
};  // plain words, with the path as the caller gave it

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
// `refused`: links that stay inside are refused too, as the files of strangers are read.
enum class Links { inside, refused };
FileResult<std::string> read_below(const std::string& root, const std::string& relative, std::size_t limit,
                                   Links links = Links::inside);
// Names (not paths) of the regular files in a folder that end in `suffix`, sorted by bytes.
FileResult<std::vector<std::string>> list_files(const std::string& folder, std::string_view suffix);
// Everything in a folder, sorted by name. A folder that is itself a link is refused.
struct FolderEntry {
  enum class Kind { file, folder, link, other } kind = Kind::other;
  std::string name;
};
FileResult<std::vector<FolderEntry>> list_entries(const std::string& folder, Links links = Links::refused);
// What stands at a path; links are followed. `other` where there is nothing.
FolderEntry::Kind kind_at(const std::string& path);
// The path without links and dots, or nothing where there is none.
std::optional<std::string> real_path_of(const std::string& path);

// Whether it holds these bytes and no more; false when it cannot be read. Read in parts, however large.
bool holds_still(const std::string& path, std::string_view bytes);
// Whether an ordinary file begins with these bytes; an empty one begins with none. False when it cannot be read.
bool begins_with(const std::string& path, std::string_view bytes);
bool exists(const std::string& path);
std::string plain_path(const std::string& relative);  // without empty and `.` parts
std::string folder_of(const std::string& path);       // "." for a bare name
std::string file_name_of(const std::string& path);

// Several files that belong together: all are written to temporary names in their folders and flushed, then renamed in
// order (the last one is the one that counts, the PDF), then the folders are flushed. On any fault nothing at the final
// names has changed before the first rename, and no temporary file is left. Returns a fault or nothing.
struct FileToWrite {
  std::string path;
  std::string bytes;
};
std::optional<FileFault> write_whole(const std::vector<FileToWrite>& files);
// A name that write_whole writes under before it renames; left behind only where the program was killed or the power cut.
bool is_temporary_name(std::string_view name);
// By which such a name tells its final name: the beginning of the hash of it.
std::string temporary_mark(std::string_view temporary_name);

// A folder and those above it, as far as they are not there yet.
std::optional<FileFault> make_folders(const std::string& path);
// False where it holds something, or is none.
bool remove_empty_folder(const std::string& path);
// No fault when there is no such file.
std::optional<FileFault> remove_file(const std::string& path);

// Held as long as it lives: no other run may work in the folder meanwhile. Let go by the system too, when the program is killed.
class HeldLock {
 public:
  HeldLock() = default;
  HeldLock(HeldLock&& other) noexcept : fd_(other.fd_) { other.fd_ = -1; }
  HeldLock& operator=(HeldLock&& other) noexcept;
  ~HeldLock();
  // shared: several may hold it, but not with one that is not shared.
  static FileResult<HeldLock> take(const std::string& path, bool shared, const std::string& held_by_other);
  // Shared by those that say the same words; they are written into the file by the first. Waits a quarter of a second for others to do so.
  static FileResult<HeldLock> take_alike(const std::string& path, const std::string& words, const std::string& held_by_other,
                                         const std::string& held_by_unlike);

 private:
  static int open(const std::string& path);
  int try_for(int kind);
  int fd_ = -1;
};

// SHA-256 in lower-case hex: fingerprints of projects, templates and font files.
std::string sha256(std::string_view bytes);

}  // namespace gownsheaf
