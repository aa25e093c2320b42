// Runs a command and says what it took: wall-clock and processor milliseconds, and the MiB of the largest process of it.
//   measured COMMAND WORDS…      prints "WALL CPU MIB" to standard error, last line
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  const auto begun = std::chrono::steady_clock::now();
  const pid_t child = fork();
  if (child == 0) {
    execvp(argv[1], argv + 1);
    _exit(127);
  }
  int status = 0;
  waitpid(child, &status, 0);
  const double wall = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count();
  rusage used{};
  getrusage(RUSAGE_CHILDREN, &used);
  const auto milliseconds = [](const timeval& t) {
    return 1000.0 * static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1000;
  };
  std::fprintf(stderr, "%.1f %.1f %.1f\n", wall, milliseconds(used.ru_utime) + milliseconds(used.ru_stime),
               static_cast<double>(used.ru_maxrss) / 1024);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 1;
}
