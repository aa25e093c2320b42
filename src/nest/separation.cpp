#include "nest/separation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace gownsheaf::nest {
namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();
constexpr int kNear = 25, kFar = 50, kKept = 3;
constexpr int kFarAway = std::numeric_limits<int>::max() / 2;

// Which of the four others starting at k meet the box from (x, y) to (xe, ye).
inline unsigned meeting(const int* left, const int* right, const int* low, const int* high, int x, int y, int xe, int ye) {
#ifdef __SSE2__
  const auto four = [](const int* p) { return _mm_loadu_si128(reinterpret_cast<const __m128i*>(p)); };
  const __m128i a = _mm_and_si128(_mm_cmpgt_epi32(four(right), _mm_set1_epi32(x)), _mm_cmpgt_epi32(_mm_set1_epi32(xe), four(left)));
  const __m128i b = _mm_and_si128(_mm_cmpgt_epi32(four(high), _mm_set1_epi32(y)), _mm_cmpgt_epi32(_mm_set1_epi32(ye), four(low)));
  return static_cast<unsigned>(_mm_movemask_ps(_mm_castsi128_ps(_mm_and_si128(a, b))));
#else
  unsigned mask = 0;
  for (int i = 0; i < 4; ++i) {
    if (right[i] > x && xe > left[i] && high[i] > y && ye > low[i]) mask |= 1U << i;
  }
  return mask;
#endif
}

}  // namespace

Separation::Separation(const World& world, std::uint64_t seed) : world_(world), dice_(seed) {
  n_ = static_cast<int>(world.items.size());
  all_ = n_ + static_cast<int>(world.obstacles.size());
  stride_ = all_;
  trial_cost_ = world.many_tables() ? 10 : 1 + all_ / 64;
  for (const Item& item : world.items) kind_of_.push_back(item.kind);
  places_.resize(static_cast<std::size_t>(all_));
  laid_.assign(static_cast<std::size_t>(all_), true);
  for (int k = n_; k < all_; ++k) {
    const Fixed& fixed = world.obstacles[static_cast<std::size_t>(k - n_)];
    places_[static_cast<std::size_t>(k)] = {fixed.x, fixed.y, fixed.shape, -1};
  }
  loss_.assign(static_cast<std::size_t>(stride_) * static_cast<std::size_t>(all_), 0.0);
  weight_.assign(loss_.size(), 1.0);
  const std::size_t padded = static_cast<std::size_t>(all_ + 4);
  for (std::vector<int>* v : {&left_, &right_, &low_, &high_, &who_}) v->assign(padded, 0);
  seen_.resize(padded);
  seen_weight_.assign(padded, 1.0);
  // Large: of the greatest hulls that together make three quarters of all.
  std::vector<std::pair<double, int>> by_hull;
  double sum = 0, running = 0;
  for (int i = 0; i < n_; ++i) {
    const Shape& s = world.shapes[static_cast<std::size_t>(world.kinds[static_cast<std::size_t>(kind_of_[static_cast<std::size_t>(i)])].shapes[0])];
    by_hull.emplace_back(-s.hull_area, i);
    sum += s.hull_area;
  }
  std::sort(by_hull.begin(), by_hull.end());
  for (const auto& [hull, item] : by_hull) {
    large_.push_back(item);
    running -= hull;
    if (running > 0.75 * sum) break;
  }
}

const Range* Separation::range_of(int kind, int shape, int region) const {
  for (const Range& r : ranges_[static_cast<std::size_t>(kind)]) {
    if (r.shape == shape && r.region == region) return &r;
  }
  return nullptr;
}

void Separation::set_length(int length) {
  length_ = length;
  ranges_.clear();
  chance_.clear();
  for (const Kind& kind : world_.kinds) {
    ranges_.push_back(ranges_of(world_, kind, length));
    std::vector<double> chance;
    double sum = 0;
    for (const Range& r : ranges_.back()) {
      sum += world_.regions.size() == 1 ? 1.0 : (static_cast<double>(r.x1 - r.x0) + 1) * (static_cast<double>(r.y1 - r.y0) + 1);
      chance.push_back(sum);
    }
    chance_.push_back(std::move(chance));
  }
}

