// The program as its user meets it: exit codes, what it writes and what it leaves alone.
#include <filesystem>
#include <fstream>

#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"

namespace fs = std::filesystem;
using gownsheaf_test::fresh_folder;
using gownsheaf_test::in;
using gownsheaf_test::kProgram;
using gownsheaf_test::kTop;
using gownsheaf_test::run;
using gownsheaf_test::slurp;

TEST_CASE("start writes a project for each garment that checks without errors and makes a packet", "[commands]") {
  const fs::path folder = fresh_folder("commands-start");
  for (const std::string garment : {"dress", "bodice", "skirt", "petticoat"}) {
    CAPTURE(garment);
    CHECK(in(folder, "start " + garment + ".yaml --garment " + garment).code == 0);
    const auto checked = in(folder, "check " + garment + ".yaml");
    CAPTURE(checked.out);
    CHECK(checked.code == 0);
    CHECK(checked.out.find("not worked out yet") == std::string::npos);
    CHECK(in(folder, "packet " + garment + ".yaml").code == 0);
    CHECK(fs::exists(folder / (garment + ".pdf")));
    CHECK(fs::exists(folder / (garment + ".figures.json")));
  }
}

TEST_CASE("start never writes over a file", "[commands]") {
  const fs::path folder = fresh_folder("commands-start-twice");
  std::ofstream(folder / "mine.yaml") << "mine\n";
  const auto ran = in(folder, "start mine.yaml --garment skirt");
  CHECK(ran.code == 2);
  CHECK(slurp((folder / "mine.yaml").string()) == "mine\n");
}

TEST_CASE("a packet or a sheet is written over a packet, never over a project or a drawing", "[commands]") {
  const fs::path folder = fresh_folder("commands-over");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  const std::string project = slurp((folder / "skirt.yaml").string()), drawing = "<svg xmlns='http://www.w3.org/2000/svg'/>";
  std::ofstream(folder / "pieces.svg") << drawing;
  std::ofstream(folder / "empty.pdf");
  CHECK(in(folder, "packet skirt.yaml -o skirt.yaml").code == 2);
  CHECK(in(folder, "packet skirt.yaml -o pieces.svg").code == 2);
  CHECK(in(folder, "outlines pieces.svg --sheet pieces.svg").code == 2);
  CHECK(slurp((folder / "skirt.yaml").string()) == project);
  CHECK(slurp((folder / "pieces.svg").string()) == drawing);
  CHECK(in(folder, "packet skirt.yaml -o empty.pdf").code == 0);
  CHECK(in(folder, "packet skirt.yaml -o empty.pdf").code == 0);
}

TEST_CASE("a failed run leaves the old packet as it was and exits with 1", "[commands]") {
  const fs::path folder = fresh_folder("commands-failed");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  REQUIRE(in(folder, "packet skirt.yaml").code == 0);
  const std::string before = slurp((folder / "skirt.pdf").string());
  std::ofstream(folder / "skirt.yaml", std::ios::app) << "measures: {}\n";
  const auto ran = in(folder, "packet skirt.yaml");
  CHECK(ran.code == 1);
  CHECK(ran.out.find("skirt.yaml:") != std::string::npos);
  CHECK(ran.out.find("[key-twice]") != std::string::npos);
  CHECK(slurp((folder / "skirt.pdf").string()) == before);
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) ==
        4);  // project, figures, calendar, packet: no temporary file is left
}

TEST_CASE("wrong use exits with 2, a file that cannot be read or written with 3", "[commands]") {
  const fs::path folder = fresh_folder("commands-codes");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  CHECK(in(folder, "").code == 2);
  CHECK(in(folder, "sew skirt.yaml").code == 2);
  CHECK(in(folder, "packet skirt.yaml --paper a5").code == 2);
  CHECK(in(folder, "packet skirt.yaml --threads 0").code == 2);
  CHECK(in(folder, "packet skirt.yaml --sheets group").code == 0);
  CHECK(in(folder, "packet skirt.yaml --since").code == 2);
  CHECK(in(folder, "packet skirt.yaml --since nowhere.yaml").code == 3);
  CHECK(in(folder, "packet missing.yaml").code == 3);
  CHECK(in(folder, "packet skirt.yaml -o nowhere/skirt.pdf").code == 3);
  CHECK(in(folder, "packet skirt.yaml --fonts /nowhere").code == 3);
  CHECK(in(folder, "packet skirt.yaml --templates /nowhere").code == 3);
  CHECK(in(folder, "--help").code == 0);
  for (const std::string command : {"packet", "check", "figures", "start", "schema", "outlines"}) {
    const auto help = in(folder, command + " --help");
    CHECK(help.code == 0);
    CHECK(help.out.find("Example: gownsheaf " + command) != std::string::npos);
  }
}

