// Drawings of pleats, gathers and gauging against their figures: every line stands where its figure says.
#include <algorithm>

#include "calculate/calculate.h"
#include "packet/gathered_drawing.h"
#include "packet/pleat_drawing.h"
#include "packet/run_parts.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/half_em_font.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::in;

namespace {

struct Drawn {
  Worked worked;
  const PleatPlan& plan() const { return worked.plans.pleats.front(); }
};

Drawn drawn(const PleatRun& run) {
  Project p = garment::project(ShownIn::inches);
  p.pleats.push_back(run);
  Diagnostics diag;
  Drawn d{calculate(p, Templates{}, WorkOptions{}, diag)};
  REQUIRE(d.worked.plans.pleats.size() == 1);
  return d;
}

// Upright lines of one weight: where they stand across the drawing, from left to right.
std::vector<Length> uprights(const Drawing& d, double weight, bool dashed) {
  std::vector<Length> out;
  for (const DrawingItem& item : d.items)
    if (const auto* s = std::get_if<StrokeMark>(&item))
      if (s->weight == pt(weight) && s->dash.empty() != dashed && s->path.size() == 2 && s->path[0].to.x == s->path[1].to.x)
        out.push_back(s->path[0].to.x);
  std::sort(out.begin(), out.end());
  return out;
}

bool near(Length a, Length b) { return a - b <= pt(0.02) && b - a <= pt(0.02); }

}  // namespace

TEST_CASE("the quarters of a gathered run stand on cloth and edge where their figures say, at one scale") {
  draws::Draws draw(31);
  const testing::HalfEmFont font;
  for (int round = 0; round < kLawRounds / 20; ++round) {
    PleatRun run = garment::run("heading", draw.of(0, 1) == 0 ? PleatKind::gathers : PleatKind::cartridge, {});
    run.finished = garment::said(Length::sixty_fourths(draw.of(64, 64 * 60)));
    run.flat = garment::said(*run.finished + Length::sixty_fourths(draw.of(64, 64 * 150)));
    run.rows = garment::said<std::int64_t>(3);
    run.stitch = garment::said(Length::sixty_fourths(draw.of(8, 40)));
    const Drawn d = drawn(run);
    const FigureText text(d.worked.figures, ShownIn::inches);
    const Typesetter typesetter(font, round % 2 == 0 ? binder_scale() : pin_up_scale());
    const Drawing drawing = draw_gathered_run(d.plan(), text, typesetter);
    const DrawingScale scale = largest_that_fits(d.plan().flat, pt(kRunWide - 2 * kRunMargin), ShownIn::inches, 2);
    std::vector<Length> wanted;
    const Length margin = pt(kRunMargin), edge = margin + (scale.of(d.plan().flat) - scale.of(d.plan().finished)).times(1, 2);
    for (int k = 0; k <= 4; ++k) {
      const std::string quarter = "pleats/heading/quarter " + std::to_string(k);
      wanted.push_back(margin + (k == 0 ? Length{} : scale.of(*d.worked.figures.length(quarter + "/flat"))));
      wanted.push_back(edge + (k == 0 ? Length{} : scale.of(*d.worked.figures.length(quarter + "/edge"))));
    }
    std::sort(wanted.begin(), wanted.end());
    const std::vector<Length> seen = uprights(drawing, 2.0, false);
    INFO("round " << round);
    REQUIRE(seen.size() == wanted.size());
    for (std::size_t i = 0; i < seen.size(); ++i) REQUIRE(near(seen[i], wanted[i]));
  }
}

TEST_CASE("gauging at full size: stitches of the figure's length, ridges as far apart as they stand on the edge") {
  PleatRun run = garment::run("skirt top", PleatKind::cartridge, {});
  run.flat = garment::said(in(140));
  run.finished = garment::said(in(13));
  run.stitch = garment::said(in(1, 4));
  const Drawn d = drawn(run);
  const testing::HalfEmFont font;
  const Typesetter typesetter(font, binder_scale());
  const Drawing drawing = draw_ridges(d.plan(), FigureText(d.worked.figures, ShownIn::inches), typesetter);
  const std::vector<Length> ends = uprights(drawing, 0.5, false);
  REQUIRE(ends.size() >= 17);
  const Length stitch = *d.worked.figures.length("pleats/skirt top/stitch");
  CHECK(stitch == in(1, 4));  // 280 ridges
  for (std::size_t i = 0; i < 17; ++i)
    CHECK(std::any_of(ends.begin(), ends.end(),
                      [&](Length x) { return near(x, pt(kRunMargin) + static_cast<std::int64_t>(i) * stitch); }));
  bool found = false;
  for (const DrawingItem& item : drawing.items)
    if (const auto* s = std::get_if<StrokeMark>(&item); s != nullptr && s->path.size() == 17) {
      found = true;
      for (std::size_t k = 0; k <= 8; ++k)
        CHECK(near(s->path[2 * k].to.x, pt(kRunMargin) + in(13).times(static_cast<std::int64_t>(k), 280)));
    }
  CHECK(found);
}

