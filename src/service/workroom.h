// What batch and watch have in common: the two folders, what all packets share, the question whether a packet is current, and the
// making of one by a worker.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "make_packet.h"
#include "service/find_projects.h"
#include "service/pool.h"
#include "service/record.h"

namespace gownsheaf {

struct ServiceOrder {
  std::string in, out;
  Order packet;  // templates, fonts and the options that win over projects; no project
  int jobs = 1;
  Ceilings ceilings;
  bool trust_paths = false;
  bool keep_going = true;
  int shard = 0, shards = 0;   // this share of so many; 0: all
  bool problem_files = false;  // NAME.problems.txt for what failed
  bool keep_lays = true;       // lays, the slow part, from one making to the next
  // Messages of one project, as they are to be printed; runs in the worker.
  std::function<std::string(const std::vector<Diagnostic>&, const std::vector<SourceText>&, bool failed)> tell;
};

enum class PacketState { made, current, failed };
std::string_view word_for(PacketState state);

struct PacketResult {
  FoundProject project;
  PacketState state = PacketState::failed;
  std::string problem;     // of a failed one: a sentence
  std::string messages;    // as ServiceOrder::tell gave them; with line ends
  std::string errors;      // of a failed one, plain, for its file of problems
  bool unwritten = false;  // nothing is wrong with the project: its packet could not be written, or no worker be had or kept
  std::optional<PacketRecord> record;  // of the packet that is there, which may be an older one
  // Of a failed one: what it was read as, so that it is not tried again while nothing changes. "" where it may go well next time.
  std::string fingerprint;
  std::vector<std::string> drawings;
  bool stopped = false;  // by a ceiling, or the program fell over it: so it would end again
};

class Workroom {
 public:
  // Takes the lock of the out folder, clears what a killed run left, and reads what all packets share. nullptr and a sentence
  // where that cannot be done; messages about templates go to diag.
  static std::unique_ptr<Workroom> open(const ServiceOrder& order, Diagnostics& diag, std::vector<SourceText>& sources,
                                        std::string& fault);

  const ServiceOrder& order() const { return order_; }
  const OutFolder& out() const { return out_; }
  const LoadedOnce& shared() const { return shared_; }
  ProjectSearch search() const;
  int temporaries_cleared() const { return cleared_; }

  // Whether a project that failed would fail alike now: nothing of what it was read as has changed.
  bool fails_still(const FoundProject& project, const PacketResult& before) const;
  // The result, when nothing is to be made: refused, or current.
  std::optional<PacketResult> without_making(const FoundProject& project) const;
  // In a worker: makes and writes the packet; the answer is for result_of.
  std::string make(const FoundProject& project) const;
  PacketResult result_of(const FoundProject& project, const WorkerAnswer& answer) const;
  // Files of problems whose project is gone; none where not everything was looked at. What hindered their removal.
  std::vector<std::string> problems_of_gone(const FoundProjects& found) const;
  std::vector<std::string> clear_problems_of_gone(const FoundProjects& found) const;
  // A failed project's file of problems is written, one that is no more so is removed; and so is the note that it was stopped, which the
  // next run reads. A sentence where that cannot be done.
  std::optional<FileFault> tell_beside(const PacketResult& result) const;

 private:
  Workroom(const ServiceOrder& order) : order_(order), out_(order.out) {}
  bool in_this_share(const std::string& stem) const;
  Order order_for(const FoundProject& project) const;
  std::string fingerprint(const std::string& project_mark) const;
  void note_stopped(const PacketResult& result) const;
  // Of the packet that an earlier run made of it, where that is still there.
  std::optional<PacketRecord> older_packet(const FoundProject& project) const;
  // Of a project as it is now; nothing where it cannot be read.
  std::optional<std::string> fingerprint_now(const FoundProject& project, const std::vector<std::string>& drawings) const;

  ServiceOrder order_;
  OutFolder out_;
  std::string real_out_, standing_mark_;  // of all but the project: program, libraries, templates, fonts, options
  LoadedOnce shared_;
  HeldLock lock_, share_lock_;
  int cleared_ = 0;
};

// A hash of the running program and of each shared library in it.
std::string program_mark();

}  // namespace gownsheaf
