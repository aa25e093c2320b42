// What a garment has several times is counted as often: seams and edges of pairs, closings at both knees, the pieces of a gored hem.
#include "calculate/fitting_share.h"
#include "support/checked.h"

using namespace gownsheaf;
using Catch::Matchers::WithinAbs;
using gownsheaf::testing::checked;
using gownsheaf::testing::CheckedGarment;

namespace {

std::int64_t figure_count(const CheckedGarment& c, const std::string& key) { return c.worked.figures.count(key).value_or(-1); }
Length figure_length(const CheckedGarment& c, const std::string& key) { return c.worked.figures.length(key).value_or(Length{}); }
Length whole_in(std::int64_t whole, std::int64_t parts = 0) { return Length::sixty_fourths(whole * 64 + parts); }

const std::string kPlainWool =
    "cloths: { wool: { kind: wool suiting, width: 56 in, selvage: 1/2 in, shrinks: 0 %, thickness: 0.5 mm } }\n";
const std::string kBreeches =
    kPlainWool + R"(notions: { buttons: { kind: button, across: 1/2 in, thickness: 1/8 in }, garters: { kind: lacing } }
pieces:
  - { piece: front leg, make: pair, from: [wool], finished width: 12 in, finished length: 27 in, edges: { inseam: 18 in, side: 26 in } }
  - { piece: back leg, make: pair, from: [wool], finished width: 14 in, finished length: 27 in, edges: { inseam: 18 in, side: 26 in, seat: 12 in } }
)";

}  // namespace

TEST_CASE("numbers: a seam has as many as its pieces have of the two edges, the fewer", "[numbers]") {
  const CheckedGarment c = checked(kBreeches + R"(seams:
  inseam: { joins: [inseam of front leg, inseam of back leg] }
  outseam: { joins: [side of front leg, side of back leg], number: 1 }
  seat: { joins: [seat of back leg, seat of back leg] }
)");
  CHECK(c.project.seam("inseam")->number == 2);
  CHECK(c.project.seam("outseam")->number == 1);  // written
  CHECK(c.project.seam("outseam")->kind == "side");
  CHECK(c.project.seam("seat")->number == 1);  // a pair joined to its other hand
  CHECK(*c.project.piece("front leg")->part_of == PartOf::leg);
}

TEST_CASE("numbers: half an inch over the side seams of a pair and a back on the fold moves four edges", "[numbers]") {
  const CheckedGarment c = checked(kPlainWool + R"(measures: { waist: 27 in }
pieces:
  - { piece: front, make: pair, from: [wool], finished width: 10 in, finished length: 16 in, edges: { side: 8 in } }
  - { piece: back, on fold: yes, from: [wool], finished width: 15 in, finished length: 16 in, edges: { side: 8 in } }
seams: { side: { joins: [side of front, side of back] } }
)");
  CHECK(seams_across(c.project, "waist").edges == 4);
  CHECK(figure_length(c, "sharing/waist/each edge") == whole_in(0, 16));
}

TEST_CASE("closings: four buttons at each knee are eight, one lace for each, and a strip to each side of each",
          "[numbers][closings]") {
  const CheckedGarment c = checked(kBreeches + R"(edges: { knee slit: { length: 4 in }, pocket flap: { length: 5 in } }
closures:
  - { closure: knees, edge: knee slit, fasten: buttons, with: buttons, number: 4, backed with: wool, guard: { width: 1 in, from: wool }, compare with: [snaps] }
  - { closure: flaps, edge: pocket flap, fasten: buttons, with: buttons, number: 1, closings: 3 }
  - { closure: garter, length: 6 in, fasten: lacing, with: garters, number: 3, closings: 2, gap: 0 in, meets: edge to edge }
plackets: [{ placket: knee, edge: knee slit, length: 4 in, finish: continuous lap }]
)");
  CHECK(c.project.edge("knee slit")->number == 2);
  CHECK(figure_count(c, "closures/knees/count") == 4);
  CHECK(figure_count(c, "closures/knees/in all") == 8);
  CHECK(figure_count(c, "closures/flaps/in all") == 3);
  CHECK(figure_count(c, "notions/buttons/fasteners needed") == 11);
  CHECK(figure_count(c, "closures/knees/compare snaps/places") == 6);  // three in 3 1/2 in, on both knees
  CHECK(figure_length(c, "notions/garters/lace needed") == figure_length(c, "closures/garter/lace length") * 2);
  CHECK(figure_count(c, "pieces/knees guard/wool/copies") == 2);
  CHECK(figure_count(c, "pieces/knees backing/wool/copies") == 4);
  CHECK(figure_count(c, "pieces/knee placket strip/wool/copies") == 2);
}

TEST_CASE("bones: one to each seam that the channel is on", "[numbers]") {
  const CheckedGarment c = checked(R"(bone stock: { cane: { kind: cane, sold as: [1 yd] } }
seams: { dart: { length: 9 in, number: 4 } }
bones: [{ channel: dart, on seam: dart, length: 8 in, stock: cane }, { channel: front, length: 10 in, stock: cane }]
)");
  CHECK(figure_count(c, "bones/dart/number") == 4);
  CHECK(figure_count(c, "bone stock/cane/bones") == 5);
}

