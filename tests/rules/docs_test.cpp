// Documents that cannot drift: key tables, message codes, formulas and sources are compared with the code.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "check/check.h"
#include "check/key_spec.h"
#include "figures/figures.h"
#include "figures/formula_sources.h"
#include "make_packet.h"
#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::kTop;
using gownsheaf_test::slurp;

namespace {

std::set<std::string> all_matches(const std::string& text, const std::regex& pattern) {
  std::set<std::string> found;
  for (auto i = std::sregex_iterator(text.begin(), text.end(), pattern); i != std::sregex_iterator(); ++i)
    found.insert((*i)[1].str());
  return found;
}

std::string all_of(const std::string& folder, const std::set<std::string>& endings) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(kTop + "/" + folder)) {
    if (endings.count(entry.path().extension().string()) == 1) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  std::string text;
  for (const fs::path& file : files) text += slurp(file.string()) + "\n";
  return text;
}

// Kebab-case words in the code that are no message codes.
const std::set<std::string> kOtherWords = {"bind-drapery",      "clip-path",
                                           "condensed-bold",    "cut-breadths",
                                           "cut-pieces",        "fill-rule",
                                           "fonts-dejavu-core", "fonts-roboto-unhinted",
                                           "join-lace",         "make-bows",
                                           "mark-pleats",       "mid-breadth",
                                           "mid-grey",          "pale-grey",
                                           "mock-up",           "pin-up",
                                           "re-mark",           "sew-breadths-by-hand",
                                           "sew-fasteners",     "sew-seams-by-hand",
                                           "test-square"};
const std::set<std::string> kOneWordCodes = {"shorthand", "braces", "stretched", "utf16"};

std::set<std::string> formula_headings() { return all_matches(slurp(kTop + "/docs/formulas.md"), std::regex("\n## ([a-z-]+)")); }

// Paths of the key table that a project file uses.
void add_used(const Entry& entry, const std::string& spot, std::set<std::string>& used) {
  for (const Entry& child : entry.children) {
    std::string path = spot.empty() ? child.key : spot + "/" + child.key;
    if (entry.kind == Entry::Kind::list || find_key(path) == nullptr) path = spot + "/*";
    used.insert(path);
    add_used(child, path, used);
  }
}

}  // namespace

TEST_CASE("the examples together use every key that is worked out", "[docs]") {
  // What one of them would have to be bent for, or what only says the same in another way.
  const std::set<std::string> not_shown = {
      "pleats/*/first takes", "strain/*/pressure",      "strain/*/band/friction",  // `takes`, `worn` and `slides on` are
      "pleats/*/flat at",     "pleats/*/flat at/waist", "pleats/*/flat at/hip",
      "pleats/*/flat at/hem",  // of gored pieces; these are straight
  };
  std::set<std::string> used;
  for (const auto& folder : fs::directory_iterator(kTop + "/examples")) {
    if (!folder.is_directory()) continue;
    Diagnostics diag;
    add_used(read_yaml(slurp((folder.path() / "project.yaml").string()), "project.yaml", diag), "", used);
  }
  REQUIRE(used.size() > 100);
  for (const KeySpec& key : key_specs()) {
    const std::string path(key.path);
    bool works = true;
    for (std::size_t cut = path.size(); works && cut != std::string::npos;
         cut = cut == 0 ? std::string::npos : path.rfind('/', cut - 1))
      if (const KeySpec* up = find_key(path.substr(0, cut))) works = up->first_needed == 1;
    if (!works || path.ends_with("*") || path.starts_with("measures/")) continue;  // no wearer needs every measure
    if (path.ends_with("/note") || path.ends_with("/was")) continue;               // of every item
    CAPTURE(path);
    CHECK((used.count(path) == 1) != (not_shown.count(path) == 1));
  }
}

