#include "calculate/lay.h"

#include "geometry/slabs.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::said;
using testing::work_through;
using testing::WorkedGarment;

namespace {

Project one_cloth(Length width, const std::vector<Length>& bought) {
  Project p = garment::project(ShownIn::inches);
  Cloth cloth = garment::cloth("wool", width, Length{});
  cloth.sold_by = said(in(1));
  cloth.bought = said(garment::lengths(bought));
  p.cloths.push_back(cloth);
  return p;
}

void add_breadths(Project& p, std::int64_t number, Length length) {
  p.pieces.push_back(
      garment::piece("breadth", PartOf::drapery, {"wool"}, garment::make(number), garment::full_width(), garment::cut(length)));
}

}  // namespace

TEST_CASE("two lengths hold what their sum says; each holds whole breadths only") {
  Project p = one_cloth(in(50), {in(50), in(100)});
  add_breadths(p, 3, in(48));
  const auto fits = work_through(p);
  CHECK(fits.said().empty());
  const LayPlan& lay = fits.lay("wool");
  REQUIRE(lay.on_bought.size() == 2);
  CHECK(lay.on_bought[0].length == in(100));  // the longest first
  CHECK(lay.on_bought[0].placed.size() == 2);
  CHECK(lay.on_bought[1].placed.size() == 1);
  CHECK(lay.fits_bought);
  CHECK(fits.length("cloths/wool/spare") == in(6));  // 150 - 144

  Project q = one_cloth(in(50), {in(75), in(75)});
  add_breadths(q, 3, in(48));
  const auto short_lengths = work_through(q);
  REQUIRE(short_lengths.message("lengths-too-short") != nullptr);
  CHECK(short_lengths.message("lengths-too-short")->sentence ==
        "Wool: 4 yd needed and 150 in bought, but the lengths one by one do not hold breadth 3.");
  CHECK(short_lengths.length("cloths/wool/short") == in(48));  // one breadth more, in one piece
  CHECK_FALSE(short_lengths.has("cloths/wool/spare"));
  CHECK(short_lengths.lay("wool").left_out == std::vector<std::string>{"breadth 3"});
}

namespace {

Piece drawn_triangle(Make make) {
  Piece p = garment::piece("gore", PartOf::drapery, {"wool"}, make, garment::cut(in(10)), garment::cut(in(40)));
  p.drawn =
      DrawnPiece{"gores.svg", "gore", {}, false, {{Length{}, in(4)}, {Length{}, in(6)}, {in(40), in(10)}, {in(40), Length{}}}};
  return p;
}
WorkedGarment work_outlines(const Project& project) {
  Diagnostics diag;
  WorkOptions options;
  options.outline_work = 300'000;
  WorkedGarment g{calculate(project, Templates{}, options, diag), {}};
  g.messages = diag.sorted();
  return g;
}

}  // namespace

TEST_CASE("gores lie head to foot where they may, and side by side where the cloth has a nap", "[outlines]") {
  for (const bool nap : {false, true}) {
    Project p = one_cloth(in(17), {});
    p.cloths.back().bought = {};
    p.cloths.back().lay = said(nap ? LayRule::one_way : LayRule::either_way);
    p.pieces.push_back(drawn_triangle(garment::make(2)));
    const auto g = work_outlines(p);
    CHECK(g.message("not-laid") == nullptr);
    const LaidStrip& strip = g.lay("wool").to_buy;
    REQUIRE(strip.placed.size() == 2);
    // Two of 10 in are 20 in wide side by side; turned into each other they need 12 in and a little.
    if (nap) CHECK(strip.used > in(55));
    else CHECK(strip.used == in(40));
    CHECK((strip.placed[0].top_at_right != strip.placed[1].top_at_right) == !nap);
    for (const LaidPiece& laid : strip.placed) {
      CHECK(laid.outline.size() == 4);
      CHECK(bounds(laid.outline) == laid.at);
      CHECK_FALSE(laid.mirrored);
    }
  }
}

TEST_CASE("of a pair one lies mirrored, also under a nap; a gap and a bad place are kept free", "[outlines]") {
  Project p = one_cloth(in(30), {});
  Cloth& cloth = p.cloths.back();
  cloth.bought = {};
  cloth.lay = said(LayRule::one_way);
  cloth.gap = said(in(1));
  Remnant r;
  r.named.name = "blanket";
  r.width = in(30);
  r.length = in(60);
  r.bad_places = {{in(10), in(12), in(6), in(5)}};
  cloth.remnants.push_back(r);
  Piece gore = drawn_triangle(garment::make(1));
  gore.drawn->cut = {{Length{}, Length{}}, {Length{}, in(6)}, {in(40), in(10)}, {in(40), Length{}}};  // one straight side
  gore.make = said(Make{Make::Kind::pairs, 1, {}, {}});
  p.pieces.push_back(gore);
  const auto g = work_outlines(p);
  REQUIRE(g.lay("wool").on_bought.size() == 1);
  const LaidStrip& strip = g.lay("wool").on_bought.front();
  REQUIRE(strip.placed.size() == 2);
  CHECK(strip.placed[0].mirrored != strip.placed[1].mirrored);
  REQUIRE(strip.bad_places.size() == 1);
  for (const LaidPiece& laid : strip.placed) {
    CHECK_FALSE(laid.top_at_right);
    for (const Box& box : boxes_over(laid.outline, 400))
      CHECK_FALSE(overlap({box.x, box.y + in(1).times(1, 8), box.width, std::max(Length{}, box.height - in(1).times(1, 4))},
                          strip.bad_places.front()));
  }
}

