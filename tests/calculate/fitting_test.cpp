#include "calculate/fitting.h"

#include "calculate/fitting_share.h"
#include "calculate/gates.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;
using garment::said;
using testing::work_through;

namespace {

Seam seam(const std::string& name, const std::string& kind, std::int64_t number) {
  Seam s;
  s.named = garment::named(name);
  s.kind = kind;
  s.number = number;
  return s;
}

Finding finding(const std::string& where, const std::string& is, Length by, std::vector<std::string> over = {},
                Length at_most = in(1, 4)) {
  Finding f;
  f.where = where;
  f.is = is;
  f.by = by;
  f.shared_over = std::move(over);
  f.at_most = said(at_most);
  return f;
}

Fitting fitting(const std::string& name, std::vector<Finding> found) {
  Fitting f;
  f.named = garment::named(name);
  f.found = std::move(found);
  f.cloth_thickness = said(Length::tenth_mm(3));
  return f;
}

// Six seams cross the waist: two sides, two of the side back, two darts.
Project bodice() {
  Project p = garment::project(ShownIn::inches);
  p.garment = said(Garment::bodice);
  p.seams = {seam("side", "side", 2), seam("side back", "side", 2), seam("front dart", "dart", 2)};
  return p;
}

std::string say(const Say& parts, const Figures& figures, ShownIn in = ShownIn::inches) {
  std::string all;
  for (const SayPart& part : parts) all += part.figure.empty() ? part.words : plain_text(figures.at(part.figure), in);
  return all;
}

std::vector<FittingChange> changes_of(const Project& p, Figures& figures, Diagnostics& diag) {
  return add_fittings(p, figures, diag);
}

}  // namespace

TEST_CASE("fitting: 1 in over six seams is 1/12 in at each of twelve edges", "[fitting]") {
  Project p = bodice();
  p.fittings = {fitting("first mock-up", {finding("waist", "loose", in(1))})};
  Figures figures;
  Diagnostics diag;
  const auto changes = changes_of(p, figures, diag);
  CHECK(figures.length("fittings/first mock-up/waist/each edge") == in(1, 12));
  CHECK(figures.count("fittings/first mock-up/waist/edges") == 12);
  CHECK(figures.find("fittings/first mock-up/waist/left over") == nullptr);
  CHECK(figures.at("fittings/first mock-up/waist/each edge").is_private);
  REQUIRE(changes.size() == 1);
  CHECK(say(changes[0].found, figures) == "loose by 1 in");
  CHECK(say(changes[0].change, figures) == "take in 3/32 in at each of 12 edges: side, side back and front dart");
  CHECK(diag.in_order_found().empty());
}

TEST_CASE("fitting: 5/8 in over the side back seams alone is 5/8 / 4 = 5/32 in an edge", "[fitting]") {
  Project p = bodice();
  p.fittings = {fitting("first mock-up", {finding("waist", "loose", in(5, 8), {"side back"})})};
  Figures figures;
  Diagnostics diag;
  changes_of(p, figures, diag);
  CHECK(figures.length("fittings/first mock-up/waist/each edge") == in(5, 32));
  CHECK(figures.at("fittings/first mock-up/waist/each edge").working->numbers == "5/8 in / 4");
}

TEST_CASE("fitting: 4 in over twelve edges of at most 1/4 in: 3 in fit, 1 in is left for another mock-up", "[fitting]") {
  Project p = bodice();
  p.fittings = {fitting("first mock-up", {finding("waist", "tight", in(4))})};
  Figures figures;
  Diagnostics diag;
  const auto changes = changes_of(p, figures, diag);
  CHECK(figures.length("fittings/first mock-up/waist/each edge") == in(1, 4));
  CHECK(figures.length("fittings/first mock-up/waist/left over") == in(1));
  CHECK(say(changes[0].left, figures) == "1 in is left: sew another mock-up before good cloth is cut");
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(diag.in_order_found()[0].code == "second-mock-up");
  CHECK(diag.in_order_found()[0].is_private);
  CHECK(needs_second_mock_up(p));
}

TEST_CASE("fitting: darts take no part at the bust; an edge gapes into one seam; a closing has two edges", "[fitting]") {
  Project p = bodice();
  EdgeLine neck, front;
  neck.named = garment::named("neck");
  neck.kind = "neck";
  front.named = garment::named("centre front");
  front.kind = "front closing";
  p.edges = {neck, front};
  p.fittings = {fitting("first mock-up", {finding("bust", "tight", in(1)), finding("neck", "gapes", in(3, 8)),
                                          finding("centre front", "gapes", in(1, 4)), finding("shoulder", "long", in(3, 8)),
                                          finding("back neck to waist", "short", in(1, 2)), finding("armhole", "tight", in(1, 2)),
                                          finding("waist to floor", "long", in(1, 2))})};
  Figures figures;
  Diagnostics diag;
  const auto changes = changes_of(p, figures, diag);
  REQUIRE(changes.size() == 7);
  CHECK(say(changes[0].change, figures) == "let out 1/8 in at each of 8 edges: side and side back");
  CHECK(
      say(changes[1].change, figures) ==
      "fold out a wedge of 3/8 in at the edge, nothing at the bust point; in the nearest seam that is 3/16 in at each of its two edges");
  CHECK(say(changes[2].change, figures) == "let out 1/8 in at each of the two closing edges");
  CHECK(say(changes[3].change, figures) ==
        "take off 3/8 in at the tip of the shoulder, nothing at the neck; move the underarm the same way");
  CHECK(say(changes[4].change, figures) == "add 1/2 in there, to nothing at the next balance mark");
  CHECK(say(changes[5].change, figures) == "clip into the allowance first, no deeper than 3/8 in; look again; pare it last");
  CHECK(say(changes[6].change, figures) == "sink the top edge by 1/2 in there; the hem stays");
}

