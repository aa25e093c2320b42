// The JSON Schema that editors get: it parses, holds only what is tried here, allows what the checker allows, and refuses
// what an editor should underline. Texts are typed as a YAML 1.2 reader types them, as an editor does.
#include <functional>
#include <set>

#include <nlohmann/json.hpp>

#include "check/check.h"
#include "files/files.h"
#include "read/entry.h"
#include "support/catch.h"
#include "support/program.h"

using namespace gownsheaf;
using gownsheaf_test::kTop;
using nlohmann::json;

namespace {

const json& schema() {
  static const json made = json::parse(json_schema());
  return made;
}

bool is_number(const std::string& text) {  // of the YAML 1.2 core schema, plain decimals only
  std::size_t at = !text.empty() && text[0] == '-' ? 1 : 0, digits = 0, points = 0;
  for (; at < text.size(); ++at) {
    if (text[at] == '.') ++points;
    else if (text[at] >= '0' && text[at] <= '9') ++digits;
    else return false;
  }
  return digits > 0 && points < 2;
}

std::string type_of(const Entry& e) {
  switch (e.kind) {
    case Entry::Kind::nothing: return "null";
    case Entry::Kind::list: return "array";
    case Entry::Kind::block: return "object";
    case Entry::Kind::text: break;
  }
  if (e.quoted) return "string";
  if (e.text == "true" || e.text == "false") return "boolean";
  return is_number(e.text) ? "number" : "string";
}

// "" when the schema allows the entry, else the place that it refuses.
std::string refused(const json& rule, const Entry& e, const std::string& path) {
  if (rule.is_boolean()) return rule.get<bool>() ? "" : path;
  for (const auto& [word, value] : rule.items()) {
    if (word == "title" || word == "description" || word == "$schema" || word == "additionalProperties") continue;
    if (word == "type") {
      if (type_of(e) != value.get<std::string>()) return path;
    } else if (word == "const") {
      if (type_of(e) != "string" || e.text != value.get<std::string>()) return path;
    } else if (word == "enum") {
      bool found = false;
      for (const json& one : value) found = found || (type_of(e) == "string" && e.text == one.get<std::string>());
      if (!found) return path;
    } else if (word == "anyOf") {
      std::string deepest;  // the branch that got furthest tells most
      bool allowed = false;
      for (const json& one : value) {
        const std::string at = refused(one, e, path);
        allowed = allowed || at.empty();
        if (at.size() > deepest.size()) deepest = at;
      }
      if (!allowed) return deepest;
    } else if (word == "items") {
      for (std::size_t i = 0; i < e.children.size(); ++i)
        if (const std::string at = refused(value, e.children[i], path + "/" + std::to_string(i)); !at.empty()) return at;
    } else if (word == "required") {
      for (const json& one : value)
        if (e.find(one.get<std::string>()) == nullptr) return path + "/" + one.get<std::string>();
    } else if (word == "properties") {
      for (const Entry& child : e.children) {
        const auto known = value.find(child.key);
        const json& below = known != value.end() ? *known : rule.at("additionalProperties");
        if (const std::string at = refused(below, child, path + "/" + child.key); !at.empty()) return at;
      }
    } else {
      throw std::logic_error("the schema holds `" + word + "`, which is not tried here");
    }
  }
  if (rule.contains("additionalProperties") && !rule.contains("properties"))  // names of the maker's own
    for (const Entry& child : e.children)
      if (const std::string at = refused(rule.at("additionalProperties"), child, path + "/" + child.key); !at.empty()) return at;
  return "";
}

Entry entry_of(const std::string& text) {
  Diagnostics diag;
  Entry entry = read_yaml(text, "project.yaml", diag);
  REQUIRE_FALSE(diag.has_errors());
  return entry;
}

std::string refused(const std::string& text) { return refused(schema(), entry_of(text), ""); }

std::string file_text(const std::string& path) {
  const FileResult<std::string> bytes = read_named_file(path, kLargestProjectFile);
  REQUIRE(bytes.ok());
  return *bytes.value;
}

}  // namespace

TEST_CASE("both examples are allowed by the schema", "[schema]") {
  for (const std::string name : {"wool-day-dress", "linen-skirt"}) {
    CAPTURE(name);
    CHECK(refused(file_text(kTop + "/examples/" + name + "/project.yaml")) == "");
  }
}

TEST_CASE("project files that check clean are allowed by the schema", "[schema]") {
  const std::string folder = kTop + "/tests/check/clean/";
  const FileResult<std::vector<std::string>> names = list_files(folder, ".yaml");
  REQUIRE(names.ok());
  REQUIRE_FALSE(names.value->empty());
  for (const std::string& name : *names.value) {
    CAPTURE(name);
    CHECK(refused(file_text(folder + name)) == "");
  }
}

TEST_CASE("the schema refuses what an editor should underline", "[schema]") {
  const std::string head = "gownsheaf: 1\ntitle: A skirt\n";
  const auto refused_at = [&](const std::string& rest, const std::string& place) {
    const std::string seen = refused(head + rest);
    CAPTURE(rest, seen);
    CHECK(seen.rfind(place, 0) == 0);  // below it where a block would have done
  };
  CHECK(refused(head) == "");
  CHECK(refused("gownsheaf: 1\n") == "/title");
  refused_at("pleets: []\n", "/pleets");
  refused_at("measures: { wasit: 70 cm }\n", "/measures/wasit");
  refused_at("cloths: { blue linen: { kind: linen, widht: 140 cm } }\n", "/cloths/blue linen/widht");
  refused_at("pieces: [{ piece: band, make: 1, from: [linen], lenght: 3 in }]\n", "/pieces/0/lenght");
  refused_at("pieces: [{ from: [linen] }]\n", "/pieces/0/piece");
  refused_at("garment: skort\n", "/garment");
  refused_at("measures: { waist: 70 }\n", "/measures/waist");  // a length without its unit
  refused_at("measures:\n", "/measures");
  refused_at("print: { paper: a4, sheets: pin-up, holes: four }\n", "/print/holes");
}

TEST_CASE("every key of the table has its place in the schema, under its own words", "[schema]") {
  // Followed down from the top. A name of the maker's own or an item of a list stands as `*` in the table; where one item
  // stands for a list, its keys follow directly.
  std::set<std::string> found;
  const std::function<void(const json&, const std::string&)> walk = [&](const json& rule, const std::string& path) {
    if (!rule.is_object()) return;
    if (rule.contains("anyOf"))
      for (const json& one : rule.at("anyOf")) walk(one, path);
    const std::string inner = path.empty() ? "*" : path + "/*";
    if (rule.contains("items")) walk(rule.at("items"), inner);
    if (rule.contains("properties"))
      for (const auto& [key, below] : rule.at("properties").items()) {
        const std::string here = path.empty() ? key : path + "/" + key;
        CAPTURE(here);
        const KeySpec* spec = find_key(here);
        if (spec == nullptr) spec = find_key(inner + "/" + key);
        REQUIRE(spec != nullptr);
        CHECK(below.at("title") == key);
        const std::string told = below.at("description");
        CHECK(told.rfind(std::string(spec->meaning), 0) == 0);
        CHECK((told.find("not worked out yet") != std::string::npos) == (spec->first_needed > 1));
        found.insert(std::string(spec->path));
        walk(below, std::string(spec->path));
      }
    if (rule.contains("additionalProperties")) walk(rule.at("additionalProperties"), inner);
  };
  walk(schema(), "");
  for (const KeySpec& spec : key_specs()) {
    const std::string path(spec.path);
    CAPTURE(path);
    CHECK((path.ends_with("/*") || found.count(path) == 1));
  }
}
