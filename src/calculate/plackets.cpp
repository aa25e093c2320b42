#include "calculate/plackets.h"

#include "calculate/new_figure.h"

namespace gownsheaf {

PlacketStrip continuous_lap(Length slit) { return {Length::sixty_fourths(240), slit * 2}; }
PlacketStrip separate_underlap(Length slit) { return {Length::sixty_fourths(96), slit + Length::inches(1)}; }
PlacketStrip placket_facing(Length slit) { return separate_underlap(slit); }

void add_plackets(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const Placket& p : project.plackets) {
    if (!p.length.known()) continue;
    const auto figure = [&](std::string_view quantity) {
      NewFigure f(figures, in, "plackets", p.named.name, quantity);
      f.at(p.named.at);
      return f;
    };
    const std::string length = figure("length").is(*p.length).from("", p.length).written().add().key;
    if (!p.finish.known()) continue;
    if (*p.finish == PlacketFinish::continuous_lap) {
      const PlacketStrip strip = continuous_lap(*p.length);
      figure("strip wide").is(strip.wide).from(length).add();
      figure("strip long")
          .is(strip.long_)
          .from(length)
          .working("strip of the placket " + p.named.name, "2 × slit", "2 × " + worked(*p.length, in))
          .add();
      figure("set back").is(Length::sixty_fourths(8)).from(length).add();
    } else if (*p.finish == PlacketFinish::separate_underlap) {
      const PlacketStrip lap = separate_underlap(*p.length);
      figure("underlap wide").is(lap.wide).from(length).add();
      figure("underlap long")
          .is(lap.long_)
          .from(length)
          .working("underlap of the placket " + p.named.name, "slit + 1 in",
                   worked(*p.length, in) + " + " + worked(Length::inches(1), in))
          .add();
    } else {
      const PlacketStrip facing = placket_facing(*p.length);
      figure("facing wide").is(facing.wide).from(length).label('c').add();
      figure("facing long")
          .is(facing.long_)
          .from(length)
          .label('c')
          .working("each facing of the placket " + p.named.name, "slit + 1 in",
                   worked(*p.length, in) + " + " + worked(Length::inches(1), in))
          .add();
    }
  }
}

}  // namespace gownsheaf
