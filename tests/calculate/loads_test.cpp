// Strained closings of whole projects: what the skirt weighs, which zone an edge lies in, what is said of it.
#include "calculate/loads.h"

#include <algorithm>

#include "calculate/closures.h"
#include "calculate/cloth_weight.h"
#include "support/catch.h"
#include "support/garment.h"

using namespace gownsheaf;
using Catch::Matchers::WithinAbs;
using garment::in;

namespace {

// A bodice with twelve hooks on 14 in, 26 in round.
Project strained_bodice() {
  Project project = garment::project(ShownIn::inches);
  Closure closure;
  closure.named = garment::named("front");
  closure.length = garment::said(in(14));
  closure.number = garment::said(std::int64_t{12});
  closure.top_inset = closure.bottom_inset = garment::said(in(1, 4));
  closure.meets = garment::said(Meets::edge_to_edge);
  project.closures.push_back(closure);
  Strain strain;
  strain.closure = "front";
  strain.goes_round = "waist";
  strain.girth = garment::said(in(26));
  strain.over = garment::said(std::string("body"));
  strain.moves = garment::said(std::string("walking"));
  strain.breathes_at = garment::said(std::string("natural waist"));
  strain.skirt_hangs_from = garment::said(std::string("nothing"));
  strain.use_at_most = garment::said(Ratio{1, 2});
  project.strain.push_back(strain);
  return project;
}

struct Outcome {
  Figures figures;
  Diagnostics diag;
  std::vector<LoadPlan> loads;
  bool says(const std::string& code) {
    return std::any_of(diag.all().begin(), diag.all().end(), [&](const Diagnostic& d) { return d.code == code; });
  }
};
Outcome worked(const Project& project, std::optional<Mass> skirt = {}) {
  Outcome out;
  Plans plans;
  plans.closures = add_closures(project, out.figures, out.diag);
  out.loads = add_loads(project, plans, skirt, out.figures, out.diag);
  return out;
}

StrainZone zone(const std::string& name, Given<Length> starts, Given<Length> ends, Length girth) {
  StrainZone z;
  z.named = garment::named(name);
  z.starts = std::move(starts);
  z.ends = std::move(ends);
  z.girth = garment::said(girth);
  return z;
}

}  // namespace

TEST_CASE("[L14] x: 5 yd of 54 in cloth at 8 oz/yd2 weigh 60 oz, 3.75 lb, 1.701 kg") {
  // 15 ft x 4.5 ft = 67.5 ft2 = 7.5 yd2; 7.5 x 8 = 60 oz; arithmetic.
  Project project = garment::project(ShownIn::inches);
  project.cloths.push_back(garment::cloth("wool", in(54), Length{}));
  project.cloths[0].weight = garment::said(ounces_per_square_yard(8));
  project.pieces.push_back(
      garment::piece("skirt", PartOf::skirt, {"wool"}, garment::make(1), garment::full_width(), garment::cut(in(180))));
  Plans plans;
  LayPlan lay;
  lay.cloth = "wool";
  CutPiece cut;
  cut.piece = "skirt";
  cut.across = in(54);
  cut.along = in(180);
  lay.cut.push_back(cut);
  plans.lays.push_back(lay);
  Figures figures;
  const auto weight = add_skirt_weight(project, plans, figures);
  REQUIRE(weight);
  CHECK_THAT(weight->value / kGramsPerOunce, WithinAbs(60, 1e-9));
  CHECK_THAT(weight->value / 1000, WithinAbs(1.701, 0.001));
}

TEST_CASE("what no zone covers goes round the strain's own girth", "[load]") {
  Project project = strained_bodice();
  project.strain[0].zones = {zone("ribs", garment::said(in(3)), garment::said(in(6)), in(30)),
                             zone("hip", garment::said(in(10)), {}, in(36))};
  const Outcome out = worked(project);
  REQUIRE(out.loads.size() == 1);
  const auto& zones = out.loads[0].zones;
  REQUIRE(zones.size() == 4);
  CHECK(zones[0].name == "rest of the edge");
  CHECK(zones[0].ends == in(3));
  CHECK(zones[1].name == "ribs");
  CHECK(zones[2].starts == in(6));
  CHECK(zones[3].ends == in(14));
  CHECK(out.figures.length("closures/front/zone rest of the edge/girth") == in(26));
  CHECK(out.figures.length("closures/front/zone hip/girth") == in(36));
  // Nothing written: the widest girth pulls most at 6 mmHg; both of breath 2.
  CHECK(out.figures.find("closures/front/line load")->is_private);
}

TEST_CASE("zones that overlap or leave the edge are errors, and no load is reckoned", "[load]") {
  Project over = strained_bodice();
  over.strain[0].zones = {zone("ribs", {}, garment::said(in(6)), in(30)), zone("waist", garment::said(in(5)), {}, in(26))};
  Outcome overlapping = worked(over);
  CHECK(overlapping.says("zones-overlap"));
  CHECK(overlapping.loads.empty());
  Project off = strained_bodice();
  off.strain[0].zones = {zone("ribs", {}, garment::said(in(15)), in(30))};
  CHECK(worked(off).says("zone-off-edge"));
}

