// The condition language: what it lets pass, what it refuses and where, and how three values run through it.
#include <map>
#include <random>
#include <set>
#include <string>

#include "support/catch.h"
#include "support/rounds.h"
#include "templates/condition.h"
#include "units/length.h"

using namespace gownsheaf;

namespace {

using Facts = std::map<std::string, FactValue, std::less<>>;

FactLookup lookup(const Facts& facts) {
  return [&facts](std::string_view fact, std::string_view item) -> FactValue {
    auto at = facts.find(std::string(fact) + (item.empty() ? "" : "@" + std::string(item)));
    return at == facts.end() ? FactValue{} : at->second;
  };
}

const SourceSpan kPlace{"steps.yaml", 7, 11, 0};

Truth asked(const std::string& text, const Facts& facts, std::string_view item = "") {
  Diagnostics diag;
  const Condition c = parse_condition(text, kPlace, diag);
  INFO(text);
  for (const Diagnostic& d : diag.in_order_found()) UNSCOPED_INFO(d.code << ": " << d.sentence);
  REQUIRE_FALSE(diag.has_errors());
  return c.holds(lookup(facts), item);
}

Diagnostic refused(const std::string& text) {
  Diagnostics diag;
  const Condition c = parse_condition(text, kPlace, diag);
  INFO(text);
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(c.always());
  return diag.in_order_found().front();
}

}  // namespace

TEST_CASE("condition: three values follow the least and the greatest", "[condition]") {
  const Truth all[] = {Truth::no, Truth::unknown, Truth::yes};
  for (const Truth a : all)
    for (const Truth b : all) {
      CHECK((a && b) == (a < b ? a : b));
      CHECK((a || b) == (a < b ? b : a));
      CHECK((!(a && b)) == (!a || !b));
    }
  CHECK((!Truth::unknown) == Truth::unknown);
}

TEST_CASE("condition: `not` binds before `and`, `and` before `or`", "[condition]") {
  const Facts f{{"skirt", true}, {"bodice", false}, {"sleeves", false}};
  CHECK(asked("has skirt or has bodice and has sleeves", f) == Truth::yes);
  CHECK(asked("(has skirt or has bodice) and has sleeves", f) == Truth::no);
  CHECK(asked("not has bodice and has skirt", f) == Truth::yes);
  CHECK(asked("not (has bodice and has skirt)", f) == Truth::yes);
  CHECK(asked("not has skirt or has skirt", f) == Truth::yes);
  CHECK(asked("not not has skirt", f) == Truth::yes);
}

TEST_CASE("condition: a fact without a value leaves only its own question open", "[condition]") {
  const Facts f{{"skirt", true}, {"bodice", false}};
  CHECK(asked("has sleeves", f) == Truth::unknown);
  CHECK(asked("has sleeves and has bodice", f) == Truth::no);
  CHECK(asked("has sleeves or has skirt", f) == Truth::yes);
  CHECK(asked("not has sleeves", f) == Truth::unknown);
  CHECK(asked("skirt kind is gored", f) == Truth::unknown);
  CHECK(asked("skirt kind is not gored", f) == Truth::unknown);
}

TEST_CASE("condition: `has` asks whether there is any", "[condition]") {
  CHECK(asked("has darts", {{"darts", std::int64_t{0}}}) == Truth::no);
  CHECK(asked("has darts", {{"darts", std::int64_t{4}}}) == Truth::yes);
  CHECK(asked("has darts", {}) == Truth::unknown);
  CHECK(asked("has lining", {{"lining", std::string("none")}}) == Truth::no);
  CHECK(asked("has lining", {{"lining", std::string("flat")}}) == Truth::yes);
  CHECK(asked("has hem depth", {}) == Truth::no);            // worked out, and there is none
  CHECK(asked("has placket length", {}) == Truth::unknown);  // its calculator is not there
}

TEST_CASE("condition: amounts compare exactly, in any unit", "[condition]") {
  // 3 in = 76.2 mm
  const Facts f{{"hem depth", Length::inches(3)}, {"pleat plies@sides", Ratio{3, 1}}, {"skirt breadths", std::int64_t{3}}};
  CHECK(asked("hem depth >= 76.2 mm", f) == Truth::yes);
  CHECK(asked("hem depth > 76.2 mm", f) == Truth::no);
  CHECK(asked("hem depth = 3 in", f) == Truth::yes);
  CHECK(asked("hem depth < 76.3 mm", f) == Truth::yes);
  CHECK(asked("hem depth <= 2 1/2 in", f) == Truth::no);
  CHECK(asked("pleat plies <= 3", f, "sides") == Truth::yes);
  CHECK(asked("pleat plies < 3", f, "sides") == Truth::no);
  CHECK(asked("skirt breadths >= 3 and hem depth<1 yd", f) == Truth::yes);
}

