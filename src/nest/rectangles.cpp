// Rectangles on strips. Each pass places the parts one after another, in some order, at the best place of a skyline or in
// a hole behind it; a search over orders keeps the best pass. Steps of work are placements, so effort never depends on
// the machine's speed.
#include <algorithm>
#include <numeric>
#include <random>
#include <tuple>

#include "nest/nest.h"
#include "nest/request.h"
#include "nest/skyline.h"

namespace gownsheaf::nest {
namespace {

struct Choice {
  Length along, across;
  Pose pose;
};  // one way to lie
struct Item {
  int part, copy, wish = -1;
};  // wish: the choice it is to lie by, -1 = whichever ends first

std::vector<Choice> choices_of(const Part& part) {
  const Box box = bounds(part.outline);
  std::vector<Choice> choices;
  for (const Pose& pose : part.poses) {
    const bool turned = pose.quarter_turns % 2 != 0;
    const Choice choice{turned ? box.height : box.width, turned ? box.width : box.height, pose};
    const bool seen = std::any_of(choices.begin(), choices.end(),
                                  [&](const Choice& c) { return c.along == choice.along && c.across == choice.across; });
    if (!seen) choices.push_back(choice);  // a mirrored or half-turned rectangle is itself
  }
  return choices;
}

std::string unsupported(const Request& r) {
  for (const Part& part : r.parts) {
    if (!is_rectangle(part.outline)) return "an outline that is not a rectangle";
    for (const Pose& pose : part.poses) {
      if (pose.millidegrees != 0) return "a turn that is not a quarter turn";
    }
  }
  return unsupported_request(r);
}

struct Result {
  std::vector<Placed> placed;
  std::vector<std::pair<int, int>> left_out;
  std::vector<Length> used;
  Area left_out_area;
};

bool better(const Result& a, const Result& b) {
  if (a.left_out_area != b.left_out_area) return a.left_out_area < b.left_out_area;
  for (std::size_t i = a.used.size(); i-- > 0;) {  // the open strip, then the last of the closed
    if (a.used[i] != b.used[i]) return a.used[i] < b.used[i];
  }
  return false;
}

class Search {
 public:
  explicit Search(const Request& request) : r_(request) {
    for (const Part& part : r_.parts) choices_.push_back(choices_of(part));
    for (const Strip& s : r_.strips) skylines_.emplace_back(s.width, s.length, r_.gap, &s.obstacles);
  }

  // Places the items in this order. Costs one step of work an item.
  Result pass(const std::vector<Item>& order, bool by_end) {
    Result result;
    result.used.assign(r_.strips.size(), Length());
    for (Skyline& s : skylines_) s.clear();
    for (const Item& item : order) {
      if (!place(item, by_end, result)) {
        result.left_out.emplace_back(item.part, item.copy);
        result.left_out_area += bounds(r_.parts[static_cast<std::size_t>(item.part)].outline).area();
      }
    }
    work_ += static_cast<std::int64_t>(order.size());
    return result;
  }

  int ways_to_lie(const Item& item) const { return static_cast<int>(choices_[static_cast<std::size_t>(item.part)].size()); }
  void idle() { ++work_; }
  bool stopped() {  // asked before each pass; tells now and then how far it is
    if (r_.told && work_ >= tell_at_) {
      r_.told(std::min(1.0, static_cast<double>(work_) / static_cast<double>(std::max<std::int64_t>(1, r_.work))));
      tell_at_ = work_ + r_.work / 100;
    }
    cut_short_ = cut_short_ || r_.stopped();
    return cut_short_;
  }
  bool cut_short() const { return cut_short_; }
  std::int64_t work() const { return work_; }

