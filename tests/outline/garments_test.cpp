// Garments from outside: panel templates of M. Korosteleva and S.-H. Lee, Generating Datasets of 3D Garments with Sewing
// Patterns (NeurIPS 2021), with sizes and areas of the true curves worked out from the templates. Passed over when not there.
#include <cmath>
#include <filesystem>
#include <sstream>

#include "outline/outline.h"
#include "support/catch.h"
#include "support/golden.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::slurp;

TEST_CASE("every panel of the published garments has its width, height and area", "[garments]") {
  const std::string folder = std::string(GOWNSHEAF_SOURCE_DIR) + "/../shared/data/outlines/";
  if (!fs::exists(folder + "README.md")) return;
  std::istringstream told(slurp(folder + "README.md"));
  std::optional<SvgDrawing> drawing;
  std::size_t next = 0;
  int panels = 0;
  for (std::string line; std::getline(told, line);) {
    if (line.rfind("### ", 0) == 0) {
      const std::string name = line.substr(4, line.find(':') - 4);
      if (name.find(".svg") == std::string::npos) continue;
      Diagnostics diag;
      drawing = read_svg(slurp(folder + name), name, diag);
      REQUIRE(drawing.has_value());
      CHECK(diag.in_order_found().empty());
      next = 0;
    }
    if (line.rfind("| ", 0) != 0 || line.rfind("| id", 0) == 0 || !drawing) continue;
    std::vector<std::string> cells;
    std::istringstream row(line.substr(2));
    for (std::string cell; std::getline(row, cell, '|');)
      cells.push_back(cell.substr(cell.find_first_not_of(' '), cell.find_last_not_of(' ') - cell.find_first_not_of(' ') + 1));
    REQUIRE(next < drawing->outlines.size());
    const DrawnOutline& seen = drawing->outlines[next++];
    CAPTURE(line, seen.area_mm2);
    CHECK(seen.drawn.id == cells[0]);
    CHECK(seen.title == cells[1]);
    CHECK(std::fabs(seen.box.width.in_mm() - std::stod(cells[2])) < 0.006);
    CHECK(std::fabs(seen.box.height.in_mm() - std::stod(cells[3])) < 0.006);
    CHECK(std::fabs(seen.area_mm2 - std::stod(cells[4])) < 0.002 * (seen.box.width.in_mm() + seen.box.height.in_mm()) * 2);
    ++panels;
  }
  CHECK(panels == 33);
}
