// Laws of every lay over random requests, and small lays against an exhaustive search on a whole-inch grid.
#include <algorithm>
#include <random>
#include <set>

#include "nest/nest.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::nest;

namespace {

#ifdef GOWNSHEAF_SANITIZED
constexpr int kRounds = 500, kSmall = 20;
#else
constexpr int kRounds = 10000, kSmall = 150;
#endif

struct Dice {
  std::mt19937 engine;
  int up_to(int n) { return static_cast<int>(engine() % static_cast<unsigned>(n + 1)); }
  bool one_in(int n) { return up_to(n - 1) == 0; }
};

Length any_length(Dice& dice, int most_sixteenths) { return Length::sixty_fourths(4 * (1 + dice.up_to(most_sixteenths - 1))); }

Request any_request(Dice& dice) {
  Request request;
  request.work = dice.up_to(600);
  request.seed = static_cast<std::uint32_t>(dice.engine());
  if (dice.one_in(3)) request.gap = any_length(dice, 16);
  const int strips = 1 + (dice.one_in(3) ? dice.up_to(2) : 0);
  for (int s = 0; s < strips; ++s) {
    Strip strip;
    strip.width = Length::inches(20 + dice.up_to(40));
    if (s + 1 < strips || dice.one_in(3)) strip.length = Length::inches(20 + dice.up_to(100));
    if (dice.one_in(4))
      strip.obstacles.push_back({any_length(dice, 800), any_length(dice, 300), any_length(dice, 200), any_length(dice, 200)});
    request.strips.push_back(strip);
  }
  const int parts = 1 + dice.up_to(9);
  for (int p = 0; p < parts; ++p) {
    Part part;
    part.outline = rectangle(any_length(dice, 640), any_length(dice, 480));
    part.copies = 1 + dice.up_to(2);
    if (dice.one_in(3)) part.poses = {{0, false}, {1, false}, {2, true}};
    if (dice.one_in(6)) part.fixed_y = any_length(dice, 200);
    if (dice.one_in(6)) part.lattice = Part::Lattice{any_length(dice, 160), any_length(dice, 160)};
    if (!part.fixed_y && dice.one_in(6)) part.lattice_across = Part::Lattice{any_length(dice, 160), any_length(dice, 160)};
    if (dice.one_in(6)) part.clear_of_first_edge = any_length(dice, 60);
    if (dice.one_in(6)) part.strips = {dice.up_to(strips - 1)};
    request.parts.push_back(part);
  }
  return request;
}

Box box_of(const Request& request, const Placed& p) {
  const Box own = bounds(request.parts.at(static_cast<std::size_t>(p.part)).outline);
  const bool turned = p.pose.quarter_turns % 2 != 0;
  return {p.at.x, p.at.y, turned ? own.height : own.width, turned ? own.width : own.height};
}

void keeps_the_laws(const Request& request, const Lay& lay) {
  REQUIRE(lay.unsupported.empty());
  std::set<std::pair<int, int>> seen(lay.left_out.begin(), lay.left_out.end());
  REQUIRE(seen.size() == lay.left_out.size());
  for (const Placed& p : lay.placed) REQUIRE(seen.emplace(p.part, p.copy).second);
  std::size_t copies = 0;
  for (const Part& part : request.parts) copies += static_cast<std::size_t>(part.copies);
  REQUIRE(seen.size() == copies);
  std::vector<Length> used(request.strips.size());
  for (std::size_t i = 0; i < lay.placed.size(); ++i) {
    const Placed& p = lay.placed[i];
    const Part& part = request.parts[static_cast<std::size_t>(p.part)];
    const Strip& strip = request.strips.at(static_cast<std::size_t>(p.strip));
    const Box box = box_of(request, p);
    REQUIRE(std::find(part.poses.begin(), part.poses.end(), p.pose) != part.poses.end());
    REQUIRE((box.x >= Length() && box.y >= Length() && box.bottom() <= strip.width));
    if (strip.length) REQUIRE(box.right() <= *strip.length);
    if (part.fixed_y) REQUIRE(box.y == *part.fixed_y);
    REQUIRE(box.y >= part.clear_of_first_edge);
    if (part.lattice_across) REQUIRE((box.y - part.lattice_across->phase).in_ticks() % part.lattice_across->step.in_ticks() == 0);
    if (part.lattice) REQUIRE((box.x - part.lattice->phase).in_ticks() % part.lattice->step.in_ticks() == 0);
    if (!part.strips.empty()) REQUIRE(std::find(part.strips.begin(), part.strips.end(), p.strip) != part.strips.end());
    for (const Box& o : strip.obstacles) REQUIRE_FALSE(overlap(o, box));
    const Box with_gap{box.x - request.gap, box.y - request.gap, box.width + request.gap * 2, box.height + request.gap * 2};
    for (std::size_t j = 0; j < i; ++j) {
      if (lay.placed[j].strip == p.strip) REQUIRE_FALSE(overlap(with_gap, box_of(request, lay.placed[j])));
    }
    used[static_cast<std::size_t>(p.strip)] = std::max(used[static_cast<std::size_t>(p.strip)], box.right());
  }
  REQUIRE(used == lay.used);
  if (request.strips.size() == 1 && lay.left_out.empty()) REQUIRE(lay.used[0] >= lay.bound);
  if (lay.proven) REQUIRE(lay.used[0] == lay.bound);
}

// Least length of these whole-inch rectangles (along, across) on a strip `width` wide, by trying every place.
class Exhaustive {
 public:
  Exhaustive(std::vector<std::pair<int, int>> parts, int width) : parts_(std::move(parts)), width_(width) {}
  int least() {
    int area = 0, longest = 0, sum = 0;
    for (const auto& [along, across] : parts_) {
      area += along * across;
      longest = std::max(longest, along);
      sum += along;
    }
    for (int length = std::max(longest, (area + width_ - 1) / width_); length < sum; ++length) {
      taken_.assign(static_cast<std::size_t>(length * width_), false);
      if (fits(0, length)) return length;
    }
    return sum;
  }

