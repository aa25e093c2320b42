// Inside the room: a file descriptor that closes itself, and the system's error numbers in plain words.
#pragma once
#include <string>

namespace gownsheaf {

class OpenFile {
 public:
  explicit OpenFile(int fd = -1) : fd_(fd) {}
  OpenFile(OpenFile&& other) noexcept : fd_(other.fd_) { other.fd_ = -1; }
  OpenFile& operator=(OpenFile&& other) noexcept;
  ~OpenFile() { close(); }
  int fd() const { return fd_; }
  bool is_open() const { return fd_ >= 0; }
  bool close();  // false when the system could not finish the last writes

 private:
  int fd_;
};

// "there is no such file or folder", "the disk is full" ...
std::string in_words(int error_number);

}  // namespace gownsheaf
