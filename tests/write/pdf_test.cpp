// What a finished PDF holds, seen with qpdf and poppler. Numbers in content streams are checked only where they are
// whole, because libharu 2.3 and 2.4 write others with different numbers of places.
#include "support/pdf_tools.h"
#include "write/sample_marks.h"
#include "write/write.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

const FontSet& fonts() {
  static FontFault fault;
  static const std::unique_ptr<FontSet> set = open_fonts("/usr/share/fonts", fault);
  INFO(fault.sentence);
  REQUIRE(set != nullptr);
  return *set;
}

std::string pdf_of(const PaperDocument& made) {
  const auto written = write_pdf(made, fonts());
  if (const auto* fault = std::get_if<WriteFault>(&written)) FAIL(fault->sentence);
  return std::get<std::string>(written);
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

int times(const std::string& text, const std::string& part) {
  int n = 0;
  for (auto i = text.find(part); i != std::string::npos; i = text.find(part, i + part.size())) ++n;
  return n;
}

bool qpdf_is_content(const std::string& pdf) {
  const ScratchFile file("content.pdf", pdf);
  return run("qpdf --check " + file.path()).code == 0;
}

// Four pages of everything, for the checks that look at one whole document.
const PaperDocument& everything() {
  static const PaperDocument made = [] {
    PaperDocument d = document({
        {AnchorMark{"at a glance", at(76, 66)}},
        text(at(76, 90), Face::bold, 28, "At a glance"),
        {TextMark{at(76, 120),
                  {run_of(Face::regular, 14, "Cut the front "), run_of(Face::bold, 18, "13", pt(100)),
                   run_of(Face::bold, 11, "1", pt(122), pt(6)), run_of(Face::bold, 11, "⁄", pt(128)),
                   run_of(Face::bold, 11, "2", pt(132), pt(-1)), run_of(Face::fallback, 14, "→ ✓", pt(150))}}},
        text(at(76, 150), Face::condensed, 10, "Crêpe, woollen: 1½ yd, naïve façade, Łódź"),
        text(at(76, 170), Face::condensed_bold, 10, "HOLD"),
        {FillMark{box(300, 300, 40, 20), Ink::black}},
        {TextMark{at(304, 314), {run_of(Face::bold, 10, "WARNING")}, true}},
        {TextMark{at(400, 500), {run_of(Face::regular, 12, "selvage", pt(20), pt(4))}, false, 90}},
        {LinkMark{Box{pt(76), pt(140), pt(100), pt(14)}, "order of work"}},
        {LinkMark{Box{pt(76), pt(160), pt(100), pt(14)}, "a sheet of another set"}},
    });
    d.subject = "Pin-up set";
    d.pages.push_back({Length::mm(210),
                       Length::mm(297),
                       {{AnchorMark{"order of work", at(76, 100)}}, text(at(76, 120), Face::bold, 20, "Order of work")}});
    d.pages.push_back({pt(792), pt(612), {}});
    d.bookmarks = {{"At a glance – ½ é", 0, 0, pt(66)}, {"Order of work", 1, 1, pt(100)}, {"Blank", 0, 2, Length()}};
    return d;
  }();
  return made;
}

}  // namespace

TEST_CASE("a document of everything is a clean PDF, the same bytes each time", "[pdf]") {
  const std::string pdf = pdf_of(everything());
  CHECK(pdf == pdf_of(everything()));
  CHECK_FALSE(holds(pdf, "CreationDate"));
  CHECK_FALSE(holds(pdf, "ModDate"));
  if (have("qpdf")) CHECK(qpdf_is_content(pdf));
}

TEST_CASE("every page has exactly its own size", "[pdf]") {
  if (!have("pdfinfo")) return;
  const ScratchFile file("sizes.pdf", pdf_of(everything()));
  const std::string boxes = run("pdfinfo -box -f 1 -l 3 " + file.path()).out;
  CAPTURE(boxes);
  CHECK(holds(boxes, "Pages:           3"));
  CHECK(holds(boxes, "Page    1 MediaBox:      0.00     0.00   612.00   792.00"));
  CHECK(holds(boxes, "Page    2 MediaBox:      0.00     0.00   595.28   841.89"));  // A4: 210 x 297 mm at 72 / 25.4
  CHECK(holds(boxes, "Page    3 MediaBox:      0.00     0.00   792.00   612.00"));
}