TEST_CASE("the published values of the calculators are tests that say what they rest on", "[docs]") {
  const std::string rows = slurp(kTop + "/../shared/reference/check-values.md");
  if (rows.empty()) {
    WARN("the table of published values is not beside this checkout");
    return;
  }
  const std::string tests = all_of("tests", {".cpp"});
  const std::set<std::string> told_elsewhere = {"K03", "K11"};  // docs/sources.md, "Check values that are not tests, and why"
  for (const std::string& row : all_matches(rows, std::regex("\n\\| ([UYPCK][0-9][0-9]|L0[1-7]|L14|M09) \\|"))) {
    CAPTURE(row);
    CHECK((tests.find("[" + row + "]") != std::string::npos) != (told_elsewhere.count(row) == 1));
  }
}

TEST_CASE("the key tables of docs/project-file.md are the program's own", "[docs]") {
  const std::string path = kTop + "/docs/project-file.md", begin = "schema --tables` -->\n", end = "<!-- end of key tables -->";
  const std::string text = slurp(path);
  const std::size_t from = text.find(begin) + begin.size(), to = text.find(end);
  REQUIRE(to != std::string::npos);
  REQUIRE(from <= to);
  if (std::getenv("UPDATE_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << text.substr(0, from) << key_tables_markdown() << text.substr(to);
    return;
  }
  CHECK(text.substr(from, to - from) == key_tables_markdown());
}

TEST_CASE("every key that the checker knows is in the tables", "[docs]") {
  const std::string text = slurp(kTop + "/docs/project-file.md");
  REQUIRE(key_specs().size() > 300);
  for (const KeySpec& key : key_specs()) {
    const std::string path(key.path);
    const std::string last = path.substr(path.rfind('/') == std::string::npos ? 0 : path.rfind('/') + 1);
    if (last == "*") continue;
    CAPTURE(path);
    CHECK(text.find(last) != std::string::npos);
  }
}

TEST_CASE("every message code has its entry in docs/diagnostics.md, and every entry is a code", "[docs]") {
  const std::string code = all_of("src", {".cpp", ".h"});
  std::set<std::string> seen = all_matches(code, std::regex("\"([a-z]+(?:-[a-z0-9]+)+)\""));
  for (const std::string& word : kOtherWords) seen.erase(word);
  for (const std::string& word : formula_headings()) seen.erase(word);
  for (const std::string& anchor : all_matches(slurp(kTop + "/docs/sources.md"), std::regex("\n### ([a-z0-9-]+)\n")))
    seen.erase(anchor);
  for (const std::string& word : kOneWordCodes) {
    if (code.find("\"" + word + "\"") != std::string::npos) seen.insert(word);
  }
  const std::set<std::string> told = all_matches(slurp(kTop + "/docs/diagnostics.md"), std::regex("\n\\| `([a-z0-9-]+)` \\|"));
  REQUIRE(told.size() > 60);
  for (const std::string& word : seen) {
    CAPTURE(word);
    CHECK(told.count(word) == 1);
  }
  for (const std::string& word : told) {
    CAPTURE(word);
    CHECK(seen.count(word) == 1);
  }
}

TEST_CASE("every error of the project file is shown by a faulty file", "[docs]") {
  // Not shown by a small text file: these need a file of megabytes or of thousands of entries, bytes that no editor shows,
  // or the packet's fonts. tests/read, tests/units and tests/calculate raise each of them.
  const std::set<std::string> elsewhere = {"too-large", "too-many-entries", "utf16", "no-letter", "steps-many"};
  const std::string faulty = all_of("tests/check", {".yaml"});
  const std::string docs = slurp(kTop + "/docs/diagnostics.md");
  for (const std::string& word : all_matches(docs, std::regex("\n\\| `([a-z0-9-]+)` \\| error(?: or hold)? \\|"))) {
    CAPTURE(word);
    CHECK((elsewhere.count(word) == 1 || faulty.find("[" + word + "]") != std::string::npos));
  }
}

TEST_CASE("every figure's formula is a heading of docs/formulas.md", "[docs]") {
  const std::set<std::string> headings = formula_headings();
  for (const FigureKind& kind : figure_kinds()) {
    CAPTURE(kind.section, kind.quantity, kind.formula);
    CHECK((kind.formula.empty() || headings.count(std::string(kind.formula)) == 1));
    CHECK((kind.formula.empty() || !source_of_formula(kind.formula).empty()));
  }
  for (const std::string example : {"wool-day-dress", "linen-skirt"}) {
    Order order;
    order.project_path = kTop + "/examples/" + example + "/project.yaml";
    order.template_folder = kTop + "/packet-templates";
    order.font_root = "/usr/share/fonts";
    Diagnostics diag;
    const std::string json = make_figures(order, diag).figures_json;
    REQUIRE(json.size() > 1000);
    CHECK(json.find("\"source\": \"\"") == std::string::npos);                                            // none without
    CHECK_FALSE(std::regex_search(json, std::regex("\"formula\": \"[a-z-]+\",\\s*\"inputs\": \\[\\]")));  // nor from nothing
    for (const std::string& source : all_matches(json, std::regex("\"source\": \"([^\"]+)\""))) {
      CAPTURE(source);
      CHECK(slurp(kTop + "/docs/sources.md").find("### " + source + "\n") != std::string::npos);
    }
    for (const std::string& formula : all_matches(json, std::regex("\"formula\": \"([a-z-]+)\""))) {
      CAPTURE(formula);
      CHECK(headings.count(formula) == 1);
    }
  }
}

TEST_CASE("every source that is named is in docs/sources.md", "[docs]") {
  const std::string sources = slurp(kTop + "/docs/sources.md");
  const std::string naming =
      all_of("packet-templates", {".yaml"}) + all_of("src", {".cpp", ".h"}) + slurp(kTop + "/docs/formulas.md");
  const std::set<std::string> anchors = all_matches(naming, std::regex("sources\\.md#([a-z0-9-]+)"));
  REQUIRE(anchors.size() > 20);
  for (const std::string& anchor : anchors) {
    if (anchor == "largest-first") continue;  // the hint's own example
    CAPTURE(anchor);
    CHECK((sources.find("id=\"" + anchor + "\"") != std::string::npos ||
           sources.find("### " + anchor + "\n") != std::string::npos));
  }
}

TEST_CASE("the documents name no path of a machine and no unfinished work", "[docs]") {
  const std::string docs = all_of("docs", {".md"}) + slurp(kTop + "/README.md") + slurp(kTop + "/DEVELOPERS.md");
  for (const char* word : {"../shared", "/work/", "/root/", "TODO", "FIXME"}) {
    CAPTURE(word);
    CHECK(docs.find(word) == std::string::npos);
  }
}

TEST_CASE("the example in docs/project-file.md is the linen skirt and checks clean", "[docs]") {
  const std::string docs = slurp(kTop + "/docs/project-file.md");
  const std::size_t from = docs.find("```yaml\n") + 8;
  const std::string example = docs.substr(from, docs.find("```", from) - from);
  Diagnostics diag;
  std::vector<SourceText> sources;
  const Templates templates = load_templates(kTop + "/packet-templates", diag, sources);
  const Entry entry = read_yaml(example, "example.yaml", diag);
  check_project(entry, templates, diag);
  for (const Diagnostic& d : diag.sorted()) UNSCOPED_INFO(d.sentence);
  CHECK(diag.sorted().empty());
}

TEST_CASE("the workings shown in docs/project-file.md are the linen skirt's own", "[docs]") {
  Order order;
  order.project_path = kTop + "/examples/linen-skirt/project.yaml";
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  Diagnostics diag;
  const std::string json = make_figures(order, diag).figures_json;
  const std::string docs = slurp(kTop + "/docs/project-file.md");
  const std::regex row("\n\\| `([a-z]+/[a-z /]+)` \\| ([^|\n]+) \\| ([^|\n]+) \\|");
  int rows = 0;
  for (auto i = std::sregex_iterator(docs.begin(), docs.end(), row); i != std::sregex_iterator(); ++i, ++rows) {
    const std::string key = (*i)[1], numbers = (*i)[2], result = (*i)[3];
    CAPTURE(key, numbers, result);
    const std::size_t from = json.find("\"key\": \"" + key + "\"");
    REQUIRE(from != std::string::npos);
    const std::string figure = json.substr(from, json.find("\"key\": ", from + 1) - from);
    CHECK(figure.find("\"numbers\": \"" + numbers + "\"") != std::string::npos);
    CHECK(figure.find("\"printed\": \"" + result + "\"") != std::string::npos);
  }
  CHECK(rows == 6);
}
