// The design handed on from piece to piece: by hand, and as it is laid.
#include "calculate/match_places.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::in;
using garment::said;

namespace {

// A back on the fold, a side piece and a front, each a block; marks `side` and `panel` meet. 9 in along, 7 in across.
Project plaid(bool front_mirrored) {
  Project p = garment::project(ShownIn::inches);
  Cloth cloth = garment::cloth("plaid", in(60), in(1));
  cloth.lay = said(LayRule::one_way);
  Repeat repeat;
  repeat.along = in(9);
  repeat.across = in(7);
  cloth.repeat = repeat;
  p.cloths.push_back(cloth);
  const auto add = [&](const std::string& name, Length along, Length across, Make make,
                       const std::vector<std::pair<std::string, Point>>& marks) {
    p.pieces.push_back(
        garment::piece(name, PartOf::bodice, {"plaid"}, std::move(make), garment::cut(across), garment::cut(along)));
    Piece& piece = p.pieces.back();
    piece.match_at = {"side"};
    piece.drawn = DrawnPiece{
        "x.svg", name, {}, false, {{Length{}, Length{}}, {along, Length{}}, {along, across}, {Length{}, across - in(1)}}, {}};
    for (const auto& [mark, at] : marks)
      piece.drawn->lines.push_back({"match", mark, {{at.x, at.y - in(1, 2)}, {at.x, at.y + in(1, 2)}}, false});
  };
  add("front", in(22), in(12), garment::pairs(1), {{"panel", front_mirrored ? Point{in(14), in(10)} : Point{in(14), in(2)}}});
  add("side", in(19), in(8), garment::pairs(1), {{"side", {in(11), in(1)}}, {"panel", {in(12), in(7)}}});
  add("back", in(20), in(20), garment::make(1), {{"side", {in(12), in(19)}}});
  p.pieces.back().on_fold = said(true);
  return p;
}

Length mod(Length a, Length repeat) {
  const Length rest = a - a.to_step(repeat, Rounding::down);
  return rest < Length{} ? rest + repeat : rest;
}

const LaidPiece& laid(const LaidStrip& strip, const std::string& name, bool mirrored) {
  for (const LaidPiece& p : strip.placed)
    if (p.piece == name && p.mirrored == mirrored) return p;
  FAIL("not laid: " + name);
  return strip.placed.front();
}

}  // namespace

TEST_CASE("marks of one name meet: the back's middle on a line, then its neighbours", "[cloth][match]") {
  const Project p = plaid(false);
  const MatchPlaces places = match_places(p, p.cloths.front());
  CHECK(places.clashes.empty());
  CHECK(places.on_lines.at("back") == Point{in(12), in(10)});
  CHECK(places.on_lines.at("side") == Point{in(11), in(1) - in(9)});            // its side mark 9 in past a line, as the back's
  CHECK(places.on_lines.at("front") == Point{in(14) - in(1), in(2) - in(15)});  // panel: 1 and 15 in past the side's line
  CHECK(within_repeat(in(2) - in(15), in(12), in(7)) == in(1));
  // Drawn as the mirror image, the front counts from the other side.
  const Project q = plaid(true);
  CHECK(match_places(q, q.cloths.front()).on_lines.at("front") == Point{in(13), in(10) + in(15)});
}

TEST_CASE("what cannot meet on both sides is told by how much", "[cloth][match]") {
  Project p = plaid(false);
  p.pieces[0].drawn->lines.push_back(
      {"match", "side", {{in(11), in(10)}, {in(11), in(12)}}, false});  // the front also meets the back
  const MatchPlaces places = match_places(p, p.cloths.front());
  REQUIRE(places.clashes.size() == 1);
  // One piece lies by one of its two seams, and at the other the design is off.
  CHECK(places.clashes[0].along + places.clashes[0].across > Length{});
  CHECK(places.clashes[0].along <= in(9).times(1, 2));
  CHECK(places.clashes[0].across <= in(7).times(1, 2));
}

TEST_CASE("as laid, the design goes on over every matched seam, on both hands", "[cloth][match]") {
  for (const bool mirrored : {false, true}) {
    const Project p = plaid(mirrored);
    Diagnostics diag;
    WorkOptions options;
    options.outline_work = 2000;
    const Worked worked = calculate(p, Templates{}, options, diag);
    const LaidStrip& strip = worked.plans.lays.front().to_buy;
    REQUIRE(strip.placed.size() == 5);
    // Of a mark: how far past a line, along and across; of the other hand from its far side.
    const auto place = [&](const std::string& name, const Point& mark, bool other_hand) {
      const LaidPiece& one = laid(strip, name, other_hand);
      const Length y = other_hand ? one.at.bottom() - mark.y : one.at.y + mark.y;
      const Length across = y - strip.repeat_from;
      return Point{mod(one.at.x + mark.x, in(9)), mod(other_hand ? Length{} - across : across, in(7))};
    };
    CHECK(mod(laid(strip, "back", false).at.y + in(10) - strip.repeat_from, in(7)) == Length{});
    const Point at_back = place("back", {in(12), in(19)}, false);
    for (const bool other : {false, true}) {
      CHECK(place("side", {in(11), in(1)}, other) == at_back);
      const Point at_panel = place("side", {in(12), in(7)}, other);
      Point front = place("front", {in(14), mirrored ? in(10) : in(2)}, other);
      if (mirrored) front.y = mod(Length{} - front.y, in(7));
      CHECK(front == at_panel);
    }
  }
}

TEST_CASE("on folded cloth the design goes on as well, counted from the fold", "[cloth][match]") {
  Project p = plaid(false);
  p.cloths.front().fold = said(ClothFold::lengthwise);
  Diagnostics diag;
  WorkOptions options;
  options.outline_work = 2000;
  const Worked worked = calculate(p, Templates{}, options, diag);
  const LaidStrip& strip = worked.plans.lays.front().to_buy;
  REQUIRE(strip.folded == Folded::lengthwise);
  REQUIRE(strip.placed.size() == 3);  // a half on the fold, two pairs cut double
  const auto place = [&](const std::string& name, const Point& mark) {
    const LaidPiece& one = laid(strip, name, false);
    return Point{mod(one.at.x + mark.x, in(9)), mod(strip.width - one.at.bottom() + mark.y, in(7))};
  };
  CHECK(laid(strip, "back", false).at.bottom() == strip.width);
  CHECK(place("side", {in(11), in(1)}) == place("back", {in(12), in(9)}));  // of the half, from its middle
  CHECK(place("front", {in(14), in(2)}) == place("side", {in(12), in(7)}));
}