TEST_CASE("title and subject are readable text, letters with accents too", "[pdf]") {
  if (!have("pdfinfo")) return;
  PaperDocument made = document({});
  made.title = "Crêpe gown – 1½ yd";
  made.subject = "Łódź";
  made.made_with = "project 4f2a";
  const ScratchFile file("facts.pdf", pdf_of(made));
  const std::string facts = run("pdfinfo -enc UTF-8 " + file.path()).out;
  CAPTURE(facts);
  CHECK(holds(facts, "Crêpe gown – 1½ yd"));
  CHECK(holds(facts, "Łódź"));
  CHECK(holds(facts, "project 4f2a"));
}

TEST_CASE("words come out in reading order with fractions in place", "[pdf]") {
  if (!have("pdftotext")) return;
  const ScratchFile file("words.pdf", pdf_of(everything()));
  const std::string words = run("pdftotext -enc UTF-8 -raw " + file.path() + " -").out;
  CAPTURE(words);
  CHECK(holds(words, "At a glance"));
  CHECK(holds(words, "Crêpe, woollen: 1½ yd, naïve façade, Łódź"));
  CHECK(holds(words, "→ ✓"));
  CHECK(holds(words, "WARNING"));
  CHECK(words.find("At a glance") < words.find("Cut the front"));
  CHECK(words.find("Cut the front") < words.find("HOLD"));
  CHECK(words.find("HOLD") < words.find("Order of work"));
}

TEST_CASE("only the faces that are used are in the file, embedded as subsets", "[pdf]") {
  if (!have("pdffonts")) return;
  const auto fonts_in = [](const PaperDocument& made) {
    const ScratchFile file("faces.pdf", pdf_of(made));
    return run("pdffonts " + file.path()).out;
  };
  const std::string one = fonts_in(document({text(at(76, 90), Face::bold, 12, "Cut")}));
  CAPTURE(one);
  CHECK(times(one, "yes yes yes") == 1);  // embedded, subset, with a map back to Unicode
  CHECK(holds(one, "Roboto-Bold"));
  CHECK(times(fonts_in(everything()), "yes yes yes") == 5);
  CHECK(times(fonts_in(document({stroke(line(at(0, 0), at(9, 9)))})), "yes") == 0);
}

TEST_CASE("each run of letters stands at its own place, turned or not", "[pdf]") {
  if (!have("qpdf")) return;
  // y counts down from the top of a 792 pt page: a base line at 120 lies at 792 - 120 = 672, raised by 6 at 678.
  const std::string flat = plain_objects(pdf_of(
      document({{TextMark{at(76, 120), {run_of(Face::regular, 14, "13"), run_of(Face::regular, 9, "1", pt(20), pt(6))}}}})));
  CHECK(holds(flat, "1 0 0 1 76 672 Tm"));
  CHECK(holds(flat, "1 0 0 1 96 678 Tm"));
  // Reading upwards: 20 along the line is 20 up the page, 4 above the line is 4 to the left.
  const std::string turned = plain_objects(
      pdf_of(document({{TextMark{at(400, 500), {run_of(Face::regular, 12, "selvage", pt(20), pt(4))}, false, 90}}})));
  CHECK(holds(turned, "0 1 -1 0 396 312 Tm"));
  CHECK_FALSE(holds(turned, " Tw"));  // word spacing has no effect on two-byte codes, so it is never used
}

TEST_CASE("a pen is set when it changes and comes back after a clip group", "[pdf]") {
  if (!have("qpdf")) return;
  const std::string plain = plain_objects(pdf_of(document({
      stroke(line(at(10, 10), at(20, 10)), 2, {4, 3}),
      stroke(line(at(10, 20), at(20, 20)), 2, {4, 3}),
      {ClipMark{box(0, 0, 100, 100), {stroke(line(at(0, 50), at(100, 50)), 5)}}},
      stroke(line(at(10, 30), at(20, 30)), 2, {4, 3}),
      stroke(line(at(10, 40), at(20, 40)), 2),
      {StrokeMark{box(200, 200, 10, 10), pt(2), Cap::round, Join::round, {}}},
      {FillMark{{move_to(at(50, 50)), curve_to(at(60, 50), at(60, 60), at(50, 60)), close_path()}, Ink::mid_grey}},
  })));
  CAPTURE(plain);
  CHECK(times(plain, "[4 3] 0 d") == 1);
  CHECK(times(plain, "[] 0 d") == 2);  // inside the group and after it
  CHECK(times(plain, " 2 w ") == 1);
  CHECK(times(plain, " 5 w ") == 1);
  CHECK(times(plain, " q ") == 1);
  CHECK(times(plain, " Q ") == 1);
  CHECK(holds(plain, "1 J"));
  CHECK(holds(plain, "1 j"));
  CHECK(holds(plain, "0.55 g"));
  CHECK(holds(plain, "60 742 60 732 50 732 c"));  // y turned: 792 - 50, 792 - 60
  CHECK(times(plain, " S ") == 6);
  CHECK(holds(plain, " c h f endstream"));
}

