#include "calculate/pleats.h"

#include <algorithm>

#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;

namespace {

PleatSolution solved(const PleatInput& input, ShownIn shown = ShownIn::inches) {
  const auto outcome = solve_pleats(input, "sides", shown);
  if (outcome.index() == 1) FAIL(std::get<1>(outcome).sentence);
  return std::get<0>(outcome);
}

PleatFault fault(const PleatInput& input, ShownIn shown = ShownIn::inches) {
  const auto outcome = solve_pleats(input, "sides", shown);
  REQUIRE(outcome.index() == 1);
  return std::get<1>(outcome);
}

std::int64_t under(PleatKind kind) { return kind == PleatKind::knife ? 2 : 4; }

Length away(Length a, Length b) { return a < b ? b - a : a - b; }

void same_run(const PleatSolution& a, const PleatSolution& b, Length within) {
  CHECK(a.count == b.count);
  CHECK(away(a.flat, b.flat) <= within);
  CHECK(away(a.finished, b.finished) <= within);
  CHECK(away(a.depth, b.depth) <= within);
  CHECK(away(a.visible, b.visible) <= within);
}

}  // namespace

TEST_CASE("five knife pleats 1 1/2 in deep into 5 in take 5 + 5 x 2 x 1 1/2 = 20 in, showing 1 in each") {
  PleatInput input;
  input.finished = in(5);
  input.depth = in(3, 2);
  input.count = 5;
  const PleatSolution s = solved(input);
  CHECK(s.flat == in(20));
  CHECK(s.visible == in(1));
  CHECK(s.overlaps);  // 1 1/2 in deep under 1 in of show
  const auto marks = pleat_marks(PleatKind::knife, s);
  REQUIRE(marks.size() == 5);
  // unit 1 + 3 = 4 in: folds at 1, 5, 9, 13, 17; each is laid on 3 in further; the last line is the flat width
  CHECK(marks[0].fold == in(1));
  CHECK(marks[0].lay_on == in(4));
  CHECK(marks[0].edge == in(1));
  CHECK(marks[3].fold == in(13));
  CHECK(marks[4].lay_on == in(20));
  CHECK(marks[4].edge == in(5));
}

TEST_CASE("two box pleats: each panel stands between two folds brought outwards") {
  PleatInput input;
  input.kind = PleatKind::box;
  input.finished = in(8);
  input.count = 2;
  input.depth = in(2);
  const PleatSolution s = solved(input);
  CHECK(s.flat == in(24));  // 8 + 4 x 2 x 2
  CHECK(s.visible == in(4));
  CHECK_FALSE(s.overlaps);  // 2 in under each half of a 4 in panel: they just meet
  const auto marks = pleat_marks(PleatKind::box, s);
  REQUIRE(marks.size() == 4);
  // unit 12 in: lines at 0 and 12, folds 4 in inside them
  CHECK(marks[0].fold == in(4));
  CHECK(marks[0].lay_on == in(0));
  CHECK(marks[0].edge == in(0));
  CHECK(marks[1].fold == in(8));
  CHECK(marks[1].lay_on == in(12));
  CHECK(marks[1].edge == in(4));
  CHECK(marks[3].lay_on == in(24));
  CHECK(marks[3].pleat == 2);
}

TEST_CASE("one inverted pleat: two folds brought inwards to the line between them") {
  PleatInput input;
  input.kind = PleatKind::inverted;
  input.finished = in(10);
  input.count = 1;
  input.depth = in(3);
  const PleatSolution s = solved(input);
  CHECK(s.flat == in(22));  // 10 + 4 x 3
  const auto marks = pleat_marks(PleatKind::inverted, s);
  REQUIRE(marks.size() == 2);
  CHECK(marks[0].fold == in(5));     // half of what shows
  CHECK(marks[0].lay_on == in(11));  // 5 + 2 x 3
  CHECK(marks[1].fold == in(17));    // 11 + 2 x 3
  CHECK(marks[1].lay_on == in(11));
  CHECK(marks[1].edge == in(5));
  CHECK(s.flat - marks[1].fold == in(5));  // the other half of what shows
}

