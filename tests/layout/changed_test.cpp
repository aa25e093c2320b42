// Bars beside what changed: in the margin, as high as the block, with the word once on each page.
#include "layout/placed_text.h"
#include "layout/specimen.h"
#include "support/catch.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

Text changed_words(const std::string& s) {
  Text text = words(s);
  for (Inline& part : text) part.changed = true;
  return text;
}

struct Bars {
  int bars = 0, words = 0;
  Length high;
};

Bars bars_on(const Page& page, const PageShape& shape) {
  Bars found;
  for (const Mark& mark : page.marks) {
    if (const auto* fill = std::get_if<FillMark>(&mark.what)) {
      Length least = fill->path.front().to.x, most = least, top = fill->path.front().to.y, bottom = top;
      for (const PathStep& step : fill->path) {
        if (step.kind == PathStep::Kind::close) continue;
        least = std::min(least, step.to.x);
        most = std::max(most, step.to.x);
        top = std::min(top, step.to.y);
        bottom = std::max(bottom, step.to.y);
      }
      // 4 wide, its right edge 10 left of the live area
      if (most == Length::from_points(shape.left - 10) && most - least == Length::points(4)) {
        ++found.bars;
        found.high += bottom - top;
      }
    }
    if (const auto* text = std::get_if<TextMark>(&mark.what))
      if (text->angle == 90 && words_of(*text) == "changed") ++found.words;
  }
  return found;
}

PaperDocument pages_of(Block one, const PageShape& shape) {
  return lay_out({sheet_of("Order of work", {std::move(one)})}, shape, {"Cape", "Set, packet 4f2a"}, kBench.binder);
}

Bars bars_of(Block one, const PageShape& shape) {
  const PaperDocument document = pages_of(std::move(one), shape);
  REQUIRE(document.pages.size() == 1);
  return bars_on(document.pages[0], shape);
}

}  // namespace

TEST_CASE("a changed line of every kind of block gets one bar and the page the word, an unchanged one neither", "[changed]") {
  for (const PageShape& shape : {page_shape(PaperName::letter, HoleCount::three), page_shape(PaperName::a4, HoleCount::two)}) {
    for (const bool changed : {true, false}) {
      const Text text = changed ? changed_words("13 1/2 in") : words("13 1/2 in");
      StepBlock step;
      step.number = 7;
      step.act = words("Cut the breadths");
      StepBlock step_figure = step, step_reason = step;
      step.act = text;
      step_figure.figures = {text};
      step_reason.reason = text;
      Table table;
      table.columns = {Column{words("what"), Column::Kind::words, 0}};
      table.rows = {Row{Row::Kind::plain, {{words("band")}}}, Row{Row::Kind::plain, {{text}}},
                    Row{Row::Kind::plain, {{words("cuff")}}}};
      Drawing drawing;
      drawing.name = "lay";
      drawing.width = drawing.height = Length::points(50);
      drawing.items = {Label{text, {Length::points(10), Length::points(20)}}};
      const std::vector<Block> blocks = {block(Paragraph{text}),
                                         block(PairRow{words("a"), {}, text}),
                                         block(PairRow{text, {}, words("a")}),
                                         block(step),
                                         block(step_figure),
                                         block(step_reason),
                                         block(table),
                                         block(drawing)};
      for (const Block& one : blocks) {
        CAPTURE(changed, one.what.index());
        const Bars bars = bars_of(one, shape);
        CHECK(bars.bars == (changed ? 1 : 0));
        CHECK(bars.words == (changed ? 1 : 0));
        CHECK((bars.high > Length()) == changed);
      }
    }
  }
}

TEST_CASE("a changed block parted over pages keeps its bar on each of them", "[changed]") {
  const PageShape shape = page_shape(PaperName::letter, HoleCount::three);
  std::string many;
  for (int i = 0; i < 4000; ++i) many += "word ";
  const PaperDocument document = pages_of(block(Paragraph{changed_words(many)}), shape);
  REQUIRE(document.pages.size() > 1);
  for (const Page& page : document.pages) {
    CHECK(bars_on(page, shape).bars == 1);
    CHECK(bars_on(page, shape).words == 1);
  }
}
