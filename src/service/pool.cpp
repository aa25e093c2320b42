#include "service/pool.h"

#include <fcntl.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/timerfd.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <csignal>
#include <cstdint>
#include <new>
#include <stdexcept>

#include "files/files.h"

namespace gownsheaf {
namespace {

constexpr char kWhole = 'w', kOutOfMemory = 'm', kThrew = 't';  // the last byte of an answer
constexpr char kAhead = '\1';  // what is said ahead: this byte, how long it is, a colon, the bytes
constexpr int kAnswerPipe = 3;
bool is_worker = false;
constexpr std::size_t kLongestAnswer = 16u << 20;

void must_be_alone() {
  const auto threads = list_entries("/proc/self/task");
  if (threads.ok() && threads.value->size() > 1) throw std::logic_error("a worker may not be forked while threads run");
}

void limit(decltype(RLIMIT_AS) what, rlim_t most, rlim_t grace = 0) {
  const rlimit both{most, most + grace};
  ::setrlimit(what, &both);  // a refusal leaves a lower one that is there already
}

void take_limits(const Ceilings& ceilings) {
#ifndef GOWNSHEAF_SANITIZED  // the sanitizers' own memory is counted in terabytes of addresses
  limit(RLIMIT_AS, static_cast<rlim_t>(ceilings.memory_mib) << 20);
#endif
  // The signal that says so comes only where the hard limit, which kills without a word, is not reached at the same moment.
  limit(RLIMIT_CPU, static_cast<rlim_t>(ceilings.seconds) + 1, 1);
  limit(RLIMIT_CORE, 0);
  limit(RLIMIT_NOFILE, 64);
  limit(RLIMIT_FSIZE, static_cast<rlim_t>(512) << 20);
  for (const int fatal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGXCPU}) ::signal(fatal, SIG_DFL);
  ::signal(SIGXFSZ, SIG_IGN);  // then a write says that the file is too large
  ::signal(SIGPIPE, SIG_IGN);
  ::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0);
}

bool send(int pipe, const std::string& bytes) {
  for (std::size_t done = 0; done < bytes.size();) {
    const ssize_t put = ::write(pipe, bytes.data() + done, bytes.size() - done);
    if (put < 0 && errno == EINTR) continue;
    if (put <= 0) return false;
    done += static_cast<std::size_t>(put);
  }
  return true;
}

[[noreturn]] void be_worker(int pipe, int parent, const Ceilings& ceilings, const std::function<std::string()>& work) {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL, 0, 0, 0);
  if (::getppid() != parent) ::_exit(1);  // it was killed before it could be said
  ::dup2(pipe, kAnswerPipe);
  ::close_range(kAnswerPipe + 1, ~0u, 0);
  is_worker = true;
  take_limits(ceilings);
  std::string answer;
  try {
    answer = work();
    answer += kWhole;
  } catch (const std::bad_alloc&) {
    answer = std::string(1, kOutOfMemory);
  } catch (const std::exception& fault) {
    answer = std::string(fault.what()) + kThrew;
  }
  const bool sent = send(kAnswerPipe, answer);
  ::_exit(sent ? 0 : 1);
}

// The last that was said ahead, which is taken away from the bytes; "" where that was not said to its end.
std::string taken_ahead(std::string& bytes) {
  std::string last;
  std::size_t at = 0;
  while (at < bytes.size() && bytes[at] == kAhead) {
    std::size_t length = 0;
    const char* const end = bytes.data() + bytes.size();
    const auto [colon, fault] = std::from_chars(bytes.data() + at + 1, end, length);
    if (fault != std::errc() || colon == end || length > static_cast<std::size_t>(end - colon - 1)) {
      bytes.clear();
      return last;
    }
    at = static_cast<std::size_t>(colon - bytes.data()) + 1;
    last = bytes.substr(at, length);
    at += length;
  }
  bytes.erase(0, at);
  return last;
}

// Whether it fell over by what it was doing, not by what somebody did to it.
bool is_own_fall(int signal) {
  for (const int own : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGXCPU})
    if (signal == own) return true;
  return false;
}

double seconds_of(const timeval& span) { return static_cast<double>(span.tv_sec) + static_cast<double>(span.tv_usec) / 1e6; }

std::string seconds_in_words(int n) { return std::to_string(n) + (n == 1 ? " second" : " seconds"); }

}  // namespace

