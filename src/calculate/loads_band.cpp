// Whether the skirt's own band can hold it up: by friction on the slope of the hip, or by straps.
#include <algorithm>

#include "calculate/strained.h"
#include "project/sizes.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

std::optional<Length> measured(const Project& project, const char* name) {
  const auto m = project.measures.girths_and_lengths.find(name);
  if (m == project.measures.girths_and_lengths.end()) return std::nullopt;
  if (m->second.both.known()) return *m->second.both;
  return all_round(project, name);
}

}  // namespace

void add_band_hold(const Strained& s, LoadPlan& load, Figures& figures) {
  const std::string& hangs = *s.strain.skirt_hangs_from;
  const std::string of = "strain/" + s.closure.named.name + "/";
  if (s.edge.hung.value <= 0) return;
  if (hangs == "straps") {
    s.figure(figures, "strap end")
        .is(Force{s.edge.hung.value / 1000 * 9.80665 * s.edge.share / 4})
        .from("skirt/weight")
        .plain_input(of + "skirt hangs from")
        .working("each end of two straps, an estimate", "share of the weight / 4",
                 decimal(s.edge.share, 1) + " × " + plain_text(Value(s.edge.hung), s.in) + " / 4")
        .add();
    return;
  }
  if (hangs != "own band") return;
  const auto waist = measured(s.project, "waist"), hip = measured(s.project, "hip"), depth = measured(s.project, "hip depth");
  BandHold hold;
  NewFigure slope = s.figure(figures, "hip slope");
  if (s.strain.hip_slope.known()) {
    hold.slope = tangent(*s.strain.hip_slope);
    slope.is(*s.strain.hip_slope).from("", s.strain.hip_slope).written();
  } else if (waist && hip && depth) {
    hold.slope = slope_of_hip(*waist, *hip, *depth);
    slope.is(angle_of(hold.slope))
        .from("measures/waist")
        .from("measures/hip")
        .from("measures/hip depth")
        .working("slope of the hip from the vertical", "tangent = (hip − waist) / 2π / hip depth",
                 "(" + worked(*hip, s.in) + " − " + worked(*waist, s.in) + ") / 6.283 / " + worked(*depth, s.in));
  } else {
    return;
  }
  slope.add();
  const std::optional<WaistBand>& band = s.strain.band;
  const Given<Length> width = band && band->width.known()
                                  ? band->width
                                  : Given<Length>::standing(Length::inches(1), 'c', "1 in, where no width is written");
  const bool given = band && band->friction.known();
  const double friction = given ? band->friction->value() : usual_friction(band ? band->slides_on.value.value_or("") : "");
  NewFigure rub = s.figure(figures, "friction");
  rub.is(decimal(friction, 2));
  if (given) rub.from("", band->friction).written();
  else if (band && band->slides_on.known()) rub.from(of + "band/slides on", band->slides_on);
  else rub.from(of + "band/slides on", Given<std::string>::standing("cotton", 'c', "cotton on cotton, where nothing is written"));
  rub.add();
  s.figure(figures, "band width").is(*width).from("", width).written().add();
  const auto tension = band_tension_to_hold(s.edge.hung, hold.slope, friction);
  hold.slides = !tension.has_value();
  if (tension) {
    hold.tension = *tension;
    const Length girth = waist ? *waist : s.waist_seam;
    hold.pressure = band_pressure(*tension, *width, girth);
    s.figure(figures, "band tension")
        .is(hold.tension)
        .from("skirt/weight")
        .from(s.key("hip slope"))
        .from(s.key("friction"))
        .working(
            "what the band is drawn to, an estimate", "W / 2π tan(slope + arctan friction)",
            plain_text(Value(s.edge.hung), s.in) + ", tangent " + decimal(hold.slope, 2) + ", friction " + decimal(friction, 2))
        .add();
    s.figure(figures, "band pressure")
        .is(hold.pressure)
        .from(s.key("band tension"))
        .from(s.key("band width"))
        .from(waist ? "measures/waist" : s.key("girth"))
        .working("pressure under the band, an estimate", "2π × tension / (width × girth)",
                 worked(*width, s.in) + " wide, " + worked(girth, s.in) + " round")
        .add();
  }
  if (s.project.wearer.age.known()) {
    hold.comfort = comfort_line(*s.project.wearer.age);
    s.figure(figures, "comfort line")
        .is(*hold.comfort)
        .from("wearer/age", s.project.wearer.age)
        .working("what is borne under a belt at that age", "32.4 − 0.287 × age, mmHg",
                 "32.4 − 0.287 × " + whole_number(*s.project.wearer.age))
        .add();
  }
  load.band_hold = hold;
}

}  // namespace gownsheaf
