// Strips that a closing or a hem asks for are cut like any piece, and the cloth for them is counted.
#include "support/checked.h"

using namespace gownsheaf;
using gownsheaf::testing::checked;
using gownsheaf::testing::CheckedGarment;

namespace {

const std::string kBodice = R"(garment: bodice
cloths:
  wool: { kind: wool suiting, width: 58 in, selvage: 0 in, shrinks: 0 %, straighten: none, sold by: 1 in }
  coutil: { kind: coutil, width: 54 in, selvage: 0 in, shrinks: 0 %, straighten: none, sold by: 1 in }
allowances: { seam: 5/8 in }
pieces:
  - { piece: bodice front, part of: bodice, make: pair, from: [wool], finished width: 10 in, finished length: 16 in, edges: { front: 13 in } }
edges: { centre front: { of: [front of bodice front] } }
)";

const std::string kClosing =
    "closures: [{ closure: front closing, edge: centre front, fasten: hooks and eyes, meets: edge to edge, sides: [bodice front], ";

Length needed(const CheckedGarment& c, const std::string& cloth) {
  const auto l = c.worked.figures.length("cloths/" + cloth + "/needed");
  REQUIRE(l.has_value());
  return *l;
}
Length figure(const CheckedGarment& c, const std::string& key) {
  INFO(key);
  const auto l = c.worked.figures.length(key);
  REQUIRE(l.has_value());
  return *l;
}

}  // namespace

TEST_CASE("strips: a guard 1 in wide is cut 2 in and two seams wide, as long as the closing and two seams", "[strips]") {
  const CheckedGarment c = checked(kBodice + kClosing + "guard: { width: 1 in, from: wool } }]\n");
  const std::string guard = "pieces/front closing guard/wool/";
  CHECK(figure(c, guard + "cut width") == Length::sixty_fourths(3 * 64 + 16));    // 2 + 2 x 5/8
  CHECK(figure(c, guard + "cut length") == Length::sixty_fourths(14 * 64 + 16));  // 13 + 2 x 5/8
  CHECK(c.worked.figures.count(guard + "copies") == 1);
  CHECK(c.project.piece("front closing guard")->made_for == "front closing");
}

TEST_CASE("strips: a guard without a cloth is of the outside's; without a width there is no strip", "[strips]") {
  CHECK(checked(kBodice + kClosing + "guard: { width: 1 in } }]\n").project.piece("front closing guard")->from ==
        std::vector<std::string>{"wool"});
  CHECK(checked(kBodice + kClosing + "guard: { from: wool } }]\n").project.piece("front closing guard") == nullptr);
  CHECK(checked(kBodice + kClosing + "}]\n").project.pieces.size() == 1);
}

TEST_CASE("strips: what backs a closing is cut once for each side, and bought", "[strips]") {
  const CheckedGarment c = checked(kBodice + kClosing + "backed with: coutil, backing width: 1 1/2 in }]\n");
  CHECK(c.worked.figures.count("pieces/front closing backing/coutil/copies") == 2);
  CHECK(figure(c, "pieces/front closing backing/coutil/cut width") == Length::sixty_fourths(96));
  CHECK(needed(c, "coutil") == Length::inches(15));  // 14 1/4 in, up to the shop's inch
}

TEST_CASE("strips: no backing where a side is cut from that cloth already, no second strip beside the maker's own", "[strips]") {
  CHECK(checked(kBodice + kClosing + "backed with: wool }]\n").project.piece("front closing backing") == nullptr);
  const std::string own =
      "  - { piece: Front closing guard, part of: facing, from: [wool], cut width: 4 in, cut length: 15 in }\n";
  std::string with_own = kBodice;
  with_own.insert(with_own.find("\nedges:") + 1, own);
  const CheckedGarment c = checked(with_own + kClosing + "guard: { width: 1 in, from: wool } }]\n");
  CHECK(c.project.pieces.size() == 2);
  CHECK(figure(c, "pieces/Front closing guard/wool/cut width") == Length::inches(4));
}

TEST_CASE("strips: the facing of a hem takes as many widths as go round it, and the cloth needed grows by them", "[strips]") {
  const std::string skirt = R"(garment: skirt
cloths:
  wool: { kind: wool suiting, width: 58 in, selvage: 0 in, shrinks: 0 %, straighten: none, sold by: 1 in }
  sateen: { kind: cotton sateen, width: 40 in, selvage: 0 in, shrinks: 0 %, straighten: none, sold by: 1 in }
allowances: { seam: 1/2 in, top: 1 in }
pieces:
  - { piece: skirt breadth, part of: skirt, make: 3, from: [wool], cut width: full, finished length: 40 in }
pleats: [{ run: all round, of: [skirt breadth], kind: knife, finished: 28 in, count: 20 }]
skirt: { kind: straight breadths, hem: { depth: 4 in, faced with: sateen, stiffened with: sateen } }
)";
  const CheckedGarment c = checked(skirt);
  // 3 x 58 - 6 x 1/2 = 171 in round; widths of 39 in between seam lines: 171 / 39 = 4.4, five.
  CHECK(c.worked.figures.count("pieces/hem facing/sateen/copies") == 5);
  CHECK(figure(c, "pieces/hem facing/sateen/cut length") == Length::inches(5));      // 4 + 2 x 1/2
  CHECK(figure(c, "pieces/hem stiffening/sateen/cut length") == Length::inches(4));  // not turned under
  CHECK(needed(c, "sateen") == Length::inches(5 * 5 + 5 * 4));
  CHECK(c.worked.figures.count("pieces/skirt breadth/wool/copies") == 3);
}

TEST_CASE("strips: a placket's strip is cut of the cloth it stands in, unless the maker has a piece for it", "[strips]") {
  // The New Dressmaker (1921), pp. 100 to 102: a slit of 10 in, one strip 20 x 3 3/4 in, or an underlap 11 x 1 1/2 in finished,
  // here two cloths thick: 3 + 2 x 5/8 by 11 + 2 x 5/8 in. Faced: two facings of that size, one cloth each (common practice).
  const std::string slit =
      kBodice + "seams: { side: { length: 12 in, kind: side } }\nplackets: [{ placket: left, seam: side, length: 10 in, finish: ";
  const CheckedGarment lap = checked(slit + "continuous lap }]\n");
  CHECK(figure(lap, "pieces/left placket strip/wool/cut width") == Length::sixty_fourths(240));
  CHECK(figure(lap, "pieces/left placket strip/wool/cut length") == Length::inches(20));
  const CheckedGarment under = checked(slit + "separate underlap }]\n");
  CHECK(figure(under, "pieces/left placket underlap/wool/cut width") == Length::sixty_fourths(4 * 64 + 16));
  CHECK(figure(under, "pieces/left placket underlap/wool/cut length") == Length::sixty_fourths(12 * 64 + 16));
  const CheckedGarment faced = checked(slit + "faced }]\n");
  CHECK(figure(faced, "pieces/left placket facing/wool/cut width") == Length::sixty_fourths(2 * 64 + 48));
  CHECK(faced.worked.figures.count("pieces/left placket facing/wool/copies") == 2);
  std::string own = slit + "faced }]\n";
  own.insert(own.find("edges: { centre front"),
             "  - { piece: my placket band, part of: facing, from: [wool], cut width: 4 in, cut length: 12 in }\n");
  CHECK(checked(own).project.piece("left placket facing") == nullptr);
}
