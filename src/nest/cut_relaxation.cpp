// The linear relaxation over cutting patterns by column generation, in fixed point: the simplex may err in its last
// places, the bound may not. It is taken from whole prices, against which the best pattern of each kind is searched.
#include <algorithm>

#include "nest/cut_patterns.h"

namespace gownsheaf::nest {
namespace {

constexpr std::int64_t kOne = std::int64_t{1} << kPartBits;
constexpr std::int64_t kTiny = std::int64_t{1} << 18;
constexpr int kMostRounds = 3000;
constexpr std::int64_t kMostCells = 400'000;  // of the table of the knapsack
constexpr std::int64_t kFewNodes = 4'000;     // of its search before the table is made
constexpr std::int64_t kMostNodes = 20'000;   // of its search where the table is too large

std::int64_t product(std::int64_t a, std::int64_t b) {
  return static_cast<std::int64_t>((static_cast<Int128>(a) * b) >> kPartBits);
}

class Master {
 public:
  Master(const CutProblem& problem, int bits) : problem_(problem), bits_(bits) {
    sizes_ = problem.size.size();
    for (std::size_t j = 0; j < problem.kinds.size(); ++j) {
      row_of_kind_.push_back(problem.kinds[j].number >= 0 ? static_cast<int>(sizes_ + limited_.size()) : -1);
      if (problem.kinds[j].number >= 0) limited_.push_back(j);
    }
    rows_ = sizes_ + limited_.size();
    inverse_.assign(rows_, std::vector<std::int64_t>(rows_, 0));
    basis_.resize(rows_);
    level_.assign(rows_, 0);
    for (std::size_t i = 0; i < sizes_; ++i) {
      basis_[i] = alone(i);
      const std::int64_t copies = basis_[i].count[i];
      inverse_[i][i] = kOne / copies;
      level_[i] = static_cast<std::int64_t>(static_cast<Int128>(problem.wanted[i]) * kOne / copies);
    }
    for (std::size_t k = sizes_; k < rows_; ++k) {
      basis_[k].kind = -1;  // what is left of a limited kind
      inverse_[k][k] = kOne;
      level_[k] = problem.kinds[limited_[k - sizes_]].number * kOne;
    }
  }

  std::vector<std::int64_t> prices() const {
    std::vector<Int128> sum(rows_, 0);
    for (std::size_t k = 0; k < rows_; ++k) {
      if (basis_[k].kind < 0) continue;
      const Int128 cost = static_cast<Int128>(problem_.kinds[static_cast<std::size_t>(basis_[k].kind)].cost) << bits_;
      if (cost == 0) continue;
      for (std::size_t i = 0; i < rows_; ++i) sum[i] += cost * inverse_[k][i];
    }
    std::vector<std::int64_t> out(rows_);
    for (std::size_t i = 0; i < rows_; ++i) out[i] = static_cast<std::int64_t>(sum[i] >> kPartBits);
    return out;
  }
  std::int64_t rent(const std::vector<std::int64_t>& prices, std::size_t kind) const {
    const int row = row_of_kind_[kind];
    return row < 0 ? 0 : std::max<std::int64_t>(0, -prices[static_cast<std::size_t>(row)]);
  }

  bool enter(const Pattern& pattern) {
    std::vector<std::int64_t> column(rows_, 0);
    const int kind_row = row_of_kind_[static_cast<std::size_t>(pattern.kind)];
    for (std::size_t k = 0; k < rows_; ++k) {
      Int128 sum = 0;
      for (std::size_t i = 0; i < sizes_; ++i)
        if (pattern.count[i] != 0) sum += static_cast<Int128>(inverse_[k][i]) * pattern.count[i];
      if (kind_row >= 0) sum += inverse_[k][static_cast<std::size_t>(kind_row)];
      column[k] = static_cast<std::int64_t>(sum);
    }
    std::size_t out = rows_;
    for (std::size_t k = 0; k < rows_; ++k) {
      if (column[k] <= kTiny) continue;
      if (out == rows_) {
        out = k;
        continue;
      }
      const Int128 here = static_cast<Int128>(level_[k]) * column[out], best = static_cast<Int128>(level_[out]) * column[k];
      if (here < best || (here == best && column[k] > column[out])) out = k;
    }
    if (out == rows_) return false;
    const std::int64_t pivot = column[out];
    for (std::int64_t& v : inverse_[out]) v = static_cast<std::int64_t>(static_cast<Int128>(v) * kOne / pivot);
    level_[out] = static_cast<std::int64_t>(static_cast<Int128>(level_[out]) * kOne / pivot);
    for (std::size_t k = 0; k < rows_; ++k) {
      if (k == out || column[k] == 0) continue;
      for (std::size_t i = 0; i < rows_; ++i)
        if (inverse_[out][i] != 0) inverse_[k][i] -= product(column[k], inverse_[out][i]);
      level_[k] = std::max<std::int64_t>(0, level_[k] - product(column[k], level_[out]));
    }
    basis_[out] = pattern;
    return true;
  }

