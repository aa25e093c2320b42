// Where seams, plackets and pockets land, against a walk along the creases and by hand.
#include "calculate/pleat_map.h"

#include <algorithm>

#include "calculate/calculate.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::in;

namespace {

// A second way: walk the cloth and turn round at every crease, the folds and the inner folds half way to their lines.
Length walked(const std::vector<PleatMark>& marks, Length to) {
  std::vector<Length> creases;
  for (const PleatMark& m : marks) {
    creases.push_back(m.fold);
    creases.push_back((m.fold + m.lay_on).times(1, 2));
  }
  std::sort(creases.begin(), creases.end());
  Length at, from;
  bool forward = true;
  for (const Length crease : creases) {
    if (crease >= to) break;
    at = forward ? at + (crease - from) : at - (crease - from);
    from = crease;
    forward = !forward;
  }
  return forward ? at + (to - from) : at - (to - from);
}

Length off(Length a, Length b) { return a < b ? b - a : a - b; }

// Half a skirt of four breadths of 40 in between seams (80 in), into 20 in: 10 knife pleats of 2 in, 3 in deep.
Project skirt() {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("drill", in(41), Length{}));
  Piece breadth =
      garment::piece("breadth", PartOf::skirt, {"drill"}, garment::make(4), garment::full_width(), garment::finished(in(40)));
  breadth.seam_allowance = garment::said(in(1, 2));
  p.pieces.push_back(breadth);
  PleatRun run = garment::run("sides", PleatKind::knife, {"breadth"});
  run.half = true;
  run.finished = garment::said(in(20));
  run.count = garment::said<std::int64_t>(10);
  p.pleats.push_back(run);
  Seam seam;
  seam.named = garment::named("breadths");
  seam.kind = "breadth";
  p.seams.push_back(seam);
  return p;
}

struct Run {
  Worked worked;
  std::vector<Diagnostic> said;
};
Run run_of(const Project& p) {
  Diagnostics diag;
  Worked w = calculate(p, Templates{}, WorkOptions{}, diag);
  return {std::move(w), diag.sorted()};
}
const Diagnostic* said(const Run& r, const std::string& code) {
  for (const Diagnostic& d : r.said)
    if (d.code == code) return &d;
  return nullptr;
}

}  // namespace

TEST_CASE("law: a place of the cloth lies after pleating where a walk along the creases brings it") {
  draws::Draws draw(2121);
  for (int round = 0; round < kLawRounds; ++round) {
    const PleatKind kinds[] = {PleatKind::knife, PleatKind::box, PleatKind::inverted};
    PleatSolution s;
    s.count = draw.of(1, 20);
    s.finished = Length::ticks(draw.of(50000, 50000000));
    s.flat = s.finished + Length::ticks(draw.of(50000, 90000000));
    const auto marks = pleat_marks(kinds[draw.of(0, 2)], s);
    const Length at = Length::ticks(draw.of(0, s.flat.in_ticks()));
    const Landing l = landing_of(marks, at);
    INFO("round " << round);
    REQUIRE(off(l.pleated, walked(marks, at)) <= Length::ticks(4 * s.count + 4));
    if (l.in == Landing::In::hidden) {  // the nearer end of the doubled cloth is a line of the table
      const Length clear = at + l.to_edge;
      REQUIRE(std::any_of(marks.begin(), marks.end(), [&](const PleatMark& m) { return m.fold == clear || m.lay_on == clear; }));
      REQUIRE(landing_of(marks, clear).in != Landing::In::hidden);
    }
    if (l.in == Landing::In::seen && !l.to_hidden.is_zero()) {
      const Length past = at + l.to_hidden + (l.to_hidden < Length{} ? -Length::ticks(9) : Length::ticks(9));
      if (past > Length{} && past < s.flat) REQUIRE(landing_of(marks, past).in == Landing::In::hidden);
    }
  }
}

TEST_CASE("seams in running inches and as angles, by hand") {
  const Run r = run_of(skirt());
  const auto& f = r.worked.figures;
  // Seams at 20 in and 60 in. A pleat every 8 in: 2 in to see, 6 in under. 20 in lies 4 in into pleat 3 (16 to 24): fold at 18,
  // 2 in under it, so 2 in back from the edge at 6 in: 4 in of 20 in, 36 degrees.
  CHECK(f.length("pleats/sides/seam 1") == in(20));
  CHECK(f.length("pleats/sides/seam 1/pleated") == in(4));
  CHECK(std::get<Angle>(f.at("pleats/sides/seam 1/angle").value).value == 36.0);
  CHECK(f.length("pleats/sides/seam 2") == in(60));  // 4 in into pleat 8: edge 16 in, 2 in back
  CHECK(f.length("pleats/sides/seam 2/pleated") == in(14));
  CHECK(said(r, "seam-shows") == nullptr);
  REQUIRE(r.worked.plans.pleats.front().landings.size() == 2);
  CHECK(r.worked.plans.pleats.front().landings[0].lands == "hidden in pleat\u00A03");
}

TEST_CASE("a seam that shows is told with the way to the next fold, or left as it falls") {
  Project p = skirt();
  p.pleats[0].count = garment::said<std::int64_t>(8);  // one every 10 in, 2 1/2 to see: 20 in is the line of pleat 2, 60 of 6
  CHECK(said(run_of(p), "seam-shows") == nullptr);
  p.pleats[0].plus = garment::said(in(19));
  const Run r = run_of(p);
  const Diagnostic* d = said(r, "seam-shows");
  REQUIRE(d != nullptr);  // 61 in, 7 5/8 in a pleat: 20 in is 1 in into the first, fold at 21 1/2
  CHECK(d->sentence.starts_with("Breadth seam 1 of sides falls where it shows, before pleat 1"));
  CHECK(d->hint.ends_with("1 1/2 in toward centre back it is hidden; or `rules: { pleat seams: as they fall }`"));
  p.rules.pleat_seams = garment::said(PleatSeams::as_they_fall);
  CHECK(said(run_of(p), "seam-shows") == nullptr);
}