TEST_CASE("too little cloth: needed, bought and short in one sentence") {
  Project p = one_cloth(in(50), {in(90)});
  add_breadths(p, 2, in(54));
  const auto g = work_through(p);
  REQUIRE(g.message("cloth-short") != nullptr);
  CHECK(g.message("cloth-short")->sentence ==
        "Wool: 3 yd needed in one length, 2 1/2 yd bought; buy 1 1/2 yd more, in one piece.");
  CHECK(g.message("cloth-short")->hint == "on what was bought there is no room for breadth 2, for which 18 in is missing");
  CHECK(g.message("cloth-short")->item == "wool");
  CHECK(g.length("cloths/wool/short") == in(54));  // not 108 - 90 = 18: a breadth of 54 in does not come out of 18
  CHECK(g.worked.plans.may_cut.front().verdict == MayCut::no);
}

TEST_CASE("what lies on the shelf need not meet the shop's step") {
  // 2 x 55 = 110 in lie in 112 in, though the shop would sell 117
  Project p = one_cloth(in(50), {in(112)});
  p.cloths[0].sold_by = said(in(9));
  add_breadths(p, 2, in(55));
  const auto g = work_through(p);
  CHECK(g.said().empty());
  CHECK(g.length("cloths/wool/needed") == in(110));
  CHECK(g.length("cloths/wool/spare") == in(2));
}

TEST_CASE("each length loses its own straightening, a remnant none") {
  Project p = one_cloth(in(50), {in(50), in(50)});
  p.cloths[0].straighten = said(in(1));
  add_breadths(p, 2, in(48));
  CHECK(work_through(p).said().empty());
  p.pieces[0].length = garment::cut(in(49));
  CHECK(work_through(p).message("lengths-too-short") != nullptr);  // 100 bought, 2 x 49 + 2 needed
  Remnant rest;
  rest.named = garment::named("from the coat");
  rest.width = in(50);
  rest.length = in(49);
  p.cloths[0].remnants = {rest, rest};
  p.cloths[0].bought = Given<std::vector<BoughtLength>>{};
  const auto g = work_through(p);
  CHECK(g.said().empty());
  CHECK(g.lay("wool").fits_bought);
  CHECK(g.length("cloths/wool/needed") == Length{});  // nothing to buy
}

TEST_CASE("nothing bought yet: all of it is short") {
  Project p = one_cloth(in(50), {});
  add_breadths(p, 2, in(54));
  const auto g = work_through(p);
  REQUIRE(g.message("cloth-short") != nullptr);
  CHECK(g.length("cloths/wool/short") == g.length("cloths/wool/needed"));
}

TEST_CASE("breadths begin at a whole repeat, wherever the other pieces lie") {
  Project p = one_cloth(in(50), {});
  p.cloths[0].bought = Given<std::vector<BoughtLength>>{};
  p.cloths[0].repeat = Repeat{in(10), std::nullopt, false, {}};
  add_breadths(p, 2, in(42));
  p.pieces.push_back(garment::piece("band", PartOf::band, {"wool"}, garment::make(1), garment::cut(in(30)), garment::cut(in(4))));
  const auto g = work_through(p);
  for (const LaidPiece& piece : g.lay("wool").to_buy.placed)
    if (piece.piece == "breadth") CHECK(piece.at.x.in_ticks() % in(10).in_ticks() == 0);
  CHECK(g.length("pieces/breadth/wool/cut length") == in(42));
  CHECK(g.length("cloths/wool/needed") >= in(100));  // 2 x 50
}

TEST_CASE("the cloth may be cut straight across where no piece crosses") {
  const auto box = [](std::int64_t x, std::int64_t y, std::int64_t w, std::int64_t h) {
    LaidPiece piece;
    piece.at = {in(x), in(y), in(w), in(h)};
    return piece;
  };
  // a breadth to 40; two pieces abreast, to 50 and to 60; one behind the shorter, 50 to 60
  const auto cuts = straight_cuts({box(0, 0, 40, 50), box(40, 0, 10, 20), box(40, 20, 20, 20), box(50, 0, 10, 20)});
  CHECK(cuts == std::vector<Length>{in(40), in(60)});
  CHECK(straight_cuts({}).empty());
}

TEST_CASE("placing distances are of the lay that is printed") {
  Project p = one_cloth(in(50), {in(60), in(60)});
  p.cloths[0].selvage = said(in(1, 2));
  add_breadths(p, 2, in(54));
  const auto g = work_through(p);
  CHECK(g.length("cloths/wool/lay/breadth 1/from end") == Length{});
  CHECK(g.length("cloths/wool/lay/breadth 2/from end") == Length{});  // each on its own length
  CHECK(g.length("cloths/wool/lay/breadth 1/from selvage") == Length{});
  CHECK(g.length("cloths/wool/left over 1/along") == in(6));
  CHECK(g.length("cloths/wool/left over 1/across") == in(49));
}

