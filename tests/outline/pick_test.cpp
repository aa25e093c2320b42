// One piece out of a drawing: by id, by layer, by size; mended or refused; its marks and its scale.
#include "outline/pick.h"

#include "outline/drawings.h"
#include "support/polygons.h"

using namespace gownsheaf;
using drawings::whole;
using polygons::mm;

namespace {

struct Picked {
  std::optional<PickedOutline> piece;
  std::vector<Diagnostic> said;
  std::string codes;
};

Picked pick(const drawings::Read& r, const std::string& which, std::optional<Length> square = {}) {
  Diagnostics diag;
  Picked p;
  p.piece = pick_outline(*r.drawing, {which, {"skirt.yaml", 7, 3, 5}, square}, diag);
  p.said = diag.sorted();
  for (const Diagnostic& d : p.said) p.codes += (p.codes.empty() ? "" : " ") + d.code;
  return p;
}

}  // namespace

TEST_CASE("by id, by layer, by use and by size", "[pick]") {
  const auto r = whole(
      "<g id='fronts'><rect id='front' x='10' y='10' width='50' height='80'/></g>"
      "<defs><rect id='cuff' width='20' height='30'/></defs><use id='left' href='#cuff' x='100'/><use id='right' href='#cuff' x='150' y='20'/>"
      "<rect x='200' width='40' height='25.6'/><rect x='250' y='50' width='40' height='25.6'/>");
  CHECK(pick(r, "front").piece->edge == mm({{0, 0}, {50, 0}, {50, 80}, {0, 80}}));
  CHECK(pick(r, "front").piece->title == "front");
  CHECK(pick(r, "fronts").piece->edge == pick(r, "front").piece->edge);
  CHECK(pick(r, "left").piece->edge == mm({{0, 0}, {20, 0}, {20, 30}, {0, 30}}));
  CHECK(pick(r, "50 x 80 mm").piece.has_value());
  CHECK(pick(r, "5 x 8 cm").piece.has_value());
  CHECK(pick(r, "2 of 40 x 26 mm").piece.has_value());
  CHECK(pick(r, "3 of 40 x 26 mm").codes == "outline-unknown");
  CHECK(pick(r, "40 x 26 mm").codes == "outline-several");
  CHECK(pick(r, "cuff").codes == "outline-several");
  const Picked wrong = pick(r, "frnt");
  REQUIRE(wrong.codes == "outline-unknown");
  CHECK(wrong.said[0].hint == "did you mean `front`?");
  CHECK(wrong.said[0].at.line == 7);
}

TEST_CASE("what is told to pick each outline picks that outline", "[pick]") {
  const auto r = whole(
      "<rect id='front' width='50' height='80'/><rect id='twice' x='60' width='10' height='10'/><rect id='twice' x='80' width='30' height='10'/>"
      "<rect x='200' width='40' height='25'/><rect x='250' y='50' width='40' height='25'/><circle cx='150' cy='150' r='7.25'/>");
  REQUIRE(r.drawing->outlines.size() == 6);
  for (std::size_t i = 0; i < 6; ++i) {
    const std::string words = pick_words(*r.drawing, i);
    CAPTURE(i, words);
    const Picked p = pick(r, words);
    REQUIRE(p.piece);
    CHECK(p.piece->drawn_at == r.drawing->outlines[i].drawn.at);
  }
  CHECK(pick_words(*r.drawing, 4) == "2 of 40 x 25 mm");
}

TEST_CASE("mended where the meaning is plain", "[pick]") {
  const auto r = whole(
      "<path id='loop' d='M10 150H60V200H12L12 198 8 202V200H10Z'/>"
      "<path id='nearly' d='M50 100H100V150H50V100.05'/>"
      "<g id='sides'><path d='M200 0H250'/><path d='M250 40V0'/><path d='M250 40.2H200'/><path d='M200 40V0'/></g>"
      "<g id='twin'><rect width='20' height='20'/><rect width='20' height='20'/></g>"
      "<g id='lined'><rect id='seam' x='105' y='105' width='30' height='30'/><rect id='cut' x='100' y='100' width='40' height='40'/></g>"
      "<path id='window' d='M150 100h50v50h-50zM160 110v20h20v-20z'/>");
  const Picked loop = pick(r, "loop");
  CHECK(loop.codes == "outline-loop");
  CHECK(loop.piece->edge.size() >= 4);
  CHECK(pick(r, "nearly").codes == "outline-closed");
  const Picked sides = pick(r, "sides");
  CHECK(sides.codes == "outline-closed");
  REQUIRE(sides.piece);
  CHECK(bounds(sides.piece->edge).width == Length::mm(50));
  CHECK(pick(r, "twin").codes == "outline-doubled");
  CHECK(pick(r, "lined").codes == "outline-outermost");
  CHECK(bounds(pick(r, "lined").piece->edge).width == Length::mm(40));
  CHECK(bounds(pick(r, "seam").piece->edge).width == Length::mm(30));
  CHECK(pick(r, "window").piece->holes.size() == 1);
}

