#include "calculate/pleat_waist.h"

#include "calculate/pleats_figures.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;
using garment::said;

namespace {

Length hundredth_mm(std::int64_t n) { return Length::mm(1).times(n, 100); }

Length off(Length a, Length b) { return a < b ? b - a : a - b; }

PleatSolution settled(const PleatInput& input) {
  const auto outcome = solve_pleats(input, "sides", ShownIn::inches);
  if (outcome.index() == 1) FAIL(std::get<1>(outcome).sentence);
  return std::get<0>(outcome);
}

// A skirt of one breadth 140 in between seams, made of one cloth.
Project skirt(PleatKind kind, Length thickness, Length finished_edge, const std::string& cloth_kind = "silk taffeta") {
  Project p = garment::project(ShownIn::inches);
  Cloth c = garment::cloth("shot silk", in(60), Length{});
  c.kind = said(cloth_kind);
  c.thickness = said(thickness);
  p.cloths.push_back(c);
  p.pieces.push_back(garment::piece("breadth", PartOf::skirt, {"shot silk", "shot silk"}, garment::make(1),
                                    garment::finished(in(140)), garment::finished(in(40))));
  PleatRun r = garment::run("waist", kind, {"breadth"});
  r.flat = said(in(140));
  r.finished = said(finished_edge);
  r.stitch = said(in(1, 4));
  p.pleats.push_back(r);
  return p;
}

struct Told {
  Figures figures;
  Diagnostics diag;
};
void work(const Project& p, Told& told) {
  RoundSums sums(p, told.diag);
  add_pleats(p, sums, told.figures);
  add_pleat_waist(p, sums, told.figures, told.diag);
}

std::string codes(Told& told) {
  std::string out;
  for (const Diagnostic& d : told.diag.all())
    out += (out.empty() ? "" : " ") + d.code + (d.severity == Severity::error ? "!" : d.severity == Severity::hold ? "*" : "");
  return out;
}

}  // namespace

TEST_CASE("a double box pleat folds twice on each side: 24 in of cloth, 8 in seen, two pleats each 1 in deep") {
  PleatInput input;
  input.kind = PleatKind::double_box;
  input.finished = in(8);
  input.count = 2;
  input.depth = in(1);
  const PleatSolution s = settled(input);
  CHECK(s.flat == in(24));  // 8 + 8 x 2 x 1
  const auto marks = pleat_marks(input.kind, s);
  REQUIRE(marks.size() == 8);
  // unit 12 in: folds at 2, 4, 8, 10; the outer are laid to the unit's ends, the inner to the outer folds
  const std::int64_t folds[] = {2, 4, 8, 10, 14, 16, 20, 22}, lay_on[] = {0, 2, 10, 12, 12, 14, 22, 24},
                     edge[] = {0, 0, 4, 4, 4, 4, 8, 8};
  for (std::size_t i = 0; i < 8; ++i) {
    CHECK(marks[i].fold == in(folds[i]));
    CHECK(marks[i].lay_on == in(lay_on[i]));
    CHECK(marks[i].edge == in(edge[i]));
  }
}

TEST_CASE("[P12] a: n tucks of depth d take 2 d n (Baldt 1916, Decoration, Self Trimmings)") {
  PleatInput input;
  input.kind = PleatKind::tucks;
  input.finished = in(30);
  input.count = 12;
  input.depth = in(1, 4);
  CHECK(settled(input).flat == in(36));  // 30 + 2 x 12 x 1/4
}

TEST_CASE("[P11] a: inverted at a seam, p on one edge and 3 p on the other, 4 p in all (Baldt 1916, Outer Garments)") {
  PleatInput input;
  input.kind = PleatKind::inverted_at_seams;
  input.finished = in(30);
  input.count = 5;
  input.depth = in(2);
  const PleatSolution s = settled(input);
  CHECK(s.flat == in(70));  // 30 + 5 x (2 + 3 x 2)
  const auto marks = pleat_marks(input.kind, s);
  REQUIRE(marks.size() == 10);
  CHECK(marks[0].fold == in(3));                        // half of the 6 in that show
  CHECK(marks[0].lay_on - marks[0].fold == 2 * in(2));  // p from the fold lies the inner fold, with the seam in it
}

TEST_CASE("gauging: 140 in by stitches of 1/4 in are 280 ridges; two plies of 0.15 mm close to 6.6 in, of 0.35 mm to 15.4 in") {
  const Gauging fine = gauge(in(140), in(1, 4), hundredth_mm(30));  // common practice: a ridge is cloth up and cloth down
  CHECK(fine.ridges == 280);
  CHECK(fine.stitch == in(1, 4));
  CHECK(fine.closes_to == mm(168));  // 280 x 2 x 0.3
  CHECK_FALSE(will_not_close(fine, in(12)));
  CHECK(gauge(in(140), in(1, 4), hundredth_mm(70)).closes_to == mm(392));
  CHECK(will_not_close(gauge(in(140), in(1, 4), hundredth_mm(70)), in(12)));
}

TEST_CASE("gauging in a project: refused where the thickness is written, held where it is guessed, told where it is loose") {
  Told tight;
  work(skirt(PleatKind::cartridge, hundredth_mm(35), in(12)), tight);
  CHECK(codes(tight) == "gauging-will-not-close!");
  CHECK(tight.figures.length("pleats/waist/closes to") == mm(392));
  Project guessed = skirt(PleatKind::cartridge, hundredth_mm(35), in(12));
  guessed.cloths[0].thickness = Given<Length>::standing(hundredth_mm(35), 'c', "the cloth table");
  Told held;
  work(guessed, held);
  CHECK(codes(held) == "gauging-will-not-close*");
  Told well;
  work(skirt(PleatKind::cartridge, hundredth_mm(15), in(12)), well);
  CHECK(codes(well).empty());
  Told loose;  // 280 ridges x 4 x 0.6 mm = 672 mm: 27 in is more
  work(skirt(PleatKind::cartridge, hundredth_mm(15), in(27)), loose);
  CHECK(codes(loose) == "gauging-loose");
}

