// What a pair table says, worked out piece by piece when it is asked for and then kept: for pairs among many different
// parts, most of which meet too seldom to be worth a table.
#pragma once
#include <atomic>
#include <memory>

#include "nest/pair_loss.h"

namespace gownsheaf::nest {

class SeldomTable {
 public:
  SeldomTable(const Shape& a, const Shape& b, int cells);  // no gap
  // As PairTable says, to the last bit. Several may ask at once: whoever works a value out, it is the same.
  double loss(int u, int v) const;

 private:
  Meeting meeting(int cell) const;
  float node(int at) const;

  const Shape &a_, &b_;
  Grid grid_;
  Corner least_;
  std::unique_ptr<std::atomic<std::uint32_t>[]> cells_;  // Meeting::word
  std::unique_ptr<std::atomic<float>[]> nodes_;          // 0: not worked out
};

}  // namespace gownsheaf::nest
