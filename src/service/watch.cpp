#include "service/watch.h"

#include <sys/timerfd.h>
#include <unistd.h>

#include <algorithm>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <set>

#include "service/folder_watch.h"
#include "service/results_json.h"
#include "service/settling.h"
#include "service/signals.h"

namespace gownsheaf {
namespace {

constexpr int kSomeAtOnce = 50;                                                 // projects looked at before news is read again
constexpr int kGoneRetry = 1000, kHeartbeat = 10'000, kUnwatchedScan = 10'000;  // milliseconds

// A clock that rings again and again while it is set.
class Bell {
 public:
  Bell() : fd_(::timerfd_create(CLOCK_MONOTONIC, TFD_CLOEXEC | TFD_NONBLOCK)) {}
  ~Bell() { ::close(fd_); }
  Bell(const Bell&) = delete;
  Bell& operator=(const Bell&) = delete;
  int fd() const { return fd_; }
  void every(int milliseconds) {  // 0: silent; setting it to what it is changes nothing
    if (milliseconds == set_) return;
    set_ = milliseconds;
    const timespec span{milliseconds / 1000, (milliseconds % 1000) * 1'000'000L};
    const itimerspec both{span, span};
    ::timerfd_settime(fd_, 0, &both, nullptr);
  }
  bool rang() {
    std::uint64_t times = 0;
    return ::read(fd_, &times, sizeof times) == sizeof times;
  }

 private:
  int fd_, set_ = 0;
};

std::string folder_below(const std::string& path) {  // "" for one at the top
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? "" : path.substr(0, slash);
}

bool lies_below(const std::string& path, const std::string& folder) { return folder.empty() || path.starts_with(folder + "/"); }

// Looked at again, and it is as it was: current, or not even read.
bool nothing_new(const PacketResult& before, const PacketResult& now) {
  if (before.state != now.state || before.unwritten) return false;
  if (now.state == PacketState::failed) return !now.project.refused.empty() && before.project.refused == now.project.refused;
  return now.state == PacketState::current && before.record && now.record && text_of(*before.record) == text_of(*now.record);
}

class Watch {
 public:
  Watch(const Workroom& room, const WatchOrder& order, const ListMaker& list, ResultListener& listener)
      : room_(room), order_(order), list_(list), listener_(listener), pool_(room.order().jobs, room.order().ceilings),
        list_pool_(1, room.order().ceilings) {}

  WatchOutcome run() {
    scan_bell_.every(order_.scan_every * 1000);
    if (!order_.health.empty()) heart_bell_.every(kHeartbeat);
    look_at_everything();
    while (!(stopping() && pool_.idle() && list_pool_.idle())) {
      start_some();
      tell_health();
      wait();
    }
    tell_health();
    return {counts_};
  }

 private:
  bool stopping() { return signals_.asked() > 0; }

  // Everything is found and watched anew: at the start, when news was lost, when the folder comes back.
  void look_at_everything() {
    watch_ = std::make_unique<FolderWatch>(room_.order().in);
    settling_.clear();
    if (kind_at(room_.order().in) != FolderEntry::Kind::folder) {
      gone_ = true;
      watch_.reset();
      gone_bell_.every(kGoneRetry);
      return;
    }
    gone_ = false;
    gone_bell_.every(0);
    list_stale_ = true;  // it may tell of projects that went meanwhile
    const FoundProjects found = take_all("");
    for (const std::string& fault : room_.clear_problems_of_gone(found)) listener_.say(fault);
  }

  FoundProjects take_all(const std::string& below) {
    FoundProjects found = find_projects(watched_search(), below);
    for (const std::string& fault : found.faults) listener_.say(fault);
    std::set<std::string> there;
    for (const FoundProject& project : found.projects) {
      there.insert(project.path);
      enqueue(project);
    }
    std::set<std::string> lost;
    const auto look_for = [&](const std::string& path) {
      if (lies_below(path, below) && there.count(path) == 0) lost.insert(path);
    };
    each_path(look_for);
    if (found.unread) return found;  // nothing is called gone
    for (const std::string& path : lost) forget(path);
    return found;
  }