  std::vector<std::pair<Pattern, std::int64_t>> used() const {
    std::vector<std::pair<Pattern, std::int64_t>> out;
    for (std::size_t k = 0; k < rows_; ++k)
      if (basis_[k].kind >= 0 && level_[k] > kTiny) out.emplace_back(basis_[k], level_[k]);
    return out;
  }
  std::size_t rows() const { return rows_; }

 private:
  // As many of one size as a bar holds, from the kind that is cheapest for one.
  Pattern alone(std::size_t i) const {
    Pattern best;
    best.kind = -1;
    std::int64_t best_copies = 0;
    for (std::size_t j = 0; j < problem_.kinds.size(); ++j) {
      const CutKind& kind = problem_.kinds[j];
      if (kind.number >= 0 || (!kind.single && kind.room < problem_.size[i])) continue;
      const std::int64_t copies = kind.single ? 1 : std::min(kind.room / problem_.size[i], problem_.wanted[i]);
      if (best.kind >= 0 && static_cast<Int128>(kind.cost) * best_copies >=
                                static_cast<Int128>(problem_.kinds[static_cast<std::size_t>(best.kind)].cost) * copies)
        continue;
      best.kind = static_cast<int>(j);
      best_copies = copies;
    }
    best.count.assign(sizes_, 0);
    best.count[i] = best_copies;
    return best;
  }

  const CutProblem& problem_;
  int bits_;
  std::size_t sizes_ = 0, rows_ = 0;
  std::vector<int> row_of_kind_;
  std::vector<std::size_t> limited_;
  std::vector<std::vector<std::int64_t>> inverse_;
  std::vector<Pattern> basis_;
  std::vector<std::int64_t> level_;
};

std::vector<Worth> by_table(const CutProblem& p, const std::vector<std::int64_t>& price, std::int64_t most_room) {
  const auto room = static_cast<std::size_t>(most_room);
  std::vector<std::int64_t> worth(room + 1, 0);
  std::vector<std::vector<std::uint16_t>> taken(p.size.size());
  for (std::size_t i = 0; i < p.size.size(); ++i) {
    if (price[i] <= 0) continue;
    taken[i].assign(room + 1, 0);
    const auto size = static_cast<std::size_t>(p.size[i]);
    for (std::size_t c = room; c >= size; --c) {
      const auto copies = std::min<std::int64_t>(p.wanted[i], static_cast<std::int64_t>(c / size));
      std::int64_t best = worth[c];
      for (std::int64_t k = 1; k <= copies; ++k) {
        const std::int64_t w = worth[c - static_cast<std::size_t>(k) * size] + k * price[i];
        if (w > best) {
          best = w;
          taken[i][c] = static_cast<std::uint16_t>(k);
        }
      }
      worth[c] = best;
    }
  }
  std::vector<Worth> out;
  for (const CutKind& kind : p.kinds) {
    Worth w;
    w.count.assign(p.size.size(), 0);
    auto c = static_cast<std::size_t>(kind.single ? 0 : kind.room);
    w.found = w.at_most = worth[c];
    for (std::size_t i = p.size.size(); i-- > 0;) {
      if (taken[i].empty()) continue;
      w.count[i] = taken[i][c];
      c -= static_cast<std::size_t>(w.count[i] * p.size[i]);
    }
    out.push_back(std::move(w));
  }
  return out;
}

// Depth first in the order of price by length, pruned by the next price spread over the room that is left.
class Knapsack {
 public:
  Knapsack(const CutProblem& p, const std::vector<std::int64_t>& price, std::int64_t most_nodes)
      : p_(p), price_(price), most_nodes_(most_nodes) {
    for (std::size_t i = 0; i < p.size.size(); ++i)
      if (price[i] > 0) order_.push_back(i);
    std::sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      const Int128 x = static_cast<Int128>(price[a]) * p.size[b], y = static_cast<Int128>(price[b]) * p.size[a];
      return x != y ? x > y : a < b;
    });
    for (const std::size_t i : order_)
      ratio_.push_back(((static_cast<Int128>(price[i]) << kRatioBits) + p.size[i] - 1) / p.size[i]);
  }
  Worth best(std::int64_t room, Effort& effort) {
    now_.assign(p_.size.size(), 0);
    best_ = Worth{0, 0, now_};
    nodes_ = 0;
    const std::int64_t top = above(0, room);
    go(0, room, 0);
    best_.at_most = nodes_ > most_nodes_ ? top : best_.found;
    effort.done += nodes_ / 8 + 1;
    return best_;
  }

