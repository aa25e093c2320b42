// What the key for an interrupt does while a packet is made: the searches end, and nothing is half written.
#pragma once
#include <atomic>

namespace gownsheaf {

inline constexpr int kInterrupted = 130;  // exit code: a shell's for a program that an interrupt ended

// From here to its end the first interrupt sets a mark instead of ending the program; a second one ends it at once. Where
// interrupts are ignored (a job in the background) they stay so. One at a time.
class HeardInterrupts {
 public:
  HeardInterrupts();
  ~HeardInterrupts();
  HeardInterrupts(const HeardInterrupts&) = delete;
  HeardInterrupts& operator=(const HeardInterrupts&) = delete;
  static const std::atomic<bool>& came();
};

}  // namespace gownsheaf