TEST_CASE("links have no border and lead to their anchor; a link to another set's sheet is left out", "[pdf]") {
  if (!have("qpdf")) return;
  const std::string plain = plain_objects(pdf_of(everything()));
  CHECK(times(plain, "/Subtype /Link") == 1);
  CHECK(holds(plain, "/Border [ 0 0 0]"));
  // The anchor stands 100 pt below the top of an A4 page: 841.89 - 100 = 741.89, zoom 1.
  CHECK(holds(plain, "/XYZ 76 741.889"));
  // The box 76..176 across, 140..154 down: 792 - 154 = 638 up to 652.
  CHECK(holds(plain, "/Rect [ 76 638 176 652]"));
}

TEST_CASE("the first of two anchors with one name counts", "[pdf]") {
  if (!have("qpdf")) return;
  const std::string plain = plain_objects(pdf_of(document({{AnchorMark{"step 7", at(76, 200)}},
                                                           {AnchorMark{"step 7", at(76, 600)}},
                                                           {LinkMark{Box{pt(10), pt(10), pt(50), pt(10)}, "step 7"}}})));
  CHECK(holds(plain, "/XYZ 76 592"));  // 792 - 200
  CHECK_FALSE(holds(plain, "/XYZ 76 192"));
}

TEST_CASE("places off the page lead to the nearest place on it", "[pdf]") {
  if (!have("qpdf")) return;
  PaperDocument made =
      document({{AnchorMark{"step 7", at(-20, 900)}}, {LinkMark{Box{pt(10), pt(10), pt(50), pt(10)}, "step 7"}}});
  made.bookmarks = {{"Above", 0, 0, pt(-30)}};
  const std::string plain = plain_objects(pdf_of(made));
  CHECK(holds(plain, "/XYZ 0 0 1"));
  CHECK(holds(plain, "/XYZ 0 792 1"));
}

TEST_CASE("bookmarks are readable text in their levels", "[pdf]") {
  if (!have("qpdf")) return;
  const ScratchFile file("bookmarks.pdf", pdf_of(everything()));
  const std::string outlines = run("qpdf --json=1 --json-key=outlines " + file.path()).out;
  CAPTURE(outlines);
  CHECK(holds(outlines, "\"title\": \"At a glance – ½ é\""));
  CHECK(holds(outlines, "\"title\": \"Order of work\""));
  CHECK(outlines.find("Order of work") < outlines.find("At a glance"));  // a kid is listed inside its parent, before its title
  CHECK(holds(outlines, "\"title\": \"Blank\""));
}

TEST_CASE("the file asks for no scaling when printed and names its language", "[pdf]") {
  if (!have("qpdf")) return;
  PaperDocument made = document({});
  CHECK(holds(plain_objects(pdf_of(made)), "/PrintScaling /None"));
  CHECK(holds(plain_objects(pdf_of(made)), "/Lang (en)"));
  made.print_scaling_none = false;
  CHECK_FALSE(holds(plain_objects(pdf_of(made)), "/PrintScaling"));
}

TEST_CASE("ink lies where the marks say: black 72 to 144 pt from the top left", "[pdf]") {
  if (!have("pdftoppm")) return;
  const ScratchFile file("ink.pdf",
                         pdf_of(document({{FillMark{box(72, 72, 72, 72), Ink::black}},
                                          {FillMark{box(300, 72, 72, 72), Ink::pale_grey}},
                                          {ClipMark{box(72, 300, 72, 72), {{FillMark{box(0, 300, 600, 20), Ink::black}}}}}})));
  const std::string image = run("pdftoppm -r 72 -gray -singlefile " + file.path()).out;  // one pixel to the point
  const std::string head = "P5\n612 792\n255\n";
  REQUIRE(image.substr(0, head.size()) == head);
  const auto pixel = [&](std::size_t x, std::size_t y) {
    return static_cast<int>(static_cast<unsigned char>(image.at(head.size() + y * 612 + x)));
  };
  CHECK(pixel(73, 73) == 0);
  CHECK(pixel(142, 142) == 0);
  CHECK(pixel(70, 100) == 255);
  CHECK(pixel(146, 100) == 255);
  CHECK(pixel(100, 70) == 255);
  CHECK(pixel(100, 146) == 255);
  CHECK(pixel(336, 108) == 224);  // 0.88 x 255 = 224.4
  CHECK(pixel(100, 310) == 0);    // inside the clip group
  CHECK(pixel(60, 310) == 255);   // outside it
  CHECK(pixel(200, 310) == 255);
}
