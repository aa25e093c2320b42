// Published sums, each beside its source. The letter after a row's mark: a read in the source; x arithmetic.
#include "calculate/calculate.h"
#include "calculate/pleats.h"
#include "calculate/yardage.h"
#include "support/catch.h"
#include "support/garment.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;

namespace {

PleatSolution solution_of(const PleatInput& input) {
  const auto outcome = solve_pleats(input, "section", ShownIn::centimetres);
  if (outcome.index() == 1) FAIL(std::get<1>(outcome).sentence);
  return std::get<0>(outcome);
}

// A curtain: gathered to a heading, cut in full widths that fill it.
Project curtain(ShownIn shown, Length finished, Ratio fullness, Length plus, Length cloth_width, Length drop, Length extra) {
  Project p = garment::project(shown);
  Cloth cloth = garment::cloth("curtain cloth", cloth_width, Length{});
  cloth.sold_by = garment::said(Length::ticks(1));  // the sums are of exact lengths
  p.cloths.push_back(cloth);
  Piece width =
      garment::piece("width", PartOf::drapery, {"curtain cloth"}, garment::fills("heading"), Size{}, garment::cut(drop + extra));
  width.seam_allowance = garment::said(Length{});
  p.pieces.push_back(width);
  PleatRun run = garment::run("heading", PleatKind::gathers, {"width"});
  run.finished = garment::said(finished);
  run.fullness = garment::said(fullness);
  run.plus = garment::said(plus);
  p.pleats.push_back(run);
  return p;
}

Worked run(const Project& p) {
  Diagnostics diag;
  Worked worked = calculate(p, Templates{}, WorkOptions{}, diag);
  for (const Diagnostic& d : diag.sorted()) {
    INFO(d.code << ": " << d.sentence);
    CHECK(d.severity == Severity::note);
  }
  return worked;
}

}  // namespace

TEST_CASE("[P01] a: section 92 cm, 4 cm deep, 5 cm wished: 18 pleats of 5.11 cm, 236 cm of cloth") {
  // NIMI (India), CITS Dress Making, Trade Practical vol. 2, exercise 48, page 203
  PleatInput input;
  input.finished = cm(92);
  input.depth = cm(4);
  input.visible = cm(5);
  const PleatSolution s = solution_of(input);
  CHECK(s.count == 18);      // 92 / 5 = 18.4
  CHECK(s.flat == cm(236));  // 92 + 2 x 4 x 18
  CHECK(s.visible == cm(92).times(1, 18));
  CHECK(decimal(s.visible.in_mm() / 10, 2) == "5.11");
}

TEST_CASE("[P02] a: 236 cm of cloth out of widths of 90 cm less 2 cm of seam: 3 strips of 15 cm, 45 cm") {
  // the same, page 203 (which divides a mis-copied 2.34 m; the answer is the same)
  const std::int64_t strips = breadths_for(cm(236), cm(90), cm(1), Length{});  // 1 cm at each edge loses the page's 2 cm
  CHECK(strips == 3);                                                          // 236 / 88 = 2.68
  CHECK(strips * cm(15) == cm(45));
}

TEST_CASE("[P03] a: section 50 cm, showing 2.5 cm, pleats that just touch: 20 pleats, 150 cm, 152 with seams") {
  // the same, page 204
  PleatInput input;
  input.finished = cm(50);
  input.visible = mm(25);
  input.fullness = Ratio::of(3, 1);
  const PleatSolution s = solution_of(input);
  CHECK(s.count == 20);
  CHECK(s.flat == cm(150));
  CHECK(s.depth == s.visible);
  CHECK_FALSE(s.overlaps);
  input.plus = cm(2);
  CHECK(solution_of(input).flat == cm(152));
}

TEST_CASE("[P04] a: 60 cm with one box pleat 12 cm deep takes 60 + 4 x 12 = 108 cm") {
  // the same, page 204
  PleatInput input;
  input.kind = PleatKind::box;
  input.finished = cm(60);
  input.count = 1;
  input.depth = cm(12);
  CHECK(solution_of(input).flat == cm(108));
}

TEST_CASE("[P05] a: 66 cm with one inverted pleat 6.5 cm deep takes 66 + 4 x 6.5 = 92 cm") {
  // the same, pages 204 and 205
  PleatInput input;
  input.kind = PleatKind::inverted;
  input.finished = cm(66);
  input.count = 1;
  input.depth = mm(65);
  CHECK(solution_of(input).flat == cm(92));
}

TEST_CASE("[P09] a, x: 120 cm of cloth, 8 pleats 4 cm deep: 120 - 2 x 8 x 4 = 56 cm") {
  // the same, page 205, exercise 7; the answer by the page's rule
  PleatInput input;
  input.flat = cm(120);
  input.count = 8;
  input.depth = cm(4);
  CHECK(solution_of(input).finished == cm(56));
}

TEST_CASE("[P10] a, x: section 172.2 cm, 4 cm to see, 4.2 cm deep: 43 pleats, 533.4 cm; 4 strips of 48 cm, 192 cm") {
  // the same, page 205, exercise 3 d; the answer by the page's rule
  PleatInput input;
  input.finished = mm(1722);
  input.visible = cm(4);
  input.depth = mm(42);
  const PleatSolution s = solution_of(input);
  CHECK(s.count == 43);  // 43.05
  CHECK(s.finished == mm(1722));
  CHECK(s.flat == mm(5334));
  const std::int64_t strips = breadths_for(s.flat, cm(148), mm(25).times(1, 2), Length{});  // 2.5 cm lost of each width
  CHECK(strips == 4);                                                                       // 3.67
  CHECK(strips * cm(48) == cm(192));
}

