// What is missing where not all goes, and pieces joined of parts: hand figures, and a law over random outlines.
#include <algorithm>
#include <random>

#include "calculate/joined_parts.h"
#include "geometry/region.h"
#include "geometry/slabs.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/rounds.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::in;
using garment::said;
using testing::work_through;

namespace {

Project felt(Length width, const std::vector<Length>& bought) {
  Project p = garment::project(ShownIn::inches);
  Cloth cloth = garment::cloth("felt", width, Length{});
  cloth.sold_by = said(in(1));
  if (!bought.empty()) cloth.bought = said(garment::lengths(bought));
  p.cloths.push_back(cloth);
  return p;
}

Piece& put(Project& p, const std::string& name, Length width, Length length, std::int64_t copies = 1) {
  p.pieces.push_back(
      garment::piece(name, PartOf::bodice, {"felt"}, garment::make(copies), garment::cut(width), garment::cut(length)));
  p.pieces.back().seam_allowance = said(in(1, 2));
  return p.pieces.back();
}

// x along the cloth, y across.
Piece& put_drawn(Project& p, const std::string& name, const Polygon& ring) {
  Piece& piece = put(p, name, bounds(ring).height, bounds(ring).width);
  piece.drawn = DrawnPiece{"x.svg", name, {}, false, ring, {}};
  return piece;
}

testing::WorkedGarment laid(const Project& project) {
  Diagnostics diag;
  WorkOptions options;
  options.outline_work = 2000;
  testing::WorkedGarment g{calculate(project, Templates{}, options, diag), {}};
  g.messages = diag.sorted();
  return g;
}

// Without the notes.
std::int64_t holds(const testing::WorkedGarment& g) {
  return std::count_if(g.messages.begin(), g.messages.end(),
                       [](const Diagnostic& d) { return d.severity == Severity::hold || d.severity == Severity::error; });
}

}  // namespace

TEST_CASE("by how much a piece does not go, on the longest length bought and by itself", "[cloth][missing]") {
  Project p = felt(in(40), {in(30)});
  put(p, "cape", in(30), in(30));
  put(p, "facing", in(5), in(33));
  auto g = work_through(p);
  CHECK(g.length("cloths/felt/missing/facing/more") == in(3));  // beside the cape
  CHECK(g.length("cloths/felt/missing/facing/alone") == in(33));
  CHECK(g.message("cloth-short")->hint.find("no room for facing, for which 3 in is missing") != std::string::npos);
  p.cloths[0].bought = said(garment::lengths({in(33)}));
  CHECK(work_through(p).lay("felt").fits_bought);
  p.cloths[0].bought = said(garment::lengths({in(30)}));
  p.cloths[0].shrinks_along = said(Percent{Ratio{1, 10}});
  CHECK(work_through(p).length("cloths/felt/missing/facing/more") ==
        in(6).times(10, 9, Rounding::up));  // 27 in are laid, 33 wanted

  // The sum by hand in docs/formulas.md: two breadths of 54 in, 90 in bought.
  p = felt(in(40), {in(90)});
  p.pieces.push_back(
      garment::piece("breadth", PartOf::drapery, {"felt"}, garment::make(2), garment::full_width(), garment::cut(in(54))));
  g = work_through(p);
  CHECK(g.length("cloths/felt/missing/breadth 2/more") == in(18));
  CHECK(g.length("cloths/felt/missing/breadth 2/alone") == in(54));

  // Two lengths: the longer is left open. A remnant cannot be longer.
  p = felt(in(40), {in(20), in(30)});
  for (const int length : {30, 20, 8}) put(p, "panel " + std::to_string(length), in(40), in(length));
  g = work_through(p);
  CHECK(g.length("cloths/felt/missing/panel 8/more") == in(8));
  CHECK(g.lay("felt").missing.front().on == "bought length 2");
  p = felt(in(40), {});
  p.cloths[0].remnants.push_back({garment::named("coat"), in(20), in(20), {}});
  put(p, "hood", in(10), in(25));
  g = work_through(p);
  REQUIRE(g.lay("felt").missing.size() == 1);
  CHECK(g.lay("felt").missing.front().on.empty());
  CHECK(g.length("cloths/felt/missing/hood/alone") == in(25));

  // Folded: the odd piece goes behind the fold's 30 in, in one layer.
  p = felt(in(40), {in(30)});
  p.cloths[0].fold = said(ClothFold::lengthwise);
  put(p, "front", in(15), in(30), 2);
  put(p, "hood", in(10), in(12));
  CHECK(work_through(p).length("cloths/felt/missing/hood/more") == in(12));
}

