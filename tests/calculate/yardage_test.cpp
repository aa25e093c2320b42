#include "calculate/yardage.h"

#include <stdexcept>

#include "support/catch.h"
#include "support/garment.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;
using garment::said;
using testing::work_through;

TEST_CASE("joined round: the wider of seam and selvage is lost at each edge") {
  CHECK(joined_round(3, in(58), in(5, 8), in(1, 2)) == in(681, 4));  // 3 x 58 - 6 x 5/8 = 170 1/4
  CHECK(joined_round(2, cm(140), mm(15), cm(1)) == cm(274));
  CHECK(joined_round(3, in(58), in(1, 4), in(1, 2)) == in(171));  // 3 x 58 - 6 x 1/2
  CHECK(breadths_for(in(681, 4), in(58), in(5, 8), in(1, 2)) == 3);
  CHECK(breadths_for(in(681, 4) + Length::ticks(1), in(58), in(5, 8), in(1, 2)) == 4);
  CHECK(breadths_for(in(1), in(58), in(5, 8), in(1, 2)) == 1);
  CHECK_THROWS_AS(breadths_for(in(10), in(1), in(1, 2), in(1, 2)), std::domain_error);
}

TEST_CASE("cloth to buy: shrinkage before straightening, then up to the shop's step") {
  // 222 / 0.95 = 233.68; + 2 x 5.08 = 243.84; by 10 cm: 250
  CHECK(length_to_buy(cm(222), Ratio::of(5, 100), in(2), cm(10)) == cm(250));
  CHECK(length_to_buy(cm(222), Ratio::of(5, 100), in(2), Length{}) == cm(222).times(100, 95, Rounding::up) + in(4));
  CHECK(length_to_buy(in(36), Ratio{}, Length{}, in(9, 2)) == in(36));  // a whole yard stays one
  CHECK(length_to_buy(in(36) + Length::ticks(1), Ratio{}, Length{}, in(9, 2)) == in(81, 2));
  CHECK(up_to_repeat(in(22), in(11)) == in(22));
  CHECK_THROWS_AS(length_to_buy(in(1), Ratio{1, 1}, Length{}, Length{}), std::domain_error);
  CHECK_THROWS_AS(up_to_repeat(in(1), Length{}), std::domain_error);
}

TEST_CASE("a twelve-line skirt: 98 + 6 + 1.5 = 105.5; two breadths and an 11 cm band; 243.84 cm, 2.5 m") {
  const auto g = work_through(garment::linen_skirt());
  CHECK(g.said().empty());
  CHECK(g.length("pieces/skirt breadth/blue linen/cut length") == mm(1055));
  CHECK(g.length("pieces/skirt breadth/blue linen/cut width") == cm(140));
  CHECK(g.length("pieces/waistband/blue linen/cut width") == cm(83));  // 80 + 2 x 1.5
  CHECK(g.length("pieces/waistband/blue linen/cut length") == cm(11));
  CHECK(g.length("cloths/blue linen/lay length") == cm(222));
  CHECK(g.length("cloths/blue linen/bound") == cm(222));
  CHECK(g.length("cloths/blue linen/needed") == cm(250));
  CHECK(g.length("cloths/blue linen/spare") == Length{});
  CHECK_FALSE(g.has("cloths/blue linen/short"));
  CHECK(g.figures().at("cloths/blue linen/needed").working->numbers == "222.0 cm / (1 − 5 %) + 2 × 5.08 cm = 243.84 cm");
  CHECK(g.count("cloths/blue linen/breadths") == 2);
  CHECK(g.count("cloths/blue linen/pieces") == 3);
  CHECK(g.length("skirt/joined round") == cm(274));
}

