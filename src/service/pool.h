// Workers: processes forked one for each project from a supervisor with a single thread, after templates and fonts are loaded, so that
// they cost a few hundredths of a millisecond and share all that was read. Each has ceilings of memory, processor and clock, and
// answers through a pipe. A worker that falls over, is killed or goes on too long is a fault of its own project; the others go on.
#pragma once
#include <poll.h>

#include <functional>
#include <string>
#include <vector>

namespace gownsheaf {

struct Ceilings {
  int seconds = 300;     // by the clock, and of processor time
  int memory_mib = 512;  // address space
};

struct WorkerAnswer {
  std::size_t job = 0;
  bool whole = false;  // the worker said all it had to say
  std::string bytes;
  std::string fault;   // a sentence, where it is not whole
  std::string ahead;   // what it said ahead, the last of it; where it is not whole too
  bool alike = false;  // not whole, and with the same files and ceilings it would end so again
  bool machine =
      false;  // the machine is to blame (no process, killed from outside, no time on a processor): later it may go well
};

class WorkerPool {
 public:
  WorkerPool(int workers, const Ceilings& ceilings) : workers_(workers), ceilings_(ceilings) {}
  WorkerPool(const WorkerPool&) = delete;
  WorkerPool& operator=(const WorkerPool&) = delete;
  ~WorkerPool() { stop_all(); }

  bool has_room() const { return running_.size() < static_cast<std::size_t>(workers_); }
  bool idle() const { return running_.empty() && unstarted_.empty(); }
  // work runs in the child and returns the answer. Where the system gives no process, that is the answer. Throws std::logic_error when
  // more than one thread runs.
  void start(std::size_t job, const std::function<std::string()>& work);
  // In a worker: what is to be known of it even if it does not come to its end. Outside of one nothing is said.
  static void say_ahead(const std::string& bytes);
  // Adds what has to be waited for, two a worker, to the end.
  void add_to(std::vector<pollfd>& waited) const;
  // How long poll() may wait: not at all where an answer is there already.
  int patience() const { return unstarted_.empty() ? -1 : 0; }
  // After poll(): answers of the workers that have ended. Never waits long.
  std::vector<WorkerAnswer> collect();
  // Ends all workers at once; their jobs get no answer.
  void stop_all();

 private:
  struct Worker {
    std::size_t job;
    int pid, pipe, clock;
    std::string bytes;
    bool late = false, too_much = false;
  };
  bool read_some(Worker& worker);  // false at the end
  WorkerAnswer end(Worker& worker);

  int workers_;
  Ceilings ceilings_;
  std::vector<Worker> running_;
  std::vector<WorkerAnswer> unstarted_;
};

}  // namespace gownsheaf