  // Of all projects: those that were looked at, that wait and that are at work; some twice.
  void each_path(const std::function<void(const std::string&)>& take) const {
    for (const auto& [path, result] : known_) take(path);
    for (const auto& [path, project] : waiting_) take(path);
    for (const auto& [job, project] : running_) take(project.path);
  }

  ProjectSearch watched_search() {
    ProjectSearch search = room_.search();
    search.entering = [this](const std::string& below) {
      if (watch_->add(below) || unwatched_) return;
      unwatched_ = true;
      listener_.say(
          "The system watches no more folders (fs.inotify.max_user_watches), so everything is looked at every 10 seconds.");
      if (order_.scan_every == 0) scan_bell_.every(kUnwatchedScan);
    };
    return search;
  }

  void enqueue(const FoundProject& project) {
    gone_meanwhile_.erase(project.path);
    if (waiting_.insert_or_assign(project.path, project).second) queue_.push_back(project.path);
  }

  FoundProject taken_from_queue(std::deque<std::string>::iterator at) {
    const auto waiting = waiting_.find(*at);
    FoundProject project = std::move(waiting->second);
    waiting_.erase(waiting);
    queue_.erase(at);
    return project;
  }

  void forget(const std::string& path) {
    if (waiting_.count(path) == 1) taken_from_queue(std::find(queue_.begin(), queue_.end(), path));
    if (is_running(path)) gone_meanwhile_.insert(path);  // its answer is still to come
    const auto at = known_.find(path);
    if (at == known_.end()) return;
    if (const auto fault = room_.out().clear_problems(at->second.project.stem)) listener_.say(fault->sentence);
    known_.erase(at);
    list_stale_ = true;
  }

  void take_news() {
    FolderWatch::News news = watch_->read();
    if (news.folder_gone) {
      listener_.say("`" + room_.order().in + "` is gone; it is waited for.");
      gone_ = true;
      watch_.reset();
      settling_.clear();
      gone_bell_.every(kGoneRetry);
      return;
    }
    if (news.overflow) return look_at_everything();
    using Kind = FolderWatch::Event::Kind;
    for (const FolderWatch::Event& e : news.events) {
      if (e.kind == Kind::new_folder || e.kind == Kind::gone_folder) folders_.insert(e.below);
      else if (e.kind == Kind::touched) settling_.touched(e.below);
      else settling_.whole(e.below);
    }
    for (const std::string& folder : folders_) {  // watched at once; its files may have been there before it was
      if (kind_at(room_.order().in + "/" + folder) == FolderEntry::Kind::folder) {
        for (const FoundProject& project : find_projects(watched_search(), folder).projects) settling_.whole(project.path);
      }
      each_path([&](const std::string& path) {
        if (lies_below(path, folder)) settling_.whole(path);
      });
      settling_.whole(folder + "/");  // drawings in it
    }
    folders_.clear();
  }

  // Files that are quiet: projects are looked at again, and for anything else the projects above it that may have read it.
  void take_quiet(const std::vector<std::string>& quiet) {
    std::map<std::string, std::set<std::string>> by_folder;
    for (const std::string& path : quiet) {
      if (is_yaml_name(path)) {
        by_folder[folder_below(path)].insert(path);
        continue;
      }
      for (const auto& [project, result] : known_) {
        const std::string folder = folder_below(project);
        if (lies_below(path, folder) && may_read(result, folder.empty() ? path : path.substr(folder.size() + 1)))
          by_folder[folder].insert(project);
      }
      for (const auto& [job, project] : running_)  // what it has read by now is not known either
        if (const std::string folder = folder_below(project.path); lies_below(path, folder))
          by_folder[folder].insert(project.path);
    }
    for (const auto& [folder, paths] : by_folder) {
      const FoundProjects found = find_in_folder(room_.search(), folder);
      std::set<std::string> there;
      for (const FoundProject& project : found.projects) {
        there.insert(project.path);
        if (paths.count(project.path) == 1 || is_refused_otherwise(project)) enqueue(project);
      }
      const bool hidden = found.unread && kind_at(folder.empty() ? room_.order().in : room_.order().in + "/" + folder) ==
                                              FolderEntry::Kind::folder;
      for (const std::string& path : paths)
        if (there.count(path) == 0 && !hidden) forget(path);
    }
  }