void Separation::pull_in(int from, int by) {
  for (int i = 0; i < n_; ++i) {
    Place& p = places_[static_cast<std::size_t>(i)];
    const int k = kind_of_[static_cast<std::size_t>(i)];
    const Kind& kind = world_.kinds[static_cast<std::size_t>(k)];
    if (p.region == world_.open_region() && p.x + world_.shapes[static_cast<std::size_t>(p.shape)].width / 2 > from) p.x -= by;
    const Range* range = range_of(k, p.shape, p.region);
    if (range == nullptr) {
      p = anywhere(k);
    } else {
      p.x = allowed_x(kind, *range, p.x);
      p.y = allowed_y(kind, *range, p.y);
    }
  }
  refresh_all();
}

void Separation::take(const std::vector<Place>& places) {
  std::copy_n(places.begin(), n_, places_.begin());
  refresh_all();
}

void Separation::forget_weights() { std::fill(weight_.begin(), weight_.end(), 1.0); }

int Separation::used() const {
  int most = 0;
  const Region& open = world_.regions.back();
  for (int i = 0; i < n_; ++i) {
    const Place& p = places_[static_cast<std::size_t>(i)];
    if (p.region == world_.open_region()) most = std::max(most, p.x - open.x0 + world_.shapes[static_cast<std::size_t>(p.shape)].width);
  }
  return most;
}

Place Separation::in_range(const Kind& kind, const Range& range) {
  const int x = dice_.between(range.x0, range.x1), y = dice_.between(range.y0, range.y1);
  return {allowed_x(kind, range, x), allowed_y(kind, range, y), range.shape, range.region};
}

Place Separation::anywhere(int kind) {
  const std::vector<Range>& ranges = ranges_[static_cast<std::size_t>(kind)];
  std::size_t pick = 0;
  if (ranges.size() > 1) {
    const std::vector<double>& chance = chance_[static_cast<std::size_t>(kind)];
    const double at = dice_.unit() * chance.back();
    while (pick + 1 < chance.size() && chance[pick] <= at) ++pick;
  }
  return in_range(world_.kinds[static_cast<std::size_t>(kind)], ranges[pick]);
}

Place Separation::near_by(int item) {
  const Place& now = places_[static_cast<std::size_t>(item)];
  const int k = kind_of_[static_cast<std::size_t>(item)];
  const Kind& kind = world_.kinds[static_cast<std::size_t>(k)];
  const std::vector<Range>& ranges = ranges_[static_cast<std::size_t>(k)];
  int same = 0;
  for (const Range& r : ranges) same += r.region == now.region ? 1 : 0;
  if (same == 0) return anywhere(k);
  int pick = dice_.below(same);
  const Range* range = nullptr;
  for (const Range& r : ranges) {
    if (r.region == now.region && pick-- == 0) {
      range = &r;
      break;
    }
  }
  const Shape& old = world_.shapes[static_cast<std::size_t>(now.shape)];
  const Shape& next = world_.shapes[static_cast<std::size_t>(range->shape)];
  const double x = now.x + dice_.unit() * old.width - next.width / 2.0, y = now.y + dice_.unit() * old.height - next.height / 2.0;
  return {allowed_x(kind, *range, x), allowed_y(kind, *range, y), range->shape, range->region};
}

void Separation::gather(int item) {
  moving_ = item;
  others_ = 0;
  const double* weights = row(weight_, item);
  for (int j = 0; j < all_; ++j) {
    if (j == item || !laid_[static_cast<std::size_t>(j)]) continue;
    const Place& p = places_[static_cast<std::size_t>(j)];
    const Shape& s = world_.shapes[static_cast<std::size_t>(p.shape)];
    const int gap = s.obstacle ? 0 : world_.gap;
    const std::size_t k = static_cast<std::size_t>(others_++);
    left_[k] = p.x + s.low.x - gap;
    right_[k] = p.x + s.high.x + gap;
    low_[k] = p.y + s.low.y - gap;
    high_[k] = p.y + s.high.y + gap;
    seen_[k] = p;
    seen_weight_[k] = weights[j];
    who_[k] = j;
  }
  for (std::size_t k = static_cast<std::size_t>(others_); k % 4 != 0; ++k) {
    left_[k] = low_[k] = kFarAway;
    right_[k] = high_[k] = -kFarAway;
  }
}

