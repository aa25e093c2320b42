// Drawings as editors, converters, broken downloads and ill will make them, with what a right reader finds: a set made for
// this project whose expected values were worked out apart from this reader. Passed over when the set is not there.
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "outline/outline.h"
#include "support/catch.h"
#include "support/golden.h"
#include "support/polygons.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::slurp;
using Json = nlohmann::json;

namespace {

const fs::path kSet = fs::path(GOWNSHEAF_SOURCE_DIR) / "../shared/data/outlines";

void check_box(const Box& box, const Json& wanted, double within) {
  const double seen[] = {box.x.in_mm(), box.y.in_mm(), box.right().in_mm(), box.bottom().in_mm()};
  for (std::size_t i = 0; i < 4; ++i) {
    CAPTURE(i, seen[i], wanted[i].get<double>());
    CHECK(std::fabs(seen[i] - wanted[i].get<double>()) <= within);
  }
}

void check_file(const Json& wanted) {
  const std::string name = wanted["file"];
  CAPTURE(name);
  Diagnostics diag;
  const std::optional<SvgDrawing> drawing = read_svg(slurp((kSet / "odd" / name).string()), name, diag);
  std::set<std::string> codes;
  for (const Diagnostic& d : diag.sorted()) codes.insert(d.code);
  if (wanted["outcome"] == "error") {
    // Our words for the kinds of the set.
    const std::map<std::string, std::string> ours = {
        {"not-xml", "not-xml"},     {"entities", "drawing-entity"},   {"path-syntax", "path-syntax"}, {"not-svg", "not-svg"},
        {"empty", "drawing-empty"}, {"compressed", "drawing-packed"}, {"too-many", "drawing-heavy"}};
    CHECK_FALSE(drawing.has_value());
    bool right = false;
    for (const Json& kind : wanted["error_any_of"]) right = right || codes.count(ours.at(kind)) == 1;
    CHECK(right);
    return;
  }
  REQUIRE(drawing.has_value());
  CHECK_FALSE(diag.has_errors());
  for (const Json& warning : wanted["warnings"]) {
    CAPTURE(warning.get<std::string>());
    CHECK(codes.count(warning) == 1);
  }
  REQUIRE(drawing->outlines.size() == wanted["count"]);
  const double within = wanted["tol_mm"];
  for (std::size_t i = 0; i < drawing->outlines.size(); ++i) {
    const DrawnOutline& seen = drawing->outlines[i];
    const Json& told = wanted["outlines"][i];
    CAPTURE(seen.drawn.id);
    CHECK(seen.drawn.id == told["id"]);
    CHECK(seen.lines.size() == told["rings"]);
    CHECK(seen.drawn.at.line > 0);
    check_box(seen.box, told["bbox_mm"], within);
    const double area_seen = seen.area_mm2, area_told = told["area_mm2"];
    CHECK(std::fabs(area_seen - polygons::mm2(area(seen.region))) <
          0.001 * seen.box.width.in_mm() + 0.001 * seen.box.height.in_mm());
    CAPTURE(area_seen, area_told);
    CHECK(std::fabs(area_seen - area_told) <= told["tol_area_mm2"].get<double>());
  }
  REQUIRE(drawing->open_lines.size() == wanted["open_count"]);
  for (std::size_t i = 0; i < drawing->open_lines.size(); ++i) {
    CHECK(drawing->open_lines[i].drawn.id == wanted["open_lines"][i]["id"]);
    check_box(bounds(drawing->open_lines[i].points), wanted["open_lines"][i]["bbox_mm"], within);
  }
}

}  // namespace

TEST_CASE("every odd drawing gives the outlines or the error that are expected", "[odd]") {
  if (!fs::exists(kSet / "odd" / "expected.json")) return;
  const Json expected = Json::parse(slurp((kSet / "odd" / "expected.json").string()));
  REQUIRE(expected["files"].size() == 28);
  for (const Json& file : expected["files"]) check_file(file);
}
