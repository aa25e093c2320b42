#include "layout/placed_text.h"
#include "layout/specimen.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

constexpr std::int64_t kLeft = 76, kRight = 562;  // of the live area on Letter

// Rows of four lines, the same tall however close they are set: seven on a first page, seven on the next.
Table tall_rows(int rows) {
  Table table;
  table.columns = {{words("piece"), Column::Kind::words}, {words("across"), Column::Kind::length, 0, true}};
  Inline end;
  end.kind = Inline::Kind::line_break;
  for (int i = 1; i <= rows; ++i) {
    Text name = words("row" + std::to_string(i));
    for (int k = 0; k < 3; ++k) name = name + Text{end} + words("-");
    table.rows.push_back({Row::Kind::plain, {{name}, {checking(length(std::to_string(i), "", "", ""))}}});
  }
  return table;
}

Table two_columns(int rows) {
  Table table;
  table.columns = {{words("piece"), Column::Kind::words}, {words("across"), Column::Kind::length, 0, true}};
  for (int i = 1; i <= rows; ++i) {
    table.rows.push_back(
        {Row::Kind::plain, {{words("row" + std::to_string(i))}, {checking(length(std::to_string(i), "", "", ""))}}});
  }
  return table;
}

std::vector<std::string> pages_of(const Table& table, const Typesetter& type) {
  std::vector<std::string> all;
  for (const Page& page : kBench.pages({sheet_of("List", {block(table)})}, type).pages) all.push_back(joined(body_text(page)));
  return all;
}

}  // namespace

TEST_CASE("lengths of a column align on the fraction", "[table]") {
  Table table;
  table.columns = {{words("piece"), Column::Kind::words}, {words("across"), Column::Kind::length, 0, true}};
  const auto row = [&](const char* name, Text cell) {
    table.rows.push_back({Row::Kind::plain, {{words(name)}, {std::move(cell)}}});
  };
  row("front", checking(length("41", "1", "2", "")));
  row("back", checking(length("9", "15", "16", "")));
  row("cuff", checking(length("124", "", "", "")));
  row("band", tag(Tag::short_of) + checking(length("", "3", "8", "")));
  const PaperDocument document = kBench.pages({sheet_of("List", {block(table)})}, kBench.pin_up);
  const std::vector<PlacedText> texts = body_text(document.pages.at(0));
  // Bold 18: the widest fraction is 15/16, 12 + 9 + 12 - 2 x 0.81 = 31.38; with its squeezed space 32.46. It ends at
  // the right edge of the last column, so every whole number ends at 562 - 32.46.
  const Length split = Length::points(kRight) - pt(32.46);
  REQUIRE(find_text(texts, "124") != nullptr);
  CHECK(find_text(texts, "124")->right == split);
  REQUIRE(find_text(texts, "41 1/2") != nullptr);
  CHECK(find_text(texts, "41 1/2")->left == split - Length::points(18));
  CHECK(find_text(texts, "9 15/16")->left == split - Length::points(9));
  CHECK(find_text(texts, "3/8")->left == split + pt(1.08));
  // The tag stands 5 left of the number, padding included.
  CHECK(find_text(texts, "SHORT")->right == split + pt(1.08) - Length::points(10));
  // The head ends with the slot.
  CHECK(find_text(texts, "across")->right == Length::points(kRight));
  CHECK(find_text(texts, "piece")->left == Length::points(kLeft));
}

TEST_CASE("counts end at one x, estimates align on the point", "[table]") {
  Table table;
  table.columns = {
      {words("cut"), Column::Kind::count, 60}, {words("g"), Column::Kind::estimate, 150}, {words("what"), Column::Kind::words}};
  table.rows = {{Row::Kind::plain, {{words("2")}, {words("about 2.7 g")}, {words("hooks")}}},
                {Row::Kind::plain, {{words("12")}, {words("about 101.25 g")}, {words("braid")}}},
                {Row::Kind::total, {{words("14")}, {words("about 104")}, {words("together")}}}};
  const std::vector<PlacedText> texts = body_text(kBench.pages({sheet_of("List", {block(table)})}, kBench.pin_up).pages.at(0));
  CHECK(find_text(texts, "2")->right == Length::points(kLeft + 50));
  CHECK(find_text(texts, "12")->right == Length::points(kLeft + 50));
  // "about 2" is seven letters, "about 101" and "about 104" nine: the points stand under each other.
  const Length point = find_text(texts, "about 2.7 g")->left + Length::points(49);
  CHECK(find_text(texts, "about 101.25 g")->left + Length::points(63) == point);
  REQUIRE(find_text(texts, "about 104") != nullptr);
  CHECK(find_text(texts, "about 104")->left + Length::points(63) == point);
}

