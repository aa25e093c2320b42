// Random numbers that are the same everywhere: splitmix64 (Steele, Lea, Flood 2014), and whole and real draws from it.
#pragma once
#include <cstdint>

namespace gownsheaf::nest {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }
  int below(int n) { return static_cast<int>(((next() >> 32) * static_cast<std::uint64_t>(n)) >> 32); }  // 0 .. n - 1
  int between(int low, int high) {
    return low +
           static_cast<int>(((next() >> 32) * (static_cast<std::uint64_t>(static_cast<std::int64_t>(high) - low) + 1)) >> 32);
  }
  double unit() { return static_cast<double>(next() >> 11) * 0x1p-53; }  // 0 <= u < 1

 private:
  std::uint64_t state_;
};

}  // namespace gownsheaf::nest
