// Workers that fall over, go on for ever, take all memory or say too much: each is told, and the others' answers are there.
#include <signal.h>
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <stdexcept>
#include <thread>

#include "service/pool.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

std::vector<WorkerAnswer> all_of(WorkerPool& pool) {
  std::vector<WorkerAnswer> answers;
  while (!pool.idle()) {
    std::vector<pollfd> waited;
    pool.add_to(waited);
    ::poll(waited.data(), static_cast<nfds_t>(waited.size()), pool.patience());
    for (WorkerAnswer& a : pool.collect()) answers.push_back(std::move(a));
  }
  std::sort(answers.begin(), answers.end(), [](const WorkerAnswer& a, const WorkerAnswer& b) { return a.job < b.job; });
  return answers;
}

}  // namespace

TEST_CASE("a worker that ends badly is its own project's fault alone", "[service]") {
  WorkerPool pool(8, {1, 512});
  pool.start(0, [] { return std::string(300'000, 'x'); });
  pool.start(1, []() -> std::string {
    ::kill(::getpid(), SIGSEGV);
    return "no";
  });
  pool.start(2, []() -> std::string {
    for (;;) ::pause();
  });
  pool.start(3, []() -> std::string {
    WorkerPool::say_ahead("a\nb");
    throw std::runtime_error("a hem too many");
  });
  pool.start(4, []() -> std::string { ::_exit(0); });
  pool.start(5, [] { return std::string(17u << 20, 'x'); });
  pool.start(6, []() -> std::string {
    ::kill(::getpid(), SIGKILL);
    return "no";
  });
  CHECK(pool.has_room());
  pool.start(7, [] {
    for (const char* ahead : {"front", "", "back w"}) WorkerPool::say_ahead(ahead);
    return std::string();
  });
  CHECK_FALSE(pool.has_room());
  const auto answers = all_of(pool);
  REQUIRE(answers.size() == 8);
  CHECK(answers[0].whole);
  CHECK(answers[0].bytes == std::string(300'000, 'x'));
  CHECK(answers[1].fault == "The program fell over it (signal 11). That is a fault of the program.");
  CHECK(answers[1].alike);
  CHECK_FALSE(answers[1].machine);
  for (const int outside : {2, 6}) {  // the first used no processor time: the machine may have slept
    CHECK_FALSE(answers[outside].alike);
    CHECK(answers[outside].machine);
  }
  CHECK(answers[2].fault == "It took longer than 1 second, the most that one project may take.");
  CHECK(answers[3].fault == "This is a fault of the program, not of the file: a hem too many.");
  CHECK(answers[4].fault == "The worker gave no answer that could be understood.");
  CHECK_FALSE(answers[5].whole);
  CHECK(answers[5].fault == "The worker said more than can be understood. That is a fault of the program.");
  CHECK(answers[6].fault == "It was killed from outside (signal 9); where memory runs short the system does so.");
  CHECK(answers[7].whole);
  CHECK(answers[7].bytes.empty());
  CHECK(answers[7].ahead == "back w");
  CHECK(answers[3].ahead == "a\nb");
  WorkerPool::say_ahead("outside of a worker");  // would go to whatever stands at its number
}

TEST_CASE("a worker that used up its processor time is told as one that took too long", "[service]") {
  WorkerPool pool(1, {60, 512});
  pool.start(0, []() -> std::string {
    rlimit now{};
    ::getrlimit(RLIMIT_CPU, &now);
    if (now.rlim_cur != 61) return "the ceiling is another";
    now.rlim_cur = 1;  // sixty seconds are too long for a test: the same ceiling, nearer
    now.rlim_max -= 60;
    ::setrlimit(RLIMIT_CPU, &now);
    WorkerPool::say_ahead("what it was");
    for (;;) ::getppid();
  });
  const auto answers = all_of(pool);
  CHECK(answers[0].fault == "It took longer than 60 seconds, the most that one project may take.");
  CHECK(answers[0].ahead == "what it was");
  CHECK(answers[0].alike);
}

#ifndef GOWNSHEAF_SANITIZED  // they have no ceiling of memory
TEST_CASE("a worker that wants all memory is stopped at its ceiling", "[service]") {
  WorkerPool pool(1, {20, 256});
  pool.start(0, [] {
    std::string all;
    for (;;) all.append(1 << 20, 'x');
    return all;
  });
  CHECK(all_of(pool)[0].fault == "It asked for more memory than 256 MiB, the most that one project may have.");
}
#endif

TEST_CASE("no worker is forked while another thread runs", "[service]") {
  WorkerPool pool(1, {1, 256});
  std::atomic<bool> done = false;
  std::thread other([&] {
    while (!done) ::usleep(1000);
  });
  CHECK_THROWS_AS(pool.start(0, [] { return std::string(); }), std::logic_error);
  done = true;
  other.join();
}

TEST_CASE("where the system gives no more files or processes, that is told of the project", "[service]") {
  rlimit before{};
  ::getrlimit(RLIMIT_NOFILE, &before);
  const int next = ::dup(0);
  ::close(next);
  const rlimit few{static_cast<rlim_t>(next) + 3, before.rlim_max};  // a clock and both ends of a pipe
  WorkerPool pool(8, {20, 256});
  ::setrlimit(RLIMIT_NOFILE, &few);
  for (std::size_t i = 0; i < 4; ++i) pool.start(i, [] { return std::string("done"); });
  ::setrlimit(RLIMIT_NOFILE, &before);
  const auto answers = all_of(pool);
  REQUIRE(answers.size() == 4);
  CHECK(answers[0].whole);
  CHECK(answers[3].fault == "The system gave no process to make it in.");
}
