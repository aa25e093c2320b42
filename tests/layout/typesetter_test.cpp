#include "layout/placed_text.h"
#include "layout/specimen.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

const Typesetter& pin_up() { return kBench.pin_up; }

std::vector<std::string> plain_lines(const Text& text, double room) {
  std::vector<std::string> all;
  for (const Text& line : pin_up().lines(text, pt(room))) all.push_back(plain(line));
  return all;
}
const TextMark& text_mark(const std::vector<Mark>& marks, std::size_t nth) {
  for (const Mark& mark : marks) {
    const auto* text = std::get_if<TextMark>(&mark.what);
    if (text != nullptr && nth-- == 0) return *text;
  }
  throw std::out_of_range("no such text");
}

}  // namespace

TEST_CASE("a line is as wide as its letters", "[typesetter]") {
  // Five letters (the space is one) of half an em at 14 pt: 5 x 7 = 35.
  CHECK(pin_up().width(words("ab cd")) == Length::points(35));
  // The same run, however it was put together: 35 again, not a sum of two roundings.
  CHECK(pin_up().width(words("ab ") + words("cd")) == Length::points(35));
  // Spaces at the ends and doubled ones are not set.
  CHECK(pin_up().width(words(" ab  cd ")) == Length::points(35));
  CHECK(pin_up().width(words("abc"), 8.5) == pt(12.75));
  CHECK(pin_up().width(Text{}) == Length());
}

TEST_CASE("a set fraction is built from small digits, never ready made", "[typesetter]") {
  const std::vector<Mark> marks = pin_up().set(measured(length("40", "1", "2")), {Length(), Length::points(100)});
  REQUIRE(marks.size() == 1);
  const TextMark& mark = text_mark(marks, 0);
  REQUIRE(mark.runs.size() == 5);
  // Size 18: two digits are 18 wide; the space is squeezed to 0.06 x 18 = 1.08; the numerator (12 pt) is 6 wide and
  // 0.30 x 18 = 5.4 high; the stroke is pulled in by 0.045 x 18 = 0.81 on both sides and 9 wide; the denominator is
  // 0.03 x 18 = 0.54 low and 6 wide; then " in", 27 wide.
  CHECK(mark.runs[0].utf8 == "40 ");
  CHECK(mark.runs[0].face == Face::bold);
  CHECK(mark.runs[0].size == Length::points(18));
  CHECK(mark.runs[1].utf8 == "1");
  CHECK(mark.runs[1].offset == pt(19.08));
  CHECK(mark.runs[1].size == Length::points(12));
  CHECK(mark.runs[1].rise == pt(5.4));
  CHECK(mark.runs[2].utf8 == "/");
  CHECK(mark.runs[2].face == Face::regular);
  CHECK(mark.runs[2].size == Length::points(18));
  CHECK(mark.runs[2].offset == pt(24.27));
  CHECK(mark.runs[3].utf8 == "2");
  CHECK(mark.runs[3].offset == pt(32.46));
  CHECK(mark.runs[3].rise == -pt(0.54));
  CHECK(mark.runs[4].utf8 == " in");
  CHECK(mark.runs[4].offset == pt(38.46));
  CHECK(pin_up().width(measured(length("40", "1", "2"))) == pt(65.46));
  CHECK(words_of(mark) == "40 1/2 in");
}

TEST_CASE("a lone fraction has no space before it; a negative one has the true minus", "[typesetter]") {
  const TextMark lone = text_mark(pin_up().set(checking(length("", "3", "8")), {}), 0);
  CHECK(words_of(lone) == "3/8 in");
  CHECK(lone.runs[0].offset == Length());
  const TextMark negative = text_mark(pin_up().set(checking(length("2", "3", "8", "in", true)), {}), 0);
  CHECK(words_of(negative) ==
        "\xE2\x88\x92"
        "2 3/8 in");
}

TEST_CASE("measured lengths and verdicts stand out of the text they are in", "[typesetter]") {
  const TextMark mark = text_mark(pin_up().set(words("cut ") + measured(length("3")) + words(" up"), {}), 0);
  REQUIRE(mark.runs.size() == 3);
  CHECK(mark.runs[0].size == Length::points(14));
  CHECK(mark.runs[1].size == Length::points(18));
  // In a title a length is not made smaller.
  CHECK(text_mark(pin_up().set(measured(length("3")), {}, 28), 0).runs[0].size == Length::points(28));
  CHECK(text_mark(kBench.binder.set(measured(length("3")), {}), 0).runs[0].size == Length::points(12));
  // Four letters and a space at 14 (28), then "3 in" at 18 (36), then " up" at 14 (21).
  CHECK(pin_up().width(words("cut ") + measured(length("3")) + words(" up")) == Length::points(85));
}