TEST_CASE("plus is flat cloth before the first pleat") {
  PleatInput input;
  input.flat = in(22);
  input.plus = in(2);
  input.finished = in(5);
  input.count = 5;
  const PleatSolution s = solved(input);
  CHECK(s.depth == in(3, 2));
  const auto marks = pleat_marks(PleatKind::knife, s);
  CHECK(marks.front().fold == in(3));
  CHECK(marks.front().edge == in(1));  // measured from where the finished width begins
  CHECK(marks.back().lay_on == in(22));
}

TEST_CASE("visible is a wish while the count is unwritten: nearest count, a tie to fewer, finished exact") {
  PleatInput input;
  input.finished = in(10);
  input.depth = in(1);
  input.visible = in(3);  // 3.33
  CHECK(solved(input).count == 3);
  CHECK(solved(input).count_rounded);
  CHECK(solved(input).finished == in(10));
  input.visible = in(4);  // 2.5: a tie
  CHECK(solved(input).count == 2);
  CHECK(solved(input).visible == in(5));
  input.visible = in(5);
  CHECK_FALSE(solved(input).count_rounded);
  input.visible = in(300);  // at least one
  CHECK(solved(input).count == 1);
}

TEST_CASE("a count that follows from flat, finished and depth must be whole") {
  PleatInput input;
  input.flat = in(40);
  input.finished = in(10);
  input.depth = in(3);  // (40 - 10) / 6 = 5
  CHECK(solved(input).count == 5);
  input.depth = in(4);  // 3.75
  const PleatFault f = fault(input);
  CHECK(f.code == "pleats-contradict");
  CHECK(f.sentence == "30 in taken up by pleats 4 in deep come to 3.75 pleats; a count must be whole.");
  CHECK(f.hint == "drop `depth` and write `count: 3` (then 5 in deep) or `count: 4` (3 3/4 in deep)");
}

TEST_CASE("too little says what to add") {
  PleatInput input;
  input.finished = in(10);
  input.depth = in(1);
  CHECK(fault(input).code == "pleats-too-few");
  CHECK(fault(input).sentence == "Run sides needs one more of count, visible, flat or fullness.");
  PleatInput less;
  less.finished = in(10);
  CHECK(fault(less).sentence == "Run sides needs two or three more of count, depth, visible, flat and fullness.");
  PleatInput doubled;  // finished = count x visible says nothing about the cloth
  doubled.finished = in(10);
  doubled.count = 5;
  doubled.visible = in(2);
  CHECK(fault(doubled).sentence == "Run sides needs one more of depth, flat or fullness.");
}

TEST_CASE("too much that does not agree says what to drop") {
  PleatInput input;
  input.finished = cm(76);
  input.flat = cm(274);
  input.count = 22;
  input.visible = cm(3);
  const PleatFault f = fault(input, ShownIn::centimetres);
  CHECK(f.code == "pleats-contradict");
  CHECK(f.sentence == "22 pleats showing 3.0 cm make 66.0 cm; finished says 76.0 cm.");
  CHECK(f.hint == "drop `visible` or `count`");
  input.visible.reset();
  input.depth = cm(5);
  CHECK(fault(input, ShownIn::centimetres).sentence ==
        "22 pleats 5.0 cm deep take up 220.0 cm; between 274.0 cm flat and 76.0 cm finished there are 198.0 cm.");
  CHECK(fault(input, ShownIn::centimetres).hint == "drop `depth`: it comes to 4.5 cm; or drop `count`");
  input.depth = mm(45);
  input.visible = mm(35);  // 3.45 to the millimetre: what the packet prints agrees with itself
  CHECK(solved(input, ShownIn::centimetres).depth == mm(45));
  input.fullness = Ratio::of(3, 1);
  CHECK(fault(input, ShownIn::centimetres).code == "pleats-contradict");
  CHECK(fault(input, ShownIn::centimetres).hint == "drop `fullness`: it comes to 3.61");
}

