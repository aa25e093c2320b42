// The breadth diagram: its marks stand where the figures say, and it prints no other number.
#include "packet/breadth_drawing.h"

#include "support/catch.h"
#include "support/garment.h"
#include "support/small_project.h"
#include "support/worked.h"

namespace gownsheaf {
Box bounds(const Path& path);  // layout/marks.h, whose other names this room has as well
}

using namespace gownsheaf;
using garment::in;

namespace {

bool says(const Drawing& drawing, std::string wanted) {
  for (auto at = wanted.find("\u00A0"); at != std::string::npos; at = wanted.find("\u00A0")) wanted.replace(at, 2, " ");
  for (const DrawingItem& item : drawing.items)
    if (const auto* label = std::get_if<Label>(&item))
      if (plain(label->text).find(wanted) != std::string::npos) return true;
  return false;
}

// Level places of the upright strokes.
std::vector<Length> uprights(const Drawing& drawing) {
  std::vector<Length> at;
  for (const DrawingItem& item : drawing.items)
    if (const auto* stroke = std::get_if<StrokeMark>(&item)) {
      const Box box = bounds(stroke->path);
      if (box.width.is_zero()) at.push_back(box.x);
    }
  return at;
}

}  // namespace

TEST_CASE("joins stand on paper where their figures have them, and print them", "[breadths]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
    Project p = garment::project(shown);
    p.cloths.push_back(garment::cloth("wool", in(58), in(1, 2)));
    Piece sash = garment::piece("sash", PartOf::band, {"wool"}, garment::make(1), garment::cut(in(114)), garment::cut(in(6)));
    sash.may_be_pieced = garment::said(true);
    p.pieces.push_back(sash);
    const auto g = gownsheaf::testing::work_through(p);
    const BreadthPlan& plan = g.lay("wool").breadths.at(0);
    const gownsheaf::testing::SmallProject small;
    const Drawing drawing = draw_breadth(plan, FigureText(g.figures(), shown), Typesetter(small.font, small.scale));
    const DrawingScale scale = breadth_scale(plan, shown);
    const std::vector<Length> seen = uprights(drawing);
    REQUIRE(seen.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
      const Length join = g.length("pieces/sash/wool/join " + std::to_string(i + 1));
      CHECK(seen[i] == scale.of(join));
      CHECK(says(drawing, plain_text(g.figures().at("pieces/sash/wool/join " + std::to_string(i + 1)), shown)));
    }
  }
}

TEST_CASE("repeats stand where the figures have them; by a half drop the neighbour stands half a repeat lower", "[breadths]") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("damask", in(45), in(1, 2)));
  p.cloths[0].repeat = Repeat{in(12), std::nullopt, true, {}};
  p.pieces.push_back(
      garment::piece("breadth", PartOf::drapery, {"damask"}, garment::make(4), garment::full_width(), garment::cut(in(40))));
  const auto g = gownsheaf::testing::work_through(p);
  const BreadthPlan& plan = g.lay("damask").breadths.at(0);
  const Length repeat = g.length("pieces/breadth/damask/repeat along");
  const auto many = g.count("pieces/breadth/damask/repeats");
  REQUIRE(static_cast<std::int64_t>(plan.repeats_at.size()) == many);
  for (std::int64_t i = 0; i < many; ++i) CHECK(plan.repeats_at[static_cast<std::size_t>(i)] == i * repeat);
  const gownsheaf::testing::SmallProject small;
  const Drawing drawing = draw_breadth(plan, FigureText(g.figures(), ShownIn::inches), Typesetter(small.font, small.scale));
  const DrawingScale scale = breadth_scale(plan, ShownIn::inches);
  const std::vector<Length> seen = uprights(drawing);
  REQUIRE(seen.size() == 6);  // three inside each of the two breadths
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(seen[i] == scale.of(plan.repeats_at[i + 1]));
    CHECK(seen[i + 3] == scale.of(repeat.times(1, 2)) + scale.of(plan.repeats_at[i + 1]));
  }
}
