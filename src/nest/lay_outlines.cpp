// The door for outlines: prepare, a first lay from bounds, two searches that exchange what they find, the proof.
#include <algorithm>
#include <barrier>
#include <memory>
#include <thread>
#include <tuple>

#include "nest/outline_world.h"
#include "nest/proof.h"

namespace gownsheaf::nest {
namespace {

constexpr int kHunts = 2;                                   // always two, whatever the threads
constexpr std::int64_t kSlice = 20'000, kLeastSlice = 500;  // work of each between exchanges; less for small efforts
constexpr double kHopefulDensity = 0.8, kFirstStep = 0.03;
constexpr double kHopefulOfMany = 0.72;  // of many different parts, for which a trial is dear

const Shape& shape_of(const World& world, int s) { return world.shapes[static_cast<std::size_t>(s)]; }

bool overlaps(const World& world, const Place& a, const Place& b) {
  const Shape &s = shape_of(world, a.shape), &t = shape_of(world, b.shape);
  const int gap = world.gap_of(a.shape, b.shape);
  if (a.x >= b.x + t.width + gap || b.x >= a.x + s.width + gap || a.y >= b.y + t.height + gap || b.y >= a.y + s.height + gap)
    return false;
  return !apart(s.outline, t.outline, static_cast<std::int64_t>(b.x) - a.x, static_cast<std::int64_t>(b.y) - a.y, gap);
}

// Lets both searches run, slice by slice.
class Pair {
 public:
  Pair(const World& world, const Request& request, const Found& first, int least, int hopeful, double first_step)
      : request_(request), best_(first), slice_(std::clamp(request.work / 50, kLeastSlice, kSlice)) {
    for (int k = 0; k < kHunts; ++k) {
      hunts_.push_back(std::make_unique<Hunt>(
          world, Dice((static_cast<std::uint64_t>(request.seed) << 8) + static_cast<std::uint64_t>(k)).next(), first, least,
          hopeful, first_step));
    }
  }
  void run(const std::function<double(std::int64_t)>& spent) {
    share_ = spent;
    exchange();
    if (request_.threads <= 1) {
      while (!done_) {
        for (int k = 0; k < kHunts; ++k) slice(k);
        exchange();
      }
      return;
    }
    const auto at_end = [this]() noexcept { exchange(); };
    std::barrier meet(kHunts, at_end);
    const auto go = [&](int k) {
      while (!done_) {
        slice(k);
        meet.arrive_and_wait();
      }
    };
    std::vector<std::thread> others;
    for (int k = 1; k < kHunts; ++k) others.emplace_back(go, k);
    go(0);
    for (std::thread& t : others) t.join();
  }
  const Found& best() const { return best_; }
  bool cut_short() const { return cut_short_; }
  std::int64_t work() const {
    std::int64_t sum = 0;
    for (const auto& h : hunts_) sum += h->work();
    return sum;
  }

 private:
  void slice(int k) { hunts_[static_cast<std::size_t>(k)]->run_until((slices_ + 1) * slice_, spent_); }
  void exchange() {
    for (const auto& h : hunts_) {
      if (h->best().length < best_.length) best_ = h->best();
    }
    bool finished = false;
    for (const auto& h : hunts_) {
      h->adopt(best_);
      finished = finished || h->finished();
    }
    ++slices_;
    const std::int64_t so_far = slices_ * slice_ * kHunts;
    spent_ =
        share_ ? share_(so_far) : static_cast<double>(so_far) / static_cast<double>(std::max<std::int64_t>(1, request_.work));
    done_ = finished || spent_ >= 1;
    if (request_.told) request_.told(done_ ? 1 : spent_);
    cut_short_ = !done_ && request_.stopped();
    done_ = done_ || cut_short_;
  }