TEST_CASE("words wrap inside their column and the row grows", "[table]") {
  Table table;
  table.columns = {{words("what"), Column::Kind::words, 80}, {words("why"), Column::Kind::words}};
  table.rows = {{Row::Kind::plain, {{words("one two three four")}, {words("short")}}},
                {Row::Kind::plain, {{words("next")}, {words("row")}}}};
  const std::vector<PlacedText> texts = body_text(kBench.pages({sheet_of("List", {block(table)})}, kBench.pin_up).pages.at(0));
  // 80 less 10 of padding holds ten letters of 7.
  CHECK(holds(joined(texts), "one two|three four|short|next|row"));
  // Row height 25 and one line of 20 more, so the next row's base line is 45 lower.
  CHECK(find_text(texts, "next")->base - find_text(texts, "one two")->base == Length::points(45));
}

TEST_CASE("over a page end a table repeats its head and leaves no row alone", "[table]") {
  // Pin-up, Letter: live area 680, title 40, head 4 + 18 + 6, rows of 25: 24 rows fit the first page.
  const std::vector<std::string> exact = pages_of(two_columns(24), kBench.pin_up);
  CHECK(exact.size() == 1);
  CHECK(pages_of(tall_rows(7), kBench.pin_up).size() == 1);
  // One row too many: two go over.
  const std::vector<std::string> pages = pages_of(tall_rows(8), kBench.pin_up);
  REQUIRE(pages.size() == 2);
  CHECK(holds(pages[0], "row6"));
  CHECK_FALSE(holds(pages[0], "row7"));
  CHECK(pages[1] == "List, continued|piece|across|row7|-|-|-|7|row8|-|-|-|8");
}

TEST_CASE("a group row is repeated with the word continued; a total keeps two rows with it", "[table]") {
  Table table = two_columns(0);
  table.rows.push_back({Row::Kind::group, {{words("Lawn")}}});
  for (const Row& row : tall_rows(7).rows) table.rows.push_back(row);
  table.rows.push_back({Row::Kind::total, {{words("together")}, {checking(length("300", "", "", ""))}}});
  const std::vector<std::string> pages = pages_of(table, kBench.pin_up);
  REQUIRE(pages.size() == 2);
  CHECK(holds(pages[0], "Lawn|row1|"));
  CHECK(pages[1] == "List, continued|piece|across|Lawn, continued|row6|-|-|-|6|row7|-|-|-|7|together|300");
}

TEST_CASE("a group row is never the last line of a page", "[table]") {
  for (int before = 18; before < 26; ++before) {
    Table table = two_columns(before);
    table.rows.push_back({Row::Kind::group, {{words("Lawn")}}});
    for (const Row& row : two_columns(3).rows) table.rows.push_back(row);
    for (const std::string& page : pages_of(table, kBench.pin_up)) {
      CAPTURE(before, page);
      CHECK_FALSE((page.size() >= 4 && page.compare(page.size() - 4, 4, "Lawn") == 0));
    }
  }
}

TEST_CASE("every third rule is heavy in a run of marks", "[table]") {
  Table table = two_columns(7);
  table.heavy_every_third = true;
  const PaperDocument document = kBench.pages({sheet_of("List", {block(table)})}, kBench.pin_up);
  std::vector<Length> weights;
  for (const Mark& mark : document.pages.at(0).marks) {
    const auto* line = std::get_if<StrokeMark>(&mark.what);
    if (line != nullptr && line->path.front().to.y > Length::points(66) && line->path.front().to.x == Length::points(kLeft)) {
      weights.push_back(line->weight);
    }
  }
  const Length thin = pt(0.7), heavy = pt(1.4);
  CHECK(weights == std::vector<Length>{heavy, thin, thin, heavy, thin, thin, heavy, thin});
}

TEST_CASE("columns that ask for too much share 486 and still align their numbers", "[table]") {
  Table table;
  table.columns = {{words("piece"), Column::Kind::words, 400},
                   {words("across"), Column::Kind::length, 300},
                   {words("why"), Column::Kind::words, 300}};
  table.rows = {{Row::Kind::plain, {{words("front")}, {checking(length("41", "31", "32", ""))}, {words("because")}}}};
  const std::vector<PlacedText> texts = body_text(kBench.pages({sheet_of("List", {block(table)})}, kBench.pin_up).pages.at(0));
  for (const PlacedText& text : texts) {
    CAPTURE(text.words);
    CHECK(text.right <= Length::points(kRight));
  }
  CHECK(find_text(texts, "41 31/32") != nullptr);
}