TEST_CASE("thickness at the seam: 5 to 1 of plies of 0.30 mm is 1.5 mm, of 1.05 mm 5.25 mm") {
  CHECK(pleated_thickness(in(140), in(28), hundredth_mm(30)) == hundredth_mm(150));
  CHECK(pleated_thickness(in(140), in(28), hundredth_mm(105)) == hundredth_mm(525));
  Told thin;
  work(skirt(PleatKind::gathers, hundredth_mm(15), in(28)), thin);
  CHECK(codes(thin).empty());
  CHECK(thin.figures.length("pleats/waist/waist thickness") == hundredth_mm(150));
  CHECK(thin.figures.length("pleats/waist/quarter 4/flat") == in(140));
  Told much;
  work(skirt(PleatKind::gathers, hundredth_mm(40), in(28)), much);  // 5 x 0.8 = 4 mm
  CHECK(codes(much) == "waist-thick");
  Told too_much;
  work(skirt(PleatKind::gathers, hundredth_mm(60), in(28)), too_much);
  CHECK(codes(too_much) == "waist-thick*");
}

TEST_CASE("knife pleats stack: 5 cloths are told, 7 of wool held") {
  const auto pleated = [](Length finished_edge, const std::string& kind) {
    Project p = skirt(PleatKind::knife, hundredth_mm(5), finished_edge, kind);
    p.pleats[0].count = said<std::int64_t>(20);
    Told told;
    work(p, told);
    return codes(told);
  };
  CHECK(pleated(in(30), "wool suiting").empty());            // 4.7
  CHECK(pleated(in(28), "wool suiting") == "plies-stack");   // 5
  CHECK(pleated(in(20), "silk taffeta") == "plies-stack");   // 7, but of silk
  CHECK(pleated(in(20), "wool suiting") == "plies-stack*");  // 7
}

// A plain second way of saying it: the cloth is walked from its start, crease by crease, with nothing but the meaning of each
// kind.
namespace {

struct Walk {
  std::vector<Length> folds, lines;
  Length end;
};

Walk walk(PleatKind kind, std::int64_t count, Length visible, Length depth) {
  Walk w;
  Length at;
  const auto fold_to_line = [&] {
    w.folds.push_back(at);
    at += depth;
    at += depth;
    w.lines.push_back(at);
  };
  const auto line_to_fold = [&] {
    w.lines.push_back(at);
    at += depth;
    at += depth;
    w.folds.push_back(at);
  };
  for (std::int64_t k = 0; k < count; ++k) {
    if (kind == PleatKind::knife || kind == PleatKind::tucks) {
      at += visible;
      fold_to_line();
    } else if (kind == PleatKind::box || kind == PleatKind::double_box) {
      line_to_fold();
      if (kind == PleatKind::double_box) line_to_fold();
      at += visible;
      fold_to_line();
      if (kind == PleatKind::double_box) fold_to_line();
    } else {
      at += visible.times(1, 2);
      fold_to_line();
      line_to_fold();
      at += visible.times(1, 2);
    }
  }
  w.end = at;
  return w;
}

}  // namespace

TEST_CASE("law: every folded kind agrees with a walk along the cloth, crease by crease") {
  draws::Draws draw(77);
  const PleatKind kinds[] = {PleatKind::knife,      PleatKind::box,   PleatKind::inverted,
                             PleatKind::double_box, PleatKind::tucks, PleatKind::inverted_at_seams};
  for (int round = 0; round < kLawRounds; ++round) {
    PleatInput input;
    input.kind = kinds[draw.of(0, 5)];
    const std::int64_t count = draw.of(1, 40);
    const Length visible = Length::ticks(2 * draw.of(5000, 400000)), depth = Length::ticks(draw.of(5000, 400000));
    input.count = count;
    const Walk w = walk(input.kind, count, visible, depth);
    const auto given = draw.of(0, 3);
    if (given == 0 || given == 3) input.finished = visible * count;
    if (given == 1) input.visible = visible;
    if (given != 3) input.depth = depth;
    if (given == 2 || given == 3) input.flat = w.end;
    const PleatSolution s = settled(input);
    INFO("round " << round);
    REQUIRE(s.flat == w.end);
    REQUIRE(s.finished == visible * count);
    const auto marks = pleat_marks(input.kind, s);
    REQUIRE(marks.size() == w.folds.size());
    for (std::size_t i = 0; i < marks.size(); ++i) {
      REQUIRE(off(marks[i].fold, w.folds[i]) <= Length::ticks(1));
      REQUIRE(off(marks[i].lay_on, w.lines[i]) <= Length::ticks(1));
    }
  }
}

TEST_CASE("law: stitches of a gauged run add up to its cloth, and the ridges are the nearest whole number") {
  draws::Draws draw(78);
  for (int round = 0; round < kLawRounds; ++round) {
    const Length flat = Length::ticks(draw.of(2000000, 60000000)), stitch = Length::ticks(draw.of(10000, 80000));
    const Length layers = Length::ticks(draw.of(300, 9000));
    const Gauging g = gauge(flat, stitch, layers);
    INFO("round " << round);
    REQUIRE(off(g.stitch * (2 * g.ridges), flat) <= Length::ticks(2 * g.ridges));
    REQUIRE(off(stitch * (2 * g.ridges), flat) <= stitch);
    REQUIRE(g.closes_to == layers * (2 * g.ridges));
  }
}
