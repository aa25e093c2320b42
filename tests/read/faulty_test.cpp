#include <algorithm>

#include "read/entry.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

struct Found {
  std::string code;
  int line, column, length;
  friend bool operator==(const Found&, const Found&) = default;
};
std::ostream& operator<<(std::ostream& out, const Found& f) {
  return out << f.code << " " << f.line << ":" << f.column << "+" << f.length;
}

std::vector<Found> faults(const std::string& text, const ReadLimits& limits = {}) {
  Diagnostics diag;
  const Entry root = read_yaml(text, "gown.yaml", diag, limits);
  std::vector<Found> found;
  for (const Diagnostic& d : diag.in_order_found()) {
    CHECK(d.at.file == "gown.yaml");
    CHECK_FALSE(d.sentence.empty());
    found.push_back({d.code, d.at.line, d.at.column, d.at.length});
  }
  std::sort(found.begin(), found.end(), [](const Found& a, const Found& b) {
    return std::tie(a.line, a.column, a.code) < std::tie(b.line, b.column, b.code);
  });
  return found;
}

Diagnostic only(const std::string& text) {
  Diagnostics diag;
  read_yaml(text, "gown.yaml", diag);
  REQUIRE(diag.in_order_found().size() == 1);
  return diag.in_order_found().front();
}

}  // namespace