TEST_CASE("condition: facts of an item are asked of that item, the others of the garment", "[condition]") {
  const Facts f{{"used as@wool", std::string("outer")}, {"used as@muslin", std::string("interlining")}, {"skirt", true}};
  CHECK(asked("used as is outer and has skirt", f, "wool") == Truth::yes);
  CHECK(asked("used as is outer and has skirt", f, "muslin") == Truth::no);
}

TEST_CASE("condition: the longest fact and the longest word are taken", "[condition]") {
  CHECK(asked("fasten is hooks and eyes and has skirt", {{"fasten@front", std::string("hooks and eyes")}, {"skirt", true}},
              "front") == Truth::yes);
  CHECK(asked("pleat kind is inverted at seams", {{"pleat kind@back", std::string("inverted at seams")}}, "back") == Truth::yes);
  CHECK(asked("cloth breadths >= 1", {{"cloth breadths@wool", std::int64_t{1}}}, "wool") == Truth::yes);
}

TEST_CASE("condition: what is refused, and where", "[condition]") {
  SECTION("a fact that is not in the table") {
    const Diagnostic d = refused("has skirt and has pleatz");
    CHECK(d.code == "unknown-fact");
    CHECK(d.at.line == 7);
    CHECK(d.at.column == 11 + 18);  // `pleatz` begins after 18 letters
    CHECK(d.at.length == 6);
    CHECK(d.hint == "did you mean `pleats`?");
  }
  SECTION("a word outside the fact's list") {
    const Diagnostic d = refused("skirt kind is gorde");
    CHECK(d.code == "unknown-word");
    CHECK(d.at.column == 11 + 14);
    CHECK(d.hint.find("did you mean `gored`?") == 0);
  }
  SECTION("a place inside quotes counts the quote") {
    Diagnostics diag;
    SourceSpan quoted = kPlace;
    quoted.length = 12;  // "has pleatz" and its two marks
    parse_condition("has pleatz", quoted, diag);
    REQUIRE(diag.in_order_found().size() == 1);
    CHECK(diag.in_order_found().front().at.column == 11 + 1 + 4);
  }
  const std::map<std::string, std::string> codes{
      {"", "condition-form"},
      {"has", "condition-form"},
      {"skirt", "condition-form"},
      {"has skirt and", "condition-form"},
      {"has skirt has bodice", "condition-form"},
      {"(has skirt", "condition-form"},
      {"has skirt)", "condition-form"},
      {"and has skirt", "condition-form"},
      {"hem depth >=", "condition-form"},
      {"hem depth >= and has skirt", "condition-form"},
      {"skirt kind is", "condition-form"},
      {"has trousers", "unknown-fact"},
      {"hem depth is deep", "fact-type"},
      {"skirt kind > 3 in", "fact-type"},
      {"skirt >= 2", "fact-type"},
      {"cloth weight > 13 oz per running yd", "fact-type"},
      {"hem depth >= 3", "unit-missing"},
  };
  for (const auto& [text, code] : codes) CHECK(refused(text).code == code);
}

TEST_CASE("condition: too deep or too long is a sentence, not a crash", "[condition]") {
  CHECK(refused(std::string(200, '(') + "has skirt" + std::string(200, ')')).code == "condition-form");
  CHECK(refused(std::string(5000, 'x')).code == "condition-form");
  std::string row = "has skirt";
  while (row.size() < 980) row += " or has skirt";
  CHECK(asked(row.substr(0, row.rfind(" or")), {{"skirt", true}}) == Truth::yes);
}

TEST_CASE("condition: what is left open is said in plain words", "[condition]") {
  const Facts f{{"bodice", true}};
  Diagnostics diag;
  CHECK(parse_condition("has bodice and has fitted", kPlace, diag).open_question(lookup(f), "") ==
        "it fits with 2 in of ease or less");
  CHECK(parse_condition("skirt kind is not gored", kPlace, diag).open_question(lookup(f), "") == "the skirt kind is not gored");
  CHECK(parse_condition("not has skirt", kPlace, diag).open_question(lookup(f), "") == "there is no skirt");
  CHECK(parse_condition("cloth care is not never wet", kPlace, diag).open_question(lookup(f), "linen") ==
        "the cloth may be wetted");
  CHECK(parse_condition("cloth pieces >= 1", kPlace, diag).open_question(lookup(f), "linen") ==
        "the number of cloth pieces is at least 1");
  CHECK(parse_condition("not (hem depth > 2 in)", kPlace, diag).open_question(lookup(f), "") ==
        "depth of the skirt's hem is at most 2 in");
  CHECK(parse_condition("has bodice", kPlace, diag).open_question(lookup(f), "").empty());
}

