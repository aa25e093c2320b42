#include <fcntl.h>
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
    const std::string stem = folder_of(draft.target) + "/.gownsheaf-" + std::to_string(::getpid()) + "-";
    for (int attempt = 0; attempt < 1000; ++attempt) {
      draft.temporary = stem + std::to_string(drafts_.size()) + "-" + std::to_string(attempt);
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

}  // namespace gownsheaf