TEST_CASE("each fault has its code and its narrowest place") {
  struct Row {
    std::string text;
    std::vector<Found> expected;
  };
  const std::vector<Row> rows = {
      {"", {{"file-empty", 1, 1, 1}}},
      {"# only a remark\n\n", {{"file-empty", 1, 1, 1}}},
      {"---\n...\n", {{"file-empty", 1, 1, 1}}},
      {"a: 1\nb:\n\tc: 2\n", {{"tab-indent", 3, 1, 1}}},
      {"a: 1\nb:\n  \t c: 2\n", {{"tab-indent", 3, 3, 2}}},
      {"waist: 26 in\nhip: 40 in\nwaist: 27 in\n", {{"key-twice", 3, 1, 5}}},
      {"m: { waist: 26 in, waist: 27 in }\n", {{"key-twice", 1, 20, 5}}},
      {"title: \"Wool dress\n", {{"quote-open", 1, 8, 1}}},
      {"title: \"Wool dress\nwaist: 26 in\n", {{"quote-open", 1, 8, 1}}},
      {"title: 'Wool dress\nnote: it's\n", {{"quote-open", 1, 8, 1}}},
      {"l:\n  - { piece: \"front, make: 1 }\n  - { piece: \"back, make: 2 }\n",
       {{"quote-open", 2, 14, 1}, {"quote-open", 3, 14, 1}}},
      {"title: \"Wool\" dress\n", {{"quote-early", 1, 15, 5}}},
      {"m: { note: \"a\" b }\n", {{"quote-early", 1, 16, 3}}},
      {"bust 36 in\nwaist: 26 in\n", {{"no-colon", 1, 1, 10}}},
      {"waist: 26 in\nbust 36 in   # over the corset\n", {{"no-colon", 2, 1, 10}}},
      {"m:\n  waist: 26 in\n  bust 36 in\n  hip: 40 in\n", {{"no-colon", 3, 3, 10}}},
      {"m:\n  bust 36 in\n  waist 3 in\n  hip: 3 in\n", {{"no-colon", 2, 3, 10}, {"no-colon", 3, 3, 10}}},
      {"measures\n  waist: 26 in\n  waist 27 in\n", {{"no-colon", 1, 1, 8}, {"no-colon", 3, 3, 11}}},
      {"just a word\n", {{"no-colon", 1, 1, 11}}},
      {"m: { waist 26 in, hip: 40 in }\n", {{"no-colon", 1, 6, 11}}},
      {"bust:36 in\n", {{"no-space", 1, 1, 10}}},
      {"waist: 26 in\nbust:36 in\n", {{"no-space", 2, 1, 10}}},
      {"m:\n  bust:36 in\n", {{"no-space", 2, 3, 10}}},
      {"m: { bust:36 in, hip: 40 in }\n", {{"no-space", 1, 6, 10}}},
      {"l:\n  - a\n  -b\n", {{"no-space", 3, 3, 1}}},
      {"note: see: below\n", {{"second-colon", 1, 10, 1}}},
      {"m: { note: see: below }\n", {{"second-colon", 1, 15, 1}}},
      {"note: ends so:\n", {{"second-colon", 1, 14, 1}}},
      {"m: { piece: front\n  make: 2 }\n", {{"second-colon", 2, 7, 1}}},
      {"a: *front\n", {{"shorthand", 1, 4, 6}}},
      {"a: &front x\nb: 2\n", {{"shorthand", 1, 4, 6}}},
      {"a: &block\n  b: 1\n", {{"shorthand", 1, 4, 6}}},
      {"a: !!str x\n", {{"shorthand", 1, 4, 5}}},
      {"m:\n  <<: x\n", {{"shorthand", 2, 3, 2}}},
      {"a: @b\nc: %d\ne: `f\n", {{"shorthand", 1, 4, 2}, {"shorthand", 2, 4, 2}, {"shorthand", 3, 4, 2}}},
      {"%YAML 1.2\n---\na: 1\n", {{"shorthand", 1, 1, 5}}},
      {"? a\n: b\n", {{"shorthand", 1, 1, 1}}},
      {"m: { a: *b, c: [&d e] }\n", {{"shorthand", 1, 9, 2}, {"shorthand", 1, 17, 2}}},
      {"m: { a: really? yes }\n", {{"shorthand", 1, 15, 1}}},
      {"a: | text on the line\n", {{"shorthand", 1, 4, 1}}},
      {"a: 1\n---\nb: 2\n", {{"second-project", 2, 1, 3}}},
      {"---\na: 1\n---\n", {{"second-project", 3, 1, 3}}},
      {"a: 1\n...\nb: 2\n", {{"second-project", 3, 1, 4}}},
      {"a: 1\nb: caf\xE9\n", {{"not-utf8", 2, 7, 1}}},
      {"a: \xC0\xAF\n", {{"not-utf8", 1, 4, 1}}},          // overlong
      {"a: \xED\xA0\x80\n", {{"not-utf8", 1, 4, 1}}},      // half of a surrogate pair
      {"a: \xF4\x90\x80\x80\n", {{"not-utf8", 1, 4, 1}}},  // above U+10FFFF
      {"a: 1\nb: \xC3", {{"not-utf8", 2, 4, 1}}},          // cut off
      {"é: \x01x\n", {{"control-character", 1, 4, 1}}},
      {std::string("a: x\0y\nb: 1\n", 12), {{"control-character", 1, 5, 1}}},
      {"a: \xC2\x85\n", {{"control-character", 1, 4, 1}}},
      {"a: \xE2\x80\xA8 b\n", {{"control-character", 1, 4, 1}}},
      {"\xFF\xFE" + std::string("a\0:\0", 4), {{"utf16", 1, 1, 1}}},
      {std::string("\0a\0:\0 \0b", 8), {{"utf16", 1, 1, 1}}},
      {"cloths:\n    wool:\n        kind: x\n      width: 3 in\n", {{"stray-indent", 4, 7, 5}}},
      {"waist: 26 in\n   bust: 36 in\n", {{"stray-indent", 2, 4, 4}}},
      {"  waist: 26 in\nbust: 36 in\n", {{"stray-indent", 2, 1, 4}}},
      {"title: \"x\"\n  more\n", {{"stray-indent", 2, 3, 4}}},
      {"m:\n\xC2\xA0\xC2\xA0waist: 26 in\n", {{"stray-indent", 2, 1, 2}}},
      {"l:\n  - a: 1\n   b: 2\n", {{"stray-indent", 3, 4, 1}}},
      {"a: 1\n- b\n", {{"stray-dash", 2, 1, 1}}},
      {"l:\n  - a\n  b: 1\n", {{"stray-dash", 3, 3, 1}}},
      {"a: - b\n", {{"stray-dash", 1, 4, 1}}},
      {"a: [\n  - b ]\n", {{"stray-dash", 2, 3, 1}}},
      {"m: { note: wool, mostly }\n", {{"comma-split", 1, 18, 6}}},
      {"a: [1, 2\n", {{"bracket-open", 1, 4, 1}}},
      {"l:\n  - { a: 1, b: [2, 3\n  - { a: 2 }\n", {{"bracket-open", 2, 16, 1}}},
      {"c:\n  wool: { kind: x, width: 3 in\n  silk: { kind: y }\n", {{"bracket-open", 2, 9, 1}}},
      {"a: { b: 1 ]\n", {{"bracket-open", 1, 11, 1}}},
      {"a: { b: 1 }}\n", {{"bracket-extra", 1, 12, 1}}},
      {"a: 1\n}\n", {{"bracket-extra", 2, 1, 1}}},
      {"a: ]\n", {{"bracket-extra", 1, 4, 1}}},
      {"a: [1] 2\n", {{"bracket-early", 1, 8, 1}}},
      {"- a\n- b\n", {{"map-wanted", 1, 1, 1}}},
      {"a: \"\\q\"\n", {{"yaml-form", 1, 7, 1}}},
      {": 26 in\n", {{"yaml-form", 1, 1, 1}}},
      {"a: , b\n", {{"yaml-form", 1, 4, 1}}},
      {std::string(1001, 'k') + ": 1\n", {{"too-large", 1, 1, 1001}}},
      {"a: 1\n" + std::string(2u << 20, '#'), {{"too-large", 1, 1, 1}}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text.substr(0, 200));
    CHECK(faults(row.text) == row.expected);
  }
}

