// A closing that is pulled: zones, one fastener that opens, what eases it, what matters; against a second reckoning.
#include "calculate/pulled_edge.h"

#include <algorithm>
#include <random>

#include "support/catch.h"
#include "support/plain_load.h"
#include "support/rounds.h"

using namespace gownsheaf;
using Catch::Matchers::WithinAbs;

namespace {

Length in64(std::int64_t n) { return Length::sixty_fourths(n); }
Mass lb(double pounds) { return ounces(16 * pounds); }
double lbf(Force f) { return f.value / kNewtonsPerPoundForce; }

// 26 in, 1/2 in smaller over a corset, breath twice; eleven hooks 1 1/4 in apart from the top of a 12 1/2 in edge.
PulledEdge bodice() {
  PulledEdge e;
  e.edge = in64(800);
  for (int i = 0; i <= 10; ++i) e.places.push_back(in64(80 * i));
  e.zones.push_back({Length{}, e.edge, Length::inches(26), in64(32), std::nullopt, 2});
  e.over_corset = true;
  e.seam = Length::inches(26);
  return e;
}

struct Draws {
  std::mt19937 random{20261125};
  int below(int n) { return static_cast<int>(random() % static_cast<std::uint32_t>(n)); }
};

// The same random closing for both reckonings; everything in even 64ths of an inch.
void draw(Draws& d, PulledEdge& edge, plain_load::Edge& plain) {
  plain.length = 64 * (4 + d.below(14));
  const int n = 1 + d.below(12);
  for (int i = 0; i < n; ++i) plain.at.push_back(2 * d.below(plain.length / 2));
  std::sort(plain.at.begin(), plain.at.end());
  plain.at.erase(std::unique(plain.at.begin(), plain.at.end()), plain.at.end());
  plain.rows = 1 + d.below(2);
  plain.corset = d.below(2) == 0;
  plain.pounds = d.below(4) == 0 ? 0 : d.below(12) + 0.5;
  plain.seam = 22 + d.below(20);
  plain.elsewhere = d.below(10) / 10.0;
  int from = 0;
  while (from < plain.length) {
    const int to = d.below(3) == 0 ? plain.length : std::min(plain.length, from + 64 * (1 + d.below(8)));
    const double factors[] = {1, 1.3, 1.5, 1.6, 2, 2.1};
    plain.zones.push_back(
        {from, to, 20.0 + d.below(30), (d.below(160) - 64) / 64.0, d.below(3) == 0 ? d.below(60) : -1.0, factors[d.below(6)]});
    from = to;
  }
  edge.edge = in64(plain.length);
  for (const int a : plain.at) edge.places.push_back(in64(a));
  edge.rows = plain.rows;
  edge.over_corset = plain.corset;
  edge.hung = lb(plain.pounds);
  edge.seam = in64(static_cast<std::int64_t>(plain.seam * 64));
  edge.share = plain.elsewhere;
  for (const plain_load::Zone& z : plain.zones) {
    PulledZone zone{
        in64(z.from), in64(z.to), in64(static_cast<std::int64_t>(z.girth * 64)), in64(static_cast<std::int64_t>(z.short_by * 64)),
        {},           z.factor};
    if (z.mmhg >= 0) zone.pressure = Pressure{z.mmhg * kPascalsPerMillimetreOfMercury};
    edge.zones.push_back(zone);
  }
}

}  // namespace

TEST_CASE("an even row: inner hooks take line load times pitch, end hooks half; the lowest the skirt as well", "[load]") {
  // By hand: 13.46 mmHg, 1.077 lbf/in at rest, 2.154 moving; on 1 1/4 in 2.69 lbf, at the ends half: 1.346. With 8 lb on
  // 26 in of seam the last takes sqrt(1.346^2 + 1.846^2) = 2.28 lbf.
  PulledEdge e = bodice();
  EdgePull p = pull_of(e);
  CHECK_THAT(lbf(p.pulls.front()), WithinAbs(1.346, 0.005));
  CHECK_THAT(lbf(p.pulls[5]), WithinAbs(2.69, 0.005));
  CHECK(p.band == "R2");
  e.hung = lb(8);
  p = pull_of(e);
  CHECK_THAT(lbf(p.hanging), WithinAbs(1.846, 0.005));
  CHECK_THAT(lbf(p.pulls.back()), WithinAbs(2.285, 0.005));
  CHECK(p.band == "R3");  // 3.27 lbf on 1 1/4 in is 2.61 lbf/in
}

TEST_CASE("when one of an even row opens its neighbours take half as much again", "[load]") {
  const PulledEdge e = bodice();
  const auto worst = worst_failure(e);
  REQUIRE(worst);
  CHECK_THAT(lbf(worst->takes), WithinAbs(1.5 * 2.69, 0.01));
  // Two rows: the other of the same place takes all that the place does.
  PulledEdge two = e;
  two.rows = 2;
  CHECK_THAT(worst_failure(two)->takes.value, WithinAbs(pull_of(e).greatest().value, 1e-9));
  PulledEdge one = e;
  one.places = {in64(400)};
  CHECK_FALSE(worst_failure(one).has_value());
}