TEST_CASE("nothing to take up") {
  PleatInput input;
  input.flat = cm(74);
  input.finished = cm(80);
  input.count = 10;
  CHECK(fault(input, ShownIn::centimetres).code == "no-take-up");
  CHECK(fault(input, ShownIn::centimetres).sentence == "Run sides finishes at 80.0 cm but is only 74.0 cm flat.");
  input.flat = cm(80);
  CHECK(fault(input, ShownIn::centimetres).code == "no-take-up");
  PleatInput deep;  // 20 pleats 3 in deep take 120 in of 100
  deep.flat = in(100);
  deep.count = 20;
  deep.depth = in(3);
  CHECK(fault(deep).code == "pleats-contradict");
  CHECK(fault(deep).sentence == "20 pleats 3 in deep take up 120 in; only 100 in lie flat.");
  PleatInput even;
  even.finished = in(10);
  even.count = 5;
  even.fullness = Ratio::of(1, 1);
  CHECK(fault(even).code == "no-take-up");
}

TEST_CASE("law: marks increase, end at the flat width, and what shows adds up to the finished width") {
  draws::Draws draw(7);
  for (int round = 0; round < kLawRounds; ++round) {
    PleatInput input;
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted};
    input.kind = kinds[draw.of(0, 2)];
    input.finished = Length::ticks(draw.of(50000, 100000000));
    input.plus = draw.of(0, 1) == 0 ? Length{} : Length::ticks(draw.of(1, 1000000));
    input.flat = *input.finished + input.plus + Length::ticks(draw.of(50000, 200000000));
    input.count = draw.of(1, 120);
    const PleatSolution s = solved(input);
    INFO("round " << round);
    REQUIRE(s.flat == *input.flat);
    REQUIRE(s.finished == *input.finished);
    REQUIRE(away(s.count * s.visible, s.finished) <= Length::ticks(s.count));
    REQUIRE(away(s.finished + under(input.kind) * s.count * s.depth + s.plus, s.flat) <=
            Length::ticks(under(input.kind) * s.count));
    const auto marks = pleat_marks(input.kind, s);
    REQUIRE(marks.size() == static_cast<std::size_t>(input.kind == PleatKind::knife ? s.count : 2 * s.count));
    for (std::size_t i = 1; i < marks.size(); ++i) {
      REQUIRE(marks[i].fold > marks[i - 1].fold);
      REQUIRE(marks[i].lay_on >= marks[i - 1].lay_on);
      REQUIRE(marks[i].edge >= marks[i - 1].edge);
    }
    if (input.kind == PleatKind::inverted) {
      REQUIRE(away(s.flat - marks.back().fold, s.visible.times(1, 2)) <= Length::ticks(2));  // the rest is half a show
    } else {
      REQUIRE(marks.back().lay_on == s.flat);
      REQUIRE(marks.back().edge == s.finished);
    }
    for (const PleatMark& m : marks)  // from fold to line lies twice the depth
      REQUIRE(away(away(m.fold, m.lay_on), 2 * s.depth) <= Length::ticks(3));
  }
}

TEST_CASE("law: any subset of a settled run that is enough settles the same run") {
  draws::Draws draw(11);
  int enough = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    PleatInput whole;
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted};
    whole.kind = kinds[draw.of(0, 2)];
    whole.count = draw.of(1, 60);
    whole.depth = Length::ticks(draw.of(20000, 500000));
    whole.visible = Length::ticks(draw.of(20000, 500000));  // whole ticks: no rounding stands between the subsets
    const PleatSolution s = solved(whole);
    PleatInput part;
    part.kind = whole.kind;
    const auto keep = draw.of(0, 63);
    if ((keep & 1) != 0) part.flat = s.flat;
    if ((keep & 2) != 0) part.finished = s.finished;
    if ((keep & 4) != 0) part.count = s.count;
    if ((keep & 8) != 0) part.depth = s.depth;
    if ((keep & 16) != 0) part.visible = s.visible;
    if ((keep & 32) != 0) part.fullness = Ratio::of(s.flat.in_ticks(), s.finished.in_ticks());
    const auto outcome = solve_pleats(part, "sides", ShownIn::inches);
    INFO("round " << round << " keeps " << keep);
    if (outcome.index() == 1) {
      REQUIRE(std::get<1>(outcome).code == "pleats-too-few");
      continue;
    }
    ++enough;
    same_run(std::get<0>(outcome), s, Length{});
  }
  CHECK(enough > kLawRounds / 2);
}
