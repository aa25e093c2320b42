// The lays of one project as they were found when its packet was last made. A file of its own beside the record: a stranger's project
// can then not put lays in another's way, and what is no longer asked for goes when the packet is made anew. Its last line is a hash of
// the rest; a file that was cut off or changed is not used.
#pragma once
#include <map>

#include "make_packet.h"

namespace gownsheaf {

class LayPack : public nest::LayStore {
 public:
  explicit LayPack(std::string_view text);  // "" or anything that is no pack: an empty one
  std::optional<std::string> find(const std::string& key) override;
  void keep(const std::string& key, const std::string& lay) override;
  std::size_t found() const { return found_; }
  bool changed() const { return asked_ != before_; }
  std::string text() const;  // of what was asked for since

 private:
  std::map<std::string, std::string> before_, asked_;  // by a hash of the key
  std::size_t found_ = 0;
};

}  // namespace gownsheaf
