// Random cases for laws: raw draws of one fixed generator, so that every machine tries the same ones.
#pragma once
#include <cstdint>
#include <random>

#include "support/rounds.h"

namespace draws {

class Draws {
 public:
  explicit Draws(std::uint32_t seed) : engine_(seed) {}
  // From least to most, both included.
  std::int64_t of(std::int64_t least, std::int64_t most) {
    const auto span = static_cast<std::uint64_t>(most - least + 1);
    const std::uint64_t high = engine_();
    return least + static_cast<std::int64_t>(((high << 32) | engine_()) % span);
  }

 private:
  std::mt19937 engine_;
};

}  // namespace draws
