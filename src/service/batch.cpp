#include "service/batch.h"

#include <algorithm>
#include <cerrno>
#include <set>

#include "service/results_json.h"
#include "service/signals.h"

namespace gownsheaf {
namespace {

// Results come as workers end; they are told in the order of the projects.
class InOrder {
 public:
  InOrder(std::size_t n, const Workroom& room, ResultListener& listener)
      : results_(n), there_(n, false), room_(room), listener_(listener) {}
  void take(std::size_t i, PacketResult result) {
    if (const auto fault = room_.tell_beside(result)) listener_.say(fault->sentence);
    ++(result.state == PacketState::made      ? counts_.made
       : result.state == PacketState::current ? counts_.current
                                              : counts_.failed);
    results_[i] = std::move(result);
    there_[i] = true;
    ++done_;
    while (told_ < results_.size() && there_[told_]) listener_.result(results_[told_++]);
    listener_.progress(done_, results_.size());
  }
  // Those that were reached, where the pass was stopped.
  std::vector<PacketResult> all() {
    for (; told_ < results_.size(); ++told_)
      if (there_[told_]) listener_.result(results_[told_]);
    std::vector<PacketResult> reached;
    for (std::size_t i = 0; i < results_.size(); ++i)
      if (there_[i]) reached.push_back(std::move(results_[i]));
    return reached;
  }
  const PacketCounts& counts() const { return counts_; }

