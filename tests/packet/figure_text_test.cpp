#include "packet/figure_text.h"

#include "packet/wording.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

std::string kinds(const Text& text) {  // w = words, L = length
  std::string out;
  for (const Inline& i : text) out += i.kind == Inline::Kind::length ? 'L' : 'w';
  return out;
}

Figure written_length(const std::string& key, Length value) {
  Figure f;
  f.key = key;
  f.value = value;
  f.shown = Shown::mark;
  return f;
}

}  // namespace

TEST_CASE("lengths in a finished sentence become set lengths") {
  const Text t = sentence_text("Slate wool: 5 3/8 yd needed, 5 yd bought, 3/8 yd short.", true);
  CHECK(kinds(t) == "wLwLwLw");
  CHECK(plain(t) == "Slate wool: 5 3/8 yd needed, 5 yd bought, 3/8 yd short.");
  CHECK(t[1].length.whole == "5");
  CHECK(t[1].length.numerator == "3");
  CHECK(t[5].length.whole.empty());
  CHECK(t[1].size == Inline::Size::measured);
}

TEST_CASE("numbers without a unit, words that begin like a unit, and backticks") {
  CHECK(kinds(sentence_text("The 3 inner layers", true)) == "w");
  CHECK(kinds(sentence_text("34.5 cm wide", false)) == "Lw");
  CHECK(kinds(sentence_text("2 m", false)) == "L");
  CHECK(kinds(sentence_text("2 mm", false)) == "L");
  CHECK(sentence_text("2 mm", false)[0].length.unit == "mm");
  CHECK(kinds(sentence_text("1/2", false)) == "w");
  CHECK(plain(sentence_text("give `visible` again", false)) == "give visible again");
  CHECK(sentence_text("", false).empty());
}

TEST_CASE("a figure says what it rests on, once") {
  Figures figures;
  Figure guess = written_length("measures/waist to floor/side", Length::sixty_fourths(64 * 40 + 32));
  guess.guessed = true;
  guess.guessed_from = "the front";
  figures.add(guess);
  Figure standing = written_length("pieces/band/seam allowance", Length::sixty_fourths(32));
  standing.standing = true;
  figures.add(standing);
  const FigureText text(figures, ShownIn::inches);
  CHECK(plain(text.measured("measures/waist to floor/side")) == "40 1/2 in (guessed)");
  CHECK(plain(text.checking("pieces/band/seam allowance")) == "1/2 in (maker\u2019s default)");
  CHECK(plain(text.cell("measures/waist to floor/side", true)) == "40 1/2");
  CHECK(plain(text.measured("pieces/no such")) == kFigureAbsent);
  CHECK(plain(text.cell("pieces/no such", true)) == "\u2013");
}

TEST_CASE("beside a step one is no plural") {
  Figures figures;
  Figure count;
  count.key = "cloths/wool/other parts";
  count.value = std::int64_t{1};
  figures.add(count);
  count.key = "cloths/wool/breadths";
  count.value = std::int64_t{2};
  figures.add(count);
  const FigureText text(figures, ShownIn::inches);
  CHECK(plain(text.beside_step({{"", "cloths/wool/other parts"}, {" parts", ""}})) == "1 part");
  CHECK(plain(text.beside_step({{"", "cloths/wool/other parts"}, {" rows of stitches", ""}})) == "1 row of stitches");
  CHECK(plain(text.beside_step({{"", "cloths/wool/other parts"}, {" in all", ""}})) == "1 in all");
  CHECK(plain(text.beside_step({{"", "cloths/wool/breadths"}, {" breadths", ""}})) == "2 breadths");
}

TEST_CASE("sizes name the unit once") {
  Figures figures;
  figures.add(written_length("a", Length::sixty_fourths(64 * 41 + 32)));
  figures.add(written_length("b", Length::inches(45)));
  CHECK(plain(FigureText(figures, ShownIn::inches).sizes("a", "b")) == "41 1/2 \u00D7 45 in");
}

TEST_CASE("lists and ranges in words") {
  CHECK(listed({}).empty());
  CHECK(listed({"a"}) == "a");
  CHECK(listed({"a", "b", "c"}) == "a, b and c");
  CHECK(ranges({1, 2, 3, 5, 7, 8}) == "1 to 3, 5, 7 and 8");
  CHECK(ranges({4}) == "4");
  CHECK(figure_name("pieces/skirt breadth/slate wool/cut length") == "cut length of skirt breadth in slate wool");
  CHECK(figure_name("cloths/slate wool/needed") == "length of slate wool to buy");
  CHECK(figure_name("measures/waist") == "waist");
  CHECK(ends_with_stop("Buy it") == "Buy it.");
  CHECK(ends_with_stop("Buy it.") == "Buy it.");
}

TEST_CASE("a length less than nothing in a sentence is set as a length") {
  const Text text = sentence_text("-1 1/8 in", false);
  REQUIRE(text.size() == 1);
  CHECK(text[0].kind == Inline::Kind::length);
  CHECK(text[0].length.negative);
  CHECK(text[0].length.plain() == "-1 1/8 in");
  CHECK(sentence_text("a half-in", false).size() == 1);
}
