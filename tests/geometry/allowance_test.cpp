// Allowances: sums by hand, and laws over random pieces.
#include "geometry/allowance.h"

#include <algorithm>
#include <cmath>

#include "support/catch.h"
#include "support/polygons.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using polygons::mm;
using polygons::mm2;

namespace {

Allowances all(std::size_t edges, int depth_mm) { return {std::vector<Length>(edges, Length::mm(depth_mm)), 2.0}; }

const Polygon kSquare = mm({{0, 0}, {100, 0}, {100, 100}, {0, 100}});

// A simple piece: the largest ring of what a random line encloses.
Polygon random_piece(draws::Draws& draw) {
  while (true) {
    Polygon line;
    for (std::int64_t n = draw.of(3, 10); n > 0; --n)
      line.push_back({Length::ticks(draw.of(0, 300 * Length::kPerMm)), Length::ticks(draw.of(0, 300 * Length::kPerMm))});
    const Region region = resolve({line}, FillRule::nonzero).region;
    const Polygon* best = nullptr;
    for (const Polygon& ring : region.rings)
      if (!best || area(ring) > area(*best)) best = &ring;
    if (best && mm2(area(*best)) > 500) return *best;
  }
}

struct OnEdge {
  double along, off, length;
};  // of a point: along the edge from its start, outward from it; mm
OnEdge seen_from(Point p, Point a, Point b) {
  const double dx = (b.x - a.x).in_mm(), dy = (b.y - a.y).in_mm(), length = std::sqrt(dx * dx + dy * dy);
  const double px = (p.x - a.x).in_mm(), py = (p.y - a.y).in_mm();
  return {(px * dx + py * dy) / length, (px * dy - py * dx) / length, length};
}
Point beside(Point a, Point b, double share, double off_mm) {
  const double dx = (b.x - a.x).in_mm(), dy = (b.y - a.y).in_mm(), length = std::sqrt(dx * dx + dy * dy);
  return {a.x + Length::ticks(std::llround((dx * share + dy / length * off_mm) * Length::kPerMm)),
          a.y + Length::ticks(std::llround((dy * share - dx / length * off_mm) * Length::kPerMm))};
}

}  // namespace

TEST_CASE("a square with even allowances is a larger square; a deeper hem is deeper by itself", "[allowance]") {
  const std::optional<Region> even = with_allowances(kSquare, all(4, 10));
  REQUIRE(even);
  CHECK(even->rings == std::vector<Polygon>{mm({{-10, -10}, {110, -10}, {110, 110}, {-10, 110}})});
  Allowances hem = all(4, 15);
  hem.of_edges[2] = Length::mm(50);  // the lower edge, y down
  CHECK(with_allowances(kSquare, hem)->rings == std::vector<Polygon>{mm({{-15, -15}, {115, -15}, {115, 150}, {-15, 150}})});
  Allowances fold = all(4, 15);
  fold.of_edges[3] = Length();  // the left edge lies on the fold
  CHECK(with_allowances(kSquare, fold)->rings == std::vector<Polygon>{mm({{0, -15}, {115, -15}, {115, 115}, {0, 115}})});
}

TEST_CASE("the seam line within a cut line, and nothing where allowances meet", "[allowance]") {
  CHECK(within_allowances(kSquare, all(4, 10))->rings == std::vector<Polygon>{mm({{10, 10}, {90, 10}, {90, 90}, {10, 90}})});
  Allowances hem = all(4, 10);
  hem.of_edges[2] = Length::mm(40);
  CHECK(within_allowances(kSquare, hem)->rings == std::vector<Polygon>{mm({{10, 10}, {90, 10}, {90, 60}, {10, 60}})});
  CHECK(within_allowances(kSquare, all(4, 50))->rings.empty());
  // A dumb-bell whose neck is all allowance falls in two.
  const Polygon bell = mm(
      {{0, 0}, {60, 0}, {60, 25}, {100, 25}, {100, 0}, {160, 0}, {160, 60}, {100, 60}, {100, 35}, {60, 35}, {60, 60}, {0, 60}});
  CHECK(within_allowances(bell, all(12, 10))->rings.size() == 2);
}

TEST_CASE("a corner of 45 degrees is cut square at twice the allowance, and the inner corner is exact", "[allowance]") {
  // By hand: the strips' lines meet 10 / sin(22.5 deg) = 26.13 mm from the point, further than 20; the cut stands 20 mm
  // from the point across the middle line.
  const Polygon gore = mm({{0, 0}, {200, 0}, {200, 200}});
  const Region cut = *with_allowances(gore, all(3, 10));
  REQUIRE(cut.rings.size() == 1);
  double nearest = 1e9;
  const Point tip{};
  for (std::size_t i = 0; i < cut.rings[0].size(); ++i)
    nearest = std::min(nearest, distance_mm(tip, cut.rings[0][i], cut.rings[0][(i + 1) % cut.rings[0].size()]));
  CHECK(std::fabs(nearest - 10) < 0.001);
  const Point straight_out{Length::mm(-20).times(92388, 100000), Length::mm(-20).times(38268, 100000)};  // along the middle line
  CHECK(reaches(cut, straight_out, Length::ticks(4)));
  CHECK_FALSE(reaches(cut, {straight_out.x.times(1001, 1000), straight_out.y.times(1001, 1000)}, Length::ticks(4)));
  const Polygon corner = mm({{0, 0}, {100, 0}, {100, 50}, {50, 50}, {50, 100}, {0, 100}});  // an inner corner at 50, 50
  CHECK(mm2(area(*with_allowances(corner, all(6, 10)))) == 120 * 70 + 70 * 50);
}