TEST_CASE("fitting: a skirt's waist 2 cm loose over 20 pleats shows 1 mm less on each", "[fitting]") {
  Project p = garment::project(ShownIn::centimetres);
  PleatRun run;
  run.named = garment::named("all round");
  run.kind = PleatKind::knife;
  run.count = said<std::int64_t>(10);
  run.half = true;
  p.pleats = {run};
  p.fittings = {fitting("skirt on the figure", {finding("waist", "loose", cm(2))})};
  Figures figures;
  Diagnostics diag;
  const auto changes = changes_of(p, figures, diag);
  CHECK(figures.length("fittings/skirt on the figure/waist/each pleat") == mm(1));
  CHECK(say(changes[0].change, figures, ShownIn::centimetres) == "show 0.1 cm less on each of 20 pleats");
}

TEST_CASE("fitting: nothing is shared where no seam is known to cross", "[fitting]") {
  Project p = garment::project(ShownIn::inches);
  p.fittings = {fitting("first mock-up", {finding("waist", "loose", in(1))})};
  Figures figures;
  Diagnostics diag;
  changes_of(p, figures, diag);
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(diag.in_order_found()[0].code == "finding-unshared");
  CHECK(figures.find("fittings/first mock-up/waist/each edge") == nullptr);
}

// Arithmetic, checked by hand: 2 pi x 1.5 mm = 9.4248 mm, 3/8 in to the sixteenth.
TEST_CASE("[M09] fitting: three layers of 0.5 mm add 9.42 mm to the girth that goes round them", "[fitting]") {
  const Length grown = girth_of_layer(Length::tenth_mm(15));
  CHECK(grown.to_step(Length::ticks(Length::kPerMm / 100 * 1), Rounding::nearest) >=
        Length::ticks(942 * Length::kPerMm / 100 - 29));
  CHECK(grown.in_ticks() == 27143);  // 9.424777961 mm x 2880 = 27143.36
  CHECK(text_of(grown, ShownIn::inches, mark_step(ShownIn::inches), Rounding::nearest).plain() == "3/8 in");
}

TEST_CASE("fitting: layers beyond the mock-up's are shared over the same edges", "[fitting]") {
  Project p = bodice();
  for (const char* name : {"wool", "sateen"}) {
    Cloth c = garment::cloth(name, in(50), in(0));
    c.thickness = said(mm(1));
    p.cloths.push_back(c);
  }
  p.pieces = {garment::piece("front", PartOf::bodice, {"wool", "sateen"}, garment::pairs(1), garment::finished(in(10)),
                             garment::finished(in(15)))};
  p.fittings = {fitting("first mock-up", {})};
  p.fittings[0].cloth_thickness = said(Length::tenth_mm(5));
  Figures figures;
  Diagnostics diag;
  changes_of(p, figures, diag);
  CHECK(figures.length("fittings/first mock-up/the layers/round") == girth_of_layer(Length::tenth_mm(15)));
  CHECK(figures.length("fittings/first mock-up/the layers/each edge") == girth_of_layer(Length::tenth_mm(15)).times(1, 8));
  CHECK(figures.at("fittings/first mock-up/the layers/round").working->numbers == "2 π × (0.20 cm − 0.05 cm)");

  // A tenth of a millimetre goes 0.6 mm round: no tape shows it.
  p.fittings[0].cloth_thickness = said(Length::tenth_mm(19));
  Figures alike;
  changes_of(p, alike, diag);
  CHECK_FALSE(alike.length("fittings/first mock-up/the layers/round"));
}

TEST_CASE("fitting: a closing that stands 3 in open above and 2 in below, 2 in wanted", "[fitting]") {
  // all round (3 + 2) / 2 - 2 = 1/2; each edge tapers by (3 - 2) / 2 = 1/2
  const ClosingGap gap = closing_gap(in(3), in(2), in(2));
  CHECK(gap.all_round == in(1, 2));
  CHECK(gap.taper_each == in(1, 2));
}

