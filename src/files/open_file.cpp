#include "files/open_file.h"

#include <unistd.h>

#include <cerrno>

namespace gownsheaf {

OpenFile& OpenFile::operator=(OpenFile&& other) noexcept {
  if (this != &other) {
    close();
    fd_ = other.fd_;
    other.fd_ = -1;
  }
  return *this;
}

bool OpenFile::close() {
  if (fd_ < 0) return true;
  const int result = ::close(fd_);
  fd_ = -1;
  return result == 0;
}

std::string in_words(int error_number) {
  // The system's own sentences change with language settings, so the usual ones are put here.
  switch (error_number) {
    case ENOENT: return "there is no such file or folder";
    case ENOTDIR: return "a part of the path is a file, not a folder";
    case EISDIR: return "it is a folder, not a file";
    case EACCES:
    case EPERM: return "you have no permission for it";
    case EROFS: return "the disk can only be read";
    case ENOSPC: return "the disk is full";
    case EDQUOT: return "your share of the disk is full";
    case EFBIG: return "it would be larger than is allowed here";
    case ENAMETOOLONG: return "the name is too long";
    case ELOOP: return "its links lead in a ring or may not be followed";
    case EMFILE:
    case ENFILE: return "too many files are open";
    case EIO: return "the disk reports a fault";
    default: return "the system reports fault number " + std::to_string(error_number);
  }
}

}  // namespace gownsheaf