 private:
  bool place(const Item& item, bool by_end, Result& result) {
    const auto p = static_cast<std::size_t>(item.part);
    const Part& part = r_.parts[p];
    for (std::size_t s = 0; s < r_.strips.size(); ++s) {
      if (!part.strips.empty() && std::find(part.strips.begin(), part.strips.end(), static_cast<int>(s)) == part.strips.end()) {
        continue;
      }
      std::optional<Spot> best;
      Wanted best_wanted;
      const Choice* best_choice = nullptr;
      const bool wished = item.wish >= 0 && item.wish < static_cast<int>(choices_[p].size());
      for (const Choice& choice : choices_[p]) {
        if (wished && &choice != &choices_[p][static_cast<std::size_t>(item.wish)]) continue;
        Wanted wanted{choice.along, choice.across, part.fixed_y, std::nullopt,
                      std::nullopt, std::nullopt,  std::nullopt, part.clear_of_first_edge};
        if (part.lattice_across) {
          wanted.lattice_step_y = part.lattice_across->step;
          wanted.lattice_phase_y = part.lattice_across->phase;
        }
        if (part.lattice) {
          wanted.lattice_step = part.lattice->step;
          wanted.lattice_phase = part.lattice->phase;
        }
        const std::optional<Spot> spot = skylines_[s].find(wanted, by_end);
        if (spot && (!best || spot->end < best->end || (spot->end == best->end && spot->x < best->x))) {
          best = spot;
          best_wanted = wanted;
          best_choice = &choice;
        }
      }
      if (!best) continue;
      skylines_[s].place(best_wanted, *best);
      result.placed.push_back({item.part, item.copy, static_cast<int>(s), best_choice->pose, {best->x, best->y}});
      result.used[s] = std::max(result.used[s], best->end);
      return true;
    }
    return false;
  }

