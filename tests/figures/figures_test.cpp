#include "figures/figures.h"

#include <set>
#include <stdexcept>

#include "support/catch.h"

using namespace gownsheaf;

namespace {

Figure figure(Value value, Shown shown, Action action = Action::none) {
  Figure f;
  f.key = "cloths/slate wool/needed";
  f.value = std::move(value);
  f.shown = shown;
  f.action = action;
  return f;
}

}  // namespace

TEST_CASE("a key is added once and found by its name") {
  Figures figures;
  figures.add(figure(Length::inches(189), Shown::cloth));
  CHECK(figures.length("cloths/slate wool/needed") == Length::inches(189));
  CHECK_FALSE(figures.count("cloths/slate wool/needed").has_value());
  CHECK(figures.find("cloths/slate wool") == nullptr);
  CHECK_THROWS_AS(figures.at("cloths/slate wool"), std::out_of_range);
  CHECK_THROWS_AS(figures.add(figure(Length::inches(1), Shown::cloth)), std::logic_error);
  CHECK_THROWS_AS(figures.add(Figure{}), std::logic_error);
  CHECK(figures.all().size() == 1);
}

TEST_CASE("cut sizes round up, marks to the nearest, both from the exact value") {
  const Length l = Length::sixty_fourths(64 * 13 + 1);  // 13 1/64 in
  CHECK(plain_text(figure(l, Shown::cut), ShownIn::inches) == "13 1/16 in");
  CHECK(plain_text(figure(l, Shown::mark), ShownIn::inches) == "13 in");
  CHECK(plain_text(figure(Length::sixty_fourths(64 * 13 + 2), Shown::pleat_mark), ShownIn::inches) == "13 1/32 in");
  CHECK(plain_text(figure(l, Shown::exact), ShownIn::inches) == "13 1/64 in");
  CHECK(plain_text(figure(Length::tenth_mm(3451), Shown::cut), ShownIn::centimetres) == "34.6 cm");
  CHECK(plain_text(figure(Length::tenth_mm(3451), Shown::mark), ShownIn::centimetres) == "34.5 cm");
}

TEST_CASE("cloth to buy rounds up; cloth that lies there is never said to be more") {
  const Length short_of_a_yard = Length::inches(30);  // 5/6 yd is no whole eighth
  CHECK(plain_text(figure(Length::inches(189), Shown::cloth, Action::buy), ShownIn::inches) == "5 1/4 yd");
  CHECK(plain_text(figure(short_of_a_yard, Shown::cloth), ShownIn::inches) == "30 in");
  const Length odd = Length::inches(30) + Length::ticks(1);
  CHECK(plain_text(figure(odd, Shown::cloth), ShownIn::inches) == "30 in");
  CHECK(plain_text(figure(odd, Shown::cloth, Action::buy), ShownIn::inches) == "30 1/16 in");
}

TEST_CASE("other values as plain words") {
  CHECK(plain_text(figure(std::int64_t{22}, Shown::exact), ShownIn::inches) == "22");
  CHECK(plain_text(figure(Ratio::of(137, 38), Shown::exact), ShownIn::inches) == "3.61");
  CHECK(plain_text(figure(Ratio::of(5, 2), Shown::exact), ShownIn::inches) == "2.5");
  CHECK(plain_text(figure(Percent{Ratio::of(5, 100)}, Shown::exact), ShownIn::inches) == "5 %");
  CHECK(plain_text(figure(std::string("knife"), Shown::exact), ShownIn::inches) == "knife");
  CHECK(plain_text(figure(true, Shown::exact), ShownIn::inches) == "yes");
  CHECK(plain_text(figure(make_day(2027, 6, 19), Shown::exact), ShownIn::inches) == "Saturday 19 June 2027");
  CHECK(plain_text(figure(std::monostate{}, Shown::exact), ShownIn::inches).empty());
}

TEST_CASE("kinds of figures are found by quantity, with names and numbers filled in") {
  CHECK(find_figure_kind("pieces", "cut length")->shown == Shown::cut);
  CHECK(find_figure_kind("pieces", "cut length")->action == Action::recut);
  CHECK(find_figure_kind("pleats", "mark 12/lay on")->action == Action::remark);
  CHECK(find_figure_kind("pleats", "mark twelve/lay on") == nullptr);
  CHECK(find_figure_kind("pleats", "seam 2")->formula == "breadth-seams");
  CHECK(find_figure_kind("cloths", "lay/skirt breadth 2/from end")->shown == Shown::mark);
  CHECK(find_figure_kind("cloths", "lay/skirt breadth/from end") == nullptr);  // which copy?
  CHECK(find_figure_kind("cloths", "left over 1/along") != nullptr);
  CHECK(find_figure_kind("measures", "waist to floor/longest")->formula == "skirt-length");
  CHECK(find_figure_kind("measures", "waist to floor/front")->formula.empty());
  CHECK(find_figure_kind("measures", "upper arm")->is_private);
  CHECK(find_figure_kind("pieces", "lenght") == nullptr);
  CHECK(find_figure_kind("nothing", "cut length") == nullptr);
}

TEST_CASE("what was added for a trial goes again, and its keys are free") {
  Figures figures;
  for (const char* key : {"cloths/wool/width", "cloths/wool/bound", "cloths/wool/needed"}) {
    Figure f;
    f.key = key;
    f.value = Length::inches(3);
    figures.add(std::move(f));
  }
  figures.forget_after(1);
  REQUIRE(figures.all().size() == 1);
  CHECK(figures.find("cloths/wool/bound") == nullptr);
  Figure again;
  again.key = "cloths/wool/bound";
  again.value = Length::inches(5);
  figures.add(std::move(again));
  CHECK(figures.length("cloths/wool/bound") == Length::inches(5));
  CHECK(figures.length("cloths/wool/width") == Length::inches(3));
}

TEST_CASE("no kind stands twice in the table") {
  std::set<std::pair<std::string_view, std::string_view>> seen;
  for (const FigureKind& kind : figure_kinds()) {
    INFO(kind.section << "/" << kind.quantity);
    CHECK(seen.emplace(kind.section, kind.quantity).second);
    CHECK_FALSE(kind.meaning.empty());
    // The body, and what is worked from it; a size's own girths give nothing of the body away.
    if (kind.section == "measures") CHECK(kind.is_private);
    if (kind.section == "fittings") CHECK(kind.is_private);
    if (kind.section == "girths" && kind.quantity != "size") CHECK(kind.is_private);
    for (const std::string_view open : {"garment", "cloths", "pieces", "pleats", "rounds", "skirt"})
      if (kind.section == open && kind.formula != "best-buy") CHECK_FALSE(kind.is_private);  // prices are the maker's own
  }
  CHECK(find_figure_kind("size", "differences/no. 2")->is_private);
  CHECK(find_figure_kind("size", "fraction")->is_private);
  CHECK_FALSE(find_figure_kind("size", "made")->is_private);
  CHECK_FALSE(find_figure_kind("size", "rows/16/bust")->is_private);
}