TEST_CASE("needed rests on the straightening that nobody wrote") {
  const auto g = work_through(garment::linen_skirt());
  CHECK(g.figures().at("cloths/blue linen/needed").standing);
  CHECK_FALSE(g.figures().at("pieces/skirt breadth/blue linen/cut length").standing);
  Project guessed = garment::linen_skirt();
  guessed.cloths[0].width = Given<Length>::guessed(cm(140), "the cloth table, dress linen");
  const auto h = work_through(guessed);
  CHECK(h.figures().at("cloths/blue linen/needed").guessed);
  CHECK(h.figures().at("pleats/waist/depth").guessed);
  CHECK(h.figures().at("pleats/waist/depth").guessed_from == "the cloth table, dress linen");
}

TEST_CASE("the wool day dress: bodice pieces get a seam at every edge; muslin fills the round by its own width") {
  const auto g = work_through(garment::day_dress());
  CHECK(g.length("pieces/bodice front/slate wool/cut length") == in(73, 4));  // 17 + 2 x 5/8 = 18 1/4
  CHECK(g.length("pieces/bodice front/slate wool/cut width") == in(47, 4));   // 10 1/2 + 1 1/4
  CHECK(g.count("pieces/bodice front/slate wool/copies") == 2);
  CHECK(g.length("pieces/upper sleeve/slate wool/cut length") == in(99, 4));  // 23 1/2 + 1 1/4 = 24 3/4
  CHECK(g.length("pieces/skirt breadth/slate wool/cut length") == in(93, 2));
  CHECK(g.length("pieces/bodice back/slate wool/half width") == in(35, 8));  // (7 1/2 + 1 1/4) / 2
  CHECK(g.count("pieces/skirt interlining/white muslin/copies") == 4);       // 170 1/4 / 43 3/4 = 3.9
  CHECK(g.figures().at("pieces/skirt interlining/white muslin/copies").working->numbers == "170 1/4 in / 43 3/4 in");
  CHECK(g.length("cloths/white muslin/lay length") == in(186));  // 4 x 46 1/2
  // 186 / 0.95 + 4 = 199.8 in, by 1/8 yd 202 1/2 in
  CHECK(g.length("cloths/white muslin/needed") == in(405, 2));
  CHECK(g.length("cloths/white muslin/spare") == in(9, 2));
  CHECK(g.lay("slate wool").cut.front().piece == "skirt breadth");  // full breadths are cut first
  CHECK(g.lay("slate wool").cut.front().allowances == "seams 5/8 in, hem 3 in, top 1 1/2 in");
}

TEST_CASE("from the same cloth twice is two layers") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("sateen", in(45), in(1, 2)));
  p.pieces.push_back(garment::piece("back", PartOf::bodice, {"sateen", "sateen"}, garment::pairs(1), garment::finished(in(10)),
                                    garment::finished(in(20))));
  const auto g = work_through(p);
  CHECK(g.count("pieces/back/sateen/copies") == 4);
  CHECK(g.length("pieces/back/sateen/cut width") == in(11));  // the usual 1/2 in seam
  CHECK_FALSE(g.has("cloths/sateen/spare"));                  // nothing was said about the shelf
  CHECK_FALSE(g.has("cloths/sateen/bought"));
}

TEST_CASE("across the grain a piece lies turned; its cut sizes stay its own") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("wool", in(45), in(1, 2)));
  Piece sash = garment::piece("sash", PartOf::drapery, {"wool"}, garment::make(1), garment::cut(in(60)), garment::cut(in(10)));
  p.pieces.push_back(sash);
  const auto too_wide = work_through(p);
  REQUIRE(too_wide.message("wider-than-cloth") != nullptr);
  CHECK(too_wide.message("wider-than-cloth")->severity == Severity::error);
  CHECK(too_wide.message("wider-than-cloth")->sentence == "Sash is 60 in across; 44 in of wool can be used.");
  CHECK(too_wide.message("wider-than-cloth")->hint == "turn it: `grain: across`, or `may be pieced: yes`");
  p.pieces[0].grain = said(Grain::across);
  const auto turned = work_through(p);
  CHECK(turned.said().empty());
  CHECK(turned.length("pieces/sash/wool/cut width") == in(60));
  CHECK(turned.length("cloths/wool/lay length") == in(60));
  CHECK(turned.lay("wool").to_buy.placed.front().at.height == in(10));
  p.pieces[0].grain = said(Grain::along);
  p.pieces[0].lay = said(LayRule::any_way);
  CHECK(work_through(p).length("cloths/wool/lay length") == in(60));
}

