// One pass over a folder of projects: what is current is left, the rest is made by workers, and a list of all is written.
#pragma once
#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "service/workroom.h"

namespace gownsheaf {

// Told what happens, in the order of the projects' paths.
class ResultListener {
 public:
  virtual ~ResultListener() = default;
  virtual void result(const PacketResult& result) = 0;
  virtual void progress(std::size_t done, std::size_t of) = 0;  // as it goes, in no order
  virtual void say(const std::string& sentence) = 0;            // what the maker should know besides
};

struct PacketCounts {
  std::size_t made = 0, current = 0, failed = 0;
};

struct BatchOutcome {
  PacketCounts counts;
  bool stopped = false;   // a signal came, or the first failure where that ends it
  std::string unwritten;  // the list could not be written: why
  bool unread = false;    // a folder could not be read: there may be more projects
};

// The list of packets as a PDF; runs in a worker. A fault is a sentence.
using ListMaker =
    std::function<std::variant<std::string, FileFault>(const Workroom& room, const std::vector<PacketResult>& results)>;

BatchOutcome run_batch(const Workroom& room, const ListMaker& list, ResultListener& listener);

// index.pdf and batch.json, written by a worker: the list is made of strangers' words too. What hindered it, or "".
std::string write_list(const Workroom& room, const std::vector<PacketResult>& results, const ListMaker& list);

// Outputs whose project is gone: listed, and removed where `remove` says so and their bytes are still those that were made.
// Folders that the program made and that are empty then go with them; they end in a slash.
struct Pruned {
  std::vector<std::string> files, kept, faults;
};
Pruned prune(const Workroom& room, const FoundProjects& found, bool remove);

}  // namespace gownsheaf
