// The rooms of src/ and what each may include (docs/architecture.md holds the same table). A file that reaches into a
// room it may not see fails here with its line.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "support/catch.h"
#include "support/program.h"

using gownsheaf_test::kTop;

namespace {

namespace fs = std::filesystem;

const std::map<std::string, std::set<std::string>> kMayInclude = {
    {"unicode", {}},
    {"units", {"unicode"}},
    {"diagnostics", {"unicode"}},
    {"geometry", {"units"}},
    {"files", {"diagnostics"}},
    {"fonts", {"unicode", "units", "files", "diagnostics"}},
    {"read", {"unicode", "files", "diagnostics"}},
    {"outline", {"unicode", "geometry", "units", "files", "diagnostics"}},
    {"project", {"unicode", "units", "geometry", "diagnostics"}},
    {"templates", {"unicode", "units", "diagnostics"}},
    {"figures", {"geometry", "units", "diagnostics"}},
    {"check", {"read", "outline", "project", "templates", "figures", "files", "unicode", "units", "geometry", "diagnostics"}},
    {"nest", {"geometry", "units"}},
    {"calculate", {"project", "templates", "figures", "nest", "geometry", "units", "diagnostics"}},
    {"packet", {"project", "templates", "figures", "layout", "geometry", "units", "diagnostics"}},
    {"layout", {"fonts", "unicode", "geometry", "units"}},
    {"write", {"layout", "figures", "outline", "fonts", "unicode", "geometry", "units", "diagnostics"}},
    {"service", {"files", "diagnostics"}},  // and make_packet.h, which lies in no room
};

// Outside headers that live in one room only.
const std::vector<std::pair<std::string, std::set<std::string>>> kHomes = {
    {"yaml-cpp/", {"read"}},
    {"utf8proc.h", {"unicode"}},
    {"nettle/", {"files"}},
    {"ft2build.h", {"fonts"}},
    {"freetype/", {"fonts"}},
    {"hpdf", {"write"}},
    {"pugixml", {"outline"}},
    {"nlohmann/", {"write", "service"}},
    {"CLI/", {"commands"}},
    {"spdlog/", {"commands"}},
    {"fmt/", {}},
    {"iostream", {}},
    {"random", {"nest"}},
    {"chrono", {"units"}},
    {"ctime", {}},
    {"clocale", {}},
    {"locale", {}},
    {"unordered_map", {"read", "fonts"}},
    {"fstream", {"files"}},
    {"filesystem", {"files"}},
};

struct Include {
  fs::path file;
  int line;
  std::string header;
};

std::vector<Include> all_includes() {
  std::vector<Include> found;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(kTop) / "src")) {
    const std::string ending = entry.path().extension().string();
    if (ending != ".cpp" && ending != ".h") continue;
    std::ifstream in(entry.path());
    std::string text;
    for (int line = 1; std::getline(in, text); ++line) {
      if (text.rfind("#include ", 0) != 0 || text.size() < 12) continue;
      const std::size_t end = text.find_first_of("\">", 10);
      found.push_back({fs::relative(entry.path(), fs::path(kTop) / "src"), line, text.substr(10, end - 10)});
    }
  }
  return found;
}

std::string room_of(const fs::path& file) { return std::distance(file.begin(), file.end()) > 1 ? file.begin()->string() : ""; }

bool is_room(const std::string& name) { return kMayInclude.count(name) == 1; }

}  // namespace

TEST_CASE("a room includes only the rooms that it may see", "[rules]") {
  const std::vector<Include> includes = all_includes();
  REQUIRE(includes.size() > 200);
  for (const Include& i : includes) {
    const std::string room = room_of(i.file);
    const std::string other = i.header.substr(0, i.header.find('/'));
    if (!is_room(room) || other == room || i.header.find('/') == std::string::npos) continue;
    if (!is_room(other) && other != "commands") continue;
    INFO("src/" << i.file.string() << ":" << i.line << ": " << room << "/ may not include " << other << "/");
    CHECK(kMayInclude.at(room).count(other) == 1);
  }
}

TEST_CASE("an outside library has one home", "[rules]") {
  for (const Include& i : all_includes()) {
    const std::string room = room_of(i.file);
    for (const auto& [header, homes] : kHomes) {
      const bool is_folder = header.back() == '/' || header == "hpdf" || header == "pugixml";
      if (is_folder ? i.header.rfind(header, 0) != 0 : i.header != header) continue;
      INFO("src/" << i.file.string() << ":" << i.line << ": <" << i.header << "> does not live here");
      CHECK(homes.count(room) == 1);
    }
  }
}

TEST_CASE("nothing in src reads a clock or an address of a locale", "[rules]") {
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(kTop) / "src")) {
    if (!entry.is_regular_file()) continue;
    std::ifstream in(entry.path());
    std::string text;
    for (int line = 1; std::getline(in, text); ++line) {
      INFO(entry.path().string() << ":" << line);
      for (const char* word :
           {"_clock", "gettimeofday", "std::time(", "setlocale", "std::locale", "std::shuffle", "_distribution"}) {
        CHECK(text.find(word) == std::string::npos);
      }
    }
  }
}

TEST_CASE("the table of rooms in docs/architecture.md is this one", "[rules][docs]") {
  std::ifstream in(fs::path(kTop) / "docs" / "architecture.md");
  REQUIRE(in.good());
  std::map<std::string, std::set<std::string>> told;
  for (std::string line; std::getline(in, line);) {  // | `room` | does | may include |
    if (line.rfind("| `", 0) != 0) continue;
    const std::size_t name_end = line.find('`', 3);
    const std::string room = line.substr(3, name_end - 3);
    if (!is_room(room)) continue;
    const std::size_t last = line.rfind('|', line.size() - 2);
    std::set<std::string> others;
    std::string word;
    for (const char c : line.substr(last + 1)) {
      if (c >= 'a' && c <= 'z') {
        word += c;
      } else if (!word.empty()) {
        others.insert(word);
        word.clear();
      }
    }
    told[room] = others;
  }
  CHECK(told == kMayInclude);
}

TEST_CASE("the top level holds what it should and nothing else", "[rules]") {
  const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "src",  "packet-templates",
                                         "tests",          "examples",  "Dockerfile",    "docs", "LICENSE"};
  for (const auto& entry : fs::directory_iterator(kTop)) {
    const std::string name = entry.path().filename().string();
    if (name[0] == '.' || name.rfind("build", 0) == 0) continue;
    CAPTURE(name);
    CHECK(allowed.count(name) == 1);
  }
}

TEST_CASE("no two headers define a type of the same name", "[rules]") {
  // Two types of one name in one namespace link without a word and crash later.
  std::map<std::string, std::string> first_seen;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(kTop) / "src")) {
    if (entry.path().extension() != ".h") continue;
    const std::string file = fs::relative(entry.path(), kTop).string();
    std::ifstream in(entry.path());
    std::string space;
    for (std::string line; std::getline(in, line);) {
      if (line.rfind("namespace ", 0) == 0) space = line.substr(10, line.find(' ', 10) - 10) + "::";
      for (const std::string word : {"struct ", "class ", "enum class "}) {
        if (line.rfind(word, 0) != 0 || (line.back() == ';' && line.find('{') == std::string::npos)) continue;
        const std::size_t end = line.find_first_of(" {", word.size());  // a nested type keeps its owner's name
        const auto [at, fresh] = first_seen.emplace(space + line.substr(word.size(), end - word.size()), file);
        INFO(at->first << " in " << at->second << " and " << file);
        CHECK((fresh || at->second == file));
      }
    }
  }
}