TEST_CASE("[P13] a: a frill of 1.80 m, three times as full, 12 + 3 cm deep, of 1.10 m cloth: 5.40 m, 5 strips, 75 cm") {
  // the same, page 212
  const Worked w = run(curtain(ShownIn::centimetres, cm(180), Ratio::of(3, 1), Length{}, cm(110), cm(12), cm(3)));
  CHECK(w.figures.length("pleats/heading/flat") == cm(540));
  CHECK(w.figures.count("cloths/curtain cloth/breadths") == 5);  // 4.91
  CHECK(w.figures.length("cloths/curtain cloth/breadth cut length") == cm(15));
  CHECK(w.figures.length("cloths/curtain cloth/needed") == cm(75));
}

TEST_CASE("[Y05] a: 84 in x 2 1/2 + 15 in of 54 in cloth, 78 + 10 in: 5 widths of 88 in, 440 in") {
  // ehow.co.uk/how_6326063, a curtain worked through
  const Worked w = run(curtain(ShownIn::inches, in(84), Ratio::of(5, 2), in(15), in(54), in(78), in(10)));
  CHECK(w.figures.length("pleats/heading/flat") == in(225));
  CHECK(w.figures.count("cloths/curtain cloth/breadths") == 5);
  CHECK(w.figures.length("cloths/curtain cloth/breadth cut length") == in(88));
  CHECK(w.figures.length("cloths/curtain cloth/needed") == in(440));
  CHECK(decimal(w.figures.length("cloths/curtain cloth/needed")->in_inches() / 36, 2) == "12.22");  // yards
}

TEST_CASE("[Y06] a: 65 in x 2 1/4 of 54 in cloth, 80 + 16 in: 3 widths of 96 in, 8 yd") {
  // homesteady.com/how-7849834
  const Worked w = run(curtain(ShownIn::inches, in(65), Ratio::of(9, 4), Length{}, in(54), in(80), in(16)));
  CHECK(w.figures.length("pleats/heading/flat") == in(585, 4));  // 146 1/4
  CHECK(w.figures.count("cloths/curtain cloth/breadths") == 3);
  CHECK(w.figures.length("cloths/curtain cloth/needed") == in(8 * 36));
}

TEST_CASE("[Y07] a: cut length 240 cm, repeat 37 cm: 7 repeats, 259 cm each") {
  // et-wholesale.com.au/instructionsheets/curtainsfabricrequired.html
  CHECK(up_to_repeat(cm(240), cm(37)) == cm(259));
  Project p = garment::project(ShownIn::centimetres);
  Cloth cloth = garment::cloth("curtain cloth", cm(140), Length{});
  cloth.sold_by = garment::said(cm(1));
  cloth.repeat = Repeat{cm(37), std::nullopt, false, {}};
  p.cloths.push_back(cloth);
  Piece width =
      garment::piece("width", PartOf::drapery, {"curtain cloth"}, garment::make(4), garment::full_width(), garment::cut(cm(240)));
  p.pieces.push_back(width);
  CHECK(run(p).figures.length("cloths/curtain cloth/needed") == cm(4 * 259));
}

TEST_CASE("[Y08] a: 200 cm x 2 + 40 cm of 140 cm cloth: 3.14, so 4 widths") {
  // the same sheet
  const Worked w = run(curtain(ShownIn::centimetres, cm(200), Ratio::of(2, 1), cm(40), cm(140), cm(240), Length{}));
  CHECK(w.figures.length("pleats/heading/flat") == cm(440));
  CHECK(w.figures.count("cloths/curtain cloth/breadths") == 4);
}

TEST_CASE("[Y09] a: cut length 114 in, repeat 11 in: 10.36, so 11 repeats, 121 in") {
  // drpinc.net/drp/measuring_for_draperies.php
  CHECK(count_of(in(114), in(11), Rounding::up) == 11);
  CHECK(up_to_repeat(in(114), in(11)) == in(121));
}

TEST_CASE("[Y11] x: 100 in in steps of 1/8 yd: 2 7/8 yd") {
  // arithmetic: 100 / 36 = 2.7778
  CHECK(length_to_buy(in(100), Ratio{}, Length{}, in(9, 2)) == in(207, 2));  // 2 7/8 x 36 = 103 1/2
}

TEST_CASE("[Y12] a: a kilted skirt, 4 yd round, 5 yd of 36 in cloth: 4 breadths, 45 in each") {
  // Ingalls, Text-Book on Domestic Art (c. 1911), Kilted Or Pleated Skirt (chestofbooks.com)
  Project p = garment::project(ShownIn::inches);
  Cloth cloth = garment::cloth("serge", in(36), Length{});
  cloth.bought = garment::said(garment::lengths({in(180)}));
  p.cloths.push_back(cloth);
  Piece breadth = garment::piece("breadth", PartOf::skirt, {"serge"}, garment::reaching(in(144)), Size{},
                                 Size{Size::Kind::share_of_bought, {}, {}});
  garment::allow(breadth, Length{}, Length{}, Length{});
  p.pieces.push_back(breadth);
  const Worked w = run(p);
  CHECK(w.figures.count("pieces/breadth/serge/copies") == 4);
  CHECK(w.figures.length("pieces/breadth/serge/cut length") == in(45));
  CHECK(w.figures.length("cloths/serge/spare") == Length{});
}
