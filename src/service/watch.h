// The service: a folder is watched, and packets are made as projects arrive or change. It sleeps until the system tells of something.
#pragma once
#include <string>

#include "service/batch.h"

namespace gownsheaf {

struct WatchOrder {
  int settle = 400;    // milliseconds without news of a file before it is read
  int scan_every = 0;  // seconds between looks at everything, where files come without news (from another machine); 0: never
  int retry = 60'000;  // milliseconds until a packet that could not be written is tried again
  std::string health;  // a file that says how it goes; "" none
};

struct WatchOutcome {
  PacketCounts counts;
};  // of all packets since it began

// Until SIGINT or SIGTERM: then the running packets are finished, at the second one they are not.
WatchOutcome run_watch(const Workroom& room, const WatchOrder& order, const ListMaker& list, ResultListener& listener);

}  // namespace gownsheaf