TEST_CASE("zones: a hook between two takes its share of each", "[load]") {
  // Ribs to 5 in with 20 mmHg at 30 in, the waist below with 40 mmHg at 26 in: 1.847 and 3.201 lbf/in. A hook at 5 in,
  // 1 1/4 in from both neighbours: 5/8 x 1.847 + 5/8 x 3.201 = 3.155 lbf.
  PulledEdge e = bodice();
  const auto mmhg = [](double mm) { return Pressure{mm * kPascalsPerMillimetreOfMercury}; };
  e.zones = {{Length{}, in64(320), Length::inches(30), {}, mmhg(20), 1},
             {in64(320), e.edge, Length::inches(26), {}, mmhg(40), 1}};
  const EdgePull p = pull_of(e);
  CHECK_THAT(lbf(p.pulls[4]), WithinAbs(3.155, 0.005));
  CHECK_THAT(lbf(p.pulls[3]), WithinAbs(1.25 * 1.847, 0.005));
  CHECK(p.heaviest == 1);
}

TEST_CASE("letting out stops at the first step whose band is lower", "[load]") {
  // 2.154 lbf/in is R2; R1 begins under 1.2, where the pressure is 7.5 mmHg and it is 0.279 in smaller: 1/4 in out of the
  // 1/2 in leaves 6.73 mmHg, 1.077 lbf/in.
  const auto by = let_out_to_lower_band(bodice(), in64(16), Length::inches(2));
  REQUIRE(by);
  CHECK(*by == in64(16));
  PulledEdge written = bodice();
  written.zones[0].pressure = Pressure{5000};
  CHECK_FALSE(let_out_to_lower_band(written, in64(16), Length::inches(2)).has_value());
}

TEST_CASE("what matters most comes first, and its ends are the reckoning's own", "[load]") {
  const PulledEdge e = bodice();
  const std::vector<Variation> inputs{
      {"distance", [](PulledEdge& p) { p.places[1] -= in64(1); }, [](PulledEdge& p) { p.places[1] += in64(1); }},
      {"breath", [](PulledEdge& p) { p.zones[0].factor = 1; }, [](PulledEdge& p) { p.zones[0].factor = 3; }}};
  const auto varied = sensitivity(e, inputs);
  REQUIRE(varied.size() == 2);
  CHECK(varied[0].input == "breath");
  CHECK_THAT(lbf(varied[0].low), WithinAbs(1.346, 0.005));
  CHECK_THAT(lbf(varied[0].high), WithinAbs(4.038, 0.01));
}

TEST_CASE("a second reckoning agrees on random closings", "[load][law]") {
  Draws d;
  for (int round = 0; round < kLawRounds; ++round) {
    PulledEdge edge;
    plain_load::Edge plain;
    draw(d, edge, plain);
    const EdgePull pull = pull_of(edge);
    const std::vector<double> other = plain_load::pulls(plain, plain.at);
    REQUIRE(pull.pulls.size() == other.size());
    for (std::size_t i = 0; i < other.size(); ++i) REQUIRE_THAT(lbf(pull.pulls[i]), WithinAbs(other[i], 1e-3 + other[i] * 1e-4));
    REQUIRE(pull.band.size() == 2);
    const int band = pull.band[1] - '0';
    if (band != plain_load::band(plain)) {  // only where the two conversions fall on both sides of a limit
      plain_load::Edge near = plain;
      for (plain_load::Zone& z : near.zones) z.factor *= band > plain_load::band(plain) ? 1.0001 : 0.9999;
      REQUIRE(band == plain_load::band(near));
    }
    if (plain.rows == 1 && plain.at.size() > 1 && round % 8 == 0)
      REQUIRE_THAT(lbf(worst_failure(edge)->takes),
                   WithinAbs(plain_load::when_one_opens(plain), 1e-3 + plain_load::when_one_opens(plain) * 1e-4));
  }
}

TEST_CASE("laws of random closings: the row carries the whole edge, nothing is lost when one opens", "[load][law]") {
  Draws d;
  d.random.seed(413);
  for (int round = 0; round < kLawRounds; ++round) {
    PulledEdge edge;
    plain_load::Edge plain;
    draw(d, edge, plain);
    const EdgePull pull = pull_of(edge);
    double along = 0, row = 0;
    for (std::size_t z = 0; z < edge.zones.size(); ++z)
      along += fastener_pull(pull.zones[z].moving, edge.zones[z].ends - edge.zones[z].starts).value;
    for (const Force f : pull.across) row += f.value * static_cast<double>(edge.rows);
    REQUIRE_THAT(row, WithinAbs(along, 1e-6 * (1 + along)));
    for (std::size_t i = 0; i < pull.pulls.size(); ++i) REQUIRE(pull.pulls[i].value <= pull.greatest().value);
    if (const auto worst = worst_failure(edge)) REQUIRE(worst->takes.value >= pull.pulls[worst->neighbour].value - 1e-9);
    PulledEdge tighter = edge, carried = edge, rows = edge;
    for (PulledZone& z : tighter.zones) z.shortfall += in64(8);
    carried.share = std::min(1.0, edge.share + 0.2);
    ++rows.rows;
    REQUIRE(pull_of(tighter).greatest().value >= pull.greatest().value - 1e-9);
    REQUIRE(pull_of(tighter).band >= pull.band);
    REQUIRE(pull_of(carried).greatest().value <= pull.greatest().value + 1e-9);
    REQUIRE(pull_of(carried).band <= pull.band);
    REQUIRE(pull_of(rows).greatest().value <= pull.greatest().value + 1e-9);
    if (round % 16 == 0)
      if (const auto out = let_out_to_lower_band(edge, in64(16), Length::inches(2))) {
        PulledEdge eased = edge, less = edge;
        for (PulledZone& z : eased.zones) z.shortfall -= *out;
        for (PulledZone& z : less.zones) z.shortfall -= *out - in64(16);
        REQUIRE(pull_of(eased).band < pull.band);
        REQUIRE(pull_of(less).band == pull.band);
      }
  }
}
