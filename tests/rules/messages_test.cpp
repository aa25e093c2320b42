// docs/diagnostics.md shows no message that the program does not give: each example of the project file's table stands, word
// for word and with its hint, at the foot of a faulty file or is raised here.
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "commands/commands.h"
#include "make_packet.h"
#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"
#include "support/scratch_folder.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::kTop;
using gownsheaf_test::slurp;

namespace {

const std::string kHead = "gownsheaf: 1\ntitle: Ferry skirt\n";
const std::string kTwill = "cloths: { brown twill: { kind: wool twill, width: 58 in, bought: [9 yd] } }\n";

struct Row {
  std::string code, severity, sentence, hint;
  friend auto operator<=>(const Row&, const Row&) = default;
};

std::vector<Row> rows_told() {
  const std::string text = slurp(kTop + "/docs/diagnostics.md");
  const std::regex pattern("\n\\| `([a-z0-9-]+)` \\| ([a-z ]+) \\| ([^\n]*?) \\| ([^\n]*?) ?\\|(?=\n)");
  std::vector<Row> rows;
  for (auto i = std::sregex_iterator(text.begin(), text.end(), pattern); i != std::sregex_iterator(); ++i)
    if ((*i)[2].str().find("error") == 0 || (*i)[2].str().find("hold") != std::string::npos || (*i)[2] == "warning" ||
        (*i)[2] == "note")
      rows.push_back({(*i)[1], (*i)[2], (*i)[3], (*i)[4]});
  return rows;
}

std::set<Row> at_the_feet() {
  std::set<Row> rows;
  const std::regex pattern("#: [0-9:]+ ([a-z]+) \\[([a-z0-9-]+)\\]: ([^\n]*)\n(?:#:    hint: ([^\n]*)\n)?");
  for (const auto& entry : fs::directory_iterator(kTop + "/tests/check")) {
    if (entry.path().extension() != ".yaml") continue;
    const std::string text = slurp(entry.path().string());
    for (auto i = std::sregex_iterator(text.begin(), text.end(), pattern); i != std::sregex_iterator(); ++i)
      rows.insert({(*i)[2], (*i)[1], (*i)[3], (*i)[4]});
  }
  return rows;
}

// Files that are no files to keep: too large, in bytes that no editor shows, or only there for one sentence.
std::vector<std::string> files_raised_here() {
  std::string acts = "work:\n  own steps:\n", many;
  for (int i = 0; i < 2100; ++i) acts += "    - { step: act " + std::to_string(i) + ", say: Do it. }\n";
  for (int i = 0; i < 100001; ++i) many += "a, ";
  const std::string breadth =
      "pieces: [{ piece: skirt breadth, part of: skirt, make: 4, from: brown twill, cut width: full, finished length: 40 in }]\n";
  return {
      kHead + "measures: { waist: 28 in } hip\n",
      kHead + "note: ]\n",
      kHead + "measures: { waist: 28\x7f in }\n",
      kHead + "note: " + std::string(70, '[') + std::string(70, ']') + "\n",
      kHead + std::string(1200, 'k') + ": 1\n",
      kHead + "measures: { taken: { over: [" + many + "a] } }\n",
      std::string("\xff\xfeg\0o\0w\0n\0", 10),
      kHead + "note: \"a \\q b\"\n",
      kHead + "measures: { waist: 2 in 3 cm }\n",
      kHead + "measures: { waist: 6 in 2 yd }\n",
      kHead + "accept: [{ code: cloth-short, because: the 花 silk will do }]\n",
      kHead + acts,
      kHead + kTwill + breadth +
          "pleats: [{ run: waist, of: skirt breadth, kind: knife, finished: 200 in, visible: 1/16 in, depth: 1/16 in }]\n",
      kHead + kTwill +
          "pieces: [{ piece: bodice front, part of: bodice, from: brown twill, make: pair, finished width: 10 in, "
          "finished length: to measure }]\n",
      kHead + kTwill +
          "pieces: [{ piece: frill, part of: skirt, from: brown twill, fills: lower run, finished length: 9 in }]\n"
          "pleats: [{ run: lower run, kind: cartridge, finished: 60 in, of: frill }]\n",
      kHead +
          "cloths:\n  slate wool: { kind: wool suiting, width: 58 in }\n"
          "  white muslin: { kind: cotton muslin, width: 45 in, used as: interlining }\n"
          "pieces: [{ piece: skirt breadth, part of: skirt, make: 3, cut width: full, from: [slate wool, white muslin], "
          "finished length: 42 in }]\n",
  };
}

// A band whose cutting is done and that grew since the older file.
std::set<Row> raised_by_comparing(const test::ScratchFolder& folder, Order order) {
  const auto band = [](const char* width) {
    return kHead + kTwill + "pieces: [{ piece: waistband, part of: band, make: 1, from: brown twill, finished width: " + width +
           ", finished length: 3 in }]\nwork: { done: [{ step: cut-pieces@brown twill }] }\n";
  };
  folder.put("older.yaml", band("28 in"));
  folder.put("project.yaml", band("30 in"));
  order.since = folder / "older.yaml";
  Diagnostics diag;
  make_packet(order, diag);
  std::set<Row> rows;
  for (const Diagnostic& d : diag.sorted())
    if (d.code == "already-cut") rows.insert({d.code, std::string(word_for(d.severity)), d.sentence, d.hint});
  REQUIRE(rows.size() == 1);
  return rows;
}

std::set<Row> raised_here() {
  const test::ScratchFolder folder;
  Order order;
  order.project_path = folder / "project.yaml";
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  std::set<Row> rows;
  for (const std::string& text : files_raised_here()) {
    folder.put("project.yaml", text);
    Diagnostics diag;
    check_only(order, diag);
    REQUIRE_FALSE(diag.in_order_found().empty());
    for (const Diagnostic& d : diag.sorted()) rows.insert({d.code, std::string(word_for(d.severity)), d.sentence, d.hint});
  }
  rows.merge(raised_by_comparing(folder, order));
  return rows;
}

// No file leads to these: the checker gives every cloth a width, and rectangles are always laid. They wait for cloth of
// unknown width and for shapes that the search cannot honour. A lay is cut short by an interrupt only: tests/commands.
const std::set<std::string> kNotFromAFile = {"not-laid", "width-unknown", "lay-cut-short"};

// The number of acts in the library is no part of the message.
std::string without_digits(const Row& row) {
  return row.code == "steps-many" ? std::regex_replace(row.sentence, std::regex("[0-9]+"), "N") : row.sentence;
}

}  // namespace