TEST_CASE("hem round: all pieces of the skirt's round, a written one first", "[numbers][hem]") {
  const std::string gores = kPlainWool + R"(notions: { braid: { kind: braid } }
pieces:
  - { piece: front gore, part of: skirt, on fold: yes, from: [wool], finished width: 24 in, finished length: 40 in }
  - { piece: side gore, part of: skirt, make: pair, from: [wool], finished width: 26 in, finished length: 40 in }
  - { piece: back breadth, part of: skirt, make: 1, from: [wool], cut width: full, finished length: 40 in }
rounds: { whole: { of: [front gore, side gore, back breadth], finished: 28 in } }
)";
  const CheckedGarment c = checked(gores + "skirt: { kind: gored, hem: { depth: 3 in, braid: braid } }\n");
  CHECK(figure_length(c, "skirt/hem round") == whole_in(24 + 52 + 55));
  CHECK(figure_length(c, "notions/braid/braid needed") == whole_in(133));
  const CheckedGarment written =
      checked(gores + "skirt: { kind: gored, hem round: 140 in, hem: { depth: 3 in, braid: braid, stiffened with: wool } }\n");
  CHECK(figure_length(written, "notions/braid/braid needed") == whole_in(142));
  CHECK(figure_count(written, "pieces/hem stiffening/wool/copies") == 3);  // 140 / 55
}

TEST_CASE("layers: a hem's facing is no layer of the waist; a corset's lining is longer where it says so", "[numbers][waist]") {
  const std::string skirt =
      kPlainWool + R"(pieces: [{ piece: breadth, part of: skirt, make: 3, from: [wool], cut width: full, finished length: 40 in }]
pleats: [{ run: waist, of: [breadth], kind: cartridge, finished: 28 in, flat: 103 in, plus: 3 in, stitch: 1/2 in }]
rounds: { whole: { of: [breadth], runs: [waist], finished: 28 in } }
)";
  const CheckedGarment c = checked(skirt + "skirt: { kind: straight breadths, hem: { depth: 3 in, faced with: wool } }\n");
  CHECK(figure_length(c, "pleats/waist/closes to") == Length::mm(100));  // 100 ridges of 0.5 mm up and down
  CHECK(figure_length(c, "pleats/waist/plus") == whole_in(3));
  CHECK(figure_length(c, "pieces/breadth/wool/cut length") == whole_in(41));  // a faced hem takes a seam
  CHECK(c.worked.figures.find("pleats/waist/quarter 1/flat")->working->result == "28 in");
  CHECK(c.worked.figures.find("pleats/waist/quarter 1/flat")->working->numbers == "3 in + 100 in × 1 / 4");

  const CheckedGarment stays = checked(
      "cloths: { drill: { kind: cotton drill, width: 56 in, shrinks: 0 % }, lawn: { kind: cotton lawn, used as: lining, width: 45 in, shrinks: 0 % } }\n"
      "pieces: [{ piece: stays front, make: pair, from: [drill, lawn], finished width: 9 in, finished length: 12 in, lining longer by: 1/2 in }]\n");
  CHECK(figure_length(stays, "pieces/stays front/lawn/cut length") == whole_in(13, 32));
  CHECK(figure_length(stays, "pieces/stays front/drill/cut length") == whole_in(13));
}

TEST_CASE("piece edges: the centre of a piece on the fold has no allowance", "[edges]") {
  const CheckedGarment c = checked(kPlainWool + R"(allowances: { seam: 5/8 in }
pieces:
  - { piece: back, on fold: yes, from: [wool], finished width: 15 in, finished length: 16 in, edge allowances: { centre back: 1 in } }
  - { piece: front, make: pair, from: [wool], finished width: 10 in, finished length: 16 in, edge allowances: { centre front: 1 in } }
)");
  CHECK(figure_length(c, "pieces/back/wool/cut width") == whole_in(16, 16));
  CHECK(figure_length(c, "pieces/front/wool/cut width") == whole_in(11, 40));
}

TEST_CASE("loads: no skirt hangs from a cuff, and its weight lies on the seam of the skirt's round, not on the first round",
          "[numbers][load]") {
  const CheckedGarment c = checked(kPlainWool + R"(garment: dress
measures: { waist: 28 in, wrist: 6 in }
pieces:
  - { piece: sleeve frill, part of: sleeve, make: 2, from: [wool], finished width: 20 in, finished length: 4 in }
  - { piece: breadth, part of: skirt, make: 3, from: [wool], cut width: full, finished length: 40 in }
rounds: { frill: { of: [sleeve frill], finished: 10 in }, skirt: { of: [breadth], finished: 28 in } }
skirt: { kind: straight breadths, weighs: 4 lb }
notions: { ribbon: { kind: ribbon } }
edges: { wrist: { length: 3 in }, centre front: { length: 14 in } }
closures:
  - { closure: cuff, edge: wrist, fasten: hooks and eyes, number: 3 }
  - { closure: front, edge: centre front, fasten: hooks and eyes, number: 12 }
strain: [{ closure: cuff, goes round: wrist }, { closure: front, goes round: waist, stay: { with: ribbon, smaller by: 1/2 in } }]
)");
  CHECK(c.worked.figures.find("closures/cuff/hanging pull") == nullptr);
  const Figure* hanging = c.worked.figures.find("closures/front/hanging pull");
  REQUIRE(hanging != nullptr);
  CHECK_THAT(std::get<Force>(hanging->value).value, WithinAbs(0.2 * 4 / 28 * 6 * 4.44822, 0.001));
  CHECK(figure_length(c, "notions/ribbon/stay needed") == whole_in(32));
}
