#include "service/signals.h"

#include <sys/signalfd.h>
#include <unistd.h>

namespace gownsheaf {

StopSignals::StopSignals() {
  sigset_t stops;
  sigemptyset(&stops);
  sigaddset(&stops, SIGINT);
  sigaddset(&stops, SIGTERM);
  ::sigprocmask(SIG_BLOCK, &stops, &before_);
  fd_ = ::signalfd(-1, &stops, SFD_CLOEXEC | SFD_NONBLOCK);
}

StopSignals::~StopSignals() {
  asked();  // what came meanwhile was heard
  if (fd_ >= 0) ::close(fd_);
  ::sigprocmask(SIG_SETMASK, &before_, nullptr);
}

int StopSignals::asked() {
  signalfd_siginfo about;
  while (fd_ >= 0 && ::read(fd_, &about, sizeof about) == sizeof about) ++asked_;
  return asked_;
}

}  // namespace gownsheaf
