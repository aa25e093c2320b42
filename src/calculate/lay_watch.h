// Somebody waits for the lays and may stop them.
#pragma once
#include <atomic>
#include <functional>
#include <string>

namespace gownsheaf {

struct LayWatch {
  // Set: each search ends with the best lay it has. A packet of such a lay says so, for it can be had no second time.
  const std::atomic<bool>* stop = nullptr;
  // Which cloth is laid, and how much of the search in hand is done, 0 to 1. A cloth may take several searches.
  std::function<void(const std::string& cloth, double done)> tell = {};
};

}  // namespace gownsheaf