TEST_CASE("where a seam shows, the count or the centre that hides every seam is named, and hides them") {
  draws::Draws draw(407);
  int counts = 0, centres = 0;
  for (int round = 0; round < 300; ++round) {
    Project p = skirt();
    p.pieces[0].make = garment::said(garment::make(draw.of(3, 4)));
    p.pleats[0].count = garment::said<std::int64_t>(draw.of(4, 15));
    p.pleats[0].plus = garment::said(Length::sixty_fourths(draw.of(0, 600)));
    if (draw.of(0, 1) == 1) {
      Round whole;
      whole.named = garment::named("whole");
      whole.of = {"breadth"};
      whole.runs = {"sides"};
      p.rounds.push_back(whole);
      p.pleats[0].toward = garment::said(Toward::centre_front);  // a seam at centre front then lies between two folds that meet
    }
    const Run r = run_of(p);
    const Diagnostic* d = said(r, "seam-shows");
    if (d == nullptr) continue;
    INFO(d->hint);
    if (d->hint.find("`count: ") == 0) {
      p.pleats[0].count = garment::said<std::int64_t>(std::stoll(d->hint.substr(8)));
      ++counts;
    } else if (d->hint.find("`centre front is: a seam`") == 0) {
      p.rounds[0].centre_front_is_seam = true;
      ++centres;
    } else {
      continue;
    }
    REQUIRE(said(run_of(p), "seam-shows") == nullptr);
  }
  CHECK(counts > 10);
  CHECK(centres > 3);
}

TEST_CASE("[X21] a placket inside a fold is told, and where it would be clear") {
  Project p = skirt();
  Placket placket;
  placket.named = garment::named("left side");
  placket.seam = "breadths";
  placket.side = garment::said(std::string("left"));
  placket.length = garment::said(in(10));
  p.plackets.push_back(placket);
  const Run r = run_of(p);
  // Seams at 36 and 126 degrees; 126 is nearer to the side.
  CHECK(r.worked.figures.length("plackets/left side/past centre front") == in(60));
  const Diagnostic* d = said(r, "pleat-on-placket");
  REQUIRE(d != nullptr);
  CHECK(d->sentence == "The placket left side falls inside pleat 8 of sides.");
  CHECK(d->hint == "move its seam 2 in toward centre front, or the pleats");
}

TEST_CASE("a pocket finds its own place between 80 and 110 degrees, or is judged where it was put") {
  Project p = skirt();
  Pocket pocket;
  pocket.named = garment::named("watch");
  p.pockets.push_back(pocket);
  Run r = run_of(p);
  // Lines at 8 k in, edges at 2 k in, 18 k degrees: 90 is nearest to 95.
  CHECK(r.worked.figures.length("pockets/watch/past centre front") == in(40));
  CHECK(std::get<Angle>(r.worked.figures.at("pockets/watch/angle").value).value == 90.0);
  CHECK(said(r, "pleat-on-placket") == nullptr);
  p.pockets[0].past_centre_front = garment::said(in(21));
  r = run_of(p);
  REQUIRE(said(r, "pleat-on-placket") != nullptr);
  CHECK(said(r, "pleat-on-placket")->hint == "`past centre front: 18 in` lies on the fold line");
  REQUIRE(said(r, "pocket-out-of-reach") != nullptr);
}

TEST_CASE("folds part at centre front and meet at centre back; toward centre front the other way") {
  Project p = skirt();
  const Run r = run_of(p);
  CHECK(std::get<std::string>(r.worked.figures.at("pleats/sides/at centre front/makes").value) == "box pleat");
  CHECK(r.worked.figures.length("pleats/sides/at centre front/wide") == in(4));
  CHECK(std::get<std::string>(r.worked.figures.at("pleats/sides/at centre back/makes").value) == "inverted pleat");
  p.pleats[0].toward = garment::said(Toward::centre_front);
  const Run other = run_of(p);
  CHECK(std::get<std::string>(other.worked.figures.at("pleats/sides/at centre front/makes").value) == "inverted pleat");
  CHECK(std::get<std::string>(other.worked.figures.at("pleats/sides/at centre back/makes").value) == "box pleat");
  p.pleats[0].half = false;
  p.pleats[0].toward = garment::said(Toward::left);
  CHECK(run_of(p).worked.figures.find("pleats/sides/at centre front/makes") == nullptr);
}

TEST_CASE("two runs that turn to each other meet in an inverted pleat, and part in a box pleat") {
  Project p = skirt();
  p.pleats[0].finished = garment::said(in(10));
  p.pleats[0].flat = garment::said(in(40));
  p.pleats[0].count = garment::said<std::int64_t>(5);
  p.pleats.push_back(p.pleats[0]);
  p.pleats[1].named = garment::named("back");
  p.pleats[1].toward = garment::said(Toward::centre_front);
  Round round;
  round.named = garment::named("whole");
  round.of = {"breadth"};
  round.runs = {"sides", "back"};
  p.rounds.push_back(round);
  const Run r = run_of(p);
  CHECK(std::get<std::string>(r.worked.figures.at("pleats/sides/at the next run/makes").value) == "inverted pleat");
  CHECK(std::get<std::string>(r.worked.figures.at("pleats/back/at centre back/makes").value) == "box pleat");
  CHECK(r.worked.figures.find("pleats/sides/at centre back/makes") == nullptr);
}
