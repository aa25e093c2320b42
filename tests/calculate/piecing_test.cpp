// Panels wider than the cloth: where the joins fall, and what they cost. The width chart's rows.
#include "calculate/piecing.h"

#include <random>

#include "calculate/joined_layers.h"
#include "calculate/width_chart.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/rounds.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using testing::work_through;

namespace {

PanelInput panel(Length width, Length usable, Length seam) {
  PanelInput input;
  input.width = width;
  input.usable = usable;
  input.seam = seam;
  return input;
}

Length yards(std::int64_t eighths) { return in(36).times(eighths, 8); }

}  // namespace

TEST_CASE("a panel as wide as the cloth has no join; a wider one is halved at the centre") {
  CHECK(piece_panel(panel(in(57), in(57), in(1, 2)))->joins.empty());
  // 62 of 57: halves of 31 + 1/2 for the join
  const PiecedPanel two = *piece_panel(panel(in(62), in(57), in(1, 2)));
  REQUIRE(two.joins == std::vector<Length>{in(31)});
  CHECK(two.parts[0].cut == in(63, 2));
  CHECK(two.parts[1].cut == in(63, 2));
  // 57 + 57 - 2 x 1/2 = 113 is the most of two widths; a hair more takes three: a whole width in the middle, 56 net
  CHECK(piece_panel(panel(in(113), in(57), in(1, 2)))->joins.size() == 1);
  const PiecedPanel three = *piece_panel(panel(in(114), in(57), in(1, 2)));
  REQUIRE(three.joins == std::vector<Length>{in(29), in(85)});
  CHECK(three.parts[1].cut == in(57));
  CHECK(three.parts[0].cut == in(59, 2));
}

TEST_CASE("the centre kept clear, an edge kept clear, one seam lost instead of two") {
  PanelInput input = panel(in(62), in(57), in(1, 2));
  input.clear_of_centre = true;
  const PiecedPanel clear = *piece_panel(input);
  REQUIRE(clear.joins == std::vector<Length>{in(3), in(59)});  // (62 - 56) / 2
  CHECK(clear.kept_clear);
  input.clear_of_centre = false;
  input.clear_of_first = true;
  CHECK(piece_panel(input)->joins == std::vector<Length>{in(113, 2)});  // 57 - 1/2 from the edge that is kept clear
  input.clear_of_first = false;
  input.clear_from_edge = in(32);
  CHECK_FALSE(piece_panel(input)->kept_clear);
  // 113 1/2 of two widths: lost is 1/2 in all, not 1
  PanelInput one = panel(in(227, 2), in(57), in(1, 2));
  CHECK(piece_panel(one)->joins.size() == 2);
  one.lose = StripsLose::one_seam;
  CHECK(piece_panel(one)->joins.size() == 1);
  CHECK_FALSE(piece_panel(panel(in(40), in(1), in(1, 2))).has_value());
}

TEST_CASE("law: parts make up the panel, none is wider than the cloth, none is spared, joins are symmetric") {
  std::mt19937 dice(1858);
  const auto up_to = [&](std::int64_t n) { return static_cast<std::int64_t>(dice() % static_cast<unsigned>(n)); };
  for (int round = 0; round < kLawRounds; ++round) {
    CAPTURE(round);
    PanelInput input = panel(Length::sixty_fourths(64 + up_to(64 * 400)), Length::sixty_fourths(64 * 8 + up_to(64 * 60)),
                             Length::sixty_fourths(up_to(64)));
    input.lose = up_to(3) == 0 ? StripsLose::one_seam : StripsLose::both_seams;
    input.clear_of_centre = up_to(4) == 0;
    input.clear_of_first = up_to(4) == 0;
    input.clear_of_last = up_to(4) == 0;
    const auto made = piece_panel(input);
    REQUIRE(made.has_value());
    REQUIRE(made->joins.size() + 1 == made->parts.size());
    const Length lost = input.lose == StripsLose::both_seams ? input.seam : input.seam.times(1, 2, Rounding::up);
    Length at, cut;
    for (const PanelPart& part : made->parts) {
      REQUIRE(part.from == at);
      REQUIRE(part.to > part.from);
      REQUIRE(part.cut <= input.usable);
      at = part.to;
      cut += part.cut;
    }
    const auto n = static_cast<std::int64_t>(made->parts.size());
    REQUIRE(at == input.width);
    REQUIRE(cut == input.width + 2 * (n - 1) * lost);
    if (!input.clear_of_centre && n > 1) REQUIRE((n - 1) * input.usable < input.width + 2 * (n - 2) * lost);
    if (input.clear_of_first != input.clear_of_last) continue;
    for (std::size_t i = 0; i < made->joins.size(); ++i) {
      const Length mirror = input.width - made->joins[made->joins.size() - 1 - i];
      const Length apart = made->joins[i] > mirror ? made->joins[i] - mirror : mirror - made->joins[i];
      REQUIRE(apart <= Length::ticks(n));
    }
  }
}