 private:
  bool free(int x, int y, int along, int across) const {
    for (int i = x; i < x + along; ++i) {
      for (int j = y; j < y + across; ++j) {
        if (taken_[static_cast<std::size_t>(i * width_ + j)]) return false;
      }
    }
    return true;
  }
  void mark(int x, int y, int along, int across, bool value) {
    for (int i = x; i < x + along; ++i) {
      for (int j = y; j < y + across; ++j) taken_[static_cast<std::size_t>(i * width_ + j)] = value;
    }
  }
  bool fits(std::size_t next, int length) {
    if (next == parts_.size()) return true;
    const auto [along, across] = parts_[next];
    for (int x = 0; x + along <= length; ++x) {
      for (int y = 0; y + across <= width_; ++y) {
        if (!free(x, y, along, across)) continue;
        mark(x, y, along, across, true);
        if (fits(next + 1, length)) return true;
        mark(x, y, along, across, false);
      }
    }
    return false;
  }
  std::vector<std::pair<int, int>> parts_;
  int width_;
  std::vector<bool> taken_;
};

}  // namespace

TEST_CASE("law: random lays overlap nowhere, keep their gap, place or name every copy, and come out the same again",
          "[nest][laws]") {
  Dice dice{std::mt19937(1869)};
  for (int round = 0; round < kRounds; ++round) {
    CAPTURE(round);
    const Request request = any_request(dice);
    const Lay lay = lay_rectangles(request);
    keeps_the_laws(request, lay);
    if (round % 10 == 0) REQUIRE(lay_rectangles(request).placed == lay.placed);
  }
}

TEST_CASE("small lays against the true optimum", "[nest][laws]") {
  Dice dice{std::mt19937(1883)};
  int exact = 0;
  for (int round = 0; round < kSmall; ++round) {
    CAPTURE(round);
    const int width = 4 + dice.up_to(4);
    std::vector<std::pair<int, int>> parts;
    Request request;
    for (int p = 0, n = 3 + dice.up_to(2); p < n; ++p) {
      parts.emplace_back(1 + dice.up_to(5), 1 + dice.up_to(width - 1));
      Part part;
      part.outline = rectangle(Length::inches(parts.back().first), Length::inches(parts.back().second));
      request.parts.push_back(part);
    }
    request.strips = {Strip{Length::inches(width), std::nullopt, {}, 1}};
    std::sort(parts.rbegin(), parts.rend(), [](const auto& a, const auto& b) { return a.first * a.second < b.first * b.second; });
    const Length least = Length::inches(Exhaustive(parts, width).least());
    const Lay lay = lay_rectangles(request);
    REQUIRE(lay.used.at(0) >= least);
    REQUIRE(lay.bound <= least);
    REQUIRE(lay.used.at(0) <= least + Length::inches(1));
    exact += lay.used.at(0) == least;
  }
  INFO(exact << " of " << kSmall << " at the optimum");
  CHECK(exact * 100 >= kSmall * 97);
}

TEST_CASE("law: left-over rectangles are empty, inside, and apart", "[nest][laws]") {
  Dice dice{std::mt19937(1876)};
  for (int round = 0; round < kRounds / 10; ++round) {
    CAPTURE(round);
    Request request = any_request(dice);
    request.strips = {Strip{Length::inches(60), std::nullopt, {}, 1}};
    for (Part& part : request.parts) part.strips.clear();
    request.work = 0;
    const Lay lay = lay_rectangles(request);
    std::vector<Box> taken;
    for (const Placed& p : lay.placed) taken.push_back(box_of(request, p));
    const Length length = lay.used[0] + Length::inches(dice.up_to(20));
    const Length least = any_length(dice, 100);
    const std::vector<Box> rest = left_over(Length::inches(60), length, taken, least, 5);
    for (std::size_t i = 0; i < rest.size(); ++i) {
      REQUIRE(contains(Box{Length(), Length(), length, Length::inches(60)}, rest[i]));
      REQUIRE((rest[i].width >= least && rest[i].height >= least));
      for (const Box& t : taken) REQUIRE_FALSE(overlap(t, rest[i]));
      for (std::size_t j = 0; j < i; ++j) REQUIRE_FALSE(overlap(rest[j], rest[i]));
      if (i > 0) REQUIRE(rest[i].area() <= rest[0].area());
    }
  }
}