  const Request& request_;
  std::vector<std::unique_ptr<Hunt>> hunts_;
  Found best_;
  std::int64_t slice_;
  std::function<double(std::int64_t)> share_;
  std::int64_t slices_ = -1;
  double spent_ = 0;
  bool done_ = false, cut_short_ = false;
};

int length_of(const World& world, const std::vector<Place>& places) {
  int most = 0;
  for (std::size_t i = 0; i < world.items.size(); ++i) {
    if (places[i].region == world.open_region()) {
      most = std::max(most, places[i].x - world.regions.back().x0 + shape_of(world, places[i].shape).width);
    }
  }
  return most;
}

}  // namespace

Found first_lay(const Request& request, const Prepared& prepared) {
  const World& world = prepared.world;
  Request boxes;
  boxes.strips = request.strips;
  if (prepared.overflow)
    boxes.strips.push_back({Length::ticks(world.regions.back().width), std::nullopt, {}, request.strips[0].cost});
  boxes.gap = request.gap;
  boxes.seed = request.seed;
  boxes.work = static_cast<std::int64_t>(world.items.size()) * 20;
  std::vector<int> straight(world.kinds.size()), across(world.kinds.size(), -1);
  for (std::size_t k = 0; k < world.kinds.size(); ++k) {
    const Kind& kind = world.kinds[k];
    Part part;
    const std::vector<Range> ranges = ranges_of(world, kind, 500'000'000);
    straight[k] = ranges.empty() ? kind.shapes[0] : ranges[0].shape;
    const Shape& s = shape_of(world, straight[k]);
    part.outline = rectangle(Length::ticks(s.width), Length::ticks(s.height));
    part.poses = {{0, false, 0}};
    for (const int other : kind.shapes) {
      if (shape_of(world, other).width == s.height && shape_of(world, other).height == s.width && s.width != s.height)
        across[k] = other;
    }
    if (across[k] >= 0) part.poses.push_back({1, false, 0});
    part.copies = static_cast<int>(
        std::count_if(world.items.begin(), world.items.end(), [&](const Item& i) { return i.kind == static_cast<int>(k); }));
    if (kind.fixed_y >= 0) part.fixed_y = Length::ticks(kind.fixed_y);
    if (kind.step_y > 0) part.lattice_across = Part::Lattice{Length::ticks(kind.step_y), Length::ticks(kind.phase_y)};
    part.clear_of_first_edge = Length::ticks(kind.clear);
    if (kind.step > 0) part.lattice = Part::Lattice{Length::ticks(kind.step), Length::ticks(kind.phase)};
    part.strips = kind.regions;
    boxes.parts.push_back(std::move(part));
  }
  const Lay lay = lay_rectangles(boxes);
  Found found;
  found.places.resize(world.items.size());
  std::vector<bool> there(world.items.size(), false);
  std::vector<int> first_item(world.kinds.size(), -1);
  for (int i = static_cast<int>(world.items.size()); i-- > 0;)
    first_item[static_cast<std::size_t>(world.items[static_cast<std::size_t>(i)].kind)] = i;
  for (const Placed& p : lay.placed) {
    const std::size_t k = static_cast<std::size_t>(p.part), i = static_cast<std::size_t>(first_item[k] + p.copy);
    const int shape = p.pose.quarter_turns == 0 ? straight[k] : across[k];
    found.places[i] = {static_cast<int>(p.at.x.in_ticks()) + world.regions[static_cast<std::size_t>(p.strip)].x0,
                       static_cast<int>(p.at.y.in_ticks()), shape, p.strip};
    there[i] = true;
  }
  // What the bounds' lay left out goes behind everything on the open strip, one after another.
  const Region& open = world.regions.back();
  std::int64_t end = 0;
  for (std::size_t i = 0; i < world.items.size(); ++i) {
    if (there[i] && found.places[i].region == world.open_region()) {
      end = std::max<std::int64_t>(end, found.places[i].x - open.x0 + shape_of(world, found.places[i].shape).width + world.gap);
    }
  }
  for (const Fixed& f : world.obstacles) {
    if (f.x >= open.x0) end = std::max<std::int64_t>(end, f.x - open.x0 + shape_of(world, f.shape).width);
  }
  for (std::size_t i = 0; i < world.items.size(); ++i) {
    if (there[i]) continue;
    const Kind& kind = world.kinds[static_cast<std::size_t>(world.items[i].kind)];
    bool placed = false;
    for (const Range& r : ranges_of(world, kind, 500'000'000)) {
      if (r.region != world.open_region() || placed) continue;
      std::int64_t x = r.x0;
      if (x < open.x0 + end) x = kind.step == 0 ? open.x0 + end : x + (open.x0 + end - x + kind.step - 1) / kind.step * kind.step;
      if (x > r.x1) continue;
      found.places[i] = {static_cast<int>(x), r.y0, r.shape, r.region};
      end = x - open.x0 + shape_of(world, r.shape).width + world.gap;
      placed = true;
    }
    if (!placed) return {};
  }
  found.length = length_of(world, found.places);
  return found;
}

bool proven(const Prepared& prepared, const Found& found) {
  const World& world = prepared.world;
  for (std::size_t i = 0; i < world.items.size(); ++i) {
    const Place& p = found.places[i];
    const Kind& kind = world.kinds[static_cast<std::size_t>(world.items[i].kind)];
    const Region& region = world.regions[static_cast<std::size_t>(p.region)];
    const Shape& s = shape_of(world, p.shape);
    const int length = p.region == world.open_region() ? found.length : region.length;
    if (p.x < region.x0 || p.x + s.width > region.x0 + length || p.y < kind.clear || p.y + s.height > region.width) return false;
    if (kind.fixed_y >= 0 && p.y != kind.fixed_y) return false;
    if (kind.step_y > 0 && (p.y - kind.phase_y) % kind.step_y != 0) return false;
    if (kind.step > 0 && (p.x - region.x0 - kind.phase) % kind.step != 0) return false;
    if (std::find(kind.shapes.begin(), kind.shapes.end(), p.shape) == kind.shapes.end()) return false;
    if (std::find(kind.regions.begin(), kind.regions.end(), p.region) == kind.regions.end()) return false;
    for (std::size_t j = 0; j < i; ++j) {
      if (overlaps(world, p, found.places[j])) return false;
    }
    for (const Fixed& f : world.obstacles) {
      if (overlaps(world, p, {f.x, f.y, f.shape, 0})) return false;
    }
  }
  return true;
}

Lay lay_outlines(const Request& request, const std::function<double(std::int64_t)>& spent) {
  Lay lay;
  lay.unsupported = unsupported_outlines(request);
  if (!lay.unsupported.empty()) return lay;
  Prepared prepared;
  prepare(request, prepared);
  lay.unsupported = prepared.unsupported;
  if (!lay.unsupported.empty()) return lay;
  const World& world = prepared.world;
  lay.bound = bound_of_outlines(request);
  lay.used.assign(request.strips.size(), Length());
  lay.left_out = prepared.nowhere;
  Found found = first_lay(request, prepared);
  if (found.places.size() != world.items.size()) {
    lay.unsupported = "parts tied to strips on which their bounds do not all go";
    return lay;
  }
  const bool single = request.strips.size() == 1 && !prepared.overflow;
  const int least = std::max(world.least_length(), single ? static_cast<int>(lay.bound.in_ticks()) : 0);
  if (!world.items.empty() && found.length > least) {
    const double density = world.many_tables() ? kHopefulOfMany : kHopefulDensity;
    double area = 0;
    for (const Item& item : world.items) area += shape_of(world, world.kinds[static_cast<std::size_t>(item.kind)].shapes[0]).area;
    for (std::size_t r = 0; r + 1 < world.regions.size(); ++r)
      area -= density * world.regions[r].length * static_cast<double>(world.regions[r].width);
    const int hopeful =
        std::max(least, static_cast<int>(std::min(1e9, std::max(0.0, area / (density * world.regions.back().width)))));
    Pair pair(world, request, found, least, hopeful, prepared.overflow ? 0.5 : kFirstStep);
    pair.run(spent);
    lay.work = pair.work();
    lay.cut_short = pair.cut_short();
    if (proven(prepared, pair.best())) found = pair.best();
  }
  lay.proven = single && lay.left_out.empty() && found.length == lay.bound.in_ticks();
  for (std::size_t i = 0; i < world.items.size(); ++i) {
    const Item& item = world.items[i];
    const Place& p = found.places[i];
    const Kind& kind = world.kinds[static_cast<std::size_t>(item.kind)];
    if (prepared.overflow && p.region == world.open_region()) {
      lay.left_out.emplace_back(item.part, item.copy);
      continue;
    }
    const auto pose = static_cast<std::size_t>(std::find(kind.shapes.begin(), kind.shapes.end(), p.shape) - kind.shapes.begin());
    const Region& region = world.regions[static_cast<std::size_t>(p.region)];
    lay.placed.push_back(
        {item.part, item.copy, p.region, kind.poses[pose], {Length::ticks(p.x - region.x0), Length::ticks(p.y)}});
    Length& used = lay.used[static_cast<std::size_t>(p.region)];
    used = std::max(used, Length::ticks(p.x - region.x0 + shape_of(world, p.shape).width));
  }
  std::sort(lay.placed.begin(), lay.placed.end(), [](const Placed& a, const Placed& b) {
    return std::tie(a.strip, a.at.x, a.at.y, a.part, a.copy) < std::tie(b.strip, b.at.x, b.at.y, b.part, b.copy);
  });
  std::sort(lay.left_out.begin(), lay.left_out.end());
  return lay;
}

}  // namespace gownsheaf::nest
