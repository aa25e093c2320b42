// --since as its user meets it: the story of a waist that grew, what is named, what goes back, and files that are refused.
#include <filesystem>
#include <fstream>
#include <string>

#include "support/catch.h"
#include "support/golden.h"
#include "support/pdf_tools.h"
#include "support/program.h"

namespace fs = std::filesystem;
using gownsheaf_test::fresh_folder;
using gownsheaf_test::in;
using gownsheaf_test::slurp;

namespace {

void write(const fs::path& path, const std::string& text) { std::ofstream(path, std::ios::binary | std::ios::trunc) << text; }

// A wool skirt for the winter market on the ice: band and knife pleats go by the waist, the breadths do not.
std::string skirt(int waist) {
  const std::string w = std::to_string(waist), band = std::to_string(waist + 1);
  return "gownsheaf: 1\n"
         "title: Wool skirt for the winter market\n"
         "garment: skirt\n"
         "measures: { waist: " +
         w +
         " in, hip: 40 in }\n"
         "cloths: { grey wool: { kind: wool suiting, width: 58 in, shrinks: 0 %, bought: [6 yd] } }\n"
         "pieces:\n"
         "  - { piece: skirt breadth, part of: skirt, make: 3, from: [grey wool], cut width: full, finished length: 40 in, hem: 3 in, top: 1 in, seam allowance: 1/2 in }\n"
         "  - { piece: waistband, part of: band, make: 1, from: [grey wool], finished width: " +
         band +
         " in, finished length: 3 in, seam allowance: 1/2 in }\n"
         "pleats:\n"
         "  - { run: skirt top, of: [skirt breadth], kind: knife, toward: centre back, finished: " +
         w +
         " in, count: 20 }\n"
         "work: { done: [{ step: cut-breadths@grey wool }, { step: cut-pieces@grey wool }] }\n"
         "print: { paper: letter }\n";
}

// The sheet "What changed" as one line of words.
std::string sheet_of(const fs::path& pdf) {
  const std::string all = gownsheaf::testing::run("pdftotext -raw '" + pdf.string() + "' -").out;
  std::string words;
  for (const char c : all) {
    const bool space = c == ' ' || c == '\n' || c == '\f' || c == '\r';
    if (space && !words.empty() && words.back() == ' ') continue;
    words += space ? ' ' : c;
  }
  const auto from = words.find("What changed "), to = words.find("On the other sheets a bar");
  std::string sheet =
      from == std::string::npos || to == std::string::npos ? words.substr(0, 4000) : words.substr(from, to - from);
  // Where it runs on to a second page the packet's own mark stands between.
  for (std::size_t at = 0; (at = sheet.find(", packet ", at)) != std::string::npos;) sheet.erase(at, 13);
  return sheet;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("story: packet, waist two inches more, the sheet names what changes, and back to the old bytes", "[since]") {
  const fs::path folder = fresh_folder("since-story");
  write(folder / "old.yaml", skirt(28));
  REQUIRE(in(folder, "packet old.yaml -o first.pdf").code == 0);

  write(folder / "skirt.yaml", skirt(30));
  const auto grown = in(folder, "packet skirt.yaml --since old.yaml -o grown.pdf");
  INFO(grown.out);
  REQUIRE(grown.code == 0);
  const std::string sheet = sheet_of(folder / "grown.pdf");
  CAPTURE(sheet);
  // Band 29 + 2 x 1/2 = 30 in cut, now 32. Twenty pleats in 28 in show 1 2/5 in each, printed 1 13/32; in 30 in 1 1/2. The
  // marks are of one half, ten pleats.
  CHECK(holds(sheet, "1 piece to cut again"));
  CHECK(holds(sheet, "10 marks to move"));
  CHECK(holds(sheet, "all else stands."));
  CHECK(holds(sheet, "Waistband is cut from grey wool, and 2 in too narrow. Add a strip at the side, or cut again."));
  CHECK(holds(sheet, "Waistband no longer serves."));
  CHECK(holds(sheet, "Waistband, grey wool cut width 32 30 in"));
  CHECK(holds(sheet, "finished 30 28 in"));
  CHECK(holds(sheet, "Measures waist 30 28 in"));
  CHECK_FALSE(holds(sheet, "Skirt breadth, grey wool"));  // breadths do not go by the waist
  CHECK_FALSE(holds(sheet, "hip"));
  CHECK(holds(gownsheaf::testing::run("pdftotext -raw '" + (folder / "grown.pdf").string() + "' -").out, "HOLD waistband"));

  // On the wall only what is to be done.
  REQUIRE(in(folder, "packet skirt.yaml --since old.yaml --sheets pin-up -o wall.pdf").code == 0);
  const std::string wall = sheet_of(folder / "wall.pdf");
  CHECK(holds(sheet, "Nothing to do for these"));
  CHECK_FALSE(holds(wall, "Nothing to do for these"));
  CHECK(holds(wall, "Waistband, grey wool cut width 32 30 in"));
  CHECK_FALSE(holds(wall, "Measures waist"));

  // Its figures serve as well as the project.
  const auto by_figures = in(folder, "packet skirt.yaml --since first.figures.json -o same.pdf");
  REQUIRE(by_figures.code == 0);
  CHECK(sheet_of(folder / "same.pdf") == sheet);

  // The old file again, without --since: the old bytes.
  write(folder / "skirt.yaml", skirt(28));
  REQUIRE(in(folder, "packet skirt.yaml -o again.pdf").code == 0);
  CHECK(slurp((folder / "again.pdf").string()) == slurp((folder / "first.pdf").string()));
  CHECK(slurp((folder / "again.figures.json").string()) == slurp((folder / "first.figures.json").string()));
}

TEST_CASE("the same file has no change, and its sheet is one sentence", "[since]") {
  const fs::path folder = fresh_folder("since-same");
  write(folder / "skirt.yaml", skirt(28));
  REQUIRE(in(folder, "packet skirt.yaml --since skirt.yaml").code == 0);
  const std::string text = gownsheaf::testing::run("pdftotext -raw '" + (folder / "skirt.pdf").string() + "' -").out;
  CHECK(holds(text, "Nothing changed."));
  CHECK_FALSE(holds(text, "a bar in the left margin"));
}

TEST_CASE("a renamed piece keeps its figures by `was`", "[since]") {
  const fs::path folder = fresh_folder("since-was");
  write(folder / "old.yaml", skirt(28));
  std::string renamed = skirt(28);
  renamed.replace(renamed.find("{ piece: waistband,"), 19, "{ piece: belt, was: waistband,");
  write(folder / "skirt.yaml", renamed);
  REQUIRE(in(folder, "packet skirt.yaml --since old.yaml").code == 0);
  const std::string text = gownsheaf::testing::run("pdftotext -raw '" + (folder / "skirt.pdf").string() + "' -").out;
  CHECK(holds(text, "Nothing changed."));
}

TEST_CASE("already-cut can be decided, and is not missed when nothing is compared", "[since]") {
  const fs::path folder = fresh_folder("since-decided");
  write(folder / "old.yaml", skirt(28));
  write(folder / "skirt.yaml",
        skirt(30) + "accept: [{ code: already-cut, at: waistband, because: \"a strip was let in at the back\" }]\n");
  REQUIRE(in(folder, "packet skirt.yaml --since old.yaml").code == 0);
  const std::string sheet = sheet_of(folder / "skirt.pdf");
  CAPTURE(sheet);
  CHECK(holds(sheet, "Decided, because a strip was let in at the back."));
  const auto without = in(folder, "packet skirt.yaml");
  CHECK(without.code == 0);
  CHECK_FALSE(holds(without.out, "accept-unused"));
}

TEST_CASE("what --since cannot read is said in a sentence, with its exit code, and nothing is written", "[since]") {
  const fs::path folder = fresh_folder("since-faulty");
  write(folder / "skirt.yaml", skirt(30));
  const std::string takes = " `--since` takes an older project file, or the figures.json that was made beside its packet.\n";
  const auto refused = [&](const std::string& name, const std::string& bytes, int code, const std::string& sentence) {
    CAPTURE(name);
    write(folder / name, bytes);
    const auto ran = in(folder, "packet skirt.yaml --since " + name);
    CHECK(ran.code == code);
    CHECK(ran.out == sentence);
    CHECK_FALSE(fs::exists(folder / "skirt.pdf"));
  };
  refused("old.json", "{", 3, "gownsheaf: old.json is no JSON that can be read." + takes);
  refused("empty.json", "", 3, "gownsheaf: empty.json is no JSON that can be read." + takes);
  refused("other", "{\"songs\": 3}", 3, "gownsheaf: other is JSON, but holds no figures of a packet." + takes);
  refused(
      "later.json", "{\"format\": \"gownsheaf figures 9\"}", 3,
      "gownsheaf: later.json is of another format (`gownsheaf figures 9`); this program reads `gownsheaf figures 1`. Give `--since` the older "
      "project file instead.\n");
  refused(
      "letters.json",
      "{\"format\": \"gownsheaf figures 1\", \"figures\": [{\"key\": \"pieces/\xE8\x8A\xB1/wool/copies\", \"formula\": \"\", \"action\": "
      "\"recut\", \"value\": {\"type\": \"count\", \"value\": 1}}]}",
      3, "gownsheaf: letters.json holds the letter \xE8\x8A\xB1, which no font here has.\n");
  std::string bad = skirt(28);
  bad.replace(bad.find("hip: 40 in"), 10, "hip: 40");
  refused(
      "bad.yaml", bad, 1,
      "bad.yaml:4:32: error [unit-missing]: `hip: 40` has no unit.\n    measures: { waist: 28 in, hip: 40 }\n                                   ^^\n"
      "    hint: `40 in` or `40 cm`\n");
  CHECK(in(folder, "packet skirt.yaml --since nowhere.yaml").code == 3);
}
