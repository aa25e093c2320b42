// One line on a terminal that says how far the search for a lay is, and is gone when the search has ended. Never in a
// file, never with -q or --log json. With -v each cloth is named once, on any stream.
#pragma once
#include <string>

#include "commands/commands.h"

namespace gownsheaf {

class ProgressLine {
 public:
  explicit ProgressLine(const Settings& settings);
  ~ProgressLine() { wipe(); }
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  void tell(const std::string& cloth, double done);
  void wipe();

 private:
  const Settings& settings_;
  bool on_terminal_;
  std::string cloth_, shown_;
  int search_ = 0, percent_ = 0;
};

}  // namespace gownsheaf
