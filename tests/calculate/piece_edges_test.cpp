// What stands past the written width of a piece at its long sides, and finished lengths of edges by name.
#include "calculate/piece_edges.h"

#include <algorithm>

#include "project/edges.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::said;

namespace {

Piece front(std::map<std::string, Length> own = {}) {
  Piece p = garment::piece("bodice front", PartOf::bodice, {"wool"}, garment::pairs(1), garment::finished(in(10)),
                           garment::finished(in(16)));
  p.seam_allowance = said(in(5, 8));
  for (const auto& [edge, allowance] : own) p.edge_allowances[edge] = said(allowance);
  return p;
}

Project with(const Piece& piece) {
  Project p = garment::project(ShownIn::inches);
  p.pieces = {piece};
  return p;
}

Closure closing(Length lap, Length turn, DrawnTo drawn_to = DrawnTo::meeting_line) {
  Closure c;
  c.named = garment::named("front closing");
  c.edge = "centre front";
  c.sides = {"bodice front"};
  c.length = said(in(13));
  c.lap = c.underlap = said(lap);
  c.turn_back = said(turn);
  c.meets = said(Meets::overlapping);
  c.drawn_to = said(drawn_to);
  return c;
}

Project closed(const Piece& piece, const Closure& c) {
  Project p = with(piece);
  EdgeLine edge;
  edge.named = garment::named("centre front");
  edge.of = {"front of bodice front"};
  edge.length = said(in(13));
  p.edges = {edge};
  p.closures = {c};
  return p;
}

LongSides sides_of(const Project& p) { return long_sides(p, p.pieces.front()); }

}  // namespace

TEST_CASE("piece edges: two ordinary seams where nothing else is written", "[edges]") {
  const LongSides s = sides_of(with(front()));
  CHECK(s.one.past == in(5, 8));
  CHECK(s.other.past == in(5, 8));
  CHECK(s.one.edge.empty());
  CHECK(s.longer_by.is_zero());
}

TEST_CASE("piece edges: a side with 1 in of its own stands in place of one seam; on a fold in place of both", "[edges]") {
  Piece piece = front({{"side", in(1)}});
  LongSides s = sides_of(with(piece));
  CHECK(s.one.past == in(1));
  CHECK(s.one.edge == "side");
  CHECK(s.other.past == in(5, 8));
  piece.on_fold = said(true);
  s = sides_of(with(piece));
  CHECK(s.one.past + s.other.past == in(2));
}

TEST_CASE("piece edges: of three long sides the largest two count", "[edges]") {
  const LongSides s = sides_of(with(front({{"side", in(1)}, {"side front", in(3, 4)}, {"centre", in(2)}})));
  CHECK(s.one.past == in(2));
  CHECK(s.other.past == in(1));
}

TEST_CASE("piece edges: a neck, shoulder, armhole or lower edge adds to the length what it asks more, and takes nothing off",
          "[edges]") {
  for (const char* edge : {"neck", "shoulder", "armhole", "waist", "lower edge", "hem", "top", "back neck", "front shoulder"}) {
    CAPTURE(edge);
    LongSides s = sides_of(with(front({{edge, in(1)}})));
    CHECK(s.longer_by == in(3, 8));  // 1 - 5/8
    CHECK(s.one.past == in(5, 8));
    s = sides_of(with(front({{edge, in(1, 4)}})));
    CHECK(s.longer_by.is_zero());
  }
  CHECK(sides_of(with(front({{"inside edge", in(1)}}))).longer_by == in(3, 8));  // "side" must stand as a word
}

TEST_CASE("piece edges: at a closing lap and turn replace the seam; a width drawn to the fold or the cut edge holds them",
          "[edges]") {
  LongSides s = sides_of(closed(front(), closing(in(3, 4), in(1))));
  CHECK(s.one.past == in(7, 4));  // 3/4 + 1
  CHECK(s.one.edge == "front");
  CHECK(s.one.closing != nullptr);
  CHECK(s.other.past == in(5, 8));
  CHECK(sides_of(closed(front(), closing(in(3, 4), in(1), DrawnTo::fold))).one.past == in(1));
  s = sides_of(closed(front(), closing(in(3, 4), in(1), DrawnTo::cut_edge)));
  CHECK(s.one.past.is_zero());  // nothing past its cut edge
  CHECK(s.other.past == in(5, 8));
  CHECK(s.too_short.empty());
}

