#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <cstdlib>
#include <memory>

#include "files/files.h"
#include "files/open_file.h"

namespace gownsheaf {
namespace {

FileFault not_written(const std::string& path, int error_number) {
  return {"`" + path + "` could not be written: " + in_words(error_number) + "."};
}

constexpr std::string_view kTemporary = ".gownsheaf-";
constexpr std::size_t kNameMark = 16;

// Told by a mark of the final name, not by the name itself: that may be as long as a name can be.
std::string temporary_stem(const std::string& final_name) {
  return std::string(kTemporary) + sha256(final_name).substr(0, kNameMark) + "-";
}

// Files under temporary names; whatever has not been renamed when this goes away is deleted.
class Drafts {
 public:
  ~Drafts() {
    for (const Draft& draft : drafts_)
      if (!draft.renamed) ::unlink(draft.temporary.c_str());
  }

  std::optional<FileFault> write(const FileToWrite& file) {
    Draft draft;
    draft.named = file.path;
    if (auto fault = find_target(file.path, draft.target)) return fault;
    for (const Draft& other : drafts_)
      if (other.target == draft.target) return FileFault{"`" + file.path + "` would be written twice."};
    OpenFile out = open_new(draft);
    if (!out.is_open()) return not_written(file.path, errno);
    drafts_.push_back(draft);
    for (std::size_t done = 0; done < file.bytes.size();) {
      const ssize_t put = ::write(out.fd(), file.bytes.data() + done, file.bytes.size() - done);
      if (put < 0 && errno == EINTR) continue;
      if (put <= 0) return not_written(file.path, put < 0 ? errno : ENOSPC);
      done += static_cast<std::size_t>(put);
    }
    if (::fsync(out.fd()) != 0) return not_written(file.path, errno);
    if (!out.close()) return not_written(file.path, errno);
    return std::nullopt;
  }

  std::optional<FileFault> rename_in_order() {
    for (Draft& draft : drafts_) {
      if (::rename(draft.temporary.c_str(), draft.target.c_str()) != 0) return not_written(draft.named, errno);
      draft.renamed = true;
    }
    return std::nullopt;
  }

