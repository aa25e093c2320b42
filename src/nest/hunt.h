// One search for a shorter lay: asks again and again whether everything fits in a little less. First it explores, with
// large steps and kicks; then it compresses, with small ones. It runs in slices of work, so that several searches can
// exchange what they found between slices without their speed mattering.
#pragma once
#include <vector>

#include "nest/separation.h"

namespace gownsheaf::nest {

struct Found {
  std::vector<Place> places;
  int length = 0;
};  // a lay without overlap

class Hunt {
 public:
  // first: any lay; least: no lay is shorter; hopeful: a length to begin with, tried if it is below the first lay's.
  Hunt(const World& world, std::uint64_t seed, const Found& first, int least, int hopeful, double first_step);
  // spent: share of the effort used up, 0 to 1, when the slice begins.
  void run_until(std::int64_t work, double spent);
  const Found& best() const { return best_; }
  void adopt(const Found& found);  // another search's lay; if it is no longer than what this one is after, it starts from there
  bool finished() const { return best_.length <= least_; }
  std::int64_t work() const { return separation_.work(); }

 private:
  enum class Stage { opening, exploring, compressing };
  void begin_separating();
  void aim();  // the next target, from the best lay
  void succeeded();
  void failed();
  void one_sweep();

  const World& world_;
  Separation separation_;
  Found best_;
  int least_, target_ = 0;
  Stage stage_ = Stage::opening;
  double step_, spent_ = 0;
  bool finest_ = false;
  double onward_ = 0;  // compressing: the step after a success, if that is more than the time asks for
  std::vector<int> order_;
  // Separation in progress.
  double begun_ = 0;  // share spent by then
  int sweeps_ = 0, idle_ = 0, strikes_ = 0;
  double start_total_ = 0, least_total_ = 0;
  std::vector<Place> least_places_;
  std::vector<std::pair<double, std::vector<Place>>> pool_;
};

}  // namespace gownsheaf::nest
