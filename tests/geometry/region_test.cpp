// What closed lines enclose: figures by hand, and laws against winding numbers counted at random places.
#include "geometry/region.h"

#include "support/catch.h"
#include "support/polygons.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using polygons::mm;
using polygons::mm2;

namespace {

// How often the polygons wind round p, by the crossings of a ray: the plain way.
int winding(const std::vector<Polygon>& polygons, Point p) {
  int count = 0;
  for (const Polygon& ring : polygons) {
    for (std::size_t i = 0; i < ring.size() && ring.size() >= 3; ++i) {
      const Point a = ring[i], b = ring[(i + 1) % ring.size()];
      if ((a.y <= p.y) == (b.y <= p.y)) continue;
      const double x = a.x.in_mm() + (b.x - a.x).in_mm() * (p.y - a.y).in_mm() / (b.y - a.y).in_mm();
      if (x > p.x.in_mm()) count += b.y > a.y ? 1 : -1;
    }
  }
  return count;
}

bool near_a_line(const std::vector<Polygon>& polygons, Point p, double reach) {
  for (const Polygon& ring : polygons)
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (distance_mm(p, ring[i], ring[(i + 1) % ring.size()]) <= reach) return true;
  return false;
}

}  // namespace

TEST_CASE("a bow tie is two triangles that meet at a point, and says where it crosses", "[region]") {
  const Resolved bow = resolve({mm({{10, 10}, {60, 60}, {60, 10}, {10, 60}})}, FillRule::nonzero);
  REQUIRE(bow.region.rings.size() == 2);
  CHECK(mm2(area(bow.region)) == 1250);
  REQUIRE(bow.crossings.size() == 1);
  CHECK(bow.crossings[0] == Point{Length::mm(35), Length::mm(35)});
}

TEST_CASE("holes by rule and by way round", "[region]") {
  const Polygon outer = mm({{0, 0}, {50, 0}, {50, 50}, {0, 50}});
  const Polygon same = mm({{10, 10}, {30, 10}, {30, 30}, {10, 30}});
  const Polygon against = mm({{10, 10}, {10, 30}, {30, 30}, {30, 10}});
  CHECK(mm2(area(resolve({outer, same}, FillRule::nonzero).region)) == 2500);
  CHECK(mm2(area(resolve({outer, same}, FillRule::even_odd).region)) == 2100);
  CHECK(mm2(area(resolve({outer, against}, FillRule::nonzero).region)) == 2100);
  const Region ring = resolve({outer, against}, FillRule::nonzero).region;
  REQUIRE(ring.rings.size() == 2);
  CHECK(area(ring.rings[0]) > Area());
  CHECK(area(ring.rings[1]) < Area());
  CHECK(side_of(ring, {Length::mm(20), Length::mm(20)}) == Side::outside);
  CHECK(side_of(ring, {Length::mm(10), Length::mm(20)}) == Side::on);
  CHECK(side_of(ring, {Length::mm(5), Length::mm(20)}) == Side::inside);
}

TEST_CASE("lines there and back enclose nothing; what is too far out or too tangled is refused", "[region]") {
  CHECK(resolve({mm({{0, 0}, {50, 0}, {20, 0}})}, FillRule::nonzero).region.rings.empty());
  CHECK(resolve({mm({{0, 0}, {50, 0}})}, FillRule::nonzero).region.rings.empty());
  const Region spike =
      resolve({mm({{0, 0}, {50, 0}, {50, 50}, {25, 50}, {25, 80}, {25, 50}, {0, 50}})}, FillRule::nonzero).region;
  REQUIRE(spike.rings.size() == 1);
  CHECK(spike.rings[0].size() == 4);
  CHECK(resolve({mm({{0, 0}, {20'000'000, 0}, {0, 50}})}, FillRule::nonzero).refused);
  Polygon tangle;
  for (int i = 0; i < 1500; ++i) tangle.push_back({Length::mm(i % 2 == 0 ? 0 : 1000), Length::mm((i * 7919) % 1499)});
  CHECK(resolve({tangle}, FillRule::nonzero).refused);
}

TEST_CASE("law: what is enclosed is what the winding number says, whatever crosses and coincides", "[region][law]") {
  draws::Draws draw(20311);
  int looked_at = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    // Half on a coarse grid, where lines touch and coincide; half with fine places, where crossings must be rounded.
    const bool coarse = round % 2 == 0;
    const auto place = [&] { return coarse ? Length::mm(draw.of(0, 6)) : Length::ticks(draw.of(0, 6 * Length::kPerMm)); };
    std::vector<Polygon> polygons(static_cast<std::size_t>(draw.of(1, 3)));
    for (Polygon& p : polygons)
      for (std::int64_t n = draw.of(3, 9); n > 0; --n) p.push_back({place(), place()});
    const FillRule rule = round % 3 == 0 ? FillRule::nonzero : round % 3 == 1 ? FillRule::even_odd : FillRule::positive;
    const Resolved found = resolve(polygons, rule);
    CAPTURE(round);
    REQUIRE_FALSE(found.refused);
    for (int k = 0; k < 12; ++k) {
      const Point p{Length::ticks(draw.of(-100, 6 * Length::kPerMm + 100)),
                    Length::ticks(draw.of(-100, 6 * Length::kPerMm + 100))};
      if (near_a_line(polygons, p, kRegionShift.in_mm())) continue;
      const int wind = winding(polygons, p);
      const bool inside = rule == FillRule::nonzero ? wind != 0 : rule == FillRule::even_odd ? wind % 2 != 0 : wind > 0;
      ++looked_at;
      REQUIRE((side_of(found.region, p) == Side::inside) == inside);
    }
    const Resolved again = resolve(found.region.rings, FillRule::nonzero);
    REQUIRE(again.region == found.region);
    REQUIRE(resolve(found.region.rings, FillRule::positive).region == found.region);
  }
  CHECK(looked_at > 10 * kLawRounds);
}

TEST_CASE("an edge of forty thousand teeth, whichever way it runs, is no tangle", "[region]") {
  for (const bool upright : {false, true}) {
    Polygon comb;
    const auto add = [&](std::int64_t along, std::int64_t off) {
      const Length a = Length::ticks(along), o = Length::ticks(off);
      comb.push_back(upright ? Point{o, a} : Point{a, o});
    };
    for (std::int64_t i = 0; i < 40'000; ++i) add(i * 72, i % 2 == 0 ? 0 : 14'400);  // 1 m of teeth 5 mm deep
    add(40'000 * 72, 0);
    add(40'000 * 72, 1'440'000);
    add(0, 1'440'000);
    const Resolved found = resolve({comb}, FillRule::nonzero);
    REQUIRE_FALSE(found.refused);
    CHECK(found.crossings.empty());
    REQUIRE(found.region.rings.size() == 1);
    CHECK(found.region.rings[0].size() == comb.size());
  }
}
