#include <stdexcept>

#include "layout/placed_text.h"
#include "layout/specimen.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

Block paragraph_of(int words_count) {
  std::string s;
  for (int i = 0; i < words_count; ++i) s += "word ";
  return block(Paragraph{words(s)});
}
Block drawing_of(int height) {
  Drawing drawing;
  drawing.name = "lay";
  drawing.width = Length::points(100);
  drawing.height = Length::points(height);
  drawing.items = {Label{words("middle"), {Length::points(50), drawing.height.times(1, 2)}}};
  return block(drawing);
}
std::vector<std::string> texts_of(const PaperDocument& document) {
  std::vector<std::string> all;
  for (const Page& page : document.pages) all.push_back(joined(body_text(page)));
  return all;
}
std::string head_of(const Page& page) {
  std::string all;
  for (const Mark& mark : page.marks) {
    const auto* text = std::get_if<TextMark>(&mark.what);
    if (text != nullptr && text->at.y == Length::points(47)) all += words_of(*text) + "|";
  }
  return all;
}
StepBlock step_of(int number, bool gate = false) {
  StepBlock step;
  step.number = number;
  step.gate = gate;
  step.act = words("act" + std::to_string(number));
  step.anchor = "step " + std::to_string(number);
  return step;
}

}  // namespace

TEST_CASE("both papers hold a live area 486 wide", "[pages]") {
  const PageShape letter = page_shape(PaperName::letter, HoleCount::three);
  CHECK(letter.width == Length::points(612));
  CHECK(letter.bottom - letter.top == 680);
  REQUIRE(letter.holes_y.size() == 3);
  CHECK(pt(letter.holes_y[0]) == pt(89.86));  // 108 mm = 306.14 pt above the middle
  const PageShape a4 = page_shape(PaperName::a4, HoleCount::two);
  CHECK(a4.height == pt(841.89));
  CHECK(a4.left == 68);
  REQUIRE(a4.holes_y.size() == 2);
  CHECK(pt(a4.holes_y[1] - a4.holes_y[0]) == pt(226.77));  // 80 mm
  CHECK(page_shape(PaperName::a4, HoleCount::none).holes_y.empty());
}

TEST_CASE("every page says which project, which packet, which page of how many", "[pages]") {
  const PaperDocument document =
      kBench.pages({sheet_of("A", {paragraph_of(9)}), sheet_of("B", {paragraph_of(9)})}, kBench.pin_up);
  REQUIRE(document.pages.size() == 2);
  CHECK(head_of(document.pages[0]) == "Cape|Set, packet 4f2a|Page 1 of 2|");
  CHECK(head_of(document.pages[1]) == "Cape|Set, packet 4f2a|Page 2 of 2|");
  CHECK(document.title == "Cape");
  CHECK(document.print_scaling_none);
}

TEST_CASE("a long project title is cut and never reaches the middle of the head", "[pages]") {
  const Running running{"A very long title of a cape that nobody will ever be able to read in one go", "Pin-up set, packet 4f2a"};
  const PaperDocument document =
      lay_out({sheet_of("A", {paragraph_of(3)})}, page_shape(PaperName::letter, HoleCount::none), running, kBench.pin_up);
  const std::string head = head_of(document.pages.at(0));
  // 249 - 12 = 237 points hold 43 letters of 5.5: 42 and the ellipsis.
  CHECK(head == "A very long title of a cape that nobody wi\xE2\x80\xA6|Pin-up set, packet 4f2a|Page 1 of 1|");
}