TEST_CASE("check writes nothing; figures and schema print JSON", "[commands]") {
  const fs::path folder = fresh_folder("commands-print");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  CHECK(in(folder, "check skirt.yaml").code == 0);
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) == 1);
  const auto figures = in(folder, "figures skirt.yaml -q");
  CHECK(figures.code == 0);
  CHECK(figures.out.front() == '{');
  CHECK(figures.out.find("\"pleats/skirt top/depth\"") != std::string::npos);
  const auto schema = in(folder, "schema");
  CHECK(schema.out.front() == '{');
  CHECK(schema.out.find("finished width") != std::string::npos);
}

TEST_CASE("messages as JSON are one object a line", "[commands]") {
  const fs::path folder = fresh_folder("commands-json");
  std::ofstream(folder / "bad.yaml") << "gownsheaf: 1\ntitle: Bad\nmeasures: { waist: 28, hip: \"40 inchs\" }\n";
  const auto ran = in(folder, "check bad.yaml --log json");
  CHECK(ran.code == 1);
  std::istringstream lines(ran.out);
  int objects = 0;
  for (std::string line; std::getline(lines, line); ++objects) {
    CHECK(line.front() == '{');
    CHECK(line.back() == '}');
  }
  CHECK(objects >= 2);
  CHECK(ran.out.find("\"code\":\"unit-missing\"") != std::string::npos);
}

namespace {

const std::string kByLabel = "size: 16\n";
std::string sized_project(const std::string& size) {
  return "gownsheaf: 1\ntitle: Quay bodice\ngarment: bodice\nmeasures: { bust: 36 1/2 in }\n"
         "size table: { name: ours, sizes: [{ size: 14, bust: 36 in }, { size: 16, bust: 38 in }] }\n"
         "cloths: { twill: { kind: wool suiting, width: 58 in, bought: [3 yd] } }\n"
         "pieces:\n  - { piece: bodice front, make: pair, from: [twill], finished length: 16 in, "
         "by size: { 14: { finished width: 9 in }, 16: { finished width: 10 in } } }\n" +
         size;
}

// figures.json without what names the project's own bytes, the options, and the line where the size is written.
std::string figures_alone(const std::string& json) {
  std::istringstream lines(json);
  std::string kept;
  for (std::string line; std::getline(lines, line);) {
    const bool own = line.find("\"options\"") != std::string::npos || line.find("\"project\"") != std::string::npos ||
                     line.find("\"line\": 9") != std::string::npos;
    if (line.ends_with(",")) line.pop_back();
    if (!own) kept += line + "\n";
  }
  return kept;
}

}  // namespace

TEST_CASE("--size makes what writing the size in the file makes", "[commands]") {
  const fs::path folder = fresh_folder("commands-size");
  std::ofstream(folder / "quay.yaml") << sized_project("");
  for (const std::string size : {"16", "larger", "between", "nearest", "14"}) {
    CAPTURE(size);
    std::ofstream(folder / "written.yaml") << sized_project("size: " + size + "\n");
    const auto by_option = in(folder, "figures quay.yaml -q --size " + size);
    const auto written = in(folder, "figures written.yaml -q");
    REQUIRE(by_option.code == 0);
    REQUIRE(written.code == 0);
    CHECK(figures_alone(by_option.out) == figures_alone(written.out));
    CHECK(by_option.out.find(", size " + size) != std::string::npos);
  }
}

TEST_CASE("--size with the file's own size gives the same bytes", "[commands]") {
  const fs::path folder = fresh_folder("commands-size-same");
  std::ofstream(folder / "quay.yaml") << sized_project(kByLabel);
  REQUIRE(in(folder, "packet quay.yaml -q").code == 0);
  REQUIRE(in(folder, "packet quay.yaml -q --size 16 -o option.pdf").code == 0);
  REQUIRE(in(folder, "packet quay.yaml -q --size 14 -o other.pdf").code == 0);
  CHECK(slurp((folder / "quay.pdf").string()) == slurp((folder / "option.pdf").string()));
  CHECK(slurp((folder / "quay.figures.json").string()) == slurp((folder / "option.figures.json").string()));
  CHECK(slurp((folder / "quay.pdf").string()) != slurp((folder / "other.pdf").string()));
}

TEST_CASE("a --size that is not there exits with 1 and says what there is", "[commands]") {
  const fs::path folder = fresh_folder("commands-size-unknown");
  std::ofstream(folder / "quay.yaml") << sized_project(kByLabel);
  for (const std::string command : {"packet", "check", "figures"}) {
    CAPTURE(command);
    const auto ran = in(folder, command + " quay.yaml --size 15");
    CHECK(ran.code == 1);
    CHECK(ran.out.find("quay.yaml: error [size-unknown]: The table has no size 15; it has 14 and 16.") != std::string::npos);
    CHECK(ran.out.find("hint: `--size between`, or `--size nearest`") != std::string::npos);
  }
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) == 1);
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  const auto nothing = in(folder, "check skirt.yaml --size 14");
  CHECK(nothing.code == 1);
  CHECK(nothing.out.find("`--size 14` changes nothing: the project has no `size table`, and no piece is given `by size`.") !=
        std::string::npos);
}
