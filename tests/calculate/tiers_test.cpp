// Tiers and stitching, by published and by hand sums.
#include "calculate/tiers.h"

#include "calculate/calculate.h"
#include "support/catch.h"
#include "support/garment.h"

using namespace gownsheaf;
using garment::in;

namespace {

Project petticoat() {
  Project p = garment::project(ShownIn::inches);
  PleatRun run = garment::run("edge", PleatKind::gathers, {});
  run.finished = garment::said(in(90));
  run.rows = garment::said<std::int64_t>(3);
  run.tiers = {{garment::named("upper"), garment::said(Ratio::of(4, 3)), {}, garment::said(in(10))},
               {garment::named("lower"), garment::said(Ratio::of(3, 2)), {}, garment::said(in(8))}};
  p.pleats.push_back(run);
  return p;
}

std::string error_of(const Project& p) {
  Diagnostics diag;
  calculate(p, Templates{}, WorkOptions{}, diag);
  for (const Diagnostic& d : diag.sorted())
    if (d.severity == Severity::error) return d.sentence;
  return "";
}

}  // namespace

TEST_CASE("[R03] a: a skirt's edge of 2 1/2 yd, flounce 1 1/3 times, lower flounce 1 1/2 times: 3 1/3 yd, then 5 yd") {
  // a petticoat draft of 1907, tudorlinks.com/treasury/freepatterns/w1907petticoat.html
  Diagnostics diag;
  const Worked w = calculate(petticoat(), Templates{}, WorkOptions{}, diag);
  CHECK(w.figures.length("pleats/edge/tier upper/flat") == in(120));
  CHECK(w.figures.length("pleats/edge/tier lower/flat") == in(180));
  CHECK(w.figures.length("pleats/edge/flat") == in(120));
  CHECK(w.figures.length("pleats/edge/tiers deep") == in(18));
  REQUIRE(w.plans.pleats.size() == 1);
  CHECK(w.plans.pleats[0].tiers == std::vector<std::string>{"upper", "lower"});
}

TEST_CASE("tiers that cannot be") {
  Project p = petticoat();
  p.pleats[0].tiers[1].flat = garment::said(in(150));
  CHECK(error_of(p) == "Tier lower of edge is 150 in flat; fullness 1.5 of 120 in makes 180 in.");
  p.pleats[0].tiers[1].fullness = {};
  CHECK(error_of(p).empty());
  p.pleats[0].tiers[1].flat = garment::said(in(100));
  CHECK(error_of(p) == "Tier lower of edge is 100 in flat; the edge above it is 120 in.");
  p.pleats[0].tiers[1].flat = {};
  CHECK(error_of(p) == "Tier lower of edge needs fullness or flat.");
}

TEST_CASE("stitched down: 2 x 9 knife pleats for 5 in are 90 in of stitching") {
  Project p = garment::project(ShownIn::inches);
  PleatRun run = garment::run("sides", PleatKind::knife, {});
  run.half = true;
  run.finished = garment::said(in(9));
  run.count = garment::said<std::int64_t>(9);
  run.depth = garment::said(in(1));
  run.stitched_down = garment::said(in(5));
  p.pleats.push_back(run);
  Diagnostics diag;
  CHECK(calculate(p, Templates{}, WorkOptions{}, diag).figures.length("pleats/sides/stitching") == in(90));
}
