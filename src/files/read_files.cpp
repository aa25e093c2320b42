#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <climits>
#include <cstdlib>
#include <memory>

#include "files/files.h"
#include "files/open_file.h"

namespace gownsheaf {
namespace {

using Text = FileResult<std::string>;

Text refused(std::string sentence) { return {std::nullopt, {std::move(sentence)}}; }
Text not_read(const std::string& path, int error_number) {
  return refused("`" + path + "` could not be read: " + in_words(error_number) + ".");
}

std::string size_in_words(std::size_t bytes) {
  if (bytes >= (1u << 20) && bytes % (1u << 20) == 0) return std::to_string(bytes >> 20) + " MiB";
  if (bytes >= 1024 && bytes % 1024 == 0) return std::to_string(bytes / 1024) + " KiB";
  return std::to_string(bytes) + (bytes == 1 ? " byte" : " bytes");
}

// O_NONBLOCK so that a pipe or device, which is then refused, cannot hold the program up at the open.
constexpr int kReadFlags = O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY;

Text read_open(const OpenFile& file, const std::string& path, std::size_t limit) {
  struct stat about {};
  if (::fstat(file.fd(), &about) != 0) return not_read(path, errno);
  if (S_ISDIR(about.st_mode)) return not_read(path, EISDIR);
  if (!S_ISREG(about.st_mode)) return refused("`" + path + "` is not an ordinary file.");
  const std::string too_large = "`" + path + "` is larger than " + size_in_words(limit) + ", the most that is read.";
  if (about.st_size > 0 && static_cast<std::uint64_t>(about.st_size) > limit) return refused(too_large);
  std::string bytes;
  bytes.reserve(static_cast<std::size_t>(std::max<off_t>(about.st_size, 0)));
  char buffer[65536];
  for (;;) {
    const ssize_t got = ::read(file.fd(), buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return not_read(path, errno);
    if (got == 0) break;
    bytes.append(buffer, static_cast<std::size_t>(got));
    if (bytes.size() > limit) return refused(too_large);  // it may have grown since it was opened
  }
  return {std::move(bytes), {}};
}

std::optional<std::string> real_path(const std::string& path) {
  const std::unique_ptr<char, decltype(&std::free)> real(::realpath(path.c_str(), nullptr), &std::free);
  if (!real) return std::nullopt;
  return std::string(real.get());
}

bool holds_step_up(const std::string& path) {
  for (std::size_t at = 0; at <= path.size();) {
    const std::size_t slash = std::min(path.find('/', at), path.size());
    if (path.compare(at, slash - at, "..") == 0) return true;
    at = slash + 1;
  }
  return false;
}

}  // namespace

Text read_named_file(const std::string& path, std::size_t limit) {
  if (path.empty()) return refused("No file was named.");
  if (path.find('\0') != std::string::npos) return refused("A file's name may not hold a zero byte.");
  const OpenFile file(::open(path.c_str(), kReadFlags));
  if (!file.is_open()) return not_read(path, errno);
  return read_open(file, path, limit);
}

Text read_below(const std::string& root, const std::string& relative, std::size_t limit, Links links) {
  if (relative.empty()) return refused("No file was named.");
  if (relative.find('\0') != std::string::npos) return refused("A file's name may not hold a zero byte.");
  const std::string outside = "`" + relative + "` lies outside the project's folder.";
  if (relative.front() == '/' || holds_step_up(relative)) return refused(outside);
  const auto real_root = real_path(root.empty() ? "." : root);
  if (!real_root) return not_read(root, errno);
  const auto real = real_path(*real_root + "/" + relative);
  if (!real) return not_read(relative, errno);
  if (links == Links::refused && *real != (*real_root == "/" ? "" : *real_root) + "/" + plain_path(relative))
    return refused("`" + relative + "` is a link or lies behind one; links are not followed here.");
  const std::string inside = *real_root == "/" ? "/" : *real_root + "/";
  if (real->compare(0, inside.size(), inside) != 0)
    return refused(*real == *real_root ? "`" + relative + "` could not be read: " + in_words(EISDIR) + "." : outside);
  // The real path holds no link. It is walked again without following any, so that a link put in since is refused too.
  OpenFile at(::open(real_root->c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!at.is_open()) return not_read(root, errno);
  std::string rest = real->substr(inside.size());
  for (std::size_t slash; (slash = rest.find('/')) != std::string::npos; rest.erase(0, slash + 1)) {
    at = OpenFile(::openat(at.fd(), rest.substr(0, slash).c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
    if (!at.is_open()) return not_read(relative, errno);
  }
  const OpenFile file(::openat(at.fd(), rest.c_str(), kReadFlags | O_NOFOLLOW));
  if (!file.is_open()) return not_read(relative, errno);
  return read_open(file, relative, limit);
}

FileResult<std::vector<std::string>> list_files(const std::string& folder, std::string_view suffix) {
  const auto fault = [&](int error_number) {
    return FileResult<std::vector<std::string>>{
        std::nullopt, {"The folder `" + folder + "` could not be read: " + in_words(error_number) + "."}};
  };
  const std::unique_ptr<DIR, int (*)(DIR*)> open_folder(::opendir(folder.c_str()), &::closedir);
  if (!open_folder) return fault(errno);
  std::vector<std::string> names;
  for (;;) {
    errno = 0;
    const dirent* entry = ::readdir(open_folder.get());
    if (!entry) break;
    const std::string name = entry->d_name;
    if (!std::string_view(name).ends_with(suffix)) continue;
    struct stat about {};
    if (::fstatat(::dirfd(open_folder.get()), entry->d_name, &about, 0) == 0 && S_ISREG(about.st_mode)) names.push_back(name);
  }
  if (errno != 0) return fault(errno);
  std::sort(names.begin(), names.end());
  return {std::move(names), {}};
}

FileResult<std::vector<FolderEntry>> list_entries(const std::string& folder, Links links) {
  using Entries = FileResult<std::vector<FolderEntry>>;
  const auto fault = [&](int error_number) {
    return Entries{std::nullopt, {"The folder `" + folder + "` could not be read: " + in_words(error_number) + "."}};
  };
  const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC | (links == Links::refused ? O_NOFOLLOW : 0));
  if (fd < 0) return fault(errno);
  const std::unique_ptr<DIR, int (*)(DIR*)> open_folder(::fdopendir(fd), &::closedir);
  if (!open_folder) {
    const int error_number = errno;
    ::close(fd);
    return fault(error_number);
  }
  std::vector<FolderEntry> entries;
  for (;;) {
    errno = 0;
    const dirent* entry = ::readdir(open_folder.get());
    if (!entry) break;
    const std::string name = entry->d_name;
    if (name == "." || name == "..") continue;
    struct stat about {};
    if (::fstatat(fd, entry->d_name, &about, AT_SYMLINK_NOFOLLOW) != 0) continue;  // gone meanwhile
    const mode_t mode = about.st_mode;
    const auto kind = S_ISREG(mode)   ? FolderEntry::Kind::file
                      : S_ISDIR(mode) ? FolderEntry::Kind::folder
                      : S_ISLNK(mode) ? FolderEntry::Kind::link
                                      : FolderEntry::Kind::other;
    entries.push_back({kind, name});
  }
  if (errno != 0) return fault(errno);
  std::sort(entries.begin(), entries.end(), [](const FolderEntry& a, const FolderEntry& b) { return a.name < b.name; });
  return {std::move(entries), {}};
}

FolderEntry::Kind kind_at(const std::string& path) {
  struct stat about {};
  if (::stat(path.c_str(), &about) != 0) return FolderEntry::Kind::other;
  return S_ISREG(about.st_mode)   ? FolderEntry::Kind::file
         : S_ISDIR(about.st_mode) ? FolderEntry::Kind::folder
                                  : FolderEntry::Kind::other;
}

std::optional<std::string> real_path_of(const std::string& path) { return real_path(path); }

bool holds_still(const std::string& path, std::string_view bytes) {
  const OpenFile file(::open(path.c_str(), kReadFlags));
  struct stat about {};
  if (!file.is_open() || ::fstat(file.fd(), &about) != 0 || !S_ISREG(about.st_mode)) return false;
  char buffer[65536];
  for (;;) {
    const ssize_t got = ::read(file.fd(), buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return got == 0 && bytes.empty();
    const std::string_view part(buffer, static_cast<std::size_t>(got));
    if (!bytes.starts_with(part)) return false;
    bytes.remove_prefix(part.size());
  }
}

bool begins_with(const std::string& path, std::string_view bytes) {
  const OpenFile file(::open(path.c_str(), kReadFlags));
  struct stat about {};
  if (!file.is_open() || ::fstat(file.fd(), &about) != 0 || !S_ISREG(about.st_mode)) return false;
  std::string first(bytes.size(), '\0');
  for (std::size_t done = 0; done < first.size();) {
    const ssize_t got = ::read(file.fd(), first.data() + done, first.size() - done);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return false;
    done += static_cast<std::size_t>(got);
  }
  return first == bytes;
}

std::string plain_path(const std::string& relative) {
  std::string plain;
  for (std::size_t at = 0; at < relative.size();) {
    const std::size_t slash = std::min(relative.find('/', at), relative.size());
    const std::string part = relative.substr(at, slash - at);
    if (!part.empty() && part != ".") plain += (plain.empty() ? "" : "/") + part;
    at = slash + 1;
  }
  return plain;
}

bool exists(const std::string& path) {
  struct stat about {};
  return ::lstat(path.c_str(), &about) == 0;
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

std::string file_name_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

}  // namespace gownsheaf
