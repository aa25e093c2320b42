// What happens in a folder and those below it, as the system tells it (inotify).
#pragma once
#include <map>
#include <string>
#include <vector>

namespace gownsheaf {

class FolderWatch {
 public:
  explicit FolderWatch(std::string folder);
  ~FolderWatch();
  FolderWatch(const FolderWatch&) = delete;
  FolderWatch& operator=(const FolderWatch&) = delete;

  int fd() const { return fd_; }
  // Called for each folder before it is read, so that nothing is missed between. False: the system watches no more folders.
  bool add(const std::string& below);

  struct Event {
    enum class Kind {
      touched,  // made or written to; may go on
      whole,    // closed after writing, or moved there
      gone,     // deleted, or moved away
      new_folder,
      gone_folder
    } kind;
    std::string below;
  };
  struct News {
    std::vector<Event> events;
    bool overflow = false;     // some were lost: everything is to be looked at again
    bool folder_gone = false;  // the folder itself was deleted, moved or unmounted
  };
  News read();

 private:
  void forget_below(const std::string& below);

  std::string folder_;
  int fd_ = -1, root_ = -1;
  std::map<int, std::string> names_;  // by the system's number
};

}  // namespace gownsheaf
