#include <cstdio>

#include "commands/service.h"
#include "diagnostics/shown.h"
#include "service/results_json.h"
#include "service/signals.h"

namespace gownsheaf {
namespace {

int run_prune(const Settings& settings, const Workroom& room) {
  const FoundProjects found = find_projects(room.search());
  const bool remove = settings.prune == "remove";
  if (!found.faults.empty()) {  // a folder that cannot be read may hold the projects
    for (const std::string& fault : found.faults) say_fault(settings, fault);
    say_fault(settings, "Not everything could be looked at, so nothing is called gone.");
    return 3;
  }
  // A disk that is not there, or another folder's name, must not cost all packets.
  if (remove && found.projects.empty() && !room.out().recorded().empty()) {
    say_fault(settings, "`" + room.order().in +
                            "` holds no project at all, so it may not be the folder of these packets: nothing was removed.");
    return 3;
  }
  const Pruned pruned = prune(room, found, remove);
  for (const std::string& file : pruned.files) {
    if (settings.log == LogForm::json) std::fputs(pruned_json_line(file, remove).c_str(), stdout);
    else std::printf("%s  %s\n", remove ? "removed" : "gone   ", shown::safe(file).c_str());
  }
  for (const std::string& file : pruned.kept) say_fault(settings, "`" + file + "` was changed since it was made, so it is left.");
  for (const std::string& fault : pruned.faults) say_fault(settings, fault);
  if (!remove && !pruned.files.empty()) say_fault(settings, "These packets' projects are gone; `--prune remove` removes them.");
  return pruned.faults.empty() ? 0 : 3;
}

}  // namespace

int run_batch_command(const Settings& settings) {
  const std::optional<ServiceOrder> order = service_order_from(settings);
  if (!order) return 2;
  if (!settings.prune.empty() && order->shards > 0) {
    say_fault(settings, "`--prune` looks at all projects: leave out `--shard`.");
    return 2;
  }
  std::optional<StopSignals> heard;  // from now on: process 1 of a container would not hear those that come while fonts are read
  if (settings.prune.empty()) heard.emplace();
  const std::unique_ptr<Workroom> room = open_workroom(settings, *order);
  if (!room) return 3;
  if (!settings.prune.empty()) return run_prune(settings, *room);
  Teller teller(settings);
  const BatchOutcome outcome = run_batch(*room, list_maker(settings), teller);
  teller.summary(outcome.counts);
  if (outcome.stopped) say_fault(settings, "Stopped before the end; what was made is whole, and the rest is made next time.");
  if (!outcome.unwritten.empty()) {
    say_fault(settings, "The list of packets was not written. " + outcome.unwritten);
    return 3;
  }
  if (outcome.unread || teller.could_not_tell()) return 3;
  return outcome.counts.failed > 0 || outcome.stopped ? 1 : 0;
}

}  // namespace gownsheaf
