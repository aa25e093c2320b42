// The program as its user meets it: exit codes, what it writes and what it leaves alone.
#include <filesystem>
#include <fstream>

#include "support/catch.h"
#include "support/golden.h"
#include "support/run.h"

namespace fs = std::filesystem;
using gownsheaf_test::run;
using gownsheaf_test::slurp;

namespace {

const std::string kTop = GOWNSHEAF_SOURCE_DIR;
const std::string kProgram = "'" + std::string(GOWNSHEAF_BINARY_DIR) + "/gownsheaf'";

fs::path fresh_folder(const std::string& name) {
  const fs::path folder = fs::path(GOWNSHEAF_BINARY_DIR) / "tests" / ("commands-" + name);
  fs::remove_all(folder);
  fs::create_directories(folder);
  return folder;
}

gownsheaf_test::Ran in(const fs::path& folder, const std::string& arguments) {
  return run("cd '" + folder.string() + "' && " + kProgram + " " + arguments + " 2>&1");
}

}  // namespace

TEST_CASE("start writes a project for each garment that checks without errors and makes a packet", "[commands]") {
  const fs::path folder = fresh_folder("start");
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
  const fs::path folder = fresh_folder("start-twice");
  std::ofstream(folder / "mine.yaml") << "mine\n";
  const auto ran = in(folder, "start mine.yaml --garment skirt");
  CHECK(ran.code == 2);
  CHECK(slurp((folder / "mine.yaml").string()) == "mine\n");
}

TEST_CASE("a failed run leaves the old packet as it was and exits with 1", "[commands]") {
  const fs::path folder = fresh_folder("failed");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  REQUIRE(in(folder, "packet skirt.yaml").code == 0);
  const std::string before = slurp((folder / "skirt.pdf").string());
  std::ofstream(folder / "skirt.yaml", std::ios::app) << "measures: {}\n";
  const auto ran = in(folder, "packet skirt.yaml");
  CHECK(ran.code == 1);
  CHECK(ran.out.find("skirt.yaml:") != std::string::npos);
  CHECK(ran.out.find("[key-twice]") != std::string::npos);
  CHECK(slurp((folder / "skirt.pdf").string()) == before);
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) == 3);  // no temporary file is left
}

TEST_CASE("wrong use exits with 2, a file that cannot be read or written with 3", "[commands]") {
  const fs::path folder = fresh_folder("codes");
  REQUIRE(in(folder, "start skirt.yaml --garment skirt").code == 0);
  CHECK(in(folder, "").code == 2);
  CHECK(in(folder, "sew skirt.yaml").code == 2);
  CHECK(in(folder, "packet skirt.yaml --paper a5").code == 2);
  CHECK(in(folder, "packet skirt.yaml --sheets group").code == 0);
  CHECK(in(folder, "packet skirt.yaml --since").code == 2);
  CHECK(in(folder, "packet skirt.yaml --since nowhere.yaml").code == 3);
  CHECK(in(folder, "packet missing.yaml").code == 3);
  CHECK(in(folder, "packet skirt.yaml -o nowhere/skirt.pdf").code == 3);
  CHECK(in(folder, "packet skirt.yaml --fonts /nowhere").code == 3);
  CHECK(in(folder, "packet skirt.yaml --templates /nowhere").code == 3);
  CHECK(in(folder, "--help").code == 0);
  for (const std::string command : {"packet", "check", "figures", "start", "schema"}) {
    const auto help = in(folder, command + " --help");
    CHECK(help.code == 0);
    CHECK(help.out.find("Example: gownsheaf " + command) != std::string::npos);
  }
}

TEST_CASE("check writes nothing; figures and schema print JSON", "[commands]") {
  const fs::path folder = fresh_folder("print");
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
  const fs::path folder = fresh_folder("json");
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
