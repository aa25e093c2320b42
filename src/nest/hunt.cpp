#include "nest/hunt.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gownsheaf::nest {
namespace {

constexpr double kExplore = 0.8;       // share of the effort
constexpr double kFinestStep = 0.001;  // of the length, exploring
constexpr double kLongestTry = 0.03;   // share of the effort for one step that is not the finest yet,
constexpr int kLeastTry = 20;          // but no fewer sweeps
constexpr double kCompressFirst = 0.0005, kCompressLast = 0.00001;
constexpr double kOnward = 1.3, kOnwardMost = 0.002;  // many parts: compressing succeeds time after time, and may do more
constexpr std::size_t kPool = 50;
constexpr std::size_t kStubborn = 5;  // tries that failed at one length, after which they are longer

}  // namespace

Hunt::Hunt(const World& world, std::uint64_t seed, const Found& first, int least, int hopeful, double first_step)
    : world_(world), separation_(world, seed), best_(first), least_(least), step_(first_step) {
  for (int i = 0; i < static_cast<int>(world.items.size()); ++i) order_.push_back(i);
  const auto size = [&](int i) {
    return world.kinds[static_cast<std::size_t>(world.items[static_cast<std::size_t>(i)].kind)].size;
  };
  std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) { return size(a) > size(b); });
  if (finished()) return;
  if (hopeful < best_.length) {
    target_ = std::max(least_, hopeful);
    separation_.set_length(target_);
    separation_.start_over(order_);
    begin_separating();
  } else {
    stage_ = Stage::exploring;
    aim();
  }
}

void Hunt::begin_separating() {
  separation_.forget_weights();
  begun_ = spent_;
  sweeps_ = 0;
  separation_.look_far(stage_ != Stage::compressing && (!finest_ || pool_.size() >= kStubborn));
  idle_ = strikes_ = 0;
  start_total_ = least_total_ = separation_.total();
  least_places_ = separation_.places();
}

void Hunt::aim() {
  double step = step_;
  if (stage_ == Stage::compressing) {
    const double left = std::clamp((1 - spent_) / (1 - kExplore), 0.0, 1.0);
    step = std::max(kCompressLast + (kCompressFirst - kCompressLast) * left, onward_);
    onward_ = std::min(step * kOnward, kOnwardMost);
  }
  const int by = std::max(1, static_cast<int>(best_.length * step));
  target_ = std::max(least_, best_.length - by);
  const int x0 = world_.regions.back().x0;
  separation_.set_length(target_);
  separation_.take(best_.places);
  const int from = stage_ == Stage::compressing ? separation_.dice().between(0, best_.length) : best_.length / 2;
  separation_.pull_in(x0 + from, best_.length - target_);
  begin_separating();
}

void Hunt::succeeded() {
  const int used = separation_.used();
  if (used < best_.length) best_ = {separation_.places(), used};
  pool_.clear();
  if (stage_ == Stage::opening) stage_ = Stage::exploring;
  if (!finished()) aim();
}

void Hunt::failed() {
  if (stage_ == Stage::opening) {
    target_ = static_cast<int>(target_ * 1.04) + 1;
    if (target_ < best_.length) {
      separation_.set_length(target_);
      separation_.pull_in(0, 0);
      begin_separating();
      return;
    }
    stage_ = Stage::exploring;
    aim();
  } else if (stage_ == Stage::compressing) {
    onward_ = 0;
    aim();
  } else if (!finest_) {
    step_ /= 2;
    if (step_ <= kFinestStep) {
      step_ = kFinestStep;
      finest_ = true;
    }
    aim();
  } else {
    pool_.emplace_back(least_total_, least_places_);
    std::stable_sort(pool_.begin(), pool_.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    if (pool_.size() > kPool) pool_.pop_back();
    double z = -6;  // nearly normal
    for (int i = 0; i < 12; ++i) z += separation_.dice().unit();
    const double at = std::min(std::abs(z) * 0.25, 0.999);
    separation_.take(pool_[static_cast<std::size_t>(at * static_cast<double>(pool_.size()))].second);
    separation_.kick();
    begin_separating();
  }
}

void Hunt::one_sweep() {
  const bool compressing = stage_ == Stage::compressing;
  const int most_idle = compressing ? 100 : stage_ == Stage::opening ? 50 : 200;
  const int most_strikes = compressing ? 5 : pool_.size() >= 2 * kStubborn ? 3 : pool_.size() >= kStubborn ? 2 : 1;
  separation_.sweep();
  ++sweeps_;
  const double total = separation_.total();
  if (total == 0) {
    succeeded();
    return;
  }
  if (total < least_total_) {
    if (total < 0.98 * least_total_) idle_ = 0;
    least_total_ = total;
    least_places_ = separation_.places();
  } else {
    ++idle_;
  }
  if (stage_ == Stage::exploring && !finest_ && sweeps_ >= kLeastTry && spent_ - begun_ > kLongestTry) {
    failed();
    return;
  }
  if (idle_ < most_idle) return;
  strikes_ = least_total_ < 0.98 * start_total_ ? 0 : strikes_ + 1;
  if (strikes_ >= most_strikes) {
    failed();
    return;
  }
  separation_.take(least_places_);
  start_total_ = least_total_;
  idle_ = 0;
}

void Hunt::run_until(std::int64_t work, double spent) {
  spent_ = spent;
  if (finished()) return;
  if (stage_ != Stage::compressing && spent >= kExplore) {
    stage_ = Stage::compressing;
    pool_.clear();
    aim();
  }
  while (!finished() && separation_.work() < work) {
    if (separation_.total() == 0) {
      succeeded();
    } else {
      one_sweep();
    }
  }
}

void Hunt::adopt(const Found& found) {
  if (found.length >= best_.length) return;
  best_ = found;
  if (finished() || found.length > target_) return;
  pool_.clear();
  if (stage_ == Stage::opening) stage_ = Stage::exploring;
  aim();
}

}  // namespace gownsheaf::nest