double Separation::value_at(int shape, int x, int y, double bound) {
  const Shape& s = world_.shapes[static_cast<std::size_t>(shape)];
  const int xl = x + s.low.x, yl = y + s.low.y, xe = x + s.high.x, ye = y + s.high.y;
  double sum = 0;
  for (int k = 0; k < others_; k += 4) {
    unsigned mask = meeting(left_.data() + k, right_.data() + k, low_.data() + k, high_.data() + k, xl, yl, xe, ye);
    while (mask != 0) {
      const std::size_t j = static_cast<std::size_t>(k + __builtin_ctz(mask));
      mask &= mask - 1;
      const Place& p = seen_[j];
      const double loss = world_.loss(shape, p.shape, p.x - x, p.y - y);
      if (loss > 0) {
        sum += seen_weight_[j] * loss;
        if (sum >= bound) return sum;
      }
    }
  }
  return sum;
}

void Separation::descend(int item, Trial& trial, double first, double last) {
  const int k = kind_of_[static_cast<std::size_t>(item)];
  const Kind& kind = world_.kinds[static_cast<std::size_t>(k)];
  const Range* range = range_of(k, trial.place.shape, trial.place.region);
  const Shape& s = world_.shapes[static_cast<std::size_t>(trial.place.shape)];
  const double side = std::min(s.width, s.height);
  double sx = first * side, sy = first * side;
  const double limit = std::max(1.0, last * side);
  int axis = dice_.below(4);
  int tries = 0;
  while ((sx >= limit || sy >= limit) && trial.value > 0) {
    const double dx = axis == 1 ? 0 : sx, dy = axis == 0 ? 0 : axis == 3 ? -sy : sy;
    Trial best{trial.value, trial.place};
    bool better = false;
    for (const double sign : {1.0, -1.0}) {
      Place p = trial.place;
      p.x = allowed_x(kind, *range, p.x + sign * dx);
      p.y = allowed_y(kind, *range, p.y + sign * dy);
      if (p.x == trial.place.x && p.y == trial.place.y) continue;
      const double value = value_at(p.shape, p.x, p.y, best.value);
      ++tries;
      if (value < best.value) {
        best = {value, p};
        better = true;
      }
    }
    if (better) {
      trial = best;
      if (axis != 1) sx *= 1.1;
      if (axis != 0) sy *= 1.1;
    } else {
      const double less = axis >= 2 ? 0.7071067811865476 : 0.5;
      if (axis != 1) sx *= less;
      if (axis != 0) sy *= less;
      axis = dice_.below(4);
    }
  }
  work_ += tries * trial_cost_;
}

Separation::Trial Separation::find(int item) {
  gather(item);
  const int k = kind_of_[static_cast<std::size_t>(item)];
  Trial kept[kKept];
  int count = 0;
  const Place& now = places_[static_cast<std::size_t>(item)];
  kept[count++] = {value_at(now.shape, now.x, now.y, kNone), now};
  work_ += trial_cost_;
  if (kept[0].value == 0 && range_of(k, now.shape, now.region) != nullptr) return kept[0];
  const auto same = [&](const Place& a, const Place& b) {
    if (a.shape != b.shape || a.region != b.region) return false;
    const Shape& s = world_.shapes[static_cast<std::size_t>(a.shape)];
    const double near = 0.05 * std::min(s.width, s.height);
    return std::abs(a.x - b.x) < near && std::abs(a.y - b.y) < near;
  };
  for (int t = 0; t < kNear + kFar; ++t) {
    const Place p = t < kNear ? near_by(item) : anywhere(k);
    const double bound = count == kKept ? kept[kKept - 1].value : kNone;
    const double value = value_at(p.shape, p.x, p.y, bound);
    work_ += trial_cost_;
    if (value >= bound) continue;
    int at = count;
    for (int i = 0; i < count; ++i) {
      if (same(kept[i].place, p)) at = i;
    }
    if (at < count && kept[at].value <= value) continue;
    if (at == count && count < kKept) ++count;
    if (at >= kKept) at = kKept - 1;
    for (; at > 0 && kept[at - 1].value > value; --at) kept[at] = kept[at - 1];
    kept[at] = {value, p};
    if (value == 0) return kept[at];
  }
  int best = 0;
  for (int i = 0; i < count; ++i) {
    descend(item, kept[i], 0.25, 0.02);
    if (kept[i].value < kept[best].value) best = i;
    if (kept[i].value == 0) return kept[i];
  }
  descend(item, kept[best], 0.01, 0.001);
  return kept[best];
}