TEST_CASE("a character that the face lacks goes to the fallback face", "[typesetter]") {
  struct NoArrow : HalfEmFont {
    bool covers(Face face, char32_t c) const override { return face == Face::fallback || c != U'\u2192'; }
    int advance(Face face, char32_t) const override { return face == Face::fallback ? 600 : 500; }
  };
  const NoArrow font;
  const Typesetter type(font, pin_up_scale());
  const TextMark mark = text_mark(type.set(words("a\xE2\x86\x92"
                                                 "b"),
                                           {}),
                                  0);
  REQUIRE(mark.runs.size() == 3);
  CHECK(mark.runs[1].face == Face::fallback);
  CHECK(mark.runs[2].face == Face::regular);
  // 7 + 0.6 x 14 + 7
  CHECK(mark.runs[2].offset == pt(15.4));
  CHECK(type.width(words("a\xE2\x86\x92"
                         "b")) == pt(22.4));
}

TEST_CASE("lines end at spaces only", "[typesetter]") {
  // 10 letters of 7 = 70.
  CHECK(plain_lines(words("one two three"), 70) == std::vector<std::string>{"one two", "three"});
  CHECK(plain_lines(words("one two\xC2\xA0three"), 70) == std::vector<std::string>{"one", "two three"});
  CHECK(plain_lines(words("one, ") + bold("tw") + words("o."), 63) == std::vector<std::string>{"one, two."});
  CHECK(plain_lines(words("one, ") + bold("tw") + words("o."), 62) == std::vector<std::string>{"one,", "two."});
  // A length is never parted: "3 1/2 in" is 14 pt less wide than 70 but does not fit behind "one two".
  CHECK(plain_lines(words("one two ") + checking(length("3", "1", "2")), 98).back() == "3 1/2 in");
  CHECK(plain_lines(Text{}, 70).empty());
}

TEST_CASE("a word longer than the line is broken between letters, and nothing is lost", "[typesetter]") {
  CHECK(plain_lines(words("a abcdefghijkl b"), 35) == std::vector<std::string>{"a", "abcde", "fghij", "kl b"});
  CHECK(plain_lines(words("abc"), 1) == std::vector<std::string>{"a", "b", "c"});
}

TEST_CASE("a tick box stays with its own word and away from the next", "[typesetter]") {
  const Text boxes = tick_box() + words("tight ") + tick_box() + words(" gapes");
  // Box 15, 5 to its word of 35, 16 to the next box, 15, 5, 35.
  CHECK(pin_up().width(boxes) == Length::points(126));
  CHECK(pin_up().lines(boxes, Length::points(126)).size() == 1);
  const std::vector<Text> two = pin_up().lines(boxes, Length::points(90));
  REQUIRE(two.size() == 2);
  CHECK(two[0].front().kind == Inline::Kind::tick_box);
  CHECK(two[1].front().kind == Inline::Kind::tick_box);
  // A box with nothing after it belongs to the word before: 7 x 4 + 5 + 15.
  CHECK(pin_up().width(words("here ") + tick_box()) == Length::points(48));
  CHECK(pin_up().lines(words("until here ") + tick_box(), Length::points(70)).back().back().kind == Inline::Kind::tick_box);
  CHECK(plain_lines(words("until here ") + tick_box(), 80) == std::vector<std::string>{"until", "here"});
}

TEST_CASE("a tag is white on black or outlined, and keeps its first word", "[typesetter]") {
  const std::vector<Mark> hold = pin_up().set(tag(Tag::hold) + words(" until Friday"), {Length(), Length::points(100)});
  REQUIRE(hold.size() == 3);
  CHECK(std::holds_alternative<FillMark>(hold[0].what));
  CHECK(text_mark(hold, 0).white);
  CHECK(text_mark(hold, 0).at.x == Length::points(5));
  CHECK(text_mark(hold, 0).runs[0].face == Face::condensed_bold);
  CHECK_FALSE(text_mark(hold, 1).white);
  CHECK(text_mark(hold, 1).at.x == Length::points(5 + 28 + 5 + 5));
  const std::vector<Mark> guessed = pin_up().set(tag(Tag::guessed), {});
  CHECK(std::get<StrokeMark>(guessed[0].what).dash == std::vector<int>{4, 2});
  CHECK_FALSE(text_mark(guessed, 0).white);
  CHECK(std::get<StrokeMark>(pin_up().set(tag(Tag::warning), {})[0].what).dash.empty());
  // 38 + 5 + 35 does not fit 77, and the tag does not stand alone.
  CHECK(plain_lines(words("xx ") + tag(Tag::hold) + words(" until noon"), 95) ==
        std::vector<std::string>{"xx", "HOLD until", "noon"});
}

TEST_CASE("upright text reads from below", "[typesetter]") {
  const std::vector<Mark> marks = pin_up().set(words("ab ") + tag(Tag::hold), {Length::points(50), Length::points(300)}, 0, 90);
  const TextMark& first = text_mark(marks, 0);
  CHECK(first.angle == 90);
  CHECK(first.at == Point{Length::points(50), Length::points(300)});
  // "ab" is 14 long, then 5 of white, then 5 of padding: the tag's letters start 24 further up the page.
  CHECK(text_mark(marks, 1).at == Point{Length::points(50), Length::points(276)});
}

TEST_CASE("plain text is what a reader would say", "[typesetter]") {
  CHECK(plain(tag(Tag::hold) + words("until ") + checking(length("13", "1", "2")) + words(" is here")) ==
        "HOLD until 13 1/2 in is here");
  CHECK(plain(words("step\xC2\xA0"
                    "7")) == "step 7");
}
