// Items that may overlap, moved one at a time to where they overlap least, until none does: separation with guided local
// search (Gardeyn, Vanden Berghe, Wauters 2025; weights after Voudouris and Tsang 1999, Egeblad and others 2007).
#pragma once
#include <vector>

#include "nest/dice.h"
#include "nest/world.h"

namespace gownsheaf::nest {

class Separation {
 public:
  Separation(const World& world, std::uint64_t seed);

  int length() const { return length_; }
  void set_length(int length);  // of the open strip; items are put back inside it
  // Items of the open strip whose middle lies beyond `from` move left by `by`.
  void pull_in(int from, int by);
  void start_over(const std::vector<int>& order);  // places the items anew, one after another, where they overlap least
  void take(const std::vector<Place>& places);
  const std::vector<Place>& places() const { return places_; }
  void forget_weights();
  double total() const { return total_; }  // losses of all pairs, unweighted; 0 = a lay
  // How many places a find tries anywhere on the cloth; among many different parts each is dear.
  void look_far(bool far) { anywhere_ = far && !world_.many_tables() ? 50 : 25; }
  void sweep();      // every overlapping item once, then new weights
  void kick();       // two large items change places, or one goes somewhere else
  int used() const;  // right-most end in the open strip
  std::int64_t work() const { return work_; }
  Dice& dice() { return dice_; }

  static constexpr double kUpLeast = 1.1, kUpMost = 1.5, kDecay = 0.95;

 private:
  struct Trial {
    double value;
    Place place;
  };
  struct Other {
    World::View view;
    double weight;
  };  // another item as the one being moved sees it, in one of that one's shapes
  // Boxes of others, four to a step.
  struct Boxes {
    struct alignas(64) Four {
      int left[4], right[4], low[4], high[4];
    };
    int count = 0;
    std::vector<Four> fours;
    void put(int k, int left, int right, int low, int high);
    void fill_up();  // to a multiple of four
    // Which of the 64 that begin with four number `from` meet the box from (x, y) to (xe, ye).
    std::uint64_t meeting(int from, int x, int y, int xe, int ye) const;
  };
  void gather(int item);
  void look_around(const Place& place, int far);  // those that matter while the place is no farther than that from here
  double value_at(const Boxes& boxes, const Other* seen, int shape, int x, int y, double bound) const;
  double value_of(const Place& place, double bound) const;
  Trial find(int item);
  void descend(int item, Trial& trial, double first, double last);
  Place anywhere(int kind);
  Place near_by(int item);
  Place in_range(const Kind& kind, const Range& range);
  void move(int item, const Place& place);
  void refresh_row(int item);
  void refresh_all();
  double* row(std::vector<double>& matrix, int item) { return matrix.data() + static_cast<std::ptrdiff_t>(item) * stride_; }
  const Range* range_of(int kind, int shape, int region) const;

  const World& world_;
  Dice dice_;
  int length_ = 0, n_ = 0, all_ = 0, stride_ = 0;  // items; items and obstacles; row length
  std::vector<Place> places_;
  std::vector<int> kind_of_;  // of each item
  std::vector<bool> laid_;
  std::vector<double> loss_, weight_;        // square, symmetric; obstacles come after the items
  std::vector<std::vector<Range>> ranges_;   // of each kind
  std::vector<std::vector<double>> chance_;  // running sums, where there is more than one strip
  double total_ = 0;
  int anywhere_ = 50;
  std::int64_t work_ = 0, trial_cost_ = 1;  // a trial among many parts counts for more
  std::vector<int> large_;
  std::vector<int> by_size_;  // largest first: what a trial meets first, it is most likely given up for
  // The others; and those near the place where it is being tried.
  Boxes boxes_, near_boxes_;
  std::vector<std::vector<Other>> seen_;  // by the moving item's shapes, in the order of its kind
  std::vector<int> order_of_shape_;       // which of them a shape is
  std::vector<Other> near_seen_;
  std::vector<std::pair<double, int>> near_;
  Corner window_low_, window_high_;  // of places for which these will do
};

}  // namespace gownsheaf::nest
