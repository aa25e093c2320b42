#include "diagnostics/diagnostics.h"

#include <algorithm>
#include <random>

#include "support/catch.h"

using namespace gownsheaf;

namespace {

std::vector<std::string> sentences(const Diagnostics& diag) {
  std::vector<std::string> out;
  for (const Diagnostic& d : diag.sorted()) out.push_back(d.sentence);
  return out;
}

}  // namespace

TEST_CASE("messages come in the order of file, line, column and code, each once") {
  Diagnostics diag;
  diag.error("b", {"b.yaml", 1, 1, 1}, "sixth");
  diag.error("a", {"a.yaml", 10, 1, 1}, "fifth");
  diag.error("b", {"a.yaml", 2, 9, 1}, "fourth");
  diag.error("a", {"a.yaml", 2, 9, 1}, "third");
  diag.error("z", {"a.yaml", 2, 3, 1}, "second");
  diag.error("z", {"a.yaml", 2, 3, 1}, "second");
  diag.error("z", {}, "first");
  CHECK(sentences(diag) == std::vector<std::string>{"first", "second", "third", "fourth", "fifth", "sixth"});
  CHECK(diag.in_order_found().size() == 7);
  CHECK(diag.in_order_found().front().sentence == "sixth");
}

TEST_CASE("messages that differ in any part are both kept") {
  Diagnostics diag;
  Diagnostic d;
  d.code = "cloth-short";
  d.severity = Severity::hold;
  d.at = {"a.yaml", 2, 3, 1};
  d.sentence = "short";
  d.item = "slate wool";
  diag.add(d);
  d.item = "white muslin";
  diag.add(d);
  diag.add(d);
  CHECK(diag.sorted().size() == 2);
}

TEST_CASE("only an error is an error") {
  Diagnostics diag;
  CHECK_FALSE(diag.has_errors());
  for (const Severity severity : {Severity::hold, Severity::warning, Severity::note}) {
    Diagnostic d;
    d.severity = severity;
    diag.add(d);
  }
  CHECK_FALSE(diag.has_errors());
  diag.error("x", {}, "seen", "type");
  CHECK(diag.has_errors());
  CHECK(diag.all().back().hint == "type");
  CHECK(diag.all().back().severity == Severity::error);
}

TEST_CASE("the order of finding never shows") {
  std::mt19937 draw(3);
  std::vector<Diagnostic> found;
  for (int i = 0; i < 60; ++i) {
    Diagnostic d;
    d.code = std::string(1, static_cast<char>('a' + static_cast<int>(draw() % 3)));
    d.at = {draw() % 2 == 0 ? "a" : "b", static_cast<int>(draw() % 3), static_cast<int>(draw() % 3), 1};
    d.sentence = std::string(1, static_cast<char>('p' + static_cast<int>(draw() % 4)));
    d.severity = draw() % 2 == 0 ? Severity::error : Severity::hold;
    found.push_back(d);
  }
  const auto lines = [](const std::vector<Diagnostic>& all) {
    Diagnostics diag;
    for (const Diagnostic& d : all) diag.add(d);
    std::string out;
    for (const Diagnostic& d : diag.sorted()) out += render(d, {});
    return out;
  };
  const std::string first = lines(found);
  for (int round = 0; round < 50; ++round) {
    for (std::size_t i = found.size(); i > 1; --i) std::swap(found[i - 1], found[draw() % i]);
    REQUIRE(lines(found) == first);
  }
}