TEST_CASE("piece edges: what is cut short of the closing is told with what it has and what it wants", "[edges]") {
  LongSides s = sides_of(closed(front({{"front", in(1)}}), closing(in(3, 4), in(1))));
  REQUIRE(s.too_short.size() == 1);
  CHECK(s.too_short.front().has == in(1));
  CHECK(s.too_short.front().wants == in(7, 4));
  s = sides_of(closed(front({{"front", in(2)}}), closing(in(3, 4), in(1))));
  CHECK(s.too_short.empty());
  CHECK(s.one.past == in(2));
}

TEST_CASE("piece edges: an edge is found by NAME of PIECE, whatever its case; none without its piece", "[edges]") {
  Piece piece = front();
  piece.edges = {{"side", said(in(8))}, {"shoulder", said(cm(12))}};
  Project p = with(piece);
  CHECK(*edge_of_piece(p, "side of bodice front").length == in(8));
  CHECK(*edge_of_piece(p, "Shoulder of Bodice Front").length == cm(12));
  CHECK_FALSE(edge_of_piece(p, "neck of bodice front").length.known());
  CHECK(edge_of_piece(p, "neck of bodice front").piece != nullptr);
  CHECK(edge_of_piece(p, "side of bodice back").piece == nullptr);
  CHECK(edge_of_piece(p, "side").piece == nullptr);
  CHECK(pieces_made(piece) == 2);  // a pair
}

TEST_CASE("law: both long sides together never take less than two seams without a closing, nor more than the two largest",
          "[edges][law]") {
  draws::Draws draw(1871);
  const char* names[] = {"side", "front", "back", "centre", "side back", "neck", "shoulder", "armhole", "lower edge"};
  for (int round = 0; round < kLawRounds; ++round) {
    Piece piece = front();
    const Length seam = Length::ticks(draw.of(0, Length::kPerInch));
    piece.seam_allowance = said(seam);
    piece.on_fold = said(draw.of(0, 1) == 1);
    std::vector<Length> long_ones;
    Length other_more;
    for (std::size_t i = 0; i < std::size(names); ++i) {
      if (draw.of(0, 2) > 0) continue;
      const Length own = Length::ticks(draw.of(0, 3 * Length::kPerInch));
      piece.edge_allowances[names[i]] = said(own);
      if (*piece.on_fold && i == 3) continue;  // the centre lies on the fold
      if (i < 5) long_ones.push_back(own);
      else if (own > seam) other_more += own - seam;
    }
    const LongSides s = sides_of(with(piece));
    std::sort(long_ones.rbegin(), long_ones.rend());
    while (long_ones.size() < 2) long_ones.push_back(seam);
    const Length one = long_ones[0], other = *piece.on_fold ? long_ones[0] : long_ones[1];
    REQUIRE(s.one.past == one);
    REQUIRE(s.other.past == (piece.edge_allowances.empty() ? seam : other));
    REQUIRE(s.longer_by == other_more);
    REQUIRE(s.too_short.empty());
  }
}

TEST_CASE("a written hem or top stands at the ends of any piece, not of skirts alone", "[edges]") {
  // A cape of 40 in: seams 5/8 in at both ends; a hem of 2 in, then a top of 1 in besides (arithmetic).
  Piece cape =
      garment::piece("cape", PartOf::drapery, {"wool"}, garment::make(1), garment::finished(in(30)), garment::finished(in(40)));
  cape.seam_allowance = said(in(5, 8));
  const auto cut = [&] {
    Project p = with(cape);
    p.cloths.push_back(garment::cloth("wool", in(58), Length{}));
    return testing::work_through(p).length("pieces/cape/wool/cut length");
  };
  CHECK(cut() == in(41) + in(2, 8));
  cape.hem = said(in(2));
  CHECK(cut() == in(42) + in(5, 8));
  cape.top = said(in(1));
  CHECK(cut() == in(43));
}

TEST_CASE("the seam at the other end of a piece with a hem is no guess", "[edges]") {
  Piece cape =
      garment::piece("cape", PartOf::drapery, {"wool"}, garment::make(1), garment::finished(in(30)), garment::finished(in(40)));
  cape.seam_allowance = said(in(5, 8));
  cape.hem = said(in(2));
  cape.top = Given<Length>::guessed(in(5, 8), "the seam allowance", {});
  Project p = with(cape);
  p.cloths.push_back(garment::cloth("wool", in(58), Length{}));
  const auto g = testing::work_through(p);
  CHECK(g.length("pieces/cape/wool/cut length") == in(42) + in(5, 8));
  CHECK_FALSE(g.figures().find("pieces/cape/wool/cut length")->guessed);
}