TEST_CASE("law: the trial strip is true size; every fold and line of its pleats stands on it once") {
  draws::Draws draw(77);
  const testing::HalfEmFont font;
  int drawn_strips = 0;
  for (int round = 0; round < kLawRounds / 20; ++round) {
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::double_box};
    PleatRun run = garment::run("sides", kinds[draw.of(0, 2)], {});
    run.half = true;
    run.count = garment::said(draw.of(1, 12));
    run.visible = garment::said(Length::sixty_fourths(draw.of(16, 192)));
    run.depth = garment::said(Length::sixty_fourths(draw.of(16, 256)));
    run.show_plans = true;
    const Drawn d = drawn(run);
    const Typesetter typesetter(font, round % 2 == 0 ? binder_scale() : pin_up_scale());
    const auto strip = draw_trial_strip(d.plan(), FigureText(d.worked.figures, ShownIn::inches), typesetter);
    INFO("round " << round);
    if (!strip) continue;
    ++drawn_strips;
    REQUIRE(d.plan().choices == 5);
    const Length long_ = pt(kRunWide - 2 * kRunMargin);
    std::vector<Length> folds = uprights(*strip, 2.0, false), lines = uprights(*strip, 1.2, true);
    const std::size_t pleats = std::min<std::size_t>(3, static_cast<std::size_t>(d.plan().count));
    REQUIRE(folds.size() <= pleats * 4);
    REQUIRE(!folds.empty());
    const std::size_t each = d.plan().marks.size() / static_cast<std::size_t>(d.plan().count), shown = folds.size() / each * each;
    REQUIRE(folds.size() == shown);
    std::vector<Length> wanted;
    for (std::size_t i = 0; i < shown; ++i) {
      Length x = d.plan().marks[i].fold;
      while (x >= long_) x -= long_;
      wanted.push_back(pt(kRunMargin) + x);
    }
    std::sort(wanted.begin(), wanted.end());
    for (std::size_t i = 0; i < shown; ++i) REQUIRE(near(folds[i], wanted[i]));
    REQUIRE(lines.size() == shown);
  }
  CHECK(drawn_strips > kLawRounds / 40);
}

TEST_CASE("law: the flat run's lines and seams, and the edges of the folded one, stand where their figures say") {
  draws::Draws draw(78);
  const testing::HalfEmFont font;
  for (int round = 0; round < kLawRounds / 40; ++round) {
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted};
    PleatRun run = garment::run("sides", kinds[draw.of(0, 2)], {});
    run.half = true;
    run.count = garment::said(draw.of(1, 8));
    run.visible = garment::said(Length::sixty_fourths(draw.of(32, 192)));
    run.depth = garment::said(Length::sixty_fourths(draw.of(32, 160)));
    const Drawn d = drawn(run);
    PleatPlan plan = d.plan();
    plan.seams_at = {plan.flat.times(draw.of(1, 99), 100)};
    const Typesetter typesetter(font, pin_up_scale());
    const Drawing flat = draw_flat_run(plan, FigureText(d.worked.figures, ShownIn::inches), typesetter);
    const auto on_paper = [&](Length l) {
      return pt(kRunMargin) + l.times(pt(kRunWide - 2 * kRunMargin).in_ticks(), plan.flat.in_ticks());
    };
    std::vector<Length> folds, lines, turns;
    for (std::size_t k = 0; k < plan.marks.size(); ++k) {
      const int pleat = plan.marks[k].pleat;
      const auto figure = [&](const char* what) {
        return *d.worked.figures.length("pleats/sides/mark " + std::to_string(k + 1) + "/" + what);
      };
      INFO("round " << round << ", pleat " << pleat);
      folds.push_back(on_paper(figure("fold")));
      lines.push_back(on_paper(figure("lay on")));
      turns.push_back(figure("edge"));
    }
    std::sort(folds.begin(), folds.end());
    std::sort(lines.begin(), lines.end());
    const auto same = [](const std::vector<Length>& a, const std::vector<Length>& b) {
      return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), near);
    };
    REQUIRE(same(uprights(flat, 2.0, false), folds));
    REQUIRE(same(uprights(flat, 1.2, true), lines));
    REQUIRE(same(uprights(flat, 1.0, true), {on_paper(plan.seams_at.front())}));
    const std::vector<Stretch> path = folded_path(plan);
    for (const Length edge : turns)  // at a fold the cloth turns back: one stretch ends there and the next begins
      REQUIRE(std::any_of(path.begin(), path.end(), [&](const Stretch& s) { return near(s.to, edge) || near(s.from, edge); }));
  }
}
