// What the commands batch and watch share: their order from the command line, and how results are told.
#pragma once
#include <optional>

#include "commands/commands.h"
#include "service/batch.h"

namespace gownsheaf {

// Nothing, and a sentence said, where the options are wrong (exit 2).
std::optional<ServiceOrder> service_order_from(const Settings& settings);
// Says why, where it could not be opened (exit 3).
std::unique_ptr<Workroom> open_workroom(const Settings& settings, const ServiceOrder& order);
ListMaker list_maker(const Settings& settings);

// Results on standard output, messages on standard error; on a terminal a line of how far it is.
class Teller : public ResultListener {
 public:
  // news: what is current is told with -v alone, and how far it is not at all.
  explicit Teller(const Settings& settings, bool news = false);
  ~Teller() override { clear_line(); }
  void result(const PacketResult& result) override;
  void progress(std::size_t done, std::size_t of) override;
  void say(const std::string& sentence) override;
  void summary(const PacketCounts& counts);
  // Says so where standard output could not be written.
  bool could_not_tell();

 private:
  void clear_line();

  const Settings& settings_;
  bool news_ = false, terminal_ = false, line_shown_ = false;
};

}  // namespace gownsheaf