 private:
  std::vector<PacketResult> results_;
  std::vector<bool> there_;
  std::size_t told_ = 0, done_ = 0;
  PacketCounts counts_;
  const Workroom& room_;
  ResultListener& listener_;
};

std::string share_words(const ServiceOrder& order) {
  return order.shards == 0 ? "" : "." + std::to_string(order.shard) + "-of-" + std::to_string(order.shards);
}

}  // namespace

std::string write_list(const Workroom& room, const std::vector<PacketResult>& results, const ListMaker& list) {
  std::vector<FileToWrite> files{{room.out().file("batch" + share_words(room.order()) + ".json"), batch_json(results)}};
  std::string fault;
  if (list) {
    std::variant<std::string, FileFault> pdf = list(room, results);
    const std::string path = room.out().file("index" + share_words(room.order()) + ".pdf");
    if (const FileFault* why = std::get_if<FileFault>(&pdf)) fault = why->sentence;
    else if (!holds_still(path, std::get<std::string>(pdf))) files.push_back({path, std::move(std::get<std::string>(pdf))});
  }
  if (const auto why = write_whole(files)) fault = why->sentence;
  return fault;
}

BatchOutcome run_batch(const Workroom& room, const ListMaker& list, ResultListener& listener) {
  StopSignals signals;
  FoundProjects found = find_projects(room.search());
  for (const std::string& fault : found.faults) listener.say(fault);
  std::vector<FoundProject>& projects = found.projects;
  if (room.order().shards > 0) {
    std::vector<std::string> stems;
    for (const FoundProject& p : projects) stems.push_back(p.stem);
    room.out().clear_temporaries(&stems);
  }

  BatchOutcome outcome;
  outcome.unread = found.unread;
  if (room.order().problem_files)
    for (const std::string& fault : room.clear_problems_of_gone(found)) listener.say(fault);
  InOrder results(projects.size(), room, listener);
  WorkerPool pool(room.order().jobs, room.order().ceilings);
  const auto stop_now = [&] { return signals.asked() > 0 || (!room.order().keep_going && results.counts().failed > 0); };
  const auto wait = [&](int milliseconds) {
    std::vector<pollfd> waited{{signals.fd(), POLLIN, 0}};
    pool.add_to(waited);
    ::poll(waited.data(), static_cast<nfds_t>(waited.size()), milliseconds < 0 ? pool.patience() : milliseconds);
    for (const WorkerAnswer& answer : pool.collect()) results.take(answer.job, room.result_of(projects[answer.job], answer));
    if (signals.asked() > 1) pool.stop_all();  // asked twice: not even the running packets are waited for
  };
  std::size_t next = 0;
  for (; next < projects.size() && !stop_now(); ++next) {
    if (auto done = room.without_making(projects[next])) {
      results.take(next, std::move(*done));
      continue;
    }
    while (!pool.has_room() && !stop_now()) wait(-1);
    if (stop_now()) break;
    pool.start(next, [&] { return room.make(projects[next]); });
    wait(0);
  }
  while (!pool.idle()) wait(-1);
  outcome.stopped = next < projects.size() || signals.asked() > 1;
  outcome.counts = results.counts();
  const std::vector<PacketResult> reached = results.all();
  if (outcome.stopped) return outcome;  // the list of a pass that was not finished would be wrong

  WorkerPool one(1, room.order().ceilings);
  one.start(0, [&] { return write_list(room, reached, list); });
  while (!one.idle()) {
    std::vector<pollfd> waited;
    one.add_to(waited);
    ::poll(waited.data(), static_cast<nfds_t>(waited.size()), one.patience());
    for (const WorkerAnswer& answer : one.collect()) outcome.unwritten = answer.whole ? answer.bytes : answer.fault;
  }
  return outcome;
}

namespace {

bool holds_no_project(const std::vector<std::string>& stems, const std::string& folder) {
  const auto at = std::lower_bound(stems.begin(), stems.end(), folder + "/");
  return at == stems.end() || !at->starts_with(folder + "/");
}

// The program's own folders that would hold nothing when what is listed is gone.
void list_emptied(const Workroom& room, const std::vector<std::string>& stems, Pruned& pruned) {
  std::set<std::string> going(pruned.files.begin(), pruned.files.end());
  for (const std::string& folder : room.out().own_folders()) {
    const auto entries = list_entries(room.out().file(folder));
    const auto goes = [&](const FolderEntry& entry) { return going.count(folder + "/" + entry.name) == 1; };
    if (!entries.ok() || !holds_no_project(stems, folder) || !std::all_of(entries.value->begin(), entries.value->end(), goes))
      continue;
    going.insert(folder);
    pruned.files.push_back(folder + "/");
  }
}

}  // namespace

Pruned prune(const Workroom& room, const FoundProjects& found, bool remove) {
  Pruned pruned;
  std::vector<std::string> stems;
  for (const FoundProject& p : found.projects) stems.push_back(p.stem);
  std::sort(stems.begin(), stems.end());
  const auto is_there = [&](const std::string& stem) { return std::binary_search(stems.begin(), stems.end(), stem); };
  for (const std::string& stem : room.out().recorded()) {
    if (is_there(stem)) continue;
    const auto record = room.out().read_record(stem);
    if (!record) continue;
    const std::string folder = folder_of(stem) == "." ? "" : folder_of(stem) + "/";
    bool all_gone = true;
    for (const MadeFile& file : record->files) {
      const std::string below = folder + file.name;
      const auto bytes = read_below(room.out().path(), below, kLargestOutput);
      if (!bytes.ok() && !exists(room.out().file(below))) continue;
      if (!bytes.ok() || sha256(*bytes.value) != file.hash) {
        pruned.kept.push_back(below);
        continue;
      }
      pruned.files.push_back(below);
      if (!remove) continue;
      if (const auto fault = remove_file(room.out().file(below))) {
        pruned.faults.push_back(fault->sentence);
        all_gone = false;
      }
    }
    if (!remove || !all_gone) continue;
    for (const FileFault& fault : room.out().forget(stem)) pruned.faults.push_back(fault.sentence);
  }
  for (const std::string& stem : room.problems_of_gone(found)) {
    pruned.files.push_back(stem + ".problems.txt");
    if (!remove) continue;
    if (const auto fault = room.out().clear_problems(stem)) pruned.faults.push_back(fault->sentence);
  }
  if (!remove) {
    list_emptied(room, stems, pruned);
    return pruned;
  }
  for (const std::string& stem : room.out().stopped_ones())
    if (!is_there(stem)) room.out().forget(stem);
  for (const std::string& folder : room.out().own_folders()) {
    if (!holds_no_project(stems, folder)) continue;
    if (remove_empty_folder(room.out().file(folder))) pruned.files.push_back(folder + "/");
    if (!exists(room.out().file(folder))) remove_empty_folder(room.out().folder_mark(folder));
  }
  return pruned;
}

}  // namespace gownsheaf