TEST_CASE("contents lines carry the page and link to it", "[pages]") {
  Sheet first = sheet_of("Contents", {block(ContentsLine{"Work", "Work"}), block(ContentsLine{"Lost", "nowhere"})});
  const PaperDocument document =
      kBench.pages({first, sheet_of("Cut", {paragraph_of(3)}), sheet_of("Work", {block(step_of(1))})}, kBench.binder);
  const Page& contents = document.pages.at(0);
  CHECK(joined(body_text(contents)) == "Contents|Work|3|Lost");
  CHECK(find_text(body_text(contents), "3")->right == Length::points(562));
  std::vector<std::string> links, anchors;
  for (const Page& page : document.pages) {
    for (const Mark& mark : page.marks) {
      if (const auto* link = std::get_if<LinkMark>(&mark.what)) links.push_back(link->anchor);
      if (const auto* anchor = std::get_if<AnchorMark>(&mark.what)) anchors.push_back(anchor->name);
    }
  }
  CHECK(links == std::vector<std::string>{"Work"});  // no link leads nowhere
  CHECK(anchors == std::vector<std::string>{"Contents", "Cut", "Work", "step 1"});
}

TEST_CASE("bookmarks are sheets under their section word", "[pages]") {
  Sheet buy = sheet_of("To buy", {paragraph_of(3)}), list = sheet_of("Cutting list", {paragraph_of(3)}),
        lay = sheet_of("Layout", {paragraph_of(3)});
  buy.section = Section::buy;
  list.section = lay.section = Section::cut;
  const PaperDocument document = kBench.pages({buy, list, lay}, kBench.pin_up);
  std::string all;
  for (const Bookmark& mark : document.bookmarks)
    all += std::to_string(mark.level) + mark.title + std::to_string(mark.page) + " ";
  CHECK(all == "0Buy0 1To buy0 0Cut1 1Cutting list1 1Layout2 ");
}

TEST_CASE("a gate ends its page in a pin-up set, not in a binder", "[pages]") {
  const Sheet sheet = sheet_of("Work", {block(step_of(1)), block(step_of(2, true)), block(step_of(3)), block(Gap{40})});
  CHECK(texts_of(kBench.pages({sheet}, kBench.pin_up)) ==
        std::vector<std::string>{"Work|1|act1|2|act2", "Work, continued|3|act3"});
  CHECK(kBench.pages({sheet}, kBench.binder).pages.size() == 1);
  // White after the last gate makes no empty page.
  CHECK(kBench.pages({sheet_of("Work", {block(step_of(1, true)), block(Gap{40})})}, kBench.pin_up).pages.size() == 1);
}

TEST_CASE("a step shows its figures at the right and its warning on a line of its own", "[pages]") {
  StepBlock step = step_of(7);
  step.reason = words("because");
  step.cannot_undo = "cuts good cloth";
  step.holds = {tag(Tag::hold) + words("until noon ") + tick_box()};
  step.figures = {measured(length("45")) + condensed(" two"), measured(length("13")) + condensed(" one")};
  const std::vector<PlacedText> texts = body_text(kBench.pages({sheet_of("Work", {block(step)})}, kBench.pin_up).pages.at(0));
  CHECK(joined(texts) == "Work|7|HOLD|until noon|act7|because|Cannot be undone: cuts good cloth.|45 in two|13 in one");
  CHECK(find_text(texts, "45 in two")->right == Length::points(562));
  CHECK(find_text(texts, "45 in two")->base == find_text(texts, "7")->base);
  CHECK(find_text(texts, "act7")->base > find_text(texts, "until noon")->base);
}

TEST_CASE("binder sheets share a page only when both fit whole", "[pages]") {
  Sheet first = sheet_of("First", {paragraph_of(200)}), second = sheet_of("Second", {paragraph_of(200)}),
        third = sheet_of("Third", {paragraph_of(2000)});
  second.starts_page = third.starts_page = false;
  const std::vector<std::string> texts = texts_of(kBench.pages({first, second, third}, kBench.binder));
  REQUIRE(texts.size() >= 2);
  CHECK(holds(texts[0], "Second"));
  CHECK_FALSE(holds(texts[0], "Third"));
  second.starts_page = true;
  CHECK(kBench.pages({first, second}, kBench.binder).pages.size() == 2);
}