void Separation::move(int item, const Place& place) {
  places_[static_cast<std::size_t>(item)] = place;
  refresh_row(item);
}

void Separation::refresh_row(int i) {
  const Place& p = places_[static_cast<std::size_t>(i)];
  const Shape& s = world_.shapes[static_cast<std::size_t>(p.shape)];
  double* losses = row(loss_, i);
  for (int j = 0; j < all_; ++j) {
    double loss = 0;
    if (j != i) {
      const Place& q = places_[static_cast<std::size_t>(j)];
      const Shape& t = world_.shapes[static_cast<std::size_t>(q.shape)];
      const int gap = s.obstacle || t.obstacle ? 0 : world_.gap;
      if (p.x + s.low.x < q.x + t.high.x + gap && q.x + t.low.x < p.x + s.high.x + gap && p.y + s.low.y < q.y + t.high.y + gap &&
          q.y + t.low.y < p.y + s.high.y + gap) {
        loss = i < j ? world_.loss(p.shape, q.shape, q.x - p.x, q.y - p.y) : world_.loss(q.shape, p.shape, p.x - q.x, p.y - q.y);
      }
    }
    losses[j] = loss;
    loss_[static_cast<std::size_t>(j) * static_cast<std::size_t>(stride_) + static_cast<std::size_t>(i)] = loss;
  }
}

void Separation::refresh_all() {
  total_ = 0;
  for (int i = 0; i < n_; ++i) refresh_row(i);
  for (int i = 0; i < n_; ++i) {
    const double* losses = row(loss_, i);
    for (int j = i + 1; j < all_; ++j) total_ += losses[j];
  }
}

void Separation::start_over(const std::vector<int>& order) {
  std::fill(laid_.begin(), laid_.begin() + n_, false);
  forget_weights();
  for (const int i : order) {
    places_[static_cast<std::size_t>(i)] = anywhere(kind_of_[static_cast<std::size_t>(i)]);
    places_[static_cast<std::size_t>(i)] = find(i).place;
    laid_[static_cast<std::size_t>(i)] = true;
  }
  refresh_all();
}

void Separation::sweep() {
  std::vector<int> order;
  for (int i = 0; i < n_; ++i) {
    const double* losses = row(loss_, i);
    for (int j = 0; j < all_; ++j) {
      if (losses[j] > 0) {
        order.push_back(i);
        break;
      }
    }
  }
  for (std::size_t k = order.size(); k-- > 1;) std::swap(order[k], order[static_cast<std::size_t>(dice_.below(static_cast<int>(k) + 1))]);
  for (const int i : order) {
    const double* losses = row(loss_, i);
    bool still = false;
    for (int j = 0; j < all_ && !still; ++j) still = losses[j] > 0;
    if (still) move(i, find(i).place);
  }
  total_ = 0;
  double most = 0;
  for (int i = 0; i < n_; ++i) {
    const double* losses = row(loss_, i);
    for (int j = i + 1; j < all_; ++j) {
      total_ += losses[j];
      most = std::max(most, losses[j]);
    }
  }
  for (int i = 0; i < n_; ++i) {
    const double* losses = row(loss_, i);
    double* weights = row(weight_, i);
    for (int j = i + 1; j < all_; ++j) {
      double& w = weights[j];
      if (losses[j] > 0) {
        w = std::min(w * (kUpLeast + (kUpMost - kUpLeast) * losses[j] / most), 1e60);
      } else if (w > 1) {
        w = std::max(1.0, w * kDecay);
      } else {
        continue;
      }
      weight_[static_cast<std::size_t>(j) * static_cast<std::size_t>(stride_) + static_cast<std::size_t>(i)] = w;
    }
  }
}

}  // namespace gownsheaf::nest
