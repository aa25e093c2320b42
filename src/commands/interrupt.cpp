#include "commands/interrupt.h"

#include <csignal>

namespace gownsheaf {
namespace {

std::atomic<bool> came_already{false};
static_assert(std::atomic<bool>::is_always_lock_free);  // or a handler must not touch it
struct sigaction before;

void hear(int) { came_already.store(true, std::memory_order_relaxed); }

}  // namespace

HeardInterrupts::HeardInterrupts() {
  came_already = false;
  struct sigaction now {};
  now.sa_handler = hear;
  now.sa_flags = static_cast<int>(SA_RESETHAND | SA_RESTART);
  sigemptyset(&now.sa_mask);
  sigaction(SIGINT, nullptr, &before);
  if (before.sa_handler != SIG_IGN) sigaction(SIGINT, &now, nullptr);
}

HeardInterrupts::~HeardInterrupts() { sigaction(SIGINT, &before, nullptr); }

const std::atomic<bool>& HeardInterrupts::came() { return came_already; }

}  // namespace gownsheaf