TEST_CASE("one pass is enough for a check, and never shorter than the bound") {
  const auto quick = work_through(garment::day_dress(), 0);
  const auto usual = work_through(garment::day_dress());
  CHECK(quick.length("cloths/slate wool/lay length") >= usual.length("cloths/slate wool/lay length"));
  CHECK(quick.length("cloths/slate wool/bound") == usual.length("cloths/slate wool/bound"));
}

namespace {

void keeps_its_laws(const testing::WorkedGarment& g, const Project& p) {
  const LayPlan& plan = g.lay("wool");
  std::vector<const LaidStrip*> strips{&plan.to_buy};
  for (const LaidStrip& s : plan.on_bought) strips.push_back(&s);
  for (const LaidStrip* strip : strips)
    for (std::size_t i = 0; i < strip->placed.size(); ++i) {
      const Box& a = strip->placed[i].at;
      REQUIRE(contains(Box{{}, {}, strip->length, strip->width}, a));
      for (std::size_t k = i + 1; k < strip->placed.size(); ++k) REQUIRE_FALSE(overlap(a, strip->placed[k].at));
      for (const Box& rest : strip->left_over) REQUIRE_FALSE(overlap(a, rest));
    }
  std::size_t wanted = 0, on_shelf = 0;
  for (const CutPiece& cut : plan.cut) wanted += static_cast<std::size_t>(cut.copies);
  for (const LaidStrip& s : plan.on_bought) on_shelf += s.placed.size();
  REQUIRE(plan.to_buy.placed.size() == wanted);
  REQUIRE(on_shelf + plan.left_out.size() == wanted);
  REQUIRE(plan.fits_bought == plan.left_out.empty());
  REQUIRE(g.length("cloths/wool/lay length") >= g.length("cloths/wool/bound"));
  Length bought;
  for (const BoughtLength& b : *p.cloths[0].bought) bought += b.length;
  const Length needed = g.length("cloths/wool/needed");
  REQUIRE(plan.bought == bought);
  if (plan.fits_bought) REQUIRE(g.length("cloths/wool/spare") + needed == bought);
  else REQUIRE(g.has("cloths/wool/short"));
  if (!plan.fits_bought) {
    // A second way: buy what is printed, in one piece. The left-out pieces alone must lie on it.
    const Length more = g.length("cloths/wool/short");
    Project again = p;
    again.cloths[0].bought = said(std::vector<BoughtLength>{{more, std::nullopt, std::nullopt, {}}});
    again.pieces.clear();
    for (const Piece& piece : p.pieces) {
      const auto copies = std::count_if(plan.left_out.begin(), plan.left_out.end(), [&](const std::string& left) {
        return left == piece.named.name || left.rfind(piece.named.name + " ", 0) == 0;
      });
      if (copies == 0) continue;
      again.pieces.push_back(piece);
      again.pieces.back().make = said(garment::make(copies));
    }
    REQUIRE(work_through(again).lay("wool").fits_bought);
  }
  if (p.cloths[0].bought->size() == 1 || !plan.fits_bought) REQUIRE(needed >= g.length("cloths/wool/bound"));
}

}  // namespace

TEST_CASE("law: nothing overlaps, nothing is lost, never below the bound, spare and needed make what was bought") {
  draws::Draws draw(23);
  int fitted = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    std::vector<Length> bought;
    for (std::int64_t n = draw.of(1, 3); n > 0; --n) bought.push_back(in(draw.of(20, 200)));
    Project p = one_cloth(in(draw.of(30, 60)), bought);
    p.cloths[0].selvage = said(in(draw.of(0, 4), 8));
    p.cloths[0].straighten = said(in(draw.of(0, 2)));
    p.cloths[0].shrinks_along = said(Percent{Ratio::of(draw.of(0, 8), 100)});
    if (draw.of(0, 4) == 0) p.cloths[0].repeat = Repeat{in(draw.of(3, 20)), std::nullopt, false, {}};
    const std::int64_t pieces = draw.of(1, 4);
    for (std::int64_t i = 0; i < pieces; ++i) {
      const Size width = draw.of(0, 3) == 0 ? garment::full_width() : garment::cut(in(draw.of(16, 29 * 8), 8));
      Piece piece = garment::piece("piece " + std::to_string(i), PartOf::bodice, {"wool"}, garment::make(draw.of(1, 3)), width,
                                   garment::cut(in(draw.of(16, 60 * 8), 8)));
      if (draw.of(0, 5) == 0) piece.lay = said(LayRule::any_way);
      p.pieces.push_back(piece);
    }
    INFO("round " << round);
    const auto g = work_through(p, 40);
    keeps_its_laws(g, p);
    if (g.lay("wool").fits_bought) ++fitted;
  }
  CHECK(fitted > kLawRounds / 10);
  CHECK(fitted < kLawRounds * 9 / 10);
}