TEST_CASE("refused where it is not plain, with the place", "[pick]") {
  const auto r = whole(
      "<path id='bow' d='M10 10L60 60V10L10 60Z'/><path id='open' d='M50 20H100V70H50'/>"
      "<path id='parts' d='M120 80h20v20h-20zM160 80h20v20h-20z'/><rect id='speck' x='200' width='4' height='4'/>");
  const Picked bow = pick(r, "bow");
  REQUIRE(bow.codes == "outline-crosses");
  CHECK(bow.said[0].sentence == "`bow` crosses itself at (35, 35) mm of the page, and neither part is plainly the piece.");
  const Picked open = pick(r, "open");
  REQUIRE(open.codes == "outline-open");
  CHECK(open.said[0].sentence == "`open` stays open between (50, 70) and (50, 20) mm of the page (pieces.svg, line 2).");
  CHECK(pick(r, "parts").codes == "outline-parts");
  CHECK(pick(r, "speck").codes == "outline-tiny");
}

TEST_CASE("marks by id, class and layer go with the piece they lie in; the name gives the title", "[pick]") {
  const auto r = whole(
      "<rect id='p1' x='10' y='10' width='80' height='100'/><rect id='p2' x='120' y='10' width='80' height='100'/>"
      "<path id='grain-1' d='M50 20V100'/><path class='stroke grain' d='M160 20V100'/>"
      "<g id='Notches'/><g id='notch'><path d='M10 50l3 3'/><path d='M200 60l-3 3v-6z'/></g>"
      "<path id='dart' d='M40 10l5 30 5-30'/><path id='fold' d='M120 10v100'/><path class='join' d='M15 90h70'/>"
      "<text class='name' x='130' y='60'>Back <tspan>of bodice</tspan></text><text x='1' y='1'>Sheet 1</text>");
  REQUIRE(r.drawing->outlines.size() == 2);
  CHECK(r.drawing->open_lines.size() == 6);
  const Picked front = pick(r, "p1"), back = pick(r, "p2");
  const auto kinds = [](const Picked& p) {
    std::string out;
    for (const PickedMark& m : p.piece->marks) out += std::string(word_for(m.kind)) + " ";
    return out;
  };
  CHECK(kinds(front) == "grain notch dart join ");
  CHECK(kinds(back) == "grain notch fold name ");
  CHECK(front.piece->marks[0].points == mm({{40, 10}, {40, 90}}));
  CHECK(back.piece->title == "Back of bodice");
  CHECK(r.codes().count("text-ignored") == 1);
}

TEST_CASE("the test square mends the scale", "[pick]") {
  const auto r = whole(
      "<rect id='front' x='10' y='10' width='99.88' height='49.94'/><rect id='test-square' x='200' width='49.94' height='49.94'/>");
  REQUIRE(r.drawing->outlines.size() == 1);
  const Picked mended = pick(r, "front", Length::tenth_mm(499) + Length::ticks(115));  // 49.94 mm
  const Box box = bounds(mended.piece->edge);
  CHECK(std::abs((box.width - Length::mm(100)).in_ticks()) <= 2);
  CHECK(std::abs((box.height - Length::mm(50)).in_ticks()) <= 2);
  Diagnostics diag;
  note_test_square(*r.drawing, diag);
  REQUIRE(diag.sorted().size() == 1);
  CHECK(diag.sorted()[0].hint == "`square measures: 49.94 mm` beside the outline mends the scale");
  const auto inches = whole("<rect id='test-square-4in' width='101.6' height='101.6'/>");
  Diagnostics none;
  note_test_square(*inches.drawing, none);
  CHECK(none.sorted().empty());
}
