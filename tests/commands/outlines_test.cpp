// `gownsheaf outlines`: exit codes, JSON, and the numbered sheet.
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"

namespace fs = std::filesystem;
using gownsheaf_test::in;
using gownsheaf_test::slurp;

namespace {

fs::path folder_with(const std::string& drawing) {
  const fs::path folder = gownsheaf_test::fresh_folder("commands-outlines");
  std::ofstream(folder / "pieces.svg", std::ios::binary) << drawing;
  return folder;
}

std::string page(const std::string& inside) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300mm\" height=\"200mm\" viewBox=\"0 0 300 200\">\n" + inside +
         "\n</svg>\n";
}

}  // namespace

TEST_CASE("outlines lists the outlines as JSON and draws them numbered", "[outlines]") {
  const fs::path folder = folder_with(page(
      "<rect id='front' x='10' y='20' width='50' height='80'><title>Bodice front 花</title></rect>"
      "<circle cx='150' cy='100' r='40'/><rect x='100' width='3' height='3'><title>花</title></rect><path id='grain' d='M30 30v50'/>"));
  const auto ran = in(folder, "outlines pieces.svg --sheet sheet.pdf 2>messages.txt");
  REQUIRE(ran.code == 0);
  CHECK(slurp((folder / "messages.txt").string()).empty());
  const auto json = nlohmann::json::parse(ran.out);
  REQUIRE(json["outlines"].size() == 3);
  CHECK(json["outlines"][0]["id"] == "front");
  CHECK(json["outlines"][0]["title"] == "Bodice front 花");
  CHECK(json["outlines"][0]["bbox_mm"] == nlohmann::json({10.0, 20.0, 60.0, 100.0}));
  CHECK(json["outlines"][0]["area_mm2"] == 4000.0);
  CHECK(json["outlines"][1]["pick"] == "80 x 80 mm");
  CHECK(json["open_lines"].size() == 1);
  CHECK(json["marks"][0]["kind"] == "grain");
  CHECK(json["warnings"].empty());
  REQUIRE(fs::exists(folder / "sheet.pdf"));
  const auto text = run("pdftotext -layout '" + (folder / "sheet.pdf").string() + "' - 2>/dev/null");
  CHECK(text.out.find("pieces.svg#front") != std::string::npos);
  CHECK(text.out.find("pieces.svg#80 x 80 mm") != std::string::npos);
  CHECK(text.out.find("Bodice front ?") != std::string::npos);
  CHECK(text.out.find("2 closed outlines in pieces.svg. 1 more under 10 mm, not numbered.") != std::string::npos);
  const auto again = in(folder, "outlines pieces.svg --sheet again.pdf 2>/dev/null");
  CHECK(again.out == ran.out);
  CHECK(slurp((folder / "again.pdf").string()) == slurp((folder / "sheet.pdf").string()));
}

TEST_CASE("a drawing without a usable outline exits with 1, says why, and writes nothing", "[outlines]") {
  for (const std::string inside : {"<path d='M0 0h40'/>", "<rect width='3' height='3'/>", "<path d='M0 0h40"}) {
    CAPTURE(inside);
    const fs::path folder = folder_with(page(inside));
    const auto ran = in(folder, "outlines pieces.svg --sheet sheet.pdf 2>messages.txt");
    CHECK(ran.code == 1);
    CHECK(ran.out.empty());
    CHECK(slurp((folder / "messages.txt").string()).find("pieces.svg") != std::string::npos);
    CHECK_FALSE(fs::exists(folder / "sheet.pdf"));
  }
  const fs::path folder = folder_with("");
  CHECK(in(folder, "outlines nowhere.svg 2>/dev/null").code == 3);
  CHECK(in(folder, "outlines 2>/dev/null").code == 2);
}