TEST_CASE("every example in docs/diagnostics.md is a message that the program gives", "[docs]") {
  const std::vector<Row> told = rows_told();
  REQUIRE(told.size() > 60);
  std::set<Row> real = at_the_feet();
  REQUIRE(real.size() > 60);
  real.merge(raised_here());
  for (const Row& row : told) {
    if (kNotFromAFile.count(row.code) == 1) continue;
    INFO(row.code << " (" << row.severity << "): " << row.sentence << " / " << row.hint);
    std::string nearest;
    bool found = false;
    for (const Row& r : real) {
      if (r.code != row.code) continue;
      nearest += "\n  " + r.severity + ": " + r.sentence + " / " + r.hint;
      found = found || (without_digits(r) == without_digits(row) && r.hint == row.hint &&
                        row.severity.find(r.severity) != std::string::npos);
    }
    INFO("given:" << nearest);
    CHECK(found);
  }
}

TEST_CASE("the severities in docs/diagnostics.md are all that are seen", "[docs]") {
  std::map<std::string, std::string> told;
  for (const Row& row : rows_told()) told[row.code] = row.severity;
  std::set<Row> real = at_the_feet();
  real.merge(raised_here());
  for (const Row& r : real) {
    CAPTURE(r.code, r.severity, r.sentence);
    REQUIRE(told.count(r.code) == 1);
    CHECK(told[r.code].find(r.severity) != std::string::npos);
  }
}

TEST_CASE("the message in README.md is given for a started petticoat whose waist lost its unit", "[docs]") {
  const test::ScratchFolder folder;
  const std::string path = folder / "petticoat.yaml";
  const char* const words[] = {"gownsheaf", "start", path.c_str(), "--garment", "petticoat"};
  REQUIRE(run_program(5, words) == 0);
  std::string text = slurp(path);
  const std::size_t at = text.find("waist: 28 in");
  REQUIRE(at != std::string::npos);
  folder.put("petticoat.yaml", text.replace(at, 12, "waist: 28"));
  Order order;
  order.project_path = path;
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  Diagnostics diag;
  const Made made = check_only(order, diag);
  REQUIRE(diag.sorted().size() == 1);
  const std::string shown = render(diag.sorted().front(), made.sources).substr((folder / "").size());
  INFO(shown);
  for (const std::string document : {"/README.md", "/docs/project-file.md"}) {
    CAPTURE(document);
    CHECK(slurp(kTop + document).find("```text\n" + shown) != std::string::npos);
  }
}