TEST_CASE("where two do not do, three parts and four", "[cloth][joined]") {
  Project p = felt(in(40), {in(30)});
  put(p, "cape", in(25), in(30));
  put(p, "facing", in(5), in(80)).may_be_pieced = said(true);
  auto g = work_through(p);
  CHECK(g.lay("felt").pieced == std::vector<std::string>{"facing"});
  CHECK(g.length("pieces/facing/felt/part first/cut length") == in(80).times(1, 3) + in(1, 2));
  CHECK(g.length("pieces/facing/felt/part second/cut length") == in(80).times(2, 3) - in(80).times(1, 3) + in(1));
  CHECK(g.message("pieced-last")->sentence.find("joined of three") != std::string::npos);
  p.pieces.back().length = garment::cut(in(92));  // a middle third and its seams: 31 2/3 in
  p.pieces.front().width = garment::cut(in(20));
  g = work_through(p);
  CHECK(g.message("pieced-last")->sentence.find("joined of four") != std::string::npos);
  p.pieces.back().joining.joins = 2;
  CHECK(work_through(p).message("pieced-last") == nullptr);
  Cut cut;
  cut.piece.along = in(80);
  cut.piece.across = in(5);
  cut.piece.seam = in(1, 2);
  p.pieces.back().joining = {};
  p.pieces.back().joining.clear_of_centre = true;
  cut.source = &p.pieces.back();
  const auto four = joined_of(cut, 4);  // joins at 16, 32, 56: none at 40
  REQUIRE(four);
  CHECK((*four)[0].piece.along == in(16) + in(1, 2));
  CHECK((*four)[2].piece.along == in(24) + in(1));
  CHECK_FALSE(joined_of(cut, 50));
}

TEST_CASE("an outline wider than the cloth is joined along its length", "[cloth][joined]") {
  // A mantle 60 in across its lower edge, 20 in long, 20 in across its top.
  const Polygon mantle{{Length{}, in(20)}, {Length{}, in(40)}, {in(20), in(60)}, {in(20), Length{}}};
  Project p = felt(in(40), {});
  put_drawn(p, "mantle", mantle);
  CHECK(laid(p).message("wider-than-cloth") != nullptr);
  p.pieces.back().may_be_pieced = said(true);
  auto g = laid(p);
  CHECK(holds(g) == 0);
  CHECK(g.message("outline-joined") != nullptr);
  CHECK(g.count("pieces/mantle/felt/parts") == 2);
  CHECK(g.length("pieces/mantle/felt/join 1") == in(30));
  CHECK(g.length("pieces/mantle/felt/part first/cut width") == in(30) + in(1, 2));
  REQUIRE(g.lay("felt").to_buy.placed.size() == 2);
  CHECK(g.lay("felt").cut.front().part_of == "mantle");
  // Opened out on the fold: a seam at its centre, the halves a pair.
  p.pieces.back().on_fold = said(true);
  g = laid(p);
  REQUIRE(g.lay("felt").cut.size() == 1);
  CHECK(g.lay("felt").cut.front().pair);
  CHECK(g.lay("felt").cut.front().copies == 2);
  // With the centre kept clear: a middle one on the fold, a pair beside it.
  p.pieces.back().joining.clear_of_centre = true;
  g = laid(p);
  REQUIRE(g.lay("felt").cut.size() == 2);
  const auto& cuts = g.lay("felt").cut;
  CHECK(std::count_if(cuts.begin(), cuts.end(), [](const CutPiece& c) { return c.pair && c.copies == 2 && !c.on_fold; }) == 1);
  CHECK(std::count_if(cuts.begin(), cuts.end(), [](const CutPiece& c) { return !c.pair && c.copies == 1 && c.on_fold; }) == 1);
  // Two prongs beyond `base`: a join among them would leave them apart. It is moved aside while the width allows it, else refused.
  const auto prongs = [&](Length base) {
    return Polygon{{Length{}, Length{}}, {Length{}, in(60)}, {in(8), in(60)},  {in(8), base},
                   {in(12), base},       {in(12), in(60)},   {in(20), in(60)}, {in(20), Length{}}};
  };
  p = felt(in(40), {});
  put_drawn(p, "mantle", prongs(in(25))).may_be_pieced = said(true);
  g = laid(p);
  CHECK(holds(g) == 0);
  CHECK(g.length("pieces/mantle/felt/join 1") < in(30));
  p.pieces.back().drawn->cut = prongs(in(10));
  g = laid(p);
  REQUIRE(g.message("wider-than-cloth") != nullptr);
  CHECK(g.message("wider-than-cloth")->hint.find("fall apart") != std::string::npos);
}