TEST_CASE("a pieced sash is cut as parts, laid, and its joins are figures") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("wool", in(58), in(1, 2)));
  Piece sash = garment::piece("sash", PartOf::band, {"wool"}, garment::make(1), garment::cut(in(114)), garment::cut(in(6)));
  sash.may_be_pieced = garment::said(true);
  p.pieces.push_back(sash);
  const auto g = work_through(p);
  CHECK(g.said().empty());
  CHECK(g.count("pieces/sash/wool/parts") == 3);
  CHECK(g.length("pieces/sash/wool/join 1") == in(29));
  CHECK(g.length("pieces/sash/wool/join 2") == in(85));
  CHECK(g.length("pieces/sash/wool/part side/cut width") == in(59, 2));
  CHECK(g.count("pieces/sash/wool/part side/copies") == 2);
  CHECK(g.length("pieces/sash/wool/part middle/cut width") == in(57));
  CHECK(g.length("cloths/wool/lay length") == in(18));  // two sides of 29 1/2 do not lie side by side on 57
  p.rules.strips_lose = garment::said(StripsLose::one_seam);
  CHECK(work_through(p).length("pieces/sash/wool/part side/cut width") == in(29));  // (114 - 56 1/2) / 2 + 1/4 = 29
}

TEST_CASE("a lining narrower than the shell's breadths: three ways, each with cloth and joins") {
  // Three breadths of 58 in wool with 1/2 in seams join to 57 each; muslin 45 in, 44 net, 44 usable.
  const LayerWays ways = *ways_to_join({3, in(57), in(42), in(1, 2), in(45), in(44), in(1, 2), StripsLose::both_seams});
  CHECK(ways.in_pleats.joins == 4);        // 171 / 44 = 3.9
  CHECK(ways.in_pleats.cloth == in(168));  // 4 x 42
  CHECK(ways.joins_in_each == 1);          // 58 of 44: halves of 29 1/2
  CHECK(ways.by_breadths.joins == 3);
  CHECK(ways.by_breadths.cloth == in(252));  // six parts of 29 1/2, one above the other
  REQUIRE(ways.turned.has_value());          // 44 >= 42
  CHECK(ways.turned->cloth == in(172));      // 171 + 2 x 1/2
  CHECK(ways.turned->joins == 0);
  CHECK_FALSE(ways_to_join({3, in(57), in(46), in(1, 2), in(45), in(44), in(1, 2), StripsLose::both_seams})->turned.has_value());
  CHECK_FALSE(ways_to_join({3, in(44), in(42), in(1, 2), in(45), in(44), in(1, 2), StripsLose::both_seams}).has_value());
}

// Source of the chart: docs/sources.md, width-chart (copied rows).
TEST_CASE("[Y01] a: 2 yd at 35-36 in: 1 5/8 at 44-45, 1 3/8 at 52-54, 1 1/4 at 58-60") {
  CHECK(by_width_chart(yards(16), in(36), in(45)) == yards(13));
  CHECK(by_width_chart(yards(16), in(35), in(54)) == yards(11));
  CHECK(by_width_chart(yards(16), in(36), in(60)) == yards(10));
}

