// Files that have changed and are waited for until they are quiet. Time comes in ticks of half the settling time, so that no clock
// is read. A file that is still open is waited for ten times as long, and one that is never quiet is taken after a hundred times.
#pragma once
#include <map>
#include <string>
#include <vector>

namespace gownsheaf {

class Settling {
 public:
  void touched(const std::string& path) { news(path).open = true; }  // written to; may go on
  void whole(const std::string& path) { news(path).open = false; }   // closed, moved or deleted
  bool empty() const { return waiting_.empty(); }
  void clear() { waiting_.clear(); }

  // The ones that are quiet now, sorted.
  std::vector<std::string> tick() {
    std::vector<std::string> quiet;
    for (auto at = waiting_.begin(); at != waiting_.end();) {
      Waiting& w = at->second;
      ++w.quiet;
      ++w.age;
      if (w.quiet < (w.open ? 20 : 2) && w.age < 200) {
        ++at;
        continue;
      }
      quiet.push_back(at->first);
      at = waiting_.erase(at);
    }
    return quiet;
  }

 private:
  struct Waiting {
    int quiet = 0, age = 0;
    bool open = false;
  };
  Waiting& news(const std::string& path) {
    Waiting& w = waiting_[path];
    w.quiet = 0;
    return w;
  }
  std::map<std::string, Waiting> waiting_;
};

}  // namespace gownsheaf