TEST_CASE("joins come where the drawing has join lines, and nowhere else", "[cloth][joined]") {
  const Polygon mantle{{Length{}, in(20)}, {Length{}, in(40)}, {in(20), in(60)}, {in(20), Length{}}};
  Project p = felt(in(40), {});
  Piece& piece = put_drawn(p, "mantle", mantle);
  piece.may_be_pieced = said(true);
  const auto line = [&](Length y) { piece.drawn->lines.push_back({"join", "", {{in(1), y}, {in(19), y}}, false}); };
  line(in(23));
  auto g = laid(p);
  CHECK(g.length("pieces/mantle/felt/join 1") == in(23));
  CHECK(g.length("pieces/mantle/felt/part second/cut width") == in(37) + in(1, 2));
  piece.drawn->lines.clear();
  line(in(15));  // beyond it 45 in are left
  CHECK(laid(p).message("wider-than-cloth") != nullptr);
  line(in(50));
  g = laid(p);
  CHECK(g.count("pieces/mantle/felt/parts") == 3);
  CHECK(g.length("pieces/mantle/felt/join 2") == in(50));
  piece.joining.joins = 1;
  CHECK(laid(p).message("wider-than-cloth") != nullptr);
  // As a last resort too: of 33 in, at 12 in, not in the middle.
  p = felt(in(40), {in(30)});
  put(p, "cape", in(30), in(30));
  Piece& facing = put_drawn(p, "facing", {{Length{}, Length{}}, {in(33), Length{}}, {in(33), in(5)}, {Length{}, in(4)}});
  facing.may_be_pieced = said(true);
  facing.drawn->lines.push_back({"join", "", {{in(12), in(1)}, {in(12), in(4)}}, false});
  g = laid(p);
  CHECK(g.length("pieces/facing/felt/part upper/cut length") == in(12) + in(1, 2));
  CHECK(g.length("pieces/facing/felt/part lower/cut length") == in(21) + in(1, 2));
}

