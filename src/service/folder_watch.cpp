#include "service/folder_watch.h"

#include <sys/inotify.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace gownsheaf {
namespace {

constexpr std::uint32_t kAsked = IN_CREATE | IN_MODIFY | IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_ATTRIB |
                                 IN_DELETE_SELF | IN_MOVE_SELF | IN_ONLYDIR;

}  // namespace

FolderWatch::FolderWatch(std::string folder) : folder_(std::move(folder)), fd_(::inotify_init1(IN_CLOEXEC | IN_NONBLOCK)) {}

FolderWatch::~FolderWatch() {
  if (fd_ >= 0) ::close(fd_);
}

bool FolderWatch::add(const std::string& below) {
  const int number = ::inotify_add_watch(fd_, (below.empty() ? folder_ : folder_ + "/" + below).c_str(), kAsked);
  if (number < 0)
    return errno == ENOENT || errno == ENOTDIR || errno == EACCES;  // gone meanwhile: that is told by the folder above
  names_[number] = below;
  if (below.empty()) root_ = number;
  return true;
}

void FolderWatch::forget_below(const std::string& below) {
  for (auto at = names_.begin(); at != names_.end();) {
    if (at->second != below && !at->second.starts_with(below + "/")) {
      ++at;
      continue;
    }
    ::inotify_rm_watch(fd_, at->first);
    at = names_.erase(at);
  }
}

FolderWatch::News FolderWatch::read() {
  News news;
  alignas(inotify_event) char buffer[65536];
  for (;;) {
    const ssize_t got = ::read(fd_, buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return news;
    for (ssize_t at = 0; at < got;) {
      inotify_event e;
      std::memcpy(&e, buffer + at, sizeof e);
      const std::string name = e.len > 0 ? std::string(buffer + at + sizeof e) : "";
      at += static_cast<ssize_t>(sizeof e + e.len);
      if ((e.mask & IN_Q_OVERFLOW) != 0) {
        news.overflow = true;
        continue;
      }
      const auto known = names_.find(e.wd);
      if (known == names_.end()) continue;
      if ((e.mask & (IN_DELETE_SELF | IN_MOVE_SELF | IN_UNMOUNT | IN_IGNORED)) != 0) {
        if (e.wd == root_) news.folder_gone = true;
        if ((e.mask & IN_IGNORED) != 0) names_.erase(known);
        continue;
      }
      if (name.empty() || name.starts_with('.')) continue;
      const std::string below = known->second.empty() ? name : known->second + "/" + name;
      const bool gone = (e.mask & (IN_DELETE | IN_MOVED_FROM)) != 0;
      using Kind = Event::Kind;
      if ((e.mask & IN_ISDIR) != 0) {
        if (gone) forget_below(below);
        if (gone || (e.mask & (IN_CREATE | IN_MOVED_TO | IN_ATTRIB)) != 0)
          news.events.push_back({gone ? Kind::gone_folder : Kind::new_folder, below});
      } else {
        news.events.push_back({gone                                                         ? Kind::gone
                               : (e.mask & (IN_CLOSE_WRITE | IN_MOVED_TO | IN_ATTRIB)) != 0 ? Kind::whole
                                                                                            : Kind::touched,
                               below});
      }
    }
  }
}

}  // namespace gownsheaf