TEST_CASE("a binder sheet begins under the end of one of its own section, not of another", "[pages]") {
  Sheet first = sheet_of("First", {paragraph_of(1700)}), second = sheet_of("Second", {paragraph_of(20)});
  second.starts_page = false;
  const std::size_t alone = kBench.pages({first}, kBench.binder).pages.size();
  REQUIRE(alone > 1);
  CHECK(kBench.pages({first, second}, kBench.binder).pages.size() == alone);
  second.section = Section::sums;
  CHECK(kBench.pages({first, second}, kBench.binder).pages.size() == alone + 1);
}

namespace {

Table rows_of(int count, const std::string& said) {
  Table table;
  table.columns = {{words("piece"), Column::Kind::words, 100}, {words("remark"), Column::Kind::words}};
  for (int i = 1; i <= count; ++i) table.rows.push_back({Row::Kind::plain, {{bold("row")}, {words(said)}}});
  return table;
}
Length lowest_base(const Page& page) {
  Length low;
  for (const PlacedText& text : body_text(page)) low = std::max(low, text.base);
  return low;
}

}  // namespace

TEST_CASE("a sheet a few lines too long is set closer; one much too long, or short enough, is not", "[pages]") {
  // Pin-up, Letter: 24 rows of 25 fit the first page, 29 of 21.
  for (int rows = 20; rows <= 60; ++rows) {
    CAPTURE(rows);
    const PaperDocument document = kBench.pages({sheet_of("List", {block(rows_of(rows, "no"))})}, kBench.pin_up);
    const std::size_t usual = rows <= 24 ? 1 : rows <= 49 ? 2 : 3, close = rows <= 29 ? 1 : rows <= 59 ? 2 : 3;
    const std::vector<PlacedText> texts = body_text(document.pages.front());
    const Length apart = texts.at(6).base - texts.at(4).base;
    if (document.pages.size() == usual) CHECK(apart == Length::points(25));
    else CHECK((document.pages.size() == close && apart == Length::points(21)));
    if (rows > 24 && rows <= 29) CHECK(document.pages.size() == 1);
    if (rows > 29 && rows <= 33) CHECK(document.pages.size() == 2);
    for (const Page& page : document.pages) CHECK(lowest_base(page) <= Length::points(66 + 680));
  }
}

TEST_CASE("plain words of rows go to Condensed before a page is begun for them; bold ones stay", "[pages]") {
  // 16 remarks of two lines in Regular, one in Condensed.
  const std::string remark(55, 'w');
  const PaperDocument document =
      kBench.pages({sheet_of("List", {block(rows_of(16, remark.substr(0, 27) + " " + remark.substr(28)))})}, kBench.pin_up);
  CHECK(document.pages.size() == 1);
}

TEST_CASE("of a sheet's shorter forms the longest that saves a page is taken, and none without need", "[pages]") {
  Sheet sheet = sheet_of("List", {block(rows_of(20, "no"))});
  int made = 0;
  const auto shorter = [&](int rows) {
    sheet.shorter.push_back([&made, rows] {
      ++made;
      return std::vector<Block>{block(rows_of(rows, "shorter"))};
    });
  };
  for (int rows : {70, 40, 22, 3}) shorter(rows);
  CHECK_FALSE(holds(texts_of(kBench.pages({sheet}, kBench.pin_up)).at(0), "shorter"));
  CHECK(made == 0);
  sheet.blocks = {block(rows_of(45, "no"))};
  const std::vector<std::string> texts = texts_of(kBench.pages({sheet}, kBench.pin_up));
  REQUIRE(texts.size() == 1);
  std::size_t rows = 0;
  for (std::size_t at = texts[0].find("shorter"); at != std::string::npos; at = texts[0].find("shorter", at + 1)) ++rows;
  CHECK(rows == 22);
}

TEST_CASE("a shorter form that still ends with few lines is set closer, if that saves a page more", "[pages]") {
  // 24 rows fit the first page, 29 set tight.
  for (const int rows : {28, 35}) {
    Sheet sheet = sheet_of("List", {block(rows_of(70, "no"))});
    sheet.shorter.push_back([rows] { return std::vector<Block>{block(rows_of(rows, "shorter"))}; });
    const PaperDocument document = kBench.pages({sheet}, kBench.pin_up);
    const std::vector<PlacedText> texts = body_text(document.pages.front());
    CHECK(document.pages.size() == (rows == 28 ? 1 : 2));
    CHECK(texts.at(6).base - texts.at(4).base == Length::points(rows == 28 ? 21 : 25));
  }
}