  const Request& r_;
  std::vector<std::vector<Choice>> choices_;
  std::vector<Skyline> skylines_;
  std::int64_t work_ = 0, tell_at_ = 0;
  bool cut_short_ = false;
};

// No lay is shorter: area over width; the longest part; parts of which no two lie side by side, end to end.
Length bound_of(const Request& r) {
  Length width, stacked, longest;
  for (const Strip& s : r.strips) width = std::max(width, s.width);
  Area area;
  for (const Part& part : r.parts) {
    const std::vector<Choice> choices = choices_of(part);
    Length least_along = choices[0].along, least_across = choices[0].across;
    for (const Choice& c : choices) {
      least_along = std::min(least_along, c.along);
      least_across = std::min(least_across, c.across);
    }
    if (part.copies > 0) longest = std::max(longest, least_along);
    if (least_across + least_across + r.gap > width) stacked += (least_along + r.gap) * part.copies;
    area += bounds(part.outline).area() * part.copies;
  }
  if (width <= Length()) return longest;
  return std::max({area.over(width, Rounding::up), longest, stacked - r.gap, Length()});
}

// On shelves across the strip, longest first, each part on the first shelf with room, as the first pose has it. Nothing where
// a request asks for more than one open strip without bad places and parts that may lie anywhere.
std::optional<Result> on_shelves(const Request& r) {
  if (r.strips.size() != 1 || r.strips[0].length || !r.strips[0].obstacles.empty()) return std::nullopt;
  struct Shelf {
    Length x, y;
  };
  struct One {
    Choice way;
    int part, copy;
  };
  std::vector<One> all;
  for (std::size_t p = 0; p < r.parts.size(); ++p) {
    const Part& part = r.parts[p];
    const Choice way = choices_of(part)[0];
    if (part.fixed_y || part.lattice || part.lattice_across || !part.clear_of_first_edge.is_zero() ||
        way.across > r.strips[0].width)
      return std::nullopt;
    for (int c = 0; c < part.copies; ++c) all.push_back({way, static_cast<int>(p), c});
  }
  std::stable_sort(all.begin(), all.end(), [](const One& a, const One& b) {
    return a.way.along != b.way.along ? a.way.along > b.way.along : a.way.across > b.way.across;
  });
  Result result;
  result.used.assign(1, Length());
  std::vector<Shelf> shelves;
  for (const One& one : all) {
    auto shelf =
        std::find_if(shelves.begin(), shelves.end(), [&](const Shelf& s) { return s.y + one.way.across <= r.strips[0].width; });
    if (shelf == shelves.end()) {
      shelves.push_back({shelves.empty() ? Length() : result.used[0] + r.gap, Length()});
      shelf = shelves.end() - 1;
      result.used[0] = shelf->x + one.way.along;
    }
    result.placed.push_back({one.part, one.copy, 0, one.way.pose, {shelf->x, shelf->y}});
    shelf->y += one.way.across + r.gap;
  }
  return result;
}

std::vector<std::vector<Item>> first_orders(const Request& r) {
  std::vector<Item> items;
  std::vector<Box> box;
  for (std::size_t p = 0; p < r.parts.size(); ++p) {
    box.push_back(bounds(r.parts[p].outline));
    for (int c = 0; c < r.parts[p].copies; ++c) items.push_back({static_cast<int>(p), c, -1});
  }
  const auto by = [&](auto key) {
    std::vector<Item> order = items;
    std::stable_sort(order.begin(), order.end(), [&](const Item& a, const Item& b) {
      return key(box[static_cast<std::size_t>(a.part)]) > key(box[static_cast<std::size_t>(b.part)]);
    });
    return order;
  };
  return {by([](const Box& b) { return b.area(); }), by([](const Box& b) { return b.height; }),
          by([](const Box& b) { return b.width; }), by([](const Box& b) { return std::max(b.width, b.height); }),
          by([](const Box& b) { return b.width + b.height; })};
}

}  // namespace

Lay lay_rectangles(const Request& request) {
  Lay lay;
  lay.unsupported = unsupported(request);
  if (!lay.unsupported.empty()) return lay;
  lay.bound = bound_of(request);
  Search search(request);

  std::vector<std::vector<Item>> orders = first_orders(request);
  std::vector<Item> order = orders[0];
  bool by_end = false;
  Result best = search.pass(order, by_end);
  const auto at_bound = [&] {
    return request.strips.size() == 1 && best.left_out.empty() && !best.used.empty() && best.used[0] <= lay.bound;
  };
  const auto work_left = [&] { return search.work() + static_cast<std::int64_t>(order.size()) <= request.work; };
  for (std::size_t i = 0; i < orders.size() && order.size() > 1; ++i) {
    for (const bool end_first : {false, true}) {
      if (at_bound() || !work_left() || search.stopped()) break;
      Result result = search.pass(orders[i], end_first);
      if (better(result, best)) {
        best = std::move(result);
        order = orders[i];
        by_end = end_first;
      }
    }
  }
  // Swaps and moves in the best order; an equally good order is taken too, so that the search can walk over flat ground.
  std::mt19937 dice(request.seed);
  const auto any = [&](std::size_t n) { return static_cast<std::size_t>(dice() % n); };
  Result current = best;
  int since_better = 0;
  while (order.size() > 1 && !at_bound() && work_left() && !search.stopped()) {
    // Nothing better for a while: start again from an order thrown anew.
    if (since_better > 25 * static_cast<int>(order.size())) {
      for (std::size_t i = order.size(); i-- > 1;) std::swap(order[i], order[any(i + 1)]);
      for (Item& item : order)
        if (const int ways = search.ways_to_lie(item); ways > 1)
          item.wish = static_cast<int>(any(static_cast<std::size_t>(ways) + 1)) - 1;
      by_end = dice() % 2 == 0;
      current = search.pass(order, by_end);
      since_better = 0;
      if (better(current, best)) best = current;
      continue;
    }
    ++since_better;
    std::vector<Item> next = order;
    const std::size_t a = any(next.size()), b = any(next.size());
    const int ways = search.ways_to_lie(next[a]);
    const bool turn_one = ways > 1 && dice() % 2 == 0;  // where quarter turns are allowed, how a part lies is searched as well
    if (turn_one) {
      const int wish = static_cast<int>(any(static_cast<std::size_t>(ways) + 1)) - 1;
      if (wish == next[a].wish) {
        search.idle();
        continue;
      }
      next[a].wish = wish;
    } else if (dice() % 2 == 0) {
      std::swap(next[a], next[b]);
    } else {
      const Item moved = next[a];
      next.erase(next.begin() + static_cast<std::ptrdiff_t>(a));
      next.insert(next.begin() + static_cast<std::ptrdiff_t>(b), moved);
    }
    const bool next_by_end = dice() % 8 == 0 ? !by_end : by_end;
    if (!turn_one && order[a].part == order[b].part && order[a].wish == order[b].wish && next_by_end == by_end) {
      search.idle();  // swapping two copies of one part changes nothing
      continue;
    }
    Result result = search.pass(next, next_by_end);
    if (better(current, result)) continue;
    if (better(result, current)) since_better = 0;
    order = std::move(next);
    by_end = next_by_end;
    current = std::move(result);
    if (better(current, best)) best = current;
  }

  if (std::optional<Result> shelves = on_shelves(request); shelves && better(*shelves, best)) best = std::move(*shelves);
  lay.proven = at_bound();
  lay.placed = std::move(best.placed);
  std::sort(lay.placed.begin(), lay.placed.end(), [](const Placed& a, const Placed& b) {
    return std::tie(a.strip, a.at.x, a.at.y, a.part, a.copy) < std::tie(b.strip, b.at.x, b.at.y, b.part, b.copy);
  });
  lay.left_out = std::move(best.left_out);
  std::sort(lay.left_out.begin(), lay.left_out.end());
  lay.used = std::move(best.used);
  lay.work = search.work();
  lay.cut_short = search.cut_short();
  return lay;
}

}  // namespace gownsheaf::nest
