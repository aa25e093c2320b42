#include "service/watch.h"
#include "commands/service.h"
#include "service/signals.h"

namespace gownsheaf {

int run_watch_command(const Settings& settings) {
  std::optional<ServiceOrder> order = service_order_from(settings);
  if (!order) return 2;
  order->problem_files = true;
  const StopSignals heard;  // from now on: process 1 of a container would not hear those that come while fonts are read
  const std::unique_ptr<Workroom> room = open_workroom(settings, *order);
  if (!room) return 3;
  Teller teller(settings, true);
  if (settings.once) {
    const BatchOutcome outcome = run_batch(*room, list_maker(settings), teller);
    teller.summary(outcome.counts);
    if (!outcome.unwritten.empty()) {
      say_fault(settings, "The list of packets was not written. " + outcome.unwritten);
      return 3;
    }
    if (outcome.unread || teller.could_not_tell()) return 3;
    return outcome.counts.failed > 0 || outcome.stopped ? 1 : 0;
  }
  WatchOrder how;
  how.settle = settings.settle;
  how.scan_every = settings.scan_every;
  how.health = settings.health;
  const WatchOutcome outcome = run_watch(*room, how, list_maker(settings), teller);
  teller.summary(outcome.counts);
  return 0;
}

}  // namespace gownsheaf