TEST_CASE("what cannot be laid yet is left out with a hold, never in silence") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("wool", in(45), in(1, 2)));
  p.pieces.push_back(
      garment::piece("front", PartOf::bodice, {"wool"}, garment::make(1), garment::cut(in(12)), garment::cut(in(20))));
  Piece bias = garment::piece("bow", PartOf::trimming, {"wool"}, garment::make(1), garment::cut(in(6)), garment::cut(in(30)));
  bias.grain = said(Grain::bias);
  p.pieces.push_back(bias);
  Piece open = garment::piece("cuff", PartOf::sleeve, {"wool"}, garment::make(2), Size{}, garment::cut(in(4)));
  p.pieces.push_back(open);
  const auto g = work_through(p);
  CHECK(g.said() == "hold size-missing: Cuff has no width yet: it is not in the lay of wool.\n");
  CHECK(g.lay("wool").to_buy.placed.size() == 2);  // the bow lies on the bias: a box of 36 in / sqrt 2
  CHECK(g.lay("wool").to_buy.placed[1].at.width.in_inches() + g.lay("wool").to_buy.placed[0].at.width.in_inches() > 20 + 25.4);
  CHECK(g.length("pieces/bow/wool/cut length") == in(30));
}

TEST_CASE("a narrower lining cut by the outer breadths' number is joined over each of them, and the ways are told") {
  Project p = garment::project(ShownIn::inches);
  p.cloths.push_back(garment::cloth("wool", in(58), in(1, 2)));
  p.cloths.push_back(garment::cloth("muslin", in(45), in(1, 2)));
  p.pieces.push_back(garment::piece("breadth", PartOf::skirt, {"wool", "muslin"}, garment::make(3), garment::full_width(),
                                    garment::finished(in(40))));
  const auto g = work_through(p);
  REQUIRE(g.message("joined-interlining") != nullptr);
  CHECK(g.message("joined-interlining")->sentence == "Muslin is 45 in wide; breadths of wool are 58 in: 1 join in each.");
  CHECK(g.message("joined-interlining")->severity == Severity::warning);
  CHECK(g.length("pieces/breadth/muslin/cut width") == in(58));  // 57 between seam lines + 2 x 1/2
  CHECK(g.count("pieces/breadth/muslin/part side/copies") == 6);
}

TEST_CASE("cloth that shrinks across is laid at what is left of its width") {
  Project p = garment::project(ShownIn::centimetres);
  Cloth cloth = garment::cloth("linen", cm(100), cm(1));
  cloth.shrinks_across = said(Percent{Ratio::of(4, 100)});
  p.cloths.push_back(cloth);
  Piece breadth =
      garment::piece("breadth", PartOf::skirt, {"linen"}, garment::make(2), garment::full_width(), garment::cut(cm(90)));
  garment::allow(breadth, cm(1), Length{}, Length{});
  p.pieces.push_back(breadth);
  const auto g = work_through(p);
  CHECK(g.length("cloths/linen/usable width") == cm(94));  // 100 x 0.96 - 2
  CHECK(g.length("pieces/breadth/linen/cut width") == cm(96));
  CHECK(g.length("skirt/joined round") == cm(188));  // 2 x 96 - 4 x 1
  p.cloths[0].shrunk_already = said(true);
  CHECK(work_through(p).length("skirt/joined round") == cm(196));  // 2 x 100 - 4
}