TEST_CASE("columns and lengths count characters, not bytes") {
  // é, ½ and ſ take two bytes each in UTF-8, ⅛ three.
  CHECK(faults("é½⅛: ſo: gut\n") == std::vector<Found>{{"second-colon", 1, 8, 1}});
  CHECK(faults("größe ½ in\n") == std::vector<Found>{{"no-colon", 1, 1, 10}});
  CHECK(faults("a: 1\nmaß: 2\nmaß: 3\n") == std::vector<Found>{{"key-twice", 3, 1, 3}});
}

TEST_CASE("a byte order mark and any line ends leave lines and columns as they are") {
  const std::vector<Found> expected{{"key-twice", 3, 1, 1}};
  CHECK(faults("a: 1\nb: 2\na: 3\n") == expected);
  CHECK(faults("\xEF\xBB\xBF"
               "a: 1\r\nb: 2\r\na: 3\r\n") == expected);
  CHECK(faults("a: 1\rb: 2\ra: 3\r") == expected);
}

TEST_CASE("the sentences say what was seen and the hints what to type") {
  const Diagnostic twice = only("waist: 26 in\nhip: 40 in\nwaist: 27 in\n");
  CHECK(twice.sentence == "`waist` is given here and on line 1.");
  CHECK(twice.hint == "keep one");
  REQUIRE(twice.also.size() == 1);
  CHECK(twice.also[0] == SourceSpan{"gown.yaml", 1, 1, 5});

  CHECK(only("a: 1\nbust 36 in\n").sentence == "`bust 36 in` has no colon.");
  CHECK(only("a: 1\nbust 36 in\n").hint == "`bust: 36 in`");
  CHECK(only("a: 1\nbust:36 in\n").sentence == "`bust:36 in` is one word without a space after the colon.");
  CHECK(only("a: 1\nbust:36 in\n").hint == "`bust: 36 in`");
  CHECK(only("note: see: x\n").sentence == "The text after `note:` holds another colon.");
  CHECK(only("a:\n\tb: 1\n").sentence == "Line 2 is indented with a tab.");
  CHECK(only("a: 1\nb: \"x\nc: 2\n").sentence ==
        "The quotation mark on line 2 is never closed, so all below it was taken as text.");
  CHECK(only("a: *front\n").sentence == "`*front` is YAML shorthand, which is not read here.");
  CHECK(only("a: *front\n").hint == "write it out; text that begins with `*` needs quotes");
  CHECK(only("a: 1\n---\nb: 2\n").sentence == "`---` on line 2 begins a second project.");
  CHECK(only("a: 1\nb: \xE9\n").sentence == "Line 2 holds a letter saved in another encoding.");
  CHECK(only("m: { note: wool, mostly }\n").sentence == "`mostly` stands alone: the comma before it ended the text.");
  CHECK(only("c:\n    kind: x\n   width: 3 in\n").sentence == "`width` on line 3 is set in by 3 spaces; `kind` above by 4.");
  CHECK(only("c:\n    kind: x\n   width: 3 in\n").hint == "line it up with `kind`");
  CHECK(only(std::string("a: x\0y\n", 7)).sentence == "Line 1 holds the control character U+0000, which no one can see.");
}

