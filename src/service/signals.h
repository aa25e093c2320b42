// SIGINT and SIGTERM as something to be waited for, while this lives. Workers inherit them held back, so that the one at work
// finishes its packet.
#pragma once
#include <csignal>

namespace gownsheaf {

class StopSignals {
 public:
  StopSignals();
  ~StopSignals();
  StopSignals(const StopSignals&) = delete;
  StopSignals& operator=(const StopSignals&) = delete;
  int fd() const { return fd_; }
  int asked();  // how often a stop has been asked for so far

 private:
  sigset_t before_;
  int fd_ = -1, asked_ = 0;
};

}  // namespace gownsheaf
