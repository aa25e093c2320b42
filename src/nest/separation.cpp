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
constexpr int kNear = 25, kKept = 3;
constexpr int kFarAway = std::numeric_limits<int>::max() / 2;

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
  std::size_t most_shapes = 0;
  for (const Kind& kind : world.kinds) most_shapes = std::max(most_shapes, kind.shapes.size());
  seen_.assign(most_shapes, std::vector<Other>(static_cast<std::size_t>(all_)));
  order_of_shape_.assign(world.shapes.size(), 0);
  near_seen_.resize(static_cast<std::size_t>(all_));
  boxes_.fours.resize(static_cast<std::size_t>(all_) / 4 + 1);
  near_boxes_.fours.resize(boxes_.fours.size());
  // Large: of the greatest hulls that together make three quarters of all.
  std::vector<std::pair<double, int>> by_hull;
  double sum = 0, running = 0;
  for (int i = 0; i < n_; ++i) {
    const Shape& s = world.shapes[static_cast<std::size_t>(
        world.kinds[static_cast<std::size_t>(kind_of_[static_cast<std::size_t>(i)])].shapes[0])];
    by_hull.emplace_back(-s.hull_area, i);
    sum += s.hull_area;
  }
  std::sort(by_hull.begin(), by_hull.end());
  for (const auto& [hull, item] : by_hull) by_size_.push_back(item);
  for (int k = n_; k < all_; ++k) by_size_.push_back(k);
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
    if (p.region == world_.open_region())
      most = std::max(most, p.x - open.x0 + world_.shapes[static_cast<std::size_t>(p.shape)].width);
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

void Separation::Boxes::put(int k, int left, int right, int low, int high) {
  Four& four = fours[static_cast<std::size_t>(k) / 4];
  four.left[k % 4] = left;
  four.right[k % 4] = right;
  four.low[k % 4] = low;
  four.high[k % 4] = high;
}

void Separation::Boxes::fill_up() {
  for (int k = count; k % 4 != 0; ++k) put(k, kFarAway, -kFarAway, kFarAway, -kFarAway);
}

inline std::uint64_t Separation::Boxes::meeting(int from, int x, int y, int xe, int ye) const {
  const Four* four = fours.data() + from;
  const int many = std::min((count + 3) / 4 - from, 16);
  std::uint64_t mask = 0;
#ifdef __SSE2__
  const __m128i xl = _mm_set1_epi32(x), yl = _mm_set1_epi32(y), xh = _mm_set1_epi32(xe), yh = _mm_set1_epi32(ye);
  const auto load = [](const int* p) { return _mm_load_si128(reinterpret_cast<const __m128i*>(p)); };
  for (int k = 0; k < many; ++k, ++four) {
    const __m128i a = _mm_and_si128(_mm_cmpgt_epi32(load(four->right), xl), _mm_cmpgt_epi32(xh, load(four->left)));
    const __m128i b = _mm_and_si128(_mm_cmpgt_epi32(load(four->high), yl), _mm_cmpgt_epi32(yh, load(four->low)));
    mask |= static_cast<std::uint64_t>(_mm_movemask_ps(_mm_castsi128_ps(_mm_and_si128(a, b)))) << (4 * k);
  }
#else
  for (int k = 0; k < many; ++k, ++four) {
    for (int i = 0; i < 4; ++i) {
      if (four->right[i] > x && xe > four->left[i] && four->high[i] > y && ye > four->low[i])
        mask |= std::uint64_t{1} << (4 * k + i);
    }
  }
#endif
  return mask;
}

void Separation::gather(int item) {
  const Kind& kind = world_.kinds[static_cast<std::size_t>(kind_of_[static_cast<std::size_t>(item)])];
  const double* weights = row(weight_, item);
  boxes_.count = 0;
  for (const int j : by_size_) {
    if (j == item || !laid_[static_cast<std::size_t>(j)]) continue;
    const Place& p = places_[static_cast<std::size_t>(j)];
    const Shape& s = world_.shapes[static_cast<std::size_t>(p.shape)];
    const int gap = s.obstacle ? 0 : world_.gap;
    const std::size_t k = static_cast<std::size_t>(boxes_.count);
    boxes_.put(boxes_.count++, p.x + s.low.x - gap, p.x + s.high.x + gap, p.y + s.low.y - gap, p.y + s.high.y + gap);
    for (std::size_t n = 0; n < kind.shapes.size(); ++n) {
      seen_[n][k] = {world_.view(kind.shapes[n], p.shape, p.x, p.y), weights[j]};
    }
  }
  for (std::size_t n = 0; n < kind.shapes.size(); ++n)
    order_of_shape_[static_cast<std::size_t>(kind.shapes[n])] = static_cast<int>(n);
  boxes_.fill_up();
}