TEST_CASE("the skirt's own band: 8 lb on a hip of 20 degrees is held by 1.71 lbf, 21 mmHg on 1 in", "[load]") {
  // The sum of docs/formulas.md#band-hold. At 60 years 15.2 mmHg are borne: too tight; 2 in wide it presses half: not so.
  Project project = strained_bodice();
  Strain& strain = project.strain[0];
  strain.skirt_hangs_from = garment::said(std::string("own band"));
  strain.hip_slope = garment::said(Angle{20});
  strain.band = WaistBand{garment::said(in(1)), false, garment::said(std::string("cotton")), {}};
  project.measures.girths_and_lengths["waist"].both = garment::said(in(26));
  project.wearer.age = garment::said(std::int64_t{60});
  Outcome narrow = worked(project, ounces(128));
  REQUIRE(narrow.loads.size() == 1);
  REQUIRE(narrow.loads[0].band_hold);
  CHECK_THAT(narrow.loads[0].band_hold->tension.value / kNewtonsPerPoundForce, WithinAbs(1.71, 0.005));
  CHECK_THAT(narrow.loads[0].band_hold->pressure.value / kPascalsPerMillimetreOfMercury, WithinAbs(21.4, 0.1));
  CHECK(narrow.says("band-too-tight"));
  strain.band->width = garment::said(in(2));
  CHECK_FALSE(worked(project, ounces(128)).says("band-too-tight"));
  strain.hip_slope = garment::said(Angle{-25});
  CHECK(worked(project, ounces(128)).says("band-slides"));
}

TEST_CASE("a way that is said to be enough is enough when the maker does it", "[load]") {
  Project project = strained_bodice();
  Strain& strain = project.strain[0];
  strain.over = garment::said(std::string("corset"));
  strain.worn = garment::said(std::string("snug"));
  Outcome as_it_is = worked(project);
  REQUIRE(as_it_is.loads.size() == 1);
  CHECK(as_it_is.says("fastener-near-limit"));
  const auto row = std::find_if(as_it_is.loads[0].eased.begin(), as_it_is.loads[0].eased.end(),
                                [](const WayToEase& w) { return w.way == "second row"; });
  REQUIRE(row != as_it_is.loads[0].eased.end());
  CHECK(row->enough);
  project.closures[0].rows = 2;
  Outcome two = worked(project);
  CHECK_FALSE(two.says("fastener-near-limit"));
  CHECK(std::get<Force>(as_it_is.figures.at("closures/front/eased second row/per fastener").value) ==
        std::get<Force>(two.figures.at("closures/front/per fastener").value));
}

TEST_CASE("everything reckoned of a strain is private but the band", "[load]") {
  Project project = strained_bodice();
  project.strain[0].worn = garment::said(std::string("tight"));
  const Outcome out = worked(project, ounces(64));
  for (const Figure& f : out.figures.all()) {
    const bool of_load = f.key.find("/varied ") != std::string::npos || f.key.find("/eased ") != std::string::npos ||
                         f.key.find("/pull ") != std::string::npos || f.key.find("/per fastener") != std::string::npos ||
                         f.key.find("line load") != std::string::npos || f.key.find("/if one opens") != std::string::npos;
    if (of_load) {
      INFO(f.key);
      CHECK(f.is_private);
    }
  }
  CHECK_FALSE(out.figures.at("closures/front/load band").is_private);
}

TEST_CASE("a corset of which nothing says how close it is laced presses as the study that the maker names", "[load]") {
  Project project = strained_bodice();
  project.garment = garment::said(Garment::corset);
  const auto pressure = [](const Outcome& out) {
    return std::get<Pressure>(out.figures.at("closures/front/pressure").value).value / kPascalsPerMillimetreOfMercury;
  };
  const Outcome of_1910 = worked(project);
  CHECK_THAT(pressure(of_1910), WithinAbs(44, 1e-9));  // Dickinson 1910, p. 1034, the navel
  const auto& inputs = of_1910.figures.at("closures/front/pressure").inputs;
  CHECK(std::find(inputs.begin(), inputs.end(), "rules/corset pressure") != inputs.end());
  REQUIRE(of_1910.loads.size() == 1);
  CHECK(of_1910.loads[0].by_study);
  CHECK(std::any_of(of_1910.loads[0].matters.begin(), of_1910.loads[0].matters.end(),
                    [](const InputThatMatters& m) { return m.input == "which study is right"; }));
  project.rules.corset_pressure = garment::said(CorsetPressure::of_2011);
  CHECK_THAT(pressure(worked(project)), WithinAbs(7.04, 0.01));  // 0.938 kPa, Korea 2011
  project.strain[0].worn = garment::said(std::string("easy"));   // what the maker says goes before any study
  CHECK_FALSE(worked(project).loads[0].by_study);
  CHECK_THAT(pressure(worked(project)), WithinAbs(6, 1e-9));
}