TEST_CASE("allowances that make no sense are refused", "[allowance]") {
  CHECK_FALSE(with_allowances(kSquare, all(3, 10)));
  CHECK_FALSE(with_allowances(kSquare, all(4, -1)));
  CHECK_FALSE(with_allowances(Polygon(kSquare.rbegin(), kSquare.rend()), all(4, 10)));
  CHECK(with_allowances(kSquare, all(4, 0))->rings == std::vector<Polygon>{kSquare});
}

TEST_CASE("law: the cut line holds the seam line and each whole strip, and goes no further than a mitre", "[allowance][law]") {
  draws::Draws draw(20312);
  for (int round = 0; round < kLawRounds; ++round) {
    const Polygon piece = random_piece(draw);
    Allowances allowances;
    double deepest = 0;
    for (std::size_t i = 0; i < piece.size(); ++i) {
      allowances.of_edges.push_back(Length::ticks(draw.of(0, 3) == 0 ? 0 : draw.of(0, 50 * Length::kPerMm)));
      deepest = std::max(deepest, allowances.of_edges.back().in_mm());
    }
    allowances.mitre = 1.0 + static_cast<double>(draw.of(0, 300)) / 100;
    const std::optional<Region> cut = with_allowances(piece, allowances);
    CAPTURE(round);
    REQUIRE(cut);
    // The piece takes nothing away from the cut region and adds nothing to it but roundings: it lies inside, everywhere.
    std::vector<Polygon> both = cut->rings;
    both.push_back(piece);
    double edge_mm = 0;
    for (const Polygon& ring : both)
      for (std::size_t i = 0; i < ring.size(); ++i)
        edge_mm += distance_mm(ring[i], ring[(i + 1) % ring.size()], ring[(i + 1) % ring.size()]);
    const double added = mm2(area(resolve(both, FillRule::positive).region)) - mm2(area(*cut));
    REQUIRE(std::fabs(added) <= edge_mm * kAllowanceShift.in_mm());
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const Point a = piece[i], b = piece[(i + 1) % piece.size()];
      REQUIRE(reaches(*cut, a, kAllowanceShift));
      const double share = static_cast<double>(draw.of(0, 1000)) / 1000;
      const double off = allowances.of_edges[i].in_mm() * static_cast<double>(draw.of(0, 1000)) / 1000;
      REQUIRE(reaches(*cut, beside(a, b, share, off), kAllowanceShift));
    }
    const Region seam{{piece}};
    for (const Polygon& ring : cut->rings) {
      for (const Point& p : ring) {
        double near = 1e9;
        for (std::size_t i = 0; i < piece.size(); ++i)
          near = std::min(near, distance_mm(p, piece[i], piece[(i + 1) % piece.size()]));
        REQUIRE((side_of(seam, p) != Side::outside ||
                 near <= std::sqrt(allowances.mitre * allowances.mitre + 1) * deepest + kAllowanceShift.in_mm()));
      }
    }
  }
}

TEST_CASE("law: the seam line keeps each edge's allowance from the cut line, and nothing that could stay is lost",
          "[allowance][law]") {
  draws::Draws draw(20313);
  int kept = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    const Polygon cut = random_piece(draw);
    Allowances allowances;
    for (std::size_t i = 0; i < cut.size(); ++i) allowances.of_edges.push_back(Length::ticks(draw.of(0, 20 * Length::kPerMm)));
    const std::optional<Region> seam = within_allowances(cut, allowances);
    CAPTURE(round);
    REQUIRE(seam);
    const Region piece{{cut}};
    for (const Polygon& ring : seam->rings) {
      for (const Point& p : ring) {
        REQUIRE(reaches(piece, p, kAllowanceShift));
        for (std::size_t i = 0; i < cut.size(); ++i) {
          const OnEdge seen = seen_from(p, cut[i], cut[(i + 1) % cut.size()]);
          const bool beside_it = seen.along > 0.01 && seen.along < seen.length - 0.01 && seen.off < -0.01;
          REQUIRE((!beside_it || -seen.off >= allowances.of_edges[i].in_mm() - 2 * kAllowanceShift.in_mm()));
        }
      }
    }
    // A place of the piece further from every edge than twice its allowance stays.
    for (int k = 0; k < 10; ++k) {
      const Point p{Length::ticks(draw.of(0, 300 * Length::kPerMm)), Length::ticks(draw.of(0, 300 * Length::kPerMm))};
      if (side_of(piece, p) != Side::inside) continue;
      bool stays = true;
      for (std::size_t i = 0; i < cut.size(); ++i) stays = stays && distance_mm(p, cut[i], cut[(i + 1) % cut.size()]) > 2 * 20.0;
      if (!stays) continue;
      ++kept;
      REQUIRE(side_of(*seam, p) == Side::inside);
    }
  }
  CHECK(kept > kLawRounds / 20);
}
