// Uneven pleats against Conover's worked skirt, and their laws. Source of P06 to P08: I. DeNyse Conover, A Complete Course
// in Dressmaking, volume 5, Skirts (c. 1921), pages 63 to 69.
#include "calculate/uneven_pleats.h"

#include "calculate/calculate.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::in;

namespace {

// Half of the skirt: 44 in of cloth, 14 in at the waist, 20 in at the hip, 27 1/2 in at the hem; eight pleats.
Project conover() {
  Project p = garment::project(ShownIn::inches);
  PleatRun run = garment::run("sides", PleatKind::knife, {});
  run.half = true;
  run.flat = garment::said(in(44));
  run.finished = garment::said(in(14));
  run.finished_at = {garment::said(in(14)), garment::said(in(20)), garment::said(in(55, 2))};
  run.count = garment::said<std::int64_t>(8);
  p.pleats.push_back(run);
  return p;
}

Worked worked_out(const Project& p) {
  Diagnostics diag;
  Worked w = calculate(p, Templates{}, WorkOptions{}, diag);
  for (const Diagnostic& d : diag.sorted()) {
    INFO(d.sentence);
    CHECK(d.severity != Severity::error);
  }
  return w;
}

std::string sentence_of(const Project& p) {
  Diagnostics diag;
  calculate(p, Templates{}, WorkOptions{}, diag);
  for (const Diagnostic& d : diag.sorted())
    if (d.severity == Severity::error) return d.sentence;
  return "";
}

Length off(Length a, Length b) { return a < b ? b - a : a - b; }

}  // namespace

TEST_CASE("[P06] a: 44 in into 14, 20 and 27 1/2 in: 30, 24 and 16 1/2 in to pleat up at waist, hip and hem") {
  const Worked w = worked_out(conover());
  CHECK(w.figures.length("pleats/sides/takes up") == in(30));
  CHECK(w.figures.length("pleats/sides/at hip/takes up") == in(24));
  CHECK(w.figures.length("pleats/sides/at hem/takes up") == in(33, 2));
}

TEST_CASE("[P07] [P08] a: eight pleats, the panel's takes 2 1/8 in: the others 3.982 in at the waist, 3 1/8 in at the hip") {
  Project p = conover();
  p.pleats[0].first_takes = garment::said(in(17, 8));
  const Worked w = worked_out(p);
  const auto taken = [&](const char* which) { return *w.figures.length(std::string("pleats/sides/") + which); };
  CHECK(taken("pleat 1/takes") == in(17, 8));
  CHECK(decimal(taken("pleat 2/takes").in_inches(), 3) == "3.982");  // 27 7/8 over 7
  CHECK(decimal(taken("pleat 8/takes").in_inches(), 3) == "3.982");
  CHECK(taken("at hip/pleat 1/takes") == in(17, 8));
  CHECK(taken("at hip/pleat 2/takes") == in(25, 8));  // 21 7/8 over 7
  // The marks by hand, in inches: 1 3/4 to see at the waist, 2 1/2 at the hip.
  CHECK(taken("mark 1/fold") == in(7, 4));
  CHECK(taken("mark 1/lay on") == in(31, 8));
  CHECK(taken("mark 2/fold") == in(45, 8));
  CHECK(taken("mark 8/lay on") == in(44));
  CHECK(taken("at hip/mark 1/lay on") == in(37, 8));
  CHECK(taken("at hip/mark 2/lay on") == in(37 + 20 + 25, 8));
  CHECK(taken("at hip/mark 8/lay on") == in(44));
}