TEST_CASE("fitting: ten thousand random findings: edges sum to the change, none takes more than it may", "[fitting][laws]") {
  draws::Draws draw(20270225);
  for (int round = 0; round < kLawRounds; ++round) {
    const std::int64_t edges = draw.of(1, 40);
    const Length whole = Length::ticks(draw.of(0, 12 * Length::kPerInch)), at_most = Length::ticks(draw.of(1, Length::kPerInch));
    const Shared s = share(whole, edges, at_most);
    CHECK(s.taken + s.left == whole);
    CHECK(s.each <= at_most);
    CHECK((s.left.is_zero() || s.taken == at_most * edges));
    Length sum;
    for (const Length each : shared_out(s.taken, edges)) {
      sum += each;
      CHECK(each <= at_most);
      CHECK(each >= Length{});
    }
    CHECK(sum == s.taken);
  }
}

TEST_CASE("fitting: a fitting is held at the gate whose words stand in its name", "[fitting]") {
  const std::vector<std::string> gates = {"mock-up", "skirt on the figure", "basted bodice", "second mock-up"};
  CHECK(gate_of_fitting("first mock-up", gates) == "mock-up");
  CHECK(gate_of_fitting("second mock-up", gates) == "second mock-up");
  CHECK(gate_of_fitting("Basted bodice again", gates) == "basted bodice");
  CHECK(gate_of_fitting("toile", gates) == "mock-up");
  CHECK(gate_of_fitting("second toile", gates) == "second mock-up");
  CHECK(find_gate("the skirt", gates).gate == "skirt on the figure");
  CHECK(find_gate("the skirt", gates).named);
  // Nothing in the name tells the gate, or two gates share the word: the first, and it is said.
  for (const char* name : {"Friday's trial", "second fitting"}) {
    CHECK(find_gate(name, gates).gate == "mock-up");
    CHECK_FALSE(find_gate(name, gates).named);
  }
  CHECK(find_gate("bodice", {"mock-up", "basted bodice", "closed bodice"}).gate == "basted bodice");
  CHECK_FALSE(find_gate("bodice", {"mock-up", "basted bodice", "closed bodice"}).named);
  CHECK(find_gate("Friday's trial", {"sleeve"}).named);
  CHECK(gate_of_fitting("toile", {}).empty());
}

TEST_CASE("fitting: a fitting that is named after no gate is told", "[fitting]") {
  Project p = bodice();
  p.fittings = {fitting("Friday's trial", {})};
  p.fittings[0].signed_on = said(make_day(2027, 3, 1));
  Diagnostics diag;
  check_fittings(p, {"mock-up", "sleeve"}, diag);
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(diag.in_order_found()[0].code == "gate-unnamed");
  CHECK(diag.in_order_found()[0].sentence ==
        "Friday's trial is named after none of the fittings in the order of work, or after several; it is taken for mock-up.");
  Diagnostics one;
  check_fittings(p, {"mock-up"}, one);
  CHECK(one.in_order_found().empty());
}

TEST_CASE("fitting: only the last fitting of a gate must be signed", "[fitting]") {
  Project p = bodice();
  p.fittings = {fitting("first mock-up", {}), fitting("last mock-up", {})};
  p.fittings[1].signed_on = said(make_day(2027, 3, 1));
  Diagnostics signed_last;
  check_fittings(p, {"mock-up"}, signed_last);
  CHECK(signed_last.in_order_found().empty());
  p.fittings[1].signed_on = {};
  Diagnostics open;
  check_fittings(p, {"mock-up"}, open);
  REQUIRE(open.in_order_found().size() == 1);
  CHECK(open.in_order_found()[0].item == "last mock-up");
  CHECK(open.in_order_found()[0].severity == Severity::hold);
}

TEST_CASE("fitting: an unsigned gate stops what cannot be undone after it, not what stands before or beside", "[fitting]") {
  std::vector<PlannedStep> work(4);
  work[0].id = "cut-mock-up";
  work[0].cannot_undo = kCannotUndo[0];
  work[1].id = "fit-mock-up";
  work[1].gate = "mock-up";
  work[1].hard_after = {"cut-mock-up"};
  work[2].id = "sign-pattern";
  work[2].hard_after = {"fit-mock-up"};
  work[3].id = "cut-pieces";
  work[3].hard_after = {"sign-pattern"};
  work[3].cannot_undo = kCannotUndo[0];
  Diagnostic hold;
  hold.code = kGateUnsigned;
  hold.item = "first mock-up";
  CHECK_FALSE(stopped_at_gate(hold, work[0], work));
  CHECK_FALSE(stopped_at_gate(hold, work[1], work));
  CHECK_FALSE(stopped_at_gate(hold, work[2], work));  // it can be undone
  CHECK(stopped_at_gate(hold, work[3], work));
}

TEST_CASE("girths: 26 1/2 in less 1/2 in is 26 in; 1 in over 12 edges is 1/12 in", "[fitting]") {
  Project p = bodice();
  Measure waist;
  waist.both = said(in(53, 2));
  p.measures.girths_and_lengths.emplace("waist", waist);
  p.ease.emplace("waist", said(in(-1, 2)));
  const auto g = work_through(p);
  CHECK(g.length("girths/waist/finished") == in(26));
  CHECK(g.figures().at("girths/waist/finished").working->numbers == "26 1/2 in − 1/2 in");
  CHECK(g.figures().at("girths/waist/finished").is_private);
  CHECK(g.length("sharing/waist/each edge") == in(1, 12));
}