TEST_CASE("law: the first left-over rectangle is the largest, by trying all", "[nest][laws]") {
  Dice dice{std::mt19937(1883)};
  int none = 0;
  for (int round = 0; round < kRounds / 10; ++round) {
    CAPTURE(round);
    const Length width = Length::ticks(10), length = Length::ticks(16), least = Length::ticks(1 + dice.up_to(2));
    std::vector<Box> taken;  // overlapping, and over the edges
    for (int k = dice.up_to(7); k > 0; --k)
      taken.push_back({Length::ticks(dice.up_to(19) - 2), Length::ticks(dice.up_to(13) - 2), Length::ticks(1 + dice.up_to(5)),
                       Length::ticks(1 + dice.up_to(4))});
    Box best;
    for (int x = 0; x < 16; ++x)
      for (int y = 0; y < 10; ++y)
        for (int right = x + 1; right <= 16; ++right)
          for (int bottom = y + 1; bottom <= 10; ++bottom) {
            const Box box{Length::ticks(x), Length::ticks(y), Length::ticks(right - x), Length::ticks(bottom - y)};
            if (box.width < least || box.height < least || box.area() <= best.area()) continue;
            if (std::none_of(taken.begin(), taken.end(), [&](const Box& t) { return overlap(t, box); })) best = box;
          }
    const std::vector<Box> rest = left_over(width, length, taken, least, 1);
    REQUIRE(rest.empty() == best.width.is_zero());
    none += rest.empty();
    if (rest.empty()) continue;
    REQUIRE(rest[0].area() == best.area());
    REQUIRE((rest[0].x == best.x && rest[0].y == best.y));
  }
  CHECK(none < kRounds / 100);
}

namespace {

// First fit on shelves, longest first, as everybody writes it: by hand the length of a lay on one open strip.
Length on_shelves(const Request& request) {
  struct Shelf {
    Length along, room;
  };
  std::vector<Box> boxes;
  for (const Part& part : request.parts) boxes.insert(boxes.end(), static_cast<std::size_t>(part.copies), bounds(part.outline));
  std::sort(boxes.begin(), boxes.end(),
            [](const Box& a, const Box& b) { return a.width != b.width ? a.width > b.width : a.height > b.height; });
  std::vector<Shelf> shelves;
  const Length width = request.strips[0].width + request.gap;
  for (const Box& box : boxes) {
    const Length takes = box.height + request.gap;
    const auto shelf = std::find_if(shelves.begin(), shelves.end(), [&](const Shelf& s) { return s.room >= takes; });
    if (shelf == shelves.end()) shelves.push_back({box.width, width - takes});
    else shelf->room -= takes;
  }
  Length all;
  for (const Shelf& s : shelves) all += s.along + request.gap;
  return all - request.gap;
}

}  // namespace

TEST_CASE("law: through the one door rectangles are never laid longer than on shelves", "[nest][laws]") {
  Dice dice{std::mt19937(1891)};
  const Part triangle = [] {
    Part part;
    part.outline = {{Length(), Length()}, {Length::inches(4), Length()}, {Length(), Length::inches(3)}};
    return part;
  }();
  int shorter = 0;
  for (int round = 0; round < kRounds / 5; ++round) {
    CAPTURE(round);
    Request request;
    if (dice.one_in(3)) request.gap = any_length(dice, 16);
    request.strips.push_back({Length::inches(30 + dice.up_to(30)), std::nullopt, {}, 1});
    for (int p = 1 + dice.up_to(9); p > 0; --p) {
      Part part;
      part.outline = rectangle(any_length(dice, 640), any_length(dice, 480));
      part.copies = 1 + dice.up_to(2);
      request.parts.push_back(part);
    }
    const Lay lay = lay_parts(request, {2000, 2000});
    keeps_the_laws(request, lay);
    const Length shelves = on_shelves(request);
    REQUIRE(lay.used[0] <= shelves);
    shorter += lay.used[0] < shelves;
    if (round % 100 != 0) continue;
    request.parts.push_back(triangle);  // one that is no rectangle: the other engine, the same door
    const Lay mixed = lay_parts(request, {2000, 2000});
    REQUIRE(mixed.unsupported.empty());
    REQUIRE(mixed.left_out.empty());
    REQUIRE(mixed.used[0] <= shelves + request.gap + Length::inches(4));
  }
  CHECK(shorter * 2 > kRounds / 5);
}