  // The names themselves are safe only when their folder has been flushed as well.
  std::optional<FileFault> flush_folders() {
    std::vector<std::string> flushed;
    for (const Draft& draft : drafts_) {
      const std::string folder = folder_of(draft.target);
      if (std::find(flushed.begin(), flushed.end(), folder) != flushed.end()) continue;
      flushed.push_back(folder);
      const OpenFile open_folder(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
      if (!open_folder.is_open()) continue;  // a folder one may write in but not list: nothing more can be done
      // Some kinds of disk cannot flush a folder and say EINVAL; theirs is safe as it is.
      if (::fsync(open_folder.fd()) != 0 && errno != EINVAL) return not_written(draft.named, errno);
    }
    return std::nullopt;
  }

 private:
  struct Draft {
    std::string named, target, temporary;
    bool renamed = false;
  };

  // Renaming onto a folder fails and renaming onto a device would destroy it, so both are refused before anything is
  // written. A link is kept, and what it points at is replaced.
  static std::optional<FileFault> find_target(const std::string& path, std::string& target) {
    target = path;
    if (path.empty() || path.find('\0') != std::string::npos) return FileFault{"No file was named to write to."};
    struct stat about {};
    if (::stat(path.c_str(), &about) != 0) {
      if (errno == ENOENT && path.back() != '/') return std::nullopt;
      return not_written(path, path.back() == '/' ? EISDIR : errno);
    }
    if (S_ISDIR(about.st_mode)) return not_written(path, EISDIR);
    if (!S_ISREG(about.st_mode)) return FileFault{"`" + path + "` is not an ordinary file, so it is left alone."};
    const std::unique_ptr<char, decltype(&std::free)> real(::realpath(path.c_str(), nullptr), &std::free);
    if (real) target = real.get();
    return std::nullopt;
  }

  OpenFile open_new(Draft& draft) {
    const std::string stem =
        folder_of(draft.target) + "/" + temporary_stem(file_name_of(draft.target)) + std::to_string(::getpid()) + "-";
    for (int attempt = 0; attempt < 1000; ++attempt) {
      draft.temporary = stem + std::to_string(attempt);
      const int fd = ::open(draft.temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
      if (fd >= 0 || errno != EEXIST) return OpenFile(fd);
    }
    return OpenFile();
  }

  std::vector<Draft> drafts_;
};

}  // namespace

std::optional<FileFault> write_whole(const std::vector<FileToWrite>& files) {
  Drafts drafts;
  for (const FileToWrite& file : files)
    if (auto fault = drafts.write(file)) return fault;
  if (auto fault = drafts.rename_in_order()) return fault;
  return drafts.flush_folders();
}

bool is_temporary_name(std::string_view name) {
  if (!name.starts_with(kTemporary)) return false;
  name.remove_prefix(kTemporary.size());
  if (name.size() < kNameMark + 4 || name[kNameMark] != '-' || name.find_first_not_of("0123456789abcdef") != kNameMark)
    return false;
  name.remove_prefix(kNameMark + 1);
  const std::size_t dash = name.find('-');
  return dash != 0 && dash != std::string_view::npos && dash + 1 < name.size() && name.rfind('-') == dash &&
         name.find_first_not_of("0123456789-") == std::string_view::npos;
}

std::string temporary_mark(std::string_view temporary_name) {
  return std::string(temporary_name.substr(kTemporary.size(), kNameMark));
}

std::optional<FileFault> make_folders(const std::string& path) {
  std::vector<std::string> missing;
  for (std::string at = path; !at.empty() && at != "." && at != "/" && !exists(at); at = folder_of(at)) missing.push_back(at);
  for (std::size_t i = missing.size(); i-- > 0;) {
    if (::mkdir(missing[i].c_str(), 0777) != 0 && errno != EEXIST)
      return FileFault{"The folder `" + missing[i] + "` could not be made: " + in_words(errno) + "."};
    const OpenFile above(::open(folder_of(missing[i]).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (above.is_open()) ::fsync(above.fd());
  }
  if (kind_at(path) != FolderEntry::Kind::folder && path != "." && !path.empty())
    return FileFault{"The folder `" + path + "` could not be made: " + in_words(exists(path) ? ENOTDIR : ENOENT) + "."};
  return std::nullopt;
}

std::optional<FileFault> remove_file(const std::string& path) {
  if (::unlink(path.c_str()) == 0 || errno == ENOENT || errno == ENOTDIR) return std::nullopt;
  return FileFault{"`" + path + "` could not be removed: " + in_words(errno) + "."};
}

bool remove_empty_folder(const std::string& path) { return ::rmdir(path.c_str()) == 0; }

HeldLock& HeldLock::operator=(HeldLock&& other) noexcept {
  if (this != &other) {
    if (fd_ >= 0) ::close(fd_);
    fd_ = other.fd_;
    other.fd_ = -1;
  }
  return *this;
}

HeldLock::~HeldLock() {
  if (fd_ >= 0) ::close(fd_);
}

int HeldLock::open(const std::string& path) {
  return ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0666);
}

// 0, or the number of the fault: EWOULDBLOCK where another holds it.
int HeldLock::try_for(int kind) {
  while (::flock(fd_, kind | LOCK_NB) != 0)
    if (errno != EINTR) return errno;
  return 0;
}

FileResult<HeldLock> HeldLock::take(const std::string& path, bool shared, const std::string& held_by_other) {
  HeldLock lock;
  lock.fd_ = open(path);
  if (lock.fd_ < 0) return {std::nullopt, not_written(path, errno)};
  const int fault = lock.try_for(shared ? LOCK_SH : LOCK_EX);
  if (fault == EWOULDBLOCK) return {std::nullopt, {held_by_other}};
  if (fault != 0) return {std::nullopt, {"`" + path + "` could not be locked: " + in_words(fault) + "."}};
  return {std::move(lock), {}};
}

FileResult<HeldLock> HeldLock::take_alike(const std::string& path, const std::string& words, const std::string& held_by_other,
                                          const std::string& held_by_unlike) {
  HeldLock lock;
  lock.fd_ = open(path);
  if (lock.fd_ < 0) return {std::nullopt, not_written(path, errno)};
  const auto said = [&] {
    std::string text(words.size() + 1, '\0');
    const ssize_t got = ::pread(lock.fd_, text.data(), text.size(), 0);
    return text.substr(0, got < 0 ? 0 : static_cast<std::size_t>(got));
  };
  for (int attempt = 0; attempt < 12; ++attempt) {
    if (attempt > 0) ::usleep(20'000);
    if (lock.try_for(LOCK_EX) == 0 && said() != words &&
        (::ftruncate(lock.fd_, 0) != 0 ||
         ::pwrite(lock.fd_, words.data(), words.size(), 0) != static_cast<ssize_t>(words.size())))
      return {std::nullopt, not_written(path, errno)};
    // From alone to shared is no single step: another may come between, and its words then stand.
    const int fault = lock.try_for(LOCK_SH);
    if (fault == EWOULDBLOCK) continue;
    if (fault != 0) return {std::nullopt, {"`" + path + "` could not be locked: " + in_words(fault) + "."}};
    if (said() != words) return {std::nullopt, {held_by_unlike}};
    return {std::move(lock), {}};
  }
  return {std::nullopt, {held_by_other}};
}

}  // namespace gownsheaf