TEST_CASE("condition: the facts a condition uses are named once each", "[condition]") {
  Diagnostics diag;
  const Condition c = parse_condition("has skirt and (hem depth > 2 in or not has skirt)", kPlace, diag);
  CHECK(c.facts_used() == std::vector<std::string>{"hem depth", "skirt"});
  CHECK(c.text() == "has skirt and (hem depth > 2 in or not has skirt)");
}

TEST_CASE("condition: the table of facts can be searched and spoken", "[condition]") {
  const auto& kinds = fact_kinds();
  REQUIRE(kinds.size() > 90);
  std::string before;
  for (const FactKind& k : kinds) {
    INFO(k.name);
    CHECK(before < k.name);
    before = std::string(k.name);
    CHECK(find_fact(k.name) == &k);
    CHECK_FALSE(k.meaning.empty());
    CHECK((k.type == FactType::word) == !k.words.empty());
    CHECK((k.item.empty() || k.item == "cloth" || k.item == "run" || k.item == "closure"));
    // No fact's name may hold a word of the language.
    for (const char* word : {"is", "and", "or", "not", "has"})
      CHECK((" " + std::string(k.name) + " ").find(" " + std::string(word) + " ") == std::string::npos);
  }
  CHECK(find_fact("skirts") == nullptr);
}

namespace {

// A random question with its answer worked out beside it.
struct Question {
  std::string text;
  Truth answer;
};

Question any_question(std::mt19937& dice, const Facts& facts, int deep) {
  const char* names[] = {"skirt", "bodice", "sleeves", "collar"};
  const auto roll = dice() % (deep > 4 ? 1 : 4);
  if (roll == 0) {
    const std::string name = names[dice() % 4];
    const auto at = facts.find(name);
    const Truth t = at == facts.end() ? Truth::unknown : std::get<bool>(at->second) ? Truth::yes : Truth::no;
    return {"has " + name, t};
  }
  if (roll == 1) {
    const Question q = any_question(dice, facts, deep + 1);
    return {"not (" + q.text + ")", !q.answer};
  }
  const Question a = any_question(dice, facts, deep + 1), b = any_question(dice, facts, deep + 1);
  if (roll == 2) return {"(" + a.text + ") and (" + b.text + ")", a.answer && b.answer};
  return {"(" + a.text + ") or (" + b.text + ")", a.answer || b.answer};
}

}  // namespace

TEST_CASE("condition: any nested question answers as its parts do", "[condition][law]") {
  std::mt19937 dice(1869);
  for (int i = 0; i < kLawRounds; ++i) {
    Facts facts;
    for (const char* name : {"skirt", "bodice", "sleeves", "collar"})
      if (const auto roll = dice() % 3; roll < 2) facts.emplace(name, roll == 1);
    const Question q = any_question(dice, facts, 0);
    if (q.text.size() > 900) continue;
    Diagnostics diag;
    const Condition c = parse_condition(q.text, kPlace, diag);
    CAPTURE(q.text);
    REQUIRE_FALSE(diag.has_errors());
    REQUIRE(c.holds(lookup(facts), "") == q.answer);
    REQUIRE(c.open_question(lookup(facts), "").empty() == (q.answer != Truth::unknown));
  }
}

TEST_CASE("condition: any row of words is read or refused with one message", "[condition][law]") {
  std::mt19937 dice(42);
  const char* words[] = {"has",  "skirt",      "not",   "and", "or", "(",  ")",      "is",    "hem depth", ">=",
                         "3 in", "skirt kind", "gored", "<",   "½",  "\"", "pleats", "waist", "="};
  for (int i = 0; i < kLawRounds; ++i) {
    std::string text;
    for (auto n = dice() % 12; n > 0; --n) text += std::string(words[dice() % std::size(words)]) + (dice() % 4 ? " " : "");
    Diagnostics diag;
    const Condition c = parse_condition(text, kPlace, diag);
    CAPTURE(text);
    REQUIRE(diag.in_order_found().size() <= 1);
    if (diag.has_errors()) REQUIRE(c.always());
    c.holds([](std::string_view, std::string_view) { return FactValue{}; }, "");
  }
}
