#include "diagnostics/diagnostics.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

Diagnostic message(SourceSpan at, std::string sentence = "seen", std::string hint = "") {
  Diagnostic d;
  d.code = "some-code";
  d.at = std::move(at);
  d.sentence = std::move(sentence);
  d.hint = std::move(hint);
  return d;
}

std::string rendered(const std::string& line, int column, int length) {
  return render(message({"a.yaml", 1, column, length}), {{"a.yaml", {line}}});
}

}  // namespace

TEST_CASE("a message shows the place, the line, the carets and what to type") {
  Diagnostic d = message({"dress.yaml", 2, 54, 5}, "is `width` on bodice front cut or finished?",
                         "stitch line to stitch line is `finished width`; where the scissors go is `cut width`");
  d.code = "cut-or-finished";
  const std::vector<SourceText> sources = {
      {"other.yaml", {"x", "y"}},
      {"dress.yaml", {"pieces:", "  - { piece: bodice front, make: pair, from: [wool], width: 10 1/2 in }"}}};
  CHECK(render(d, sources) ==
        "dress.yaml:2:54: error [cut-or-finished]: is `width` on bodice front cut or finished?\n"
        "      - { piece: bodice front, make: pair, from: [wool], width: 10 1/2 in }\n"
        "                                                         ^^^^^\n"
        "    hint: stitch line to stitch line is `finished width`; where the scissors go is `cut width`\n");
}

TEST_CASE("further places and a recorded decision follow") {
  Diagnostic d = message({"a.yaml", 2, 1, 5}, "`waist` is given here and on line 1.", "keep one");
  d.severity = Severity::hold;
  d.also = {{"a.yaml", 1, 1, 5}, {"b.yaml", 9, 2, 1}};
  d.accepted_because = "the joins hide in the pleats";
  CHECK(render(d, {{"a.yaml", {"waist: 26 in", "waist: 27 in"}}}) ==
        "a.yaml:2:1: hold [some-code]: `waist` is given here and on line 1.\n"
        "    waist: 27 in\n"
        "    ^^^^^\n"
        "    hint: keep one\n"
        "    also: a.yaml:1\n"
        "    also: b.yaml:9\n"
        "    decided: the joins hide in the pleats\n");
}

TEST_CASE("carets stand under tabs, combining marks and wide characters") {
  CHECK(rendered("\twidth: 3", 2, 5) == "a.yaml:1:2: error [some-code]: seen\n    \twidth: 3\n    \t^^^^^\n");
  // é of one character, and e with a combining accent: two characters in one column
  CHECK(rendered("é: x", 4, 1) == "a.yaml:1:4: error [some-code]: seen\n    é: x\n       ^\n");
  CHECK(rendered("e\u0301: x", 5, 1) == "a.yaml:1:5: error [some-code]: seen\n    e\u0301: x\n       ^\n");
  // each wide character takes two columns: one caret under the first of them
  CHECK(rendered("花花: x", 5, 1) == "a.yaml:1:5: error [some-code]: seen\n    花花: x\n          ^\n");
  CHECK(rendered("花花: x", 1, 2) == "a.yaml:1:1: error [some-code]: seen\n    花花: x\n    ^ ^\n");
}

TEST_CASE("a place past the end of the line or without length has one caret") {
  CHECK(rendered("bust", 5, 0) == "a.yaml:1:5: error [some-code]: seen\n    bust\n        ^\n");
  CHECK(rendered("bust", 5, 9) == "a.yaml:1:5: error [some-code]: seen\n    bust\n        ^\n");
  CHECK(rendered("bust", 3, 99) == "a.yaml:1:3: error [some-code]: seen\n    bust\n      ^^\n");
  CHECK(rendered("", 1, 1) == "a.yaml:1:1: error [some-code]: seen\n    \n    ^\n");
  CHECK(rendered("bust\r", 1, 4) == "a.yaml:1:1: error [some-code]: seen\n    bust\n    ^^^^\n");
}

TEST_CASE("without a place, or without the file, the line is left out") {
  CHECK(render(message({"a.yaml", 7, 1, 1}), {{"a.yaml", {"x"}}}) == "a.yaml:7:1: error [some-code]: seen\n");
  CHECK(render(message({"a.yaml", 7, 1, 1}), {}) == "a.yaml:7:1: error [some-code]: seen\n");
  CHECK(render(message({"a.yaml", 0, 0, 0}), {{"a.yaml", {"x"}}}) == "a.yaml: error [some-code]: seen\n");
  CHECK(render(message({}), {}) == "error [some-code]: seen\n");
}

TEST_CASE("a long line is cut around the place") {
  const std::string line = std::string(300, 'a') + "HERE" + std::string(300, 'b');
  const std::string text = rendered(line, 301, 4);
  // 80 characters before the place, 160 in all, a sign at both cuts
  CHECK(text == "a.yaml:1:301: error [some-code]: seen\n    …" + std::string(80, 'a') + "HERE" + std::string(76, 'b') +
                    "…\n    " + std::string(81, ' ') + "^^^^\n");
}

TEST_CASE("nothing in a file can steer the terminal") {
  const std::string text = render(message({"a\x1b[2J.yaml", 1, 1, 1}, "seen \x1b[31m`x`\nand more", "type\x07 it"),
                                  {{"a\x1b[2J.yaml", {"w\x1b[0midth\xff"}}});
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find('\x07') == std::string::npos);
  CHECK(text ==
        "a\uFFFD[2J.yaml:1:1: error [some-code]: seen \uFFFD[31m`x` and more\n"
        "    w\uFFFD[0midth\uFFFD\n"
        "    ^\n"
        "    hint: type\uFFFD it\n");
}

TEST_CASE("every severity has its word") {
  CHECK(word_for(Severity::error) == "error");
  CHECK(word_for(Severity::hold) == "hold");
  CHECK(word_for(Severity::warning) == "warning");
  CHECK(word_for(Severity::note) == "note");
}