TEST_CASE("the last takes the rest, and nothing past what there is") {
  Project p = conover();
  p.pleats[0].count = garment::said<std::int64_t>(3);
  p.pleats[0].takes = garment::said(std::vector<Length>{in(8), in(7)});
  const Worked w = worked_out(p);
  CHECK(w.figures.length("pleats/sides/pleat 3/takes") == in(15));
  CHECK(w.figures.length("pleats/sides/at hem/pleat 3/takes") == in(3, 2));
  p.pleats[0].takes = garment::said(std::vector<Length>{in(8), in(9)});
  CHECK(sentence_of(p) == "The first 2 pleats of sides take up 17 in; at the hem there are only 16 1/2 in to take up.");
  p.pleats[0].takes = garment::said(std::vector<Length>{in(8), in(9), in(14)});
  CHECK(sentence_of(p) == "The 3 pleats of sides take up 31 in; between 44 in flat and 14 in finished there are 30 in.");
  p.pleats[0].takes = garment::said(std::vector<Length>{in(1), in(1), in(1), in(1)});
  CHECK(sentence_of(p) == "`takes` of sides names 4 pleats; there are only 3.");
  p.pleats[0].takes = {};
  p.pleats[0].finished_at.hip = garment::said(in(45));
  CHECK(sentence_of(p) == "Run sides finishes at 45 in at the hip but is only 44 in flat there.");
}

TEST_CASE("law: uneven pleats take up what was said, share the rest, and end at the flat width") {
  draws::Draws draw(606);
  for (int round = 0; round < kLawRounds; ++round) {
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted, PleatKind::double_box};
    const PleatKind kind = kinds[draw.of(0, 3)];
    PleatSolution s;
    s.count = draw.of(1, 40);
    s.finished = Length::ticks(draw.of(50000, 50000000));
    s.plus = draw.of(0, 1) == 0 ? Length{} : Length::ticks(draw.of(1, 1000000));
    const Length all = Length::ticks(draw.of(50000, 100000000));
    s.flat = s.plus + s.finished + all;
    std::vector<Length> takes;
    Length left = all;
    for (std::int64_t i = draw.of(0, s.count - 1); i > 0; --i) {
      takes.push_back(Length::ticks(draw.of(1, std::max<std::int64_t>(1, left.in_ticks() / (2 * s.count)))));
      left -= takes.back();
    }
    const auto marks = pleat_marks(kind, s, takes);
    INFO("round " << round);
    const std::size_t each = kind == PleatKind::knife ? 1 : kind == PleatKind::double_box ? 4 : 2;
    REQUIRE(marks.size() == each * static_cast<std::size_t>(s.count));
    Length sum;
    for (std::int64_t k = 1; k <= s.count; ++k) {
      Length under;  // each fold lies over half of the cloth between it and its line
      for (std::size_t i = 0; i < each; ++i) {
        const PleatMark& m = marks[each * static_cast<std::size_t>(k - 1) + i];
        REQUIRE(m.pleat == k);
        under += off(m.fold, m.lay_on);
      }
      REQUIRE(off(under, taken_by(s, takes, k)) <= Length::ticks(5));
      sum += under;
    }
    REQUIRE(off(sum, all) <= Length::ticks(5 * s.count));
    if (kind != PleatKind::inverted) REQUIRE(marks.back().lay_on == s.flat);
    for (std::size_t i = 1; i < marks.size(); ++i) REQUIRE(marks[i].fold > marks[i - 1].fold);
  }
}

TEST_CASE("marks to: rounded from running distances, the last one still the flat width") {
  Project p = conover();
  p.pleats[0].flat = garment::said(in(44) + in(1, 16));
  p.pleats[0].marks_to = garment::said(in(1, 4));
  const Worked w = worked_out(p);
  for (int k = 1; k <= 8; ++k) {
    const Figure& fold = w.figures.at("pleats/sides/mark " + std::to_string(k) + "/fold");
    const Length exact = std::get<Length>(fold.value);
    CHECK(plain_text(fold, ShownIn::inches) == text_of(exact, ShownIn::inches, in(1, 4), Rounding::nearest).plain());
    CHECK(exact == (in(44) + in(1, 16)).times(k - 1, 8) + in(7, 4));
  }
  CHECK(plain_text(w.figures.at("pleats/sides/mark 4/lay on"), ShownIn::inches) == "22 in");  // 22 1/32
  CHECK(plain_text(w.figures.at("pleats/sides/mark 8/lay on"), ShownIn::inches) == "44 1/16 in");
}
