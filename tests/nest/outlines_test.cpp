// Lays of outlines: known answers, poses, what is refused, the same lay again, public instances at a fixed effort.
#include <sys/resource.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "nest/nest.h"
#include "nest/proof.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::nest;

namespace {

Polygon inches(std::initializer_list<std::pair<int, int>> corners) {
  Polygon out;
  for (const auto& [x, y] : corners) out.push_back({Length::inches(x), Length::inches(y)});
  return out;
}

Part part_of(Polygon outline, int copies, bool turns = true) {
  Part part;
  part.outline = std::move(outline);
  part.copies = copies;
  if (turns) part.poses = {{0, false, 0}, {2, false, 0}};
  return part;
}

Request on_strip(int width, std::vector<Part> parts, std::int64_t work = 20000) {
  Request request;
  request.parts = std::move(parts);
  request.strips.push_back({Length::inches(width), std::nullopt, {}, 1});
  request.work = work;
  return request;
}

}  // namespace

TEST_CASE("two triangles make a rectangle, L-shapes a block, trapezoids a row", "[nest][outlines]") {
  const Lay triangles = lay_outlines(on_strip(10, {part_of(inches({{0, 0}, {12, 0}, {0, 10}}), 2)}));
  CHECK(triangles.proven);
  CHECK(triangles.used.at(0) == Length::inches(12));
  const Lay corners = lay_outlines(on_strip(3, {part_of(inches({{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}), 2)}, 200000));
  CHECK(corners.used.at(0) <= Length::inches(2) + Length::tenth_mm(1));
  // n equal symmetric trapezoids turned alternately in one row: n (a + b) / 2 + (b - a) / 2.
  const Lay gores = lay_outlines(on_strip(20, {part_of(inches({{0, 0}, {8, 0}, {6, 20}, {2, 20}}), 4)}, 100000));
  CHECK(gores.used.at(0) >= Length::inches(4 * 6 + 2));
  CHECK(gores.used.at(0) <= Length::inches(4 * 6 + 2) + Length::tenth_mm(10));
  const Lay with_nap = lay_outlines(on_strip(20, {part_of(inches({{0, 0}, {8, 0}, {6, 20}, {2, 20}}), 4, false)}, 100000));
  CHECK(with_nap.used.at(0) >= Length::inches(4 * 6 + 2));
  for (const Placed& p : with_nap.placed) CHECK(p.pose == Pose{});
}

TEST_CASE("a small part lies in a large one's hollow", "[nest][outlines]") {
  const Polygon u = inches({{0, 0}, {9, 0}, {9, 6}, {6, 6}, {6, 3}, {3, 3}, {3, 6}, {0, 6}});
  const Lay lay = lay_outlines(on_strip(6, {part_of(u, 1, false), part_of(inches({{0, 0}, {3, 0}, {3, 3}, {0, 3}}), 1)}, 50000));
  CHECK(lay.used.at(0) == Length::inches(9));
  CHECK(lay.bound == Length::inches(9));
}

TEST_CASE("poses: quarter turns are exact, 45 degrees rounds to ticks, mirroring comes first", "[nest][outlines]") {
  const Polygon l = inches({{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 2}, {0, 2}});
  CHECK(bounds(posed(l, {1, false, 0})) == Box{{}, {}, Length::inches(2), Length::inches(4)});
  CHECK(posed(l, {1, false, 0})[0] == Point{Length::inches(2), Length()});
  CHECK(posed(l, {0, true, 0})[0] == Point{Length::inches(4), Length()});
  CHECK(posed(l, {0, false, 90000}) == posed(l, {1, false, 0}));
  CHECK(posed(l, {-1, false, 0}) == posed(l, {3, false, 0}));
  const Box bias = bounds(posed(rectangle(Length::inches(10), Length::inches(10)), {0, false, 45000}));
  CHECK(std::abs(bias.width.in_inches() - 14.142135623730951) < 2.0 / Length::kPerInch);
  Part strip = part_of(rectangle(Length::inches(20), Length::inches(2)), 6);
  strip.poses = {{0, false, 45000}, {2, false, 45000}};
  const Lay lay = lay_outlines(on_strip(30, {strip}, 60000));
  CHECK(lay.placed.size() == 6);
  // Strips side by side at 45 degrees take 2 in / sin 45 each along the cloth.
  CHECK(lay.used.at(0).in_inches() < 22 / 1.41421356 + 6 * 2 * 1.41421356 + 2);
}

TEST_CASE("what is not supported is said, never ignored", "[nest][outlines]") {
  Request request = on_strip(10, {part_of(inches({{0, 0}, {4, 4}, {4, 0}, {0, 4}}), 1)});
  CHECK(lay_outlines(request).unsupported == "an outline that crosses or touches itself");
  request.parts = {part_of(inches({{0, 0}, {4, 4}, {8, 8}}), 1)};
  CHECK(lay_outlines(request).unsupported == "an outline without area");
  request.parts = {part_of(rectangle(Length::inches(1), Length::inches(1)), 1)};
  request.strips.push_back({Length::inches(10), Length::inches(5), {}, 2});
  CHECK(lay_outlines(request).unsupported == "an open strip that is not the last");
  Request turned = on_strip(10, {part_of(rectangle(Length::inches(1), Length::inches(1)), 1)});
  turned.parts[0].poses = {{0, false, 45000}};
  CHECK(lay_rectangles(turned).unsupported == "a turn that is not a quarter turn");
  std::swap(request.strips[0], request.strips[1]);
  CHECK(lay_outlines(request).unsupported == "strips of different cost");
}

TEST_CASE("closed strips: what does not go is left out; all goes where all can", "[nest][outlines]") {
  const Part triangle = part_of(inches({{0, 0}, {12, 0}, {0, 10}}), 4);
  Request request = on_strip(10, {triangle}, 100000);
  request.strips[0].length = Length::inches(25);
  Lay lay = lay_outlines(request);
  CHECK(lay.left_out.empty());
  CHECK(lay.used.at(0) <= Length::inches(25));
  request.strips[0].length = Length::inches(13);
  lay = lay_outlines(request);
  CHECK(lay.placed.size() == 2);
  CHECK(lay.left_out.size() == 2);
  request.strips.push_back({Length::inches(10), Length::inches(13), {}, 1});  // a second remnant takes the others
  lay = lay_outlines(request);
  CHECK(lay.left_out.empty());
}

TEST_CASE("on a lattice past the edge that is kept clear a part has no room upright: the least length knows it",
          "[nest][outlines]") {
  Request request = on_strip(100, {part_of(inches({{0, 0}, {10, 0}, {10, 60}, {0, 59}}), 1, false)});
  Part& part = request.parts[0];
  part.poses = {{0, false, 0}, {1, false, 0}};
  part.clear_of_first_edge = Length::inches(1);
  part.lattice_across = Part::Lattice{Length::inches(50), {}};  // upright it would reach 110 in
  const Lay lay = lay_outlines(request);
  REQUIRE(lay.placed.size() == 1);
  CHECK(lay.used.at(0) == Length::inches(60));
  CHECK(lay.placed[0].at.y == Length::inches(50));
}

TEST_CASE("the same lay again, with any number of threads", "[nest][outlines]") {
  Request request =
      on_strip(30,
               {part_of(inches({{0, 0}, {12, 0}, {9, 7}, {3, 9}}), 3),
                part_of(inches({{0, 0}, {8, 0}, {4, 3}, {8, 9}, {0, 9}}), 3), part_of(inches({{0, 0}, {5, 1}, {3, 11}}), 5)},
               60000);
  request.gap = Length::tenth_mm(50);
  const Lay first = lay_outlines(request);
  for (const int threads : {1, 2, 8}) {
    request.threads = threads;
    const Lay again = lay_outlines(request);
    CHECK(again.placed == first.placed);
    CHECK(again.work == first.work);
  }
  request.seed = 2;
  CHECK(lay_outlines(request).placed != first.placed);
}

TEST_CASE("a search that is stopped gives a lay that is right and says that it was cut short; one that is not, its usual lay",
          "[nest][outlines]") {
  std::atomic<bool> stop{false};
  for (const bool drawn : {true, false}) {
    Request request = on_strip(
        19,
        {part_of(drawn ? inches({{0, 0}, {8, 0}, {6, 15}, {2, 18}}) : inches({{0, 0}, {8, 0}, {8, 15}, {0, 15}}), 5, false),
         part_of(drawn ? inches({{0, 0}, {7, 1}, {4, 5}}) : inches({{0, 0}, {7, 0}, {7, 5}, {0, 5}}), 4, false)},
        100000);
    const auto lay = [&] { return lay_parts(request, {2000, request.work}); };
    const Lay whole = lay();
    double spent = -1;
    int times = 0;
    stop = false;
    request.stop = &stop;
    request.told = [&](double done) {
      CHECK(done >= spent);
      CHECK(done <= 1);
      spent = done;
      ++times;
    };
    const Lay watched = lay();
    CHECK(watched.placed == whole.placed);
    CHECK(watched.work == whole.work);
    CHECK_FALSE(watched.cut_short);
    CHECK(times > 1);
    spent = -1;
    stop = true;
    const Lay at_once = lay();
    CHECK(at_once.cut_short);
    CHECK(at_once.placed.size() == 9);
    CHECK(at_once.work < whole.work);
    CHECK(at_once.used.at(0) >= whole.used.at(0));
  }
}

TEST_CASE("apart: touching is apart, a tick less is not", "[nest][outlines]") {
  const Ring square{{0, 0}, {40, 0}, {40, 40}, {0, 40}}, diamond{{0, 20}, {20, 0}, {40, 20}, {20, 40}};
  const Ring u{{0, 0}, {90, 0}, {90, 60}, {60, 60}, {60, 30}, {30, 30}, {30, 60}, {0, 60}},
      block{{0, 0}, {30, 0}, {30, 30}, {0, 30}};
  CHECK(apart(square, square, 40, 17, 0));
  CHECK_FALSE(apart(square, square, 39, 17, 0));
  CHECK(apart(square, diamond, 40, 0, 0));
  CHECK_FALSE(apart(square, diamond, 39, 0, 0));
  CHECK(apart(diamond, diamond, 20, 20, 0));
  CHECK_FALSE(apart(diamond, diamond, 20, 19, 0));
  CHECK_FALSE(apart(square, square, 0, 0, 0));
  CHECK_FALSE(apart(u, u, 0, 0, 0));
  CHECK_FALSE(apart(square, block, 5, 5, 0));
  CHECK_FALSE(apart(square, block, 0, 10, 0));
  CHECK(apart(u, block, 30, 30, 0));
  CHECK_FALSE(apart(u, block, 31, 30, 0));
  CHECK(apart(square, square, 43, 44, 5));  // 3, 4: five apart
  CHECK_FALSE(apart(square, square, 43, 43, 5));
  CHECK(apart(square, diamond, 45, 0, 5));
  CHECK_FALSE(apart(square, diamond, 44, 0, 5));
}

TEST_CASE("three hundred parts stay below 200 MiB", "[nest][outlines]") {
#ifndef GOWNSHEAF_SANITIZED
  std::vector<Part> parts;
  for (int k = 0; k < 60; ++k)
    parts.push_back(part_of(inches({{0, 0}, {5 + k % 7, 1}, {4 + k % 5, 6 + k % 11}, {2, 3 + k % 3}, {1, 5 + k / 6}}), 5));
  const Lay lay = lay_outlines(on_strip(60, parts, 4000));
  CHECK(lay.placed.size() == 300);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  CHECK(usage.ru_maxrss < 200 * 1024);
#endif
}

// Where the public instances are at hand (strip packing; garment industry): a floor under the density at a small effort.
TEST_CASE("public instances at a fixed effort", "[nest][outlines]") {
  const std::filesystem::path folder = std::filesystem::path(GOWNSHEAF_SOURCE_DIR) / "../shared/data/strip-packing";
  const std::vector<std::pair<std::string, double>> floors = {{"albano", 83.0}, {"mao", 77.0}, {"trousers", 82.0}};
  for (const auto& [name, floor] : floors) {
    std::ifstream file(folder / (name + ".json"));
    if (!file) continue;
    const nlohmann::json instance = nlohmann::json::parse(file);
    const double scale = 2e6 / instance["strip_width"].get<double>();
    Request request;
    request.work = 400'000;
    request.threads = 2;
    request.strips.push_back({Length::ticks(2'000'000), std::nullopt, {}, 1});
    double area = 0;
    for (const auto& piece : instance["pieces"]) {
      Part part;
      for (const auto& c : piece["outline"]) {
        part.outline.push_back(
            {Length::ticks(std::llround(c[0].get<double>() * scale)), Length::ticks(std::llround(c[1].get<double>() * scale))});
      }
      part.copies = piece["count"];
      part.poses.clear();
      for (const int turn : piece["allowed_rotations_deg"]) part.poses.push_back({turn / 90, false, 0});
      double twice = 0;
      for (std::size_t i = 0; i < part.outline.size(); ++i) {
        const Point &a = part.outline[i], &b = part.outline[(i + 1) % part.outline.size()];
        twice += static_cast<double>(a.x.in_ticks()) * static_cast<double>(b.y.in_ticks()) -
                 static_cast<double>(b.x.in_ticks()) * static_cast<double>(a.y.in_ticks());
      }
      area += std::abs(twice) / 2 * part.copies;
      request.parts.push_back(std::move(part));
    }
    const Lay lay = lay_outlines(request);
    CAPTURE(name);
    REQUIRE(lay.unsupported.empty());
    CHECK(100 * area / (2e6 * static_cast<double>(lay.used.at(0).in_ticks())) >= floor);
  }
}
