// Lays that are kept are the lays that are found: over random requests, and no other text is taken for one.
#include <map>

#include "nest/lay_store.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::nest;

namespace {

struct Kept : LayStore {
  std::map<std::string, std::string> all;
  int found = 0;
  std::optional<std::string> find(const std::string& key) override {
    const auto at = all.find(key);
    if (at == all.end()) return std::nullopt;
    ++found;
    return at->second;
  }
  void keep(const std::string& key, const std::string& lay) override { all[key] = lay; }
};

bool same(const Lay& a, const Lay& b) {
  return text_of(a) == text_of(b) && a.placed == b.placed && a.left_out == b.left_out && a.used == b.used;
}

Request request(std::uint32_t seed) {
  std::uint32_t x = seed * 2654435761u + 1;
  const auto draw = [&](int n) { return static_cast<int>((x = x * 1664525u + 1013904223u) >> 8) % n; };
  Request r;
  r.gap = Length::mm(draw(5));
  const int parts = 1 + draw(4);
  for (int i = 0; i < parts; ++i) {
    Part part;
    const Length w = Length::cm(5 + draw(40)), h = Length::cm(5 + draw(30));
    part.outline = draw(3) == 0 ? Polygon{{Length{}, Length{}}, {w, Length{}}, {w.times(1, 2), h}} : rectangle(w, h);
    part.copies = 1 + draw(3);
    if (draw(2) == 0) part.poses = {{0, false}, {1, false}, {2, true}};
    if (draw(4) == 0) part.clear_of_first_edge = Length::mm(3);
    r.parts.push_back(part);
  }
  if (draw(3) == 0) r.strips.push_back({Length::cm(60), Length::cm(40), {}, 1});
  if (draw(3) != 0 || r.strips.empty()) r.strips.push_back({Length::cm(60), std::nullopt, {}, 1});
  return r;
}

}  // namespace

TEST_CASE("a lay from the store is the lay that is found without", "[nest][store]") {
  const LayEffort effort{300, 20'000};
  Kept store;
  for (std::uint32_t seed = 0; seed < 60; ++seed) {
    CAPTURE(seed);
    const Request r = request(seed);
    const Lay without = lay_kept(r, effort, nullptr), first = lay_kept(r, effort, &store);
    const int before = store.found;
    const Lay again = lay_kept(r, effort, &store);
    CHECK(store.found == before + 1);
    CHECK(same(first, without));
    CHECK(same(again, without));
    CHECK(again.unsupported == without.unsupported);
    CHECK(again.proven == without.proven);
    CHECK(again.bound == without.bound);
  }
}

TEST_CASE("whatever a lay depends on is in its key", "[nest][store]") {
  const Request r = request(7);
  const LayEffort effort{300, 20'000};
  const std::string key = key_of(r, effort);
  CHECK(key.find(engine_mark()) != std::string::npos);
  CHECK(engine_mark().size() == 64);
  const auto differs = [&](auto change) {
    Request other = r;
    change(other);
    CHECK(key_of(other, effort) != key);
  };
  differs([](Request& o) { o.gap += Length::ticks(1); });
  differs([](Request& o) { ++o.seed; });
  differs([](Request& o) { ++o.parts[0].copies; });
  differs([](Request& o) { o.parts[0].outline[0].x += Length::ticks(1); });
  differs([](Request& o) { o.parts[0].poses.push_back({3, false}); });
  differs([](Request& o) { o.parts[0].poses[0].millidegrees = 1; });
  differs([](Request& o) { o.parts[0].fixed_y = Length{}; });
  differs([](Request& o) { o.parts[0].lattice = Part::Lattice{Length::mm(1), Length{}}; });
  differs([](Request& o) { o.parts[0].lattice_across = Part::Lattice{Length::mm(1), Length{}}; });
  differs([](Request& o) { o.parts[0].clear_of_first_edge += Length::ticks(1); });
  differs([](Request& o) { o.parts[0].strips = {0}; });
  differs([](Request& o) { o.strips[0].width += Length::ticks(1); });
  differs([](Request& o) { o.strips.back().length = Length::mm(1); });
  differs([](Request& o) { o.strips[0].obstacles.push_back({}); });
  differs([](Request& o) { o.strips[0].cost = 2; });
  CHECK(key_of(r, {301, 20'000}) != key);
  CHECK(key_of(r, {300, 20'001}) != key);
  Request threads = r;
  threads.threads = 2;  // changes no lay
  CHECK(key_of(threads, effort) == key);
}

TEST_CASE("a damaged text is no lay", "[nest][store]") {
  const Request r = request(3);
  const Lay lay = lay_parts(r, {300, 20'000});
  const std::string text = text_of(lay);
  REQUIRE(lay_of(text, r));
  for (std::size_t cut = 0; cut < text.size(); ++cut) {
    const auto part = lay_of(text.substr(0, cut), r);
    CHECK((!part || !same(*part, lay)));
    std::string other = text;
    other[cut] = 'x';
    const auto changed = lay_of(other, r);
    CHECK((!changed || !changed->unsupported.empty()));
  }
  Request fewer = r;
  ++fewer.parts[0].copies;
  CHECK_FALSE(lay_of(text, fewer));
}