TEST_CASE("[Y02] a: 4 1/4 yd at 35-36 in: 3 1/8 at 44-45, 2 5/8 at 52-54, 2 3/8 at 58-60") {
  CHECK(by_width_chart(yards(34), in(36), in(44)) == yards(25));
  CHECK(by_width_chart(yards(34), in(36), in(52)) == yards(21));
  CHECK(by_width_chart(yards(34), in(36), in(58)) == yards(19));
}

TEST_CASE("[Y03] a: 5 yd at 35-36 in: 3 7/8 at 44-45, 3 1/8 at 52-54, 2 7/8 at 58-60") {
  CHECK(by_width_chart(yards(40), in(36), in(45)) == yards(31));
  CHECK(by_width_chart(yards(40), in(36), in(54)) == yards(25));
  CHECK(by_width_chart(yards(40), in(36), in(60)) == yards(23));
  CHECK_FALSE(by_width_chart(yards(41), in(36), in(60)).has_value());
  CHECK_FALSE(by_width_chart(yards(16), in(30), in(60)).has_value());
}

TEST_CASE("[Y04] a, x: area by the chart against its 36 in column runs from 0.89 to 1.09, columns to 60 in") {
  const std::vector<std::int64_t> tops{36, 39, 41, 45, 50, 54, 60};  // widest of each column
  double least = 2, most = 0;
  for (const ChartRow& row : width_chart())
    for (std::size_t c = 0; c < tops.size(); ++c) {
      const double ratio = row.lengths[c].in_inches() * static_cast<double>(tops[c]) / (row.lengths[0].in_inches() * 36);
      least = std::min(least, ratio);
      most = std::max(most, ratio);
    }
  CHECK(least >= 0.885);
  CHECK(least < 0.895);
  CHECK(most > 1.08);
  CHECK(most < 1.095);
}

TEST_CASE("[Y10] a: a shop adds one repeat for each stacked piece: 1 1/4 in and 4 1/4 in, two pieces: 2 1/2 and 8 1/2 in") {
  // galafabrics.blogspot.com, November 2010
  for (const Length repeat : {in(5, 4), in(17, 4)}) {
    Project p = garment::project(ShownIn::inches);
    p.cloths.push_back(garment::cloth("tartan", in(36), Length{}));
    p.cloths[0].repeat = Repeat{repeat, std::nullopt, false, {}};
    p.pieces.push_back(
        garment::piece("panel", PartOf::drapery, {"tartan"}, garment::make(2), garment::cut(in(30)), garment::cut(in(20))));
    p.rules.plaid_extra = garment::said(PlaidExtra::one_repeat_a_piece);
    CHECK(work_through(p).length("cloths/tartan/lay length") == in(40) + 2 * repeat);
    p.rules.plaid_extra = garment::said(PlaidExtra::by_the_lay);
    CHECK(work_through(p).length("cloths/tartan/lay length") == in(40));
  }
}

TEST_CASE("a half drop: every other breadth begins half a repeat lower, which costs half a repeat once") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("damask", in(45), in(1, 2)));
  p.cloths[0].repeat = Repeat{in(12), std::nullopt, true, {}};
  p.pieces.push_back(
      garment::piece("breadth", PartOf::drapery, {"damask"}, garment::make(4), garment::full_width(), garment::cut(in(40))));
  const auto g = work_through(p);
  CHECK(g.count("pieces/breadth/damask/repeats") == 4);  // 40 / 12, up
  CHECK(g.length("pieces/breadth/damask/taken") == in(48));
  CHECK(g.length("cloths/damask/lay length") == in(4 * 48 + 6));
  std::int64_t dropped = 0;
  for (const LaidPiece& laid : g.lay("damask").to_buy.placed) dropped += (laid.at.x.in_ticks() / in(6).in_ticks()) % 2;
  CHECK(dropped == 2);
}