 private:
  std::int64_t above(std::size_t k, std::int64_t room) const {
    if (k == order_.size()) return 0;
    return static_cast<std::int64_t>((static_cast<Int128>(room) * ratio_[k]) >> kRatioBits);
  }
  void go(std::size_t k, std::int64_t room, std::int64_t worth) {
    if (worth > best_.found) {
      best_.found = worth;
      best_.count = now_;
    }
    if (k == order_.size() || ++nodes_ > most_nodes_ || worth + above(k, room) <= best_.found) return;
    const std::size_t i = order_[k];
    for (std::int64_t n = std::min(p_.wanted[i], room / p_.size[i]); n >= 0; --n) {
      now_[i] = n;
      go(k + 1, room - n * p_.size[i], worth + n * price_[i]);
      now_[i] = 0;
      if (nodes_ > most_nodes_) return;
    }
  }
  const CutProblem& p_;
  const std::vector<std::int64_t>& price_;
  static constexpr int kRatioBits = 20;
  std::vector<std::size_t> order_;
  std::vector<Int128> ratio_;  // price by length, rounded up
  std::vector<std::int64_t> now_;
  Worth best_;
  std::int64_t most_nodes_, nodes_ = 0;
};

void take_single(const CutProblem& p, const std::vector<std::int64_t>& price, Worth& worth) {
  worth = Worth{0, 0, std::vector<std::int64_t>(p.size.size(), 0)};
  std::size_t best = 0;
  for (std::size_t i = 1; i < p.size.size(); ++i)
    if (price[i] > price[best]) best = i;
  if (price[best] <= 0) return;
  worth.found = worth.at_most = price[best];
  worth.count[best] = 1;
}

// Prices that no pattern of an unlimited kind passes: all are made smaller by the worst excess.
void take_bound(const CutProblem& p, const std::vector<std::int64_t>& prices, const std::vector<Worth>& worth, Relaxed& out) {
  Int128 times = 1, over = 1;
  for (std::size_t j = 0; j < p.kinds.size(); ++j) {
    const Int128 cost = static_cast<Int128>(p.kinds[j].cost) << out.bits;
    if (p.kinds[j].number >= 0 || worth[j].at_most <= cost) continue;
    if (cost * over < times * worth[j].at_most) {
      times = cost;
      over = worth[j].at_most;
    }
  }
  out.price.resize(p.size.size());
  out.scaled_bound = 0;
  for (std::size_t i = 0; i < p.size.size(); ++i) {
    out.price[i] = static_cast<std::int64_t>(static_cast<Int128>(prices[i]) * times / over);
    out.scaled_bound += static_cast<Int128>(out.price[i]) * p.wanted[i];
  }
  out.rent.assign(p.kinds.size(), 0);
  for (std::size_t j = 0; j < p.kinds.size(); ++j) {
    if (p.kinds[j].number < 0) continue;
    const Int128 most = (static_cast<Int128>(worth[j].at_most) * times + over - 1) / over;
    out.rent[j] = static_cast<std::int64_t>(std::max<Int128>(0, most - (static_cast<Int128>(p.kinds[j].cost) << out.bits)));
    out.scaled_bound -= static_cast<Int128>(out.rent[j]) * p.kinds[j].number;
  }
  const Int128 unit = Int128{1} << out.bits;
  out.bound = out.scaled_bound > 0 ? static_cast<std::int64_t>((out.scaled_bound + unit - 1) / unit) : 0;
}

}  // namespace