TEST_CASE("a sheet for what found no room is laid out only where a shorter form names it, with its page", "[pages]") {
  Sheet sheet = sheet_of("List", {block(rows_of(20, "no"))}), rest = sheet_of("Rest", {paragraph_of(3)});
  sheet.shorter.push_back([] {
    return std::vector<Block>{block(rows_of(20, "no")), block(ContentsLine{"the rest: page", "Rest"})};
  });
  rest.when_named = true;
  const std::vector<std::string> without =
      texts_of(kBench.pages({sheet, sheet_of("Next", {paragraph_of(3)}), rest}, kBench.pin_up));
  CHECK(without.size() == 2);
  sheet.blocks = {block(rows_of(40, "no"))};
  const std::vector<std::string> with = texts_of(kBench.pages({sheet, sheet_of("Next", {paragraph_of(3)}), rest}, kBench.pin_up));
  REQUIRE(with.size() == 3);
  CHECK(holds(with[0], "the rest: page|3"));
  CHECK(holds(with[2], "Rest"));
}

TEST_CASE("drawings below one another stand without white, and a page that begins with one has its head again", "[pages]") {
  const auto head = std::make_shared<const Drawing>([] {
    Drawing d = std::get<Drawing>(drawing_of(20).what);
    std::get<Label>(d.items[0]).text = words("head");
    return d;
  }());
  Sheet sheet = sheet_of("Weeks", {block(*head, true)});
  for (int i = 0; i < 20; ++i) {
    Block week = drawing_of(50);
    Drawing& d = std::get<Drawing>(week.what);
    std::get<Label>(d.items[0]).text = words("week" + std::to_string(i));
    d.below_last = true;
    d.head = head;
    sheet.blocks.push_back(week);
  }
  const PaperDocument document = kBench.pages({sheet}, kBench.pin_up);
  REQUIRE(document.pages.size() == 2);
  for (const Page& page : document.pages) CHECK(find_text(body_text(page), "head") != nullptr);
  const std::vector<PlacedText> first = body_text(document.pages[0]);
  CHECK(find_text(first, "week1")->base - find_text(first, "week0")->base == Length::points(50));
  CHECK(find_text(first, "week11") != nullptr);  // 12 weeks of 50 and the head below a title of 40
}

TEST_CASE("a heading goes over with what it heads", "[pages]") {
  for (int words_before = 200; words_before < 320; words_before += 4) {
    Sheet sheet = sheet_of("Notes", {paragraph_of(words_before), block(Heading{words("Heading")}), paragraph_of(60)});
    for (const Page& page : kBench.pages({sheet}, kBench.pin_up).pages) {
      CAPTURE(words_before);
      CHECK(body_text(page).back().words != "Heading");
    }
  }
}

TEST_CASE("keep rules never wait for room that cannot come", "[pages]") {
  std::vector<Block> blocks;
  for (int i = 0; i < 40; ++i) blocks.push_back(Block{Paragraph{words("note" + std::to_string(i))}, true});
  const std::vector<std::string> texts = texts_of(kBench.pages({sheet_of("Notes", blocks)}, kBench.pin_up));
  CHECK(texts.size() == 2);
  CHECK(holds(texts.back(), "note39"));
  // Two drawings that want one page but need two.
  Sheet pair = sheet_of("Lay", {drawing_of(500), drawing_of(500)});
  pair.blocks[0].keep_with_next = true;
  CHECK(kBench.pages({pair}, kBench.pin_up).pages.size() == 2);
}

