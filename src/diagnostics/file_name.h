// The name of a file, held once by all places in it: a place is copied with every value that remembers where it was written.
#pragma once
#include <compare>
#include <memory>
#include <string>
#include <utility>

namespace gownsheaf {

class FileName {
 public:
  FileName() = default;
  FileName(std::string name) : held_(name.empty() ? nullptr : std::make_shared<const std::string>(std::move(name))) {}
  FileName(const char* name) : FileName(std::string(name)) {}

  const std::string& text() const {
    static const std::string none;
    return held_ ? *held_ : none;
  }
  operator const std::string&() const { return text(); }
  bool empty() const { return held_ == nullptr; }

  friend bool operator==(const FileName& a, const FileName& b) { return a.held_ == b.held_ || a.text() == b.text(); }
  friend std::strong_ordering operator<=>(const FileName& a, const FileName& b) {
    return a.held_ == b.held_ ? std::strong_ordering::equal : a.text() <=> b.text();
  }

 private:
  std::shared_ptr<const std::string> held_;  // null for ""
};

}  // namespace gownsheaf