  // What a failed project would have read is not known.
  static bool may_read(const PacketResult& result, const std::string& below) {
    if (result.state == PacketState::failed) return result.project.refused.empty();
    const std::vector<std::string>& drawings = result.record->drawings;
    const bool folder = below.ends_with('/');
    return std::any_of(drawings.begin(), drawings.end(), [&](const std::string& drawing) {
      const std::string d = plain_path(drawing);
      return folder ? d.starts_with(below) : d == below;
    });
  }

  // One whose neighbour of the same packet came or went since it was last found.
  bool is_refused_otherwise(const FoundProject& project) const {
    if (const auto at = waiting_.find(project.path); at != waiting_.end()) return at->second.refused != project.refused;
    for (const auto& [job, running] : running_)
      if (running.path == project.path) return running.refused != project.refused;
    const auto at = known_.find(project.path);
    return at != known_.end() && at->second.project.refused != project.refused;
  }

  bool is_running(const std::string& path) const {
    return std::any_of(running_.begin(), running_.end(), [&](const auto& job) { return job.second.path == path; });
  }

  // Neither it nor one that would make the same packet is at work.
  bool may_start(const FoundProject& project) const {
    return std::none_of(running_.begin(), running_.end(),
                        [&](const auto& job) { return job.second.path == project.path || job.second.stem == project.stem; });
  }
  std::deque<std::string>::iterator next_to_start() {
    return std::find_if(queue_.begin(), queue_.end(), [&](const std::string& path) { return may_start(waiting_.at(path)); });
  }

  void start_some() {
    if (stopping()) return;
    for (int n = 0; n < kSomeAtOnce && !queue_.empty(); ++n) {
      const auto next = next_to_start();
      if (next == queue_.end()) return;
      if (const auto before = known_.find(*next); before != known_.end() && before->second.state == PacketState::failed &&
                                                  room_.fails_still(waiting_.at(*next), before->second)) {
        taken_from_queue(next);
        continue;
      }
      if (auto done = room_.without_making(waiting_.at(*next))) {
        taken_from_queue(next);
        take(std::move(*done));
        continue;
      }
      if (!pool_.has_room()) return;
      const FoundProject project = taken_from_queue(next);
      pool_.start(jobs_, [&] { return room_.make(project); });
      running_.emplace(jobs_++, project);
    }
    if (queue_.empty() && pool_.idle() && list_pool_.idle() && list_stale_) {
      list_stale_ = false;
      std::vector<PacketResult> results;
      for (const auto& [path, result] : known_) results.push_back(result);
      list_pool_.start(0, [&] { return write_list(room_, results, list_); });
    }
  }

  void take(PacketResult result) {
    const auto before = known_.find(result.project.path);
    if (before != known_.end() && nothing_new(before->second, result)) return;
    if (before != known_.end() && before->second.project.stem == result.project.path &&
        result.project.stem != result.project.path)
      room_.out().clear_problems(result.project.path);  // it was the second of two that would make one packet
    if (const auto hindered = room_.tell_beside(result)) {
      listener_.say(hindered->sentence);
      result.unwritten = true;
      result.fingerprint.clear();
    }
    ++(result.state == PacketState::made      ? counts_.made
       : result.state == PacketState::current ? counts_.current
                                              : counts_.failed);
    listener_.result(result);
    if (result.unwritten) {  // the disk may be full: later it may not be
      retry_.insert(result.project.path);
      retry_bell_.every(order_.retry);
    }
    result.messages.clear();
    result.errors.clear();
    list_stale_ = true;
    known_[result.project.path] = std::move(result);
  }

  bool more_to_start() {
    return !stopping() && ((pool_.has_room() && next_to_start() != queue_.end()) ||
                           (queue_.empty() && list_stale_ && pool_.idle() && list_pool_.idle()));
  }