TEST_CASE("a paragraph longer than a page is parted between lines", "[pages]") {
  const PaperDocument document =
      kBench.pages({sheet_of("Notes", {block(Heading{words("Heading")}), paragraph_of(1500)})}, kBench.pin_up);
  CHECK(document.pages.size() > 3);
  std::size_t found = 0;
  for (const Page& page : document.pages) {
    for (const PlacedText& text : body_text(page)) {
      CHECK(text.base <= Length::points(746));
      for (std::size_t at = text.words.find("word"); at != std::string::npos; at = text.words.find("word", at + 1)) ++found;
    }
  }
  CHECK(found == 1500);
  CHECK(holds(joined(body_text(document.pages[0])), "Heading|word"));
}

TEST_CASE("a drawing as tall as the live area has a page of its own; a taller one is refused by name", "[pages]") {
  const PaperDocument document =
      kBench.pages({sheet_of("Lay", {paragraph_of(3), drawing_of(680), paragraph_of(3)})}, kBench.pin_up);
  REQUIRE(document.pages.size() == 3);
  CHECK(joined(body_text(document.pages[1])) == "middle");
  CHECK_THROWS_AS(kBench.pages({sheet_of("Lay", {drawing_of(681)})}, kBench.pin_up), std::length_error);
}

TEST_CASE("hatch lines run under a clip, at exact places", "[drawing]") {
  Drawing drawing;
  drawing.width = drawing.height = Length::points(30);
  drawing.items = {Hatch{path_of(Box{{}, {}, Length::points(30), Length::points(20)}), 45, 10, 0.5}};
  const PaperDocument document = kBench.pages({sheet_of("Lay", {block(drawing)})}, kBench.pin_up);
  const ClipMark* clip = nullptr;
  for (const Mark& mark : document.pages.at(0).marks) {
    if (const auto* found = std::get_if<ClipMark>(&mark.what)) clip = found;
  }
  REQUIRE(clip != nullptr);
  // x + y = 10, 20, 30, 40 cross 30 x 20; 0 and 50 only touch its corners.
  REQUIRE(clip->inside.size() == 4);
  const Point corner = clip->path.front().to;
  const auto& third = std::get<StrokeMark>(clip->inside[2].what).path;
  CHECK(third[0].to == Point{corner.x + Length::points(10), corner.y + Length::points(20)});
  CHECK(third[1].to == Point{corner.x + Length::points(30), corner.y});
}

TEST_CASE("labels hang from the point they name", "[drawing]") {
  Drawing drawing;
  drawing.width = drawing.height = Length::points(100);
  const Point at{Length::points(50), Length::points(40)};
  drawing.items = {Label{words("ab"), at, Label::Across::middle, Label::Up::middle},
                   Label{words("cd"), at, Label::Across::right, Label::Up::top, 0, true, 10}};
  const std::vector<PlacedText> texts = body_text(kBench.pages({sheet_of("L", {block(drawing)})}, kBench.pin_up).pages.at(0));
  const Length x = Length::points(76 + 50), y = Length::points(66 + 40 + 6 + 40);
  CHECK(find_text(texts, "ab")->left == x - Length::points(7));
  CHECK(find_text(texts, "ab")->base == y + Length::points(14).times(7, 10).times(1, 2));  // half a capital
  CHECK(find_text(texts, "cd")->right == x);
  CHECK(find_text(texts, "cd")->base == y + Length::points(7));
}

TEST_CASE("all kinds of block on both papers and in both scales stay on the page", "[pages]") {
  for (const Typesetter* type : {&kBench.pin_up, &kBench.binder}) {
    for (PaperName paper : {PaperName::letter, PaperName::a4}) {
      const PageShape shape = page_shape(paper, HoleCount::three);
      const PaperDocument document = lay_out(specimen(), shape, {"Cape", "Set"}, *type);
      for (const Page& page : document.pages) {
        for (const PlacedText& text : body_text(page)) {
          CAPTURE(text.words);
          CHECK(text.left >= pt(shape.left));
          CHECK(text.right <= pt(shape.left + 486));
          CHECK(text.base <= pt(shape.bottom));
        }
      }
    }
  }
}