void WorkerPool::start(std::size_t job, const std::function<std::string()>& work) {
  must_be_alone();
  int ends[2] = {-1, -1};
  const int clock = ::timerfd_create(CLOCK_MONOTONIC, TFD_CLOEXEC | TFD_NONBLOCK);
  const itimerspec ceiling{{0, 0}, {ceilings_.seconds, 0}};
  const bool ready = ::pipe2(ends, O_CLOEXEC) == 0 && clock >= 0 && ::timerfd_settime(clock, 0, &ceiling, nullptr) == 0;
  const int parent = ::getpid(), pid = ready ? ::fork() : -1;
  if (pid < 0) {
    for (const int fd : {ends[0], ends[1], clock})
      if (fd >= 0) ::close(fd);
    unstarted_.push_back({job, false, "", "The system gave no process to make it in.", "", false, true});
    return;
  }
  if (pid == 0) be_worker(ends[1], parent, ceilings_, work);
  ::close(ends[1]);
  ::fcntl(ends[0], F_SETFL, O_NONBLOCK);
  running_.push_back({job, pid, ends[0], clock, {}, false, false});
}

void WorkerPool::say_ahead(const std::string& bytes) {
  if (is_worker) send(kAnswerPipe, kAhead + std::to_string(bytes.size()) + ":" + bytes);
}

void WorkerPool::add_to(std::vector<pollfd>& waited) const {
  for (const Worker& worker : running_) {
    waited.push_back({worker.pipe, POLLIN, 0});
    waited.push_back({worker.clock, POLLIN, 0});
  }
}

bool WorkerPool::read_some(Worker& worker) {
  char buffer[65536];
  for (;;) {
    const ssize_t got = ::read(worker.pipe, buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return errno == EAGAIN;
    if (got == 0) return false;
    worker.bytes.append(buffer, static_cast<std::size_t>(got));
    if (worker.bytes.size() > kLongestAnswer) {
      worker.too_much = true;
      ::kill(worker.pid, SIGKILL);
      return false;
    }
  }
}

WorkerAnswer WorkerPool::end(Worker& worker) {
  int status = 0;
  rusage used{};
  while (::wait4(worker.pid, &status, 0, &used) < 0 && errno == EINTR) {
  }
  ::close(worker.pipe);
  ::close(worker.clock);
  WorkerAnswer answer;
  answer.job = worker.job;
  answer.ahead = taken_ahead(worker.bytes);
  const char last = worker.bytes.empty() || worker.too_much ? '\0' : worker.bytes.back();
  if (WIFEXITED(status) && WEXITSTATUS(status) == 0 && last == kWhole) {
    worker.bytes.pop_back();
    answer.whole = true;
    answer.bytes = std::move(worker.bytes);
  } else if (worker.late || (WIFSIGNALED(status) && WTERMSIG(status) == SIGXCPU)) {
    answer.fault = "It took longer than " + seconds_in_words(ceilings_.seconds) + ", the most that one project may take.";
    // By the clock alone it may be late because the machine was busy, or slept.
    answer.alike = !worker.late || 2 * (seconds_of(used.ru_utime) + seconds_of(used.ru_stime)) >= ceilings_.seconds;
    answer.machine = !answer.alike;
  } else if (WIFEXITED(status) && last == kOutOfMemory) {
    answer.fault =
        "It asked for more memory than " + std::to_string(ceilings_.memory_mib) + " MiB, the most that one project may have.";
    answer.alike = true;
  } else if (WIFEXITED(status) && last == kThrew) {
    worker.bytes.pop_back();
    answer.fault = "This is a fault of the program, not of the file: " + worker.bytes + ".";
  } else if (WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL && !worker.too_much) {
    answer.fault = "It was killed from outside (signal 9); where memory runs short the system does so.";
    answer.machine = true;
  } else if (worker.too_much) {
    answer.fault = "The worker said more than can be understood. That is a fault of the program.";
  } else if (WIFSIGNALED(status)) {
    answer.fault = "The program fell over it (signal " + std::to_string(WTERMSIG(status)) + "). That is a fault of the program.";
    answer.alike = is_own_fall(WTERMSIG(status));
  } else {
    answer.fault = "The worker gave no answer that could be understood.";
  }
  return answer;
}

std::vector<WorkerAnswer> WorkerPool::collect() {
  std::vector<WorkerAnswer> answers = std::move(unstarted_);
  unstarted_.clear();
  for (std::size_t i = 0; i < running_.size();) {
    Worker& worker = running_[i];
    std::uint64_t times = 0;
    if (!worker.late && ::read(worker.clock, &times, sizeof times) == sizeof times) {
      worker.late = true;
      ::kill(worker.pid, SIGKILL);
    }
    if (read_some(worker)) {
      ++i;
      continue;
    }
    answers.push_back(end(worker));
    running_.erase(running_.begin() + static_cast<std::ptrdiff_t>(i));
  }
  return answers;
}

void WorkerPool::stop_all() {
  for (Worker& worker : running_) ::kill(worker.pid, SIGKILL);
  for (Worker& worker : running_) end(worker);
  running_.clear();
}

}  // namespace gownsheaf