double Separation::value_at(const Boxes& boxes, const Other* seen, int shape, int x, int y, double bound) const {
  const Shape& s = world_.shapes[static_cast<std::size_t>(shape)];
  const int xl = x + s.low.x, yl = y + s.low.y, xe = x + s.high.x, ye = y + s.high.y;
  double sum = 0;
  for (int k = 0; k < boxes.count; k += 64) {
    for (std::uint64_t mask = boxes.meeting(k / 4, xl, yl, xe, ye); mask != 0; mask &= mask - 1) {
      const Other& o = seen[k + __builtin_ctzll(mask)];
      sum += o.weight * o.view.loss(world_, x, y);
      if (sum >= bound) return sum;
    }
  }
  return sum;
}

double Separation::value_of(const Place& place, double bound) const {
  return value_at(boxes_, seen_[static_cast<std::size_t>(order_of_shape_[static_cast<std::size_t>(place.shape)])].data(),
                  place.shape, place.x, place.y, bound);
}

void Separation::look_around(const Place& place, int far) {
  const Shape& s = world_.shapes[static_cast<std::size_t>(place.shape)];
  const std::vector<Other>& seen = seen_[static_cast<std::size_t>(order_of_shape_[static_cast<std::size_t>(place.shape)])];
  window_low_ = {place.x - far, place.y - far};
  window_high_ = {place.x + far, place.y + far};
  const int xl = window_low_.x + s.low.x, yl = window_low_.y + s.low.y, xe = window_high_.x + s.high.x,
            ye = window_high_.y + s.high.y;
  near_.clear();
  for (int k = 0; k < boxes_.count; k += 64) {
    for (std::uint64_t mask = boxes_.meeting(k / 4, xl, yl, xe, ye); mask != 0; mask &= mask - 1) {
      const int at = k + __builtin_ctzll(mask);
      const Other& o = seen[static_cast<std::size_t>(at)];
      near_.emplace_back(-o.weight * o.view.loss(world_, place.x, place.y), at);
    }
  }
  std::sort(near_.begin(), near_.end());  // the worst first: a trial is given up the sooner
  near_boxes_.count = static_cast<int>(near_.size());
  for (int k = 0; k < near_boxes_.count; ++k) {
    const int from = near_[static_cast<std::size_t>(k)].second;
    const Boxes::Four& four = boxes_.fours[static_cast<std::size_t>(from) / 4];
    near_boxes_.put(k, four.left[from % 4], four.right[from % 4], four.low[from % 4], four.high[from % 4]);
    near_seen_[static_cast<std::size_t>(k)] = seen[static_cast<std::size_t>(from)];
  }
  near_boxes_.fill_up();
}

void Separation::descend(int item, Trial& trial, double first, double last) {
  const int k = kind_of_[static_cast<std::size_t>(item)];
  const Kind& kind = world_.kinds[static_cast<std::size_t>(k)];
  const Range* range = range_of(k, trial.place.shape, trial.place.region);
  const Shape& s = world_.shapes[static_cast<std::size_t>(trial.place.shape)];
  const double side = std::min(s.width, s.height);
  double sx = first * side, sy = first * side;
  const double limit = std::max(1.0, last * side);
  const int far = static_cast<int>(std::min(3.0 * sx, 1.5 * side)) + 1;
  look_around(trial.place, far);
  int axis = dice_.below(4), onward = 0;  // after a step that helped, the next goes the same way: back is where it came from
  int tries = 0;
  while ((sx >= limit || sy >= limit) && trial.value > 0) {
    const double dx = axis == 1 ? 0 : sx, dy = axis == 0 ? 0 : axis == 3 ? -sy : sy;
    Trial best{trial.value, trial.place};
    bool better = false;
    for (const int sign : {1, -1}) {
      if (sign == -onward) continue;
      Place p = trial.place;
      p.x = allowed_x(kind, *range, p.x + sign * dx);
      p.y = allowed_y(kind, *range, p.y + sign * dy);
      if (p.x == trial.place.x && p.y == trial.place.y) continue;
      if (p.x < window_low_.x || p.y < window_low_.y || p.x > window_high_.x || p.y > window_high_.y) look_around(p, far);
      const double value = value_at(near_boxes_, near_seen_.data(), p.shape, p.x, p.y, best.value);
      ++tries;
      if (value < best.value) {
        best = {value, p};
        better = true;
        onward = sign;
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
      onward = 0;
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
  kept[count++] = {value_of(now, kNone), now};
  work_ += trial_cost_;
  if (kept[0].value == 0 && range_of(k, now.shape, now.region) != nullptr) return kept[0];
  const auto same = [&](const Place& a, const Place& b) {
    if (a.shape != b.shape || a.region != b.region) return false;
    const Shape& s = world_.shapes[static_cast<std::size_t>(a.shape)];
    const double near = 0.05 * std::min(s.width, s.height);
    return std::abs(a.x - b.x) < near && std::abs(a.y - b.y) < near;
  };
  for (int t = 0; t < kNear + anywhere_; ++t) {
    const Place p = t < kNear ? near_by(item) : anywhere(k);
    const double bound = count == kKept ? kept[kKept - 1].value : kNone;
    const double value = value_of(p, bound);
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
  for (std::size_t k = order.size(); k-- > 1;)
    std::swap(order[k], order[static_cast<std::size_t>(dice_.below(static_cast<int>(k) + 1))]);
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
