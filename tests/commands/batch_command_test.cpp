// The commands of the service as an operator meets them: exit codes, and lines for programs.
#include <filesystem>
#include <fstream>

#include <nlohmann/json.hpp>

#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"

namespace fs = std::filesystem;
using gownsheaf_test::fresh_folder;
using gownsheaf_test::in;

namespace {

// What stands on each line: "state file"; "?" for a line that is no JSON.
std::string lines(const std::string& text) {
  std::string all;
  for (std::size_t at = 0, end; (end = text.find('\n', at)) != std::string::npos; at = end + 1) {
    const auto json = nlohmann::json::parse(text.substr(at, end - at), nullptr, false);
    if (json.is_discarded()) return all + "?" + text.substr(at);
    if (json.contains("sentence")) all += json.value("severity", "") + "\n";
    else if (json.contains("state")) all += json.value("state", "") + " " + json.value("project", json.value("file", "")) + "\n";
    else
      all += std::to_string(json.at("made").get<int>()) + std::to_string(json.at("current").get<int>()) +
             std::to_string(json.at("failed").get<int>()) + "\n";
  }
  return all;
}

}  // namespace

TEST_CASE("the list of packets has a line for each, and what batch.json tells of is there", "[commands]") {
  const fs::path folder = fresh_folder("commands-list");
  fs::create_directories(folder / "in/cloak");
  const auto put = [&](const std::string& name, const std::string& title, const std::string& bought, const std::string& set) {
    std::ofstream(folder / "in" / name)
        << "gownsheaf: 1\ntitle: " << title
        << "\nwearer: { name: Ada Rowan }\ncloths: { linen: { kind: dress linen, width: 140 cm, bought: [" << bought
        << "] } }\npieces: [{ piece: breadth, part of: skirt, make: 1, from: [linen], cut width: 100 cm, cut length: 95 cm }]\n"
        << "print: { sheets: " << set << " }\n";
  };
  put("a.yaml", "Alone", "3 m", "pin-up");
  put("cloak/project.yaml", "Others", "3 m", "group");
  put("s.yaml", "Scant", "0.5 m", "pin-up");
  std::ofstream(folder / "in/x.yaml") << "gownsheaf: 1\n";
  CHECK(in(folder, "batch in --out out -q").code == 1);
  const auto json = nlohmann::json::parse(gownsheaf_test::slurp((folder / "out/batch.json").string()));
  REQUIRE(json.at("projects").size() == 4);
  for (const auto& project : json.at("projects"))
    CHECK((project.at("state") == "failed") == !fs::exists(folder / "out" / project.value("packet", "none")));
  const auto text = in(folder, "--version > /dev/null; pdftotext -layout out/index.pdf - 2> /dev/null | sed 's/  */ /g'").out;
  if (text.empty()) return;  // no pdftotext here
  CAPTURE(text);
  for (const char* line : {"\na Alone A. R. linen 1.2 m\n", "\ncloak Others linen 1.2 m\n",
                           "\ns Scant A. R. linen 1.2 m 1 hold\n", "\nx failed; no", "4 projects, 1 failed."})
    CHECK(text.find(line) != std::string::npos);
}

TEST_CASE("batch says to programs what it says to people, of pruning too", "[commands]") {
  const fs::path folder = fresh_folder("commands-batch");
  fs::create_directories(folder / "in/-new\nline");
  std::ofstream(folder / "in/-new\nline/a \xFF.yaml") << "gownsheaf: 1\ntitle: A\n";
  std::ofstream(folder / "in/b.yaml") << "gownsheaf: 1\ntitle: B\nsleevs: 3\n";
  const std::string odd = "-new\nline/a \uFFFD";
  const auto first = in(folder, "batch in --out out --log json");
  CHECK(first.code == 1);
  CHECK(lines(first.out) == "made " + odd + ".yaml\nerror\nfailed b.yaml\n101\n");
  CHECK(lines(in(folder, "batch in --out out --log json -q").out) == "error\nfailed b.yaml\n011\n");
  const auto empty = in(folder, "batch in --out ''");
  CHECK(empty.code == 3);
  CHECK(in(folder, "batch in --out out --shard 1/2 --prune list").code == 2);

  fs::rename(folder / "in/-new\nline", folder / "away");
  const std::string gone = odd + ".figures.json\ngone " + odd + ".pdf\ngone -new\nline/\n";
  const auto listed = in(folder, "batch in --out out --log json --prune list");
  CHECK(listed.code == 0);
  CHECK(lines(listed.out).find("?") == std::string::npos);
  CHECK(lines(listed.out).find("gone " + gone) != std::string::npos);
  fs::rename(folder / "in", folder / "elsewhere");
  fs::create_directory(folder / "in");  // as where a disk is not there
  CHECK(in(folder, "batch in --out out --prune remove").code == 3);
  CHECK(fs::exists(folder / "out/-new\nline"));
  fs::remove(folder / "in");
  fs::rename(folder / "elsewhere", folder / "in");
  CHECK(in(folder, "batch in --out out --prune remove").code == 0);
  CHECK_FALSE(fs::exists(folder / "out/-new\nline"));
}
