#include "support/catch.h"
#include "write/sample_marks.h"
#include "write/write.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {
std::string first_mark(Mark mark) {
  const std::string listing = page_listing(document({std::move(mark)}));
  const auto at = listing.find("\n  ");
  return listing.substr(at + 3, listing.size() - at - 4);
}
}  // namespace

TEST_CASE("the listing says what a page holds, one line a mark", "[listing]") {
  PaperDocument made = document({
      {AnchorMark{"at a glance", at(76, 66)}},
      text(at(76, 90), Face::bold, 28, "At a glance"),
      {StrokeMark{line(at(76, 100), at(562, 100)), Length::ticks(711), {}, {}, {}}},
      stroke(box(10, 20, 30, 40), 1, {4, 3}),
      {ClipMark{
          box(0, 0, 100, 100),
          {stroke(line(at(0, 50), at(100, 50))), {ClipMark{box(0, 0, 9, 9), {text(at(1, 2), Face::condensed_bold, 9, "in")}}}}}},
      {FillMark{{move_to(at(50, 50)), curve_to(at(60, 50), at(60, 60), at(50, 60)), close_path()}, Ink::pale_grey}},
      {LinkMark{Box{pt(76), pt(140), pt(100), pt(14)}, "order of work"}},
  });
  made.subject = "Pin-up set";
  made.bookmarks = {{"At a glance", 0, 0, pt(66)}};
  CHECK(page_listing(made) == R"(title "Walking skirt"
subject "Pin-up set"
print scaling none
bookmark level 0 page 1 66.00 "At a glance"
page 1 612.00 792.00
  anchor 76.00 66.00 "at a glance"
  text 76.00 90.00 bold 28 "At a glance"
  stroke 0.70 from 76.00 100.00 to 562.00 100.00
  stroke 1.00 dash 4 3 from 10.00 20.00 to 40.00 20.00 to 40.00 60.00 to 10.00 60.00 close
  clip from 0.00 0.00 to 100.00 0.00 to 100.00 100.00 to 0.00 100.00 close
    stroke 1.00 from 0.00 50.00 to 100.00 50.00
    clip from 0.00 0.00 to 9.00 0.00 to 9.00 9.00 to 0.00 9.00 close
      text 1.00 2.00 condensed-bold 9 "in"
  fill pale-grey from 50.00 50.00 curve 60.00 50.00 60.00 60.00 50.00 60.00 close
  link 76.00 140.00 size 100.00 14.00 "order of work"
)");
}

TEST_CASE("a mark of several runs stays on one line, with offset and rise", "[listing]") {
  CHECK(first_mark({TextMark{at(76, 120),
                             {run_of(Face::bold, 18, "13"), run_of(Face::bold, 11, "1", pt(22), pt(6)),
                              run_of(Face::bold, 11, "2", pt(32), pt(-1))}}}) ==
        "text 76.00 120.00 bold 18 \"13\" | at 22.00 up 6.00 bold 11 \"1\" | at 32.00 up -1.00 bold 11 \"2\"");
  CHECK(first_mark({TextMark{at(400, 500), {run_of(Face::regular, 12, "selvage", pt(20))}, true, 90}}) ==
        "text 400.00 500.00 turned 90 white at 20.00 regular 12 \"selvage\"");
}

TEST_CASE("points are rounded from ticks by whole numbers, a tie away from zero", "[listing]") {
  // 1016 ticks to the point: 5 ticks are 0.0049 pt, 6 ticks 0.0059; 127 ticks are 0.125 pt, a tie between 0.12 and
  // 0.13.
  const auto x_of = [](std::int64_t ticks) { return first_mark({AnchorMark{"a", {Length::ticks(ticks), Length()}}}); };
  CHECK(x_of(5) == "anchor 0.00 0.00 \"a\"");
  CHECK(x_of(-5) == "anchor 0.00 0.00 \"a\"");  // never -0.00
  CHECK(x_of(6) == "anchor 0.01 0.00 \"a\"");
  CHECK(x_of(-6) == "anchor -0.01 0.00 \"a\"");
  CHECK(x_of(127) == "anchor 0.13 0.00 \"a\"");
  CHECK(x_of(-127) == "anchor -0.13 0.00 \"a\"");
  CHECK(x_of(1016 * 7 - 1) == "anchor 7.00 0.00 \"a\"");
  CHECK(x_of(9223372036854775807) == "anchor 9078122083518480.13 0.00 \"a\"");  // (2^63 - 1) / 1016 = ….126
}

TEST_CASE("quotes, backslashes and line ends in words cannot break the listing", "[listing]") {
  CHECK(first_mark(text(at(1, 2), Face::regular, 9, "a \"b\" \\ c\nd")) == "text 1.00 2.00 regular 9 \"a \\\"b\\\" \\\\ c\\nd\"");
  CHECK(first_mark({TextMark{at(1, 2), {{Face::regular, Length::ticks(8636), {}, {}, "x"}}}}) ==
        "text 1.00 2.00 regular 8.5 \"x\"");  // 8636 / 1016 = 8.5
}

TEST_CASE("what made the document is not in the listing", "[listing]") {
  PaperDocument made = document({});
  const std::string before = page_listing(made);
  made.made_with = "libharu 2.3.0";
  CHECK(page_listing(made) == before);
  made.print_scaling_none = false;
  CHECK(page_listing(made) != before);
}
