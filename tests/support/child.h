// The program as a child that can be interrupted, its standard error on a terminal or in a pipe.
#pragma once
#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <string>
#include <vector>

#include "support/program.h"

namespace gownsheaf_test {

class Child {
 public:
  Child(std::vector<std::string> arguments, bool terminal) {
    int ends[2] = {-1, -1};
    if (terminal) {
      ends[0] = posix_openpt(O_RDWR | O_NOCTTY);
      if (ends[0] >= 0 && grantpt(ends[0]) == 0 && unlockpt(ends[0]) == 0) ends[1] = open(ptsname(ends[0]), O_RDWR | O_NOCTTY);
    } else if (pipe(ends) != 0) {
      ends[0] = ends[1] = -1;
    }
    if (ends[1] < 0) return;
    arguments.insert(arguments.begin(), kProgram);
    std::vector<char*> argv;
    for (std::string& a : arguments) argv.push_back(a.data());
    argv.push_back(nullptr);
    pid_ = fork();
    if (pid_ == 0) {
      signal(SIGINT, SIG_DFL);
      dup2(ends[1], STDERR_FILENO);
      const int nowhere = open("/dev/null", O_WRONLY);
      dup2(nowhere, STDOUT_FILENO);
      close(ends[0]);
      execv(argv[0], argv.data());
      _exit(127);
    }
    close(ends[1]);
    from_ = ends[0];
  }
  ~Child() {
    if (pid_ > 0 && !ended_) kill(pid_, SIGKILL), waitpid(pid_, nullptr, 0);
    if (from_ >= 0) close(from_);
  }
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;

  bool ran() const { return pid_ > 0; }
  void interrupt() const { kill(pid_, SIGINT); }
  const std::string& said() const { return said_; }
  // Reads until it has said `words`, or for so long, or until its end: whether it has said them.
  bool says(const std::string& words, int milliseconds) {
    const auto until = std::chrono::steady_clock::now() + std::chrono::milliseconds(milliseconds);
    while (said_.find(words) == std::string::npos) {
      const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(until - std::chrono::steady_clock::now()).count();
      if (left <= 0 || !read_some(static_cast<int>(left))) return false;
    }
    return true;
  }
  int code() {  // after its end; -1: a signal ended it
    while (read_some(60'000)) {
    }
    int status = 0;
    waitpid(pid_, &status, 0);
    ended_ = true;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }

 private:
  bool read_some(int milliseconds) {
    pollfd wait{from_, POLLIN, 0};
    if (poll(&wait, 1, milliseconds) <= 0) return false;
    char part[4096];
    const ssize_t n = read(from_, part, sizeof part);  // a terminal whose other end is closed gives an error
    if (n <= 0) return false;
    said_.append(part, static_cast<std::size_t>(n));
    return true;
  }

  pid_t pid_ = -1;
  int from_ = -1;
  bool ended_ = false;
  std::string said_;
};

}  // namespace gownsheaf_test