TEST_CASE("the repeat goes on over a join", "[cloth][joined]") {
  const Polygon mantle{{Length{}, in(20)}, {Length{}, in(40)}, {in(20), in(60)}, {in(20), Length{}}};
  Project p = felt(in(40), {});
  Cloth& cloth = p.cloths.front();
  cloth.lay = said(LayRule::one_way);
  Repeat repeat;
  repeat.along = in(7);
  repeat.across = in(5);
  cloth.repeat = repeat;
  Piece& piece = put_drawn(p, "mantle", mantle);
  piece.may_be_pieced = said(true);
  piece.match_at = {"hem"};
  piece.drawn->lines.push_back({"match", "hem", {{in(12), in(31)}, {in(14), in(31)}}, false});
  const auto g = laid(p);
  REQUIRE(g.lay("felt").to_buy.placed.size() == 2);
  const Length join = g.length("pieces/mantle/felt/join 1"), seam = in(1, 2);
  std::vector<Point> origin;  // where the whole's least corner would lie, by each part
  for (const LaidPiece& part : g.lay("felt").to_buy.placed) {
    CHECK(part.match);
    origin.push_back({part.at.x, part.at.y - (part.piece.find("second part") == std::string::npos ? Length{} : join - seam)});
  }
  CHECK((origin[0].x - origin[1].x).in_ticks() % in(7).in_ticks() == 0);
  CHECK((origin[0].y - origin[1].y).in_ticks() % in(5).in_ticks() == 0);
  CHECK((origin[0].x + in(13)).in_ticks() % in(7).in_ticks() == 0);
  CHECK((origin[0].y + in(31)).in_ticks() % in(5).in_ticks() == 0);
}

TEST_CASE("law: the parts of random outlines hold all of it, and the seams twice", "[cloth][joined][law]") {
  std::mt19937 dice(1796);
  const auto any = [&](int low, int high) {
    return in(low + static_cast<int>(dice() % static_cast<unsigned>(high - low + 1)), 16);
  };
  int joined = 0;
  for (int round = 0; round < kLawRounds / 20; ++round) {
    CAPTURE(round);
    Cut cut;
    CutPiece& c = cut.piece;
    Polygon& ring = c.outline;  // a row of corners out along one side and back along the other
    const int corners = 2 + static_cast<int>(dice() % 6);
    const Length step = any(32, 200);
    for (int i = 0; i <= corners; ++i) ring.push_back({step * i, any(1, 200)});
    for (int i = corners; i >= 0; --i) ring.push_back({step * i, any(201, 600)});
    const Box box = bounds(ring);
    for (Point& q : ring) q.y -= box.y;
    c.along = box.width;
    c.across = box.height;
    c.seam = any(0, 20);
    c.piece = "gore";
    const int many = 2 + static_cast<int>(dice() % 3);
    Piece rules;
    if (dice() % 3 == 0) rules.joining.clear_of = {"side"};
    rules.joining.clear_of_centre = dice() % 3 == 0;
    cut.source = &rules;
    const auto parts = joined_of(cut, many);
    if (!parts) continue;
    ++joined;
    const bool along = !rules.joining.clear_of.empty();
    const Length whole = along ? c.across : c.along;
    Length sum;
    double areas = 0, wanted = std::abs(area(ring).in_square_metres());
    for (std::size_t k = 0; k < parts->size(); ++k) {
      const CutPiece& part = (*parts)[k].piece;
      const Length own = along ? part.across : part.along;
      REQUIRE(resolve({part.outline}, FillRule::nonzero).region.rings.size() == 1);
      areas += std::abs(area(part.outline).in_square_metres());
      sum += own;
    }
    REQUIRE(sum == whole + 2 * static_cast<std::int64_t>(many - 1) * c.seam);
    // Where two parts overlap, both seams wide at each join, is counted twice.
    Length at;
    for (std::size_t k = 0; k + 1 < parts->size(); ++k) {
      const CutPiece& part = (*parts)[k].piece;
      at += (along ? part.across : part.along) - (k == 0 ? c.seam : 2 * c.seam);
      Polygon turned = ring;
      if (along)
        for (Point& q : turned) q = {c.across - q.y, q.x};
      const Polygon twice = clipped_along(turned, at - c.seam, at + c.seam);
      if (twice.size() >= 3) wanted += std::abs(area(twice).in_square_metres());
    }
    REQUIRE(std::abs(areas - wanted) < 1e-7);
  }
  CHECK(joined > kLawRounds / 60);
}