std::vector<Worth> best_patterns(const CutProblem& p, const std::vector<std::int64_t>& price, Effort& effort) {
  std::int64_t most_room = 0;
  for (const CutKind& kind : p.kinds)
    if (!kind.single) most_room = std::max(most_room, kind.room);
  const auto sizes = static_cast<std::int64_t>(p.size.size());
  std::vector<Worth> out;
  const bool small = most_room <= kMostCells / std::max<std::int64_t>(sizes, 1);
  Knapsack knapsack(p, price, small ? kFewNodes : kMostNodes);
  bool settled = true;
  for (const CutKind& kind : p.kinds) {
    out.push_back(kind.single ? Worth{} : knapsack.best(kind.room, effort));
    settled = settled && out.back().at_most == out.back().found;
    if (!settled && small) break;
  }
  if (!settled && small) {
    effort.done += most_room * sizes / 64 + 1;
    out = by_table(p, price, most_room);
  }
  for (std::size_t j = 0; j < p.kinds.size(); ++j)
    if (p.kinds[j].single) take_single(p, price, out[j]);
  return out;
}

Relaxed relax(const CutProblem& p, Effort& effort, const Patterns* pool, std::int64_t enough) {
  Relaxed out;
  std::int64_t dearest = 1;
  for (const CutKind& kind : p.kinds) dearest = std::max(dearest, kind.cost);
  while (out.bits < 36 && (dearest << out.bits) < (std::int64_t{1} << 36)) ++out.bits;
  Master master(p, out.bits);
  std::vector<std::int64_t> prices;
  std::vector<Worth> worth;
  const std::int64_t least = std::max<std::int64_t>(1, (dearest << out.bits) >> 30);  // less is the fixed point's own doing
  const auto gain_of = [&](std::size_t kind, std::int64_t found) {
    return found - (p.kinds[kind].cost << out.bits) - master.rent(prices, kind);
  };
  for (int round = 0;; ++round) {
    prices = master.prices();
    for (std::size_t i = 0; i < p.size.size(); ++i) prices[i] = std::max<std::int64_t>(0, prices[i]);
    effort.done += static_cast<std::int64_t>(master.rows() * master.rows() / 64) + 1;
    const bool last = round >= kMostRounds || effort.spent();
    if (pool != nullptr && !last) {
      effort.done += static_cast<std::int64_t>(pool->size() * master.rows() / 64);
      const Pattern* enters = nullptr;
      std::int64_t most = least;
      for (const Pattern& pattern : *pool) {
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < pattern.count.size(); ++i) sum += pattern.count[i] * prices[i];
        const std::int64_t gain = gain_of(static_cast<std::size_t>(pattern.kind), sum);
        if (gain <= most) continue;
        most = gain;
        enters = &pattern;
      }
      if (enters != nullptr && master.enter(*enters)) continue;
    }
    worth = best_patterns(p, prices, effort);
    if (last) break;
    if (enough >= 0) {
      take_bound(p, prices, worth, out);
      if (out.bound > enough) break;
    }
    std::size_t enters = p.kinds.size();
    std::int64_t most = least;
    for (std::size_t j = 0; j < p.kinds.size(); ++j) {
      if (p.kinds[j].number == 0) continue;
      const std::int64_t gain = gain_of(j, worth[j].found);
      if (gain > most) {
        most = gain;
        enters = j;
      }
    }
    if (enters == p.kinds.size()) break;
    if (!master.enter({static_cast<int>(enters), worth[enters].count})) break;
  }
  take_bound(p, prices, worth, out);
  out.used = master.used();
  return out;
}

}  // namespace gownsheaf::nest
