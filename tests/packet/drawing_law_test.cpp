// Laws of the drawings over random lays and runs: true to scale, nothing past the drawing's edge, nothing wider or
// taller than a page's live area.
#include <algorithm>

#include "support/catch.h"
#include "support/small_project.h"

#include "packet/lay_drawing.h"
#include "packet/pleat_drawing.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

#ifdef GOWNSHEAF_SANITIZED
constexpr int kRounds = 500;
#else
constexpr int kRounds = 10000;
#endif

struct Dice {
  std::mt19937 raw;
  std::int64_t up_to(std::int64_t n) { return static_cast<std::int64_t>(raw()) % n; }
};

// Random shelves: columns of pieces laid one above the other, column after column along the cloth.
LayPlan any_lay(Dice& dice, ShownIn shown_in) {
  const Length unit = shown_in == ShownIn::inches ? Length::sixty_fourths(32) : Length::mm(10);
  LayPlan plan;
  plan.cloth = "cloth";
  LaidStrip& s = plan.to_buy;
  s.name = "to buy";
  s.width = unit * (40 + dice.up_to(120));
  s.selvage = unit;
  s.usable_width = s.width - unit * 2;
  s.open = dice.up_to(2) == 0;
  Length x{};
  const std::int64_t columns = 1 + dice.up_to(6);
  int named = 0;
  for (std::int64_t c = 0; c < columns; ++c) {
    const Length along = unit * (4 + dice.up_to(100));
    Length y = s.selvage;
    while (y < s.width - s.selvage) {
      const Length across = std::min(unit * (2 + dice.up_to(60)), s.width - s.selvage - y);
      std::string name = "piece " + std::string(1, static_cast<char>('a' + named % 26));
      if (dice.up_to(3) == 0) name += " with a longer name";
      name += " " + std::to_string(named++);
      plan.cut.push_back(cut_piece(name, "cloth", 1, across, along));
      s.placed.push_back({name, 1, {x, y, along, across}, dice.up_to(2) == 0});
      y += across + unit * dice.up_to(8);
    }
    x += along + unit * dice.up_to(6);
    if (dice.up_to(4) != 0) s.straight_cuts.push_back(x);
  }
  if (dice.up_to(3) == 0) {  // the upper half moved along, so that few straight cuts are left
    const Length by = unit * dice.up_to(60);
    for (LaidPiece& p : s.placed)
      if (2 * p.at.y > s.width) p.at.x += by;
    x += by;
  }
  s.used = x;
  s.length = x + unit * dice.up_to(40);
  if (s.length > x + unit * 4) s.left_over.push_back({x, s.selvage, s.length - x, s.usable_width});
  plan.bound = s.used;
  plan.needed = s.length;
  return plan;
}

void check_inside(const Drawing& d, const Typesetter& typesetter) {
  const Length slack = Length::from_points(0.5);  // half of the thinnest line at an edge
  const auto inside = [&](Point p) {
    REQUIRE(p.x >= -slack);
    REQUIRE(p.x <= d.width + slack);
    REQUIRE(p.y >= -slack);
    REQUIRE(p.y <= d.height + slack);
  };
  for (const DrawingItem& item : d.items) {
    if (const auto* stroke = std::get_if<StrokeMark>(&item)) {
      for (const PathStep& s : stroke->path) {
        if (s.kind != PathStep::Kind::close) inside(s.to);
      }
    } else if (const auto* fill = std::get_if<FillMark>(&item)) {
      for (const PathStep& s : fill->path) {
        if (s.kind != PathStep::Kind::close) inside(s.to);
      }
    } else if (const auto* label = std::get_if<Label>(&item)) {
      CAPTURE(plain(label->text), label->at.x.in_points(), label->at.y.in_points(), d.height.in_points());
      const Length wide = typesetter.width(label->text, label->size), high = Length::from_points(label->size * 0.7);
      Length left = label->at.x, top = label->at.y;
      const bool upright = label->angle == 90;
      const Length across = upright ? high : wide, down = upright ? wide : high;
      if (upright || label->across == Label::Across::middle) left -= across.times(1, 2);
      else if (label->across == Label::Across::right) left -= across;
      if (upright || label->up == Label::Up::middle) top -= down.times(1, 2);
      else if (label->up == Label::Up::base) top -= down;
      inside({left, top});
      inside({left + across, top + down});
    }
  }
}

}  // namespace

