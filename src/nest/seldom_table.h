// What a pair table says, worked out piece by piece when it is asked for and then kept: for pairs among many different
// parts, most of which meet too seldom to be worth a table.
#pragma once
#include <atomic>
#include <cstdint>

#include "nest/pair_loss.h"

namespace gownsheaf::nest {

class SeldomTable {
 public:
  static constexpr int kCells = 16;             // along each side
  SeldomTable(const Shape& a, const Shape& b);  // no gap
  // As PairTable says, to the last bit. Several may ask at once: whoever works a value out, it is the same.
  double loss(int u, int v) const;
  // Counts how often it was asked; the count may miss some.
  bool asked_often(int often) const {
    const int times = asked_.load(std::memory_order_relaxed);
    if (times < often) asked_.store(times + 1, std::memory_order_relaxed);
    return times >= often;
  }

 private:
  Meeting meeting(int cell) const;
  float node(int at) const;

  const Shape &a_, &b_;
  Grid grid_;
  Corner least_;
  mutable std::atomic<int> asked_{0};
  mutable std::atomic<std::uint32_t> cells_[kCells * kCells]{};      // Meeting::word
  mutable std::atomic<float> nodes_[(kCells + 1) * (kCells + 1)]{};  // 0: not worked out
};

}  // namespace gownsheaf::nest