TEST_CASE("many faults are told in one run") {
  CHECK(faults("title: 'Tea gown\n"
               "waist: 26 in\n"
               "bust 36 in\n"
               "hip:40 in\n"
               "cloths:\n"
               "\twool: { kind: *x }\n"
               "note: one: two\n"
               "waist: 27 in\n") == std::vector<Found>{{"quote-open", 1, 8, 1},
                                                       {"no-colon", 3, 1, 10},
                                                       {"no-space", 4, 1, 9},
                                                       {"tab-indent", 6, 1, 1},
                                                       {"shorthand", 6, 16, 2},
                                                       {"second-colon", 7, 10, 1},
                                                       {"key-twice", 8, 1, 5}});
}

TEST_CASE("a file wrong from end to end gives a bounded number of messages") {
  std::string text = "a:\n";
  for (int i = 0; i < 5000; ++i) text += "\tb: 1\n";
  CHECK(faults(text).size() == 50 + 49);  // so many tabs, and a key as often twice in what was read up to there
  std::string commas = "m: { a: 1";
  for (int i = 0; i < 5000; ++i) commas += ", k" + std::to_string(i);
  CHECK(faults(commas + " }\n").size() == 50);
  std::string latin;
  for (int i = 0; i < 5000; ++i) latin += "a: \xE9\n";
  CHECK(faults(latin).size() == 20);
}

TEST_CASE("after keys given twice the tree is still returned, with the first of each") {
  Diagnostics diag;
  const Entry root = read_yaml("a: 1\nb: 2\na: 3\n", "gown.yaml", diag);
  CHECK(diag.in_order_found().size() == 1);
  REQUIRE(root.kind == Entry::Kind::block);
  REQUIRE(root.children.size() == 2);
  CHECK(root.find("a")->text == "1");
}

TEST_CASE("lists and blocks may stand 64 deep and no deeper") {
  const auto nested = [](std::size_t depth) {  // the root block is the first
    return "a: " + std::string(depth - 1, '[') + "x" + std::string(depth - 1, ']') + "\n";
  };
  CHECK(faults(nested(64)).empty());
  CHECK(faults(nested(65)) == std::vector<Found>{{"too-deep", 1, 67, 1}});
  std::string open = "a: " + std::string(1000000, '[');
  CHECK(faults(open).size() <= 2);
  std::string steps;
  for (std::size_t i = 0; i < 700; ++i) steps += std::string(i, ' ') + "k:\n";
  const auto deep = faults(steps);
  REQUIRE(deep.size() == 1);
  CHECK(deep[0].code == "too-deep");
}

TEST_CASE("100,000 entries are read and one more is refused") {
  const auto list = [](int n) {
    std::string text = "l:\n";
    for (int i = 0; i < n; ++i) text += "- " + std::to_string(i) + "\n";
    return text;
  };
  CHECK(faults(list(99999)).empty());  // and the list itself
  const auto over = faults(list(100000));
  REQUIRE(over.size() == 1);
  CHECK(over[0] == Found{"too-many-entries", 100001, 3, 1});
  CHECK(faults("a: 1\nb: 2\n", {.depth = 64, .entries = 1}) == std::vector<Found>{{"too-many-entries", 2, 4, 1}});
}
