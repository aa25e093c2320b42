// Sides of an outline, their allowances, and the cut line round the published garments.
#include "outline/cut_line.h"

#include <filesystem>

#include "outline/drawings.h"
#include "support/golden.h"
#include "support/polygons.h"

using namespace gownsheaf;
using drawings::whole;
using polygons::mm;

namespace {

PickedOutline picked(const SvgDrawing& drawing, const std::string& which) {
  Diagnostics diag;
  const auto piece = pick_outline(drawing, {which, {}, {}}, diag);
  REQUIRE(piece);
  return *piece;
}

const SideWidths kWidths{Length::mm(15), Length::mm(50)};

}  // namespace

TEST_CASE("a gore has four sides, and its curved lower one gets the hem", "[cut line]") {
  const auto r = whole("<path id='gore' d='M100 10H140L190 150Q120 170 50 150Z'/>");
  const PickedOutline gore = picked(*r.drawing, "gore");
  CHECK(sides_of(gore.edge).size() == 4);
  const SideAllowances sides = side_allowances(gore, kWidths);
  CHECK(sides.hem_guessed);
  for (std::size_t i = 0; i < gore.edge.size(); ++i) {
    const Point a = gore.edge[i], b = gore.edge[(i + 1) % gore.edge.size()];
    const bool lower =
        a.y >= Length::mm(140) - Length::ticks(3) && b.y >= Length::mm(140) - Length::ticks(3);  // the box begins at y 0
    CHECK(sides.allowances.of_edges[i] == (lower ? Length::mm(50) : Length::mm(15)));
  }
  Diagnostics diag;
  const auto cut = cut_and_seam(gore, OutlineIs::seam_line, kWidths, {}, diag);
  REQUIRE(cut);
  CHECK(diag.sorted().empty());
  CHECK(bounds(cut->cut).y == Length::mm(-15));
  CHECK(std::abs((bounds(cut->cut).bottom() - (bounds(gore.edge).bottom() + Length::mm(50))).in_ticks()) <=
        40);  // chords: 0.005 mm
}

TEST_CASE("drawn hem and fold lines say which edges they are", "[cut line]") {
  const auto r = whole(
      "<rect id='p' x='10' y='10' width='80' height='100'/><path class='fold' d='M10 10V110'/><path id='hem' d='M10 10H90'/>");
  const PickedOutline piece = picked(*r.drawing, "p");
  const SideAllowances sides = side_allowances(piece, kWidths);
  CHECK_FALSE(sides.hem_guessed);
  Diagnostics diag;
  CHECK(cut_and_seam(piece, OutlineIs::seam_line, kWidths, {}, diag)->cut == mm({{0, -50}, {95, -50}, {95, 115}, {0, 115}}));
  const auto within = cut_and_seam(piece, OutlineIs::cut_line, kWidths, {}, diag);
  CHECK(within->seam == std::vector<Polygon>{mm({{0, 50}, {65, 50}, {65, 85}, {0, 85}})});
  CHECK(diag.sorted().empty());
}

TEST_CASE("allowances that meet are told", "[cut line]") {
  const auto r = whole(
      "<rect id='strap' width='200' height='25'/><path id='bell' d='M0 0h60v25h40v-25h60v60h-60v-25h-40v25h-60z' transform='translate(0 50)'/>");
  Diagnostics diag;
  CHECK_FALSE(cut_and_seam(picked(*r.drawing, "strap"), OutlineIs::cut_line, {Length::mm(15), Length::mm(15)}, {}, diag));
  CHECK(diag.sorted()[0].code == "allowances-meet");
  Diagnostics parts;
  CHECK(cut_and_seam(picked(*r.drawing, "bell"), OutlineIs::cut_line, {Length::mm(10), Length::mm(10)}, {}, parts)->seam.size() ==
        2);
  CHECK(parts.sorted()[0].code == "seam-in-parts");
}

TEST_CASE("every published panel lies within its cut line, which comes back to it", "[cut line][garments]") {
  const std::string folder = std::string(GOWNSHEAF_SOURCE_DIR) + "/../shared/data/outlines/";
  if (!std::filesystem::exists(folder + "README.md")) return;
  int panels = 0;
  for (const std::string name : {"dress-long-sleeves.svg", "jacket-open-front.svg", "shirt-short-sleeves.svg",
                                 "skirt-eight-gores.svg", "trousers-flared.svg"}) {
    Diagnostics diag;
    const auto drawing = read_svg(gownsheaf_test::slurp(folder + name), name, diag);
    REQUIRE(drawing);
    for (std::size_t i = 0; i < drawing->outlines.size(); ++i, ++panels) {
      const PickedOutline piece = picked(*drawing, pick_words(*drawing, i));
      CAPTURE(name, piece.title);
      const auto cut = cut_and_seam(piece, OutlineIs::seam_line, kWidths, {}, diag);
      REQUIRE(cut);
      const Region region{{cut->cut}};
      for (const Point& p : piece.edge) REQUIRE(reaches(region, p, kAllowanceShift));
      // By the isoperimetric sum of Steiner for an even allowance: area + perimeter x d <= cut <= that + the corners' squares.
      const auto even = with_allowances(piece.edge, {std::vector<Length>(piece.edge.size(), Length::mm(15)), 2.0});
      double round = 0;
      for (std::size_t k = 0; k < piece.edge.size(); ++k)
        round += distance_mm(piece.edge[k], piece.edge[(k + 1) % piece.edge.size()], piece.edge[(k + 1) % piece.edge.size()]);
      const double added = (area(*even) - area(piece.edge)).in_square_metres() * 1e6;
      CHECK(added > round * 15 * 0.97);  // inner corners overlap
      CHECK(added < round * 15 + static_cast<double>(sides_of(piece.edge).size() + 4) * 15 * 15 * 2);
    }
  }
  CHECK(panels == 33);
}