TEST_CASE("law: a drawn lay is true to scale and keeps to its drawing") {
  Dice dice{std::mt19937(1868)};
  for (int round = 0; round < kRounds; ++round) {
    const ShownIn shown_in = round % 2 == 0 ? ShownIn::inches : ShownIn::centimetres;
    const LayPlan plan = any_lay(dice, shown_in);
    const LaidStrip& strip = plan.to_buy;
    SmallProject p;
    p.lay_figures(plan, strip);
    const TypeScale& scale = round % 3 == 0 ? binder_scale() : pin_up_scale();
    const Typesetter typesetter(p.font, scale);
    const FigureText text(p.figures, shown_in);
    const Length room = Length::from_points(530);
    const LayParts parts = lay_parts(strip, typesetter, shown_in, room);
    REQUIRE_FALSE(parts.parts.empty());
    REQUIRE(parts.parts.front().from.is_zero());
    for (std::size_t i = 0; i < parts.parts.size(); ++i) {
      const LayPart& part = parts.parts[i];
      REQUIRE(part.to > part.from);
      if (i > 0) REQUIRE(part.from <= parts.parts[i - 1].to);  // no stretch of cloth is left out
      if (part.starts_at_cut) {
        for (const LaidPiece& laid : strip.placed) REQUIRE((laid.at.right() <= part.from || laid.at.x >= part.from));
      }
      // Touching edges stay touching, and a box is its real size at scale to the nearest tick of each edge.
      for (const LaidPiece& laid : strip.placed) {
        const Box drawn = on_paper(laid.at, strip, part, parts.scale);
        const Length off = drawn.width - parts.scale.of(laid.at.width);
        REQUIRE((off <= Length::ticks(1) && off >= Length::ticks(-1)));
        const Length off_down = drawn.height - parts.scale.of(laid.at.height);
        REQUIRE((off_down <= Length::ticks(1) && off_down >= Length::ticks(-1)));
      }
      const LayDrawing drawn = draw_lay_part(plan, strip, parts, i, 1, text, typesetter);
      REQUIRE(drawn.drawing.width <= Length::points(486));
      REQUIRE(drawn.drawing.height <= room);
      check_inside(drawn.drawing, typesetter);
    }
    Length longest, most;  // pieces of half a part and less are each whole in one part
    for (const LaidPiece& laid : strip.placed) longest = std::max(longest, laid.at.width);
    for (const LayPart& part : parts.parts) most = std::max(most, part.to - part.from);
    const bool all_whole = parts.parts.size() > 1 && 2 * longest <= most;
    for (const LaidPiece& laid : strip.placed) {
      REQUIRE(std::any_of(parts.parts.begin(), parts.parts.end(), [&](const LayPart& part) {
        return all_whole ? laid.at.x >= part.from && laid.at.right() <= part.to
                         : laid.at.x < part.to && laid.at.right() > part.from;
      }));
    }
  }
}

TEST_CASE("law: a drawn run keeps the sums of its pleats") {
  Dice dice{std::mt19937(1855)};
  const Length step = Length::sixty_fourths(2);
  for (int round = 0; round < kRounds; ++round) {
    SmallProject p;
    const std::int64_t n = 1 + dice.up_to(45);
    const Length visible = step * (8 + dice.up_to(100)), depth = step * (8 + dice.up_to(150));
    const ShownIn shown_in = round % 2 == 0 ? ShownIn::inches : ShownIn::centimetres;
    p.knife_run("sides", n, visible, depth, true);
    PleatPlan& plan = p.plans.pleats.front();
    if (round % 4 == 3) {  // box pleats: two folds each, flat = finished + 4 n d
      plan.kind = "box";
      plan.flat = plan.finished + depth * (4 * n);
      plan.marks.clear();
      const Length each = visible + depth * 4;
      for (std::int64_t k = 1; k <= n; ++k) {
        const Length start = each * (k - 1);
        plan.marks.push_back({static_cast<int>(k), start + depth * 2, start, visible * (k - 1)});
        plan.marks.push_back({static_cast<int>(k), start + depth * 2 + visible, each * k, visible * k});
      }
    }
    if (dice.up_to(3) == 0) plan.seams_at.push_back(plan.flat.times(dice.up_to(100), 100));
    // All cloth of the run lies in the folded path, and the path ends where the run ends.
    Length cloth{};
    const std::vector<Stretch> path = folded_path(plan);
    for (std::size_t i = 0; i < path.size(); ++i) {
      cloth += path[i].to > path[i].from ? path[i].to - path[i].from : path[i].from - path[i].to;
      if (i > 0) REQUIRE(path[i].from == path[i - 1].to);
    }
    REQUIRE(cloth == plan.flat);
    REQUIRE(path.back().to == plan.finished);
    const TypeScale& scale = round % 3 == 0 ? binder_scale() : pin_up_scale();
    const Typesetter typesetter(p.font, scale);
    const FigureText text(p.figures, shown_in);
    for (const Drawing& d : {draw_flat_run(plan, text, typesetter), draw_folded_run(plan, text, typesetter)}) {
      CAPTURE(d.name, plan.kind, n, visible.in_inches(), depth.in_inches());
      REQUIRE(d.width <= Length::points(486));
      REQUIRE(d.height <= Length::points(400));
      check_inside(d, typesetter);
    }
  }
}

TEST_CASE("scales are those of a tape") {
  // 90 in at one sixteenth is 405 pt; at one eighth it would be 810.
  CHECK(largest_that_fits(Length::inches(90), Length::points(438), ShownIn::inches).one_to == 16);
  CHECK(largest_that_fits(Length::cm(250), Length::points(438), ShownIn::centimetres).one_to == 20);
  CHECK(largest_that_fits(Length::inches(6), Length::points(486), ShownIn::inches).one_to == 1);
  CHECK(largest_that_fits(Length::inches(6), Length::points(486), ShownIn::inches, 2).one_to == 2);
  CHECK(plain(scale_sentence({16}, ShownIn::inches, "cloth")) ==
        "Drawn at one sixteenth: 1/16 in on this sheet is 1 in of cloth.");
  CHECK(plain(scale_sentence({20}, ShownIn::centimetres, "cloth")) ==
        "Drawn at one twentieth: 1 mm on this sheet is 2 cm of cloth.");
  CHECK(plain(scale_sentence({5}, ShownIn::centimetres, "cloth")) == "Drawn at one fifth: 1 mm on this sheet is 5 mm of cloth.");
}