  void wait() {
    tick_bell_.every(settling_.empty() ? 0 : std::max(1, order_.settle / 2));
    std::vector<pollfd> waited{{signals_.fd(), POLLIN, 0},   {tick_bell_.fd(), POLLIN, 0},  {scan_bell_.fd(), POLLIN, 0},
                               {gone_bell_.fd(), POLLIN, 0}, {heart_bell_.fd(), POLLIN, 0}, {retry_bell_.fd(), POLLIN, 0}};
    if (watch_) waited.push_back({watch_->fd(), POLLIN, 0});
    pool_.add_to(waited);
    list_pool_.add_to(waited);
    ::poll(waited.data(), static_cast<nfds_t>(waited.size()),
           more_to_start() ? 0 : std::max(pool_.patience(), list_pool_.patience()));
    for (const WorkerAnswer& answer : pool_.collect()) {
      const auto job = running_.find(answer.job);
      const FoundProject project = job->second;
      running_.erase(job);
      take(room_.result_of(project, answer));
      if (gone_meanwhile_.erase(project.path) == 1) forget(project.path);
    }
    for (const WorkerAnswer& answer : list_pool_.collect()) {
      const std::string why = answer.whole ? answer.bytes : answer.fault;
      if (why.empty()) continue;
      listener_.say("The list of packets was not written. " + why);
      list_unwritten_ = true;
      retry_bell_.every(order_.retry);
    }
    if (signals_.asked() > 1) {
      pool_.stop_all();
      list_pool_.stop_all();
    }
    if (watch_) take_news();
    if (tick_bell_.rang()) take_quiet(settling_.tick());
    if (retry_bell_.rang()) try_again();
    if (heart_bell_.rang()) told_.clear();  // the file is written again, and so shows that it lives
    const bool scan = scan_bell_.rang() && !gone_;
    if (gone_bell_.rang() && gone_) look_at_everything();
    else if (scan) take_all("");
  }

  void try_again() {
    retry_bell_.every(0);
    list_stale_ = list_stale_ || list_unwritten_;
    list_unwritten_ = false;
    for (const std::string& path : retry_)
      if (const auto at = known_.find(path); at != known_.end()) enqueue(at->second.project);
    retry_.clear();
  }

  void tell_health() {
    if (order_.health.empty()) return;
    const bool working = !pool_.idle() || !queue_.empty() || !list_pool_.idle() || list_stale_;  // the list belongs to the work
    const std::string state = stopping() ? (pool_.idle() && list_pool_.idle() ? "stopped" : "stopping")
                              : gone_    ? "folder gone"
                              : working  ? "working"
                                         : "watching";
    // Two flushes for each packet would be a good part of all the work: while it goes on the heartbeat tells how far it is.
    if (state == "working" && told_.find("\"working\"") != std::string::npos) return;
    std::size_t failed = 0;
    for (const auto& [path, result] : known_) failed += result.state == PacketState::failed ? 1 : 0;
    const std::string text = health_json_line({state, known_.size(), failed, queue_.size() + running_.size()});
    if (text == told_) return;
    told_ = text;
    if (const auto fault = write_whole({{order_.health, text}}); fault && !health_fault_) {
      health_fault_ = true;  // said once
      listener_.say(fault->sentence);
    }
  }

  const Workroom& room_;
  const WatchOrder& order_;
  const ListMaker& list_;
  ResultListener& listener_;
  StopSignals signals_;
  WorkerPool pool_, list_pool_;
  std::unique_ptr<FolderWatch> watch_;
  Settling settling_;
  Bell tick_bell_, scan_bell_, gone_bell_, heart_bell_, retry_bell_;
  std::set<std::string> retry_;
  std::deque<std::string> queue_;  // in the order they came; each is in waiting_
  std::map<std::string, FoundProject> waiting_;
  std::map<std::size_t, FoundProject> running_;
  std::size_t jobs_ = 0;
  std::map<std::string, PacketResult> known_;
  std::set<std::string> folders_;
  PacketCounts counts_;
  std::string told_;
  std::set<std::string> gone_meanwhile_;  // projects that went while a worker had them
  bool gone_ = false, unwatched_ = false, list_stale_ = false, list_unwritten_ = false, health_fault_ = false;
};

}  // namespace

WatchOutcome run_watch(const Workroom& room, const WatchOrder& order, const ListMaker& list, ResultListener& listener) {
  return Watch(room, order, list, listener).run();
}

}  // namespace gownsheaf
