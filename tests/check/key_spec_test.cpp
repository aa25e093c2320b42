// The key table keeps its own rules.
#include <nlohmann/json.hpp>
#include <set>

#include "check/check.h"
#include "check/names.h"
#include "check/reading.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {
const std::set<std::string, std::less<>> kTraps = {"on", "off", "yes", "no", "y", "n", "true", "false", "null", "~"};
}  // namespace

TEST_CASE("every key stands once, below a key that is there, and says what it means") {
  std::set<std::string_view> seen;
  for (const KeySpec& spec : key_specs()) {
    INFO(spec.path);
    CHECK(seen.insert(spec.path).second);
    CHECK(find_key(spec.path) == &spec);
    CHECK(spec.meaning.ends_with("."));
    std::string_view up = spec.path;
    while (up.find('/') != std::string_view::npos) {
      up = up.substr(0, up.rfind('/'));
      if (!up.ends_with("*")) CHECK(seen.contains(up));  // a parent stands before its children
    }
  }
  CHECK(find_key("pieces/*/width") == nullptr);
  CHECK(keys_below("skirt/hem").size() == 4);
}

TEST_CASE("no key and no closed word is one that other YAML readers turn into something else") {
  for (const KeySpec& spec : key_specs()) {
    INFO(spec.path);
    CHECK_FALSE(kTraps.contains(last_part(spec.path)));
    for (const std::string& word : parted(spec.words, '|')) {
      CHECK_FALSE(word.empty());
      CHECK_FALSE(kTraps.contains(word));
      CHECK(word != kToMeasure);
    }
  }
}

TEST_CASE("limits are written as the key's own quantities, and the least is not above the most") {
  for (const KeySpec& spec : key_specs()) {
    const bool many = spec.kind == KeyKind::list || spec.kind == KeyKind::map;
    const KeyKind kind = many ? spec.each : spec.kind;
    if (kind != KeyKind::length) continue;
    INFO(spec.path);
    if (!spec.least.empty()) CHECK(read_length(spec.least, "least").ok());
    if (!spec.most.empty()) CHECK(read_length(spec.most, "most").ok());
    if (!spec.least.empty() && !spec.most.empty())
      CHECK(read_length(spec.least, "least").value().length < read_length(spec.most, "most").value().length);
  }
}

TEST_CASE("what names refer to is a section of the table, and every list or map of blocks names its items") {
  const std::set<std::string> kOthers = {"measures", "steps", "days", "edges of pieces"};
  for (const KeySpec& spec : key_specs()) {
    INFO(spec.path);
    for (const std::string& section : parted(spec.refers_to, '|'))
      CHECK((kOthers.contains(section) || find_key(section) != nullptr));
    const bool many = spec.kind == KeyKind::list || spec.kind == KeyKind::map;
    if (many && spec.each == KeyKind::block) CHECK_FALSE(spec.one.empty());
    if (spec.kind == KeyKind::word) CHECK_FALSE(spec.words.empty());
  }
}

TEST_CASE("what stands below a later or private key is later or private too") {
  for (const KeySpec& spec : key_specs()) {
    const auto cut = spec.path.rfind('/');
    if (cut == std::string_view::npos) continue;
    std::string_view up = spec.path.substr(0, cut);
    if (up.ends_with("/*")) up.remove_suffix(2);
    const KeySpec* parent = find_key(up);
    if (parent == nullptr) continue;
    INFO(spec.path);
    CHECK(spec.first_needed >= parent->first_needed);
  }
  CHECK(find_key("pockets/*/bag/width")->first_needed > 1);
  CHECK(find_key("wearer/age")->is_private);
  CHECK(find_key("measures/waist")->is_private);
  CHECK_FALSE(find_key("measures/taken/over")->is_private);
  CHECK_FALSE(find_key("cloths/*/width")->is_private);
}

TEST_CASE("the schema is JSON, closed, and takes what editors make of dates, counts and yes") {
  const auto schema = nlohmann::json::parse(json_schema());
  CHECK(schema.at("$schema") == "https://json-schema.org/draft/2020-12/schema");
  CHECK(schema.at("additionalProperties") == false);
  CHECK(schema.at("required") == nlohmann::json::array({"gownsheaf", "title"}));
  std::size_t top = 0;
  for (const KeySpec& spec : key_specs()) top += spec.path.find('/') == std::string_view::npos ? 1u : 0u;
  CHECK(schema.at("properties").size() == top);
  const auto& fold = schema.at("properties").at("pieces").at("anyOf").at(1).at("items").at("anyOf").at(0).at("properties");
  CHECK(fold.at("on fold").at("anyOf").at(0).at("type") == "boolean");
  CHECK(fold.at("piece").at("title") == "piece");
  CHECK(fold.at("piece").at("anyOf").at(1).at("type") == "number");
  CHECK(schema.at("properties").at("worn on").at("anyOf").at(1).at("type") == "number");
  CHECK(json_schema().ends_with("}\n"));
}

TEST_CASE("the key tables show every key but note and was, and mark what is not worked out yet") {
  const std::string tables = key_tables_markdown();
  std::size_t rows = 0;
  for (std::size_t at = tables.find("\n| `"); at != std::string::npos; at = tables.find("\n| `", at + 1)) ++rows;
  std::size_t wanted = 0;
  for (const KeySpec& spec : key_specs()) {
    const bool below = spec.path.find('/') != std::string_view::npos;
    if (!(below && (last_part(spec.path) == "note" || last_part(spec.path) == "was"))) ++wanted;
  }
  CHECK(rows == wanted);
  CHECK(tables.find("| `width` | length; 4 in to 150 in | guessed: the cloth table | Selvage to selvage. |") !=
        std::string::npos);
  CHECK(tables.find("*Not worked out yet.*") != std::string::npos);
}
