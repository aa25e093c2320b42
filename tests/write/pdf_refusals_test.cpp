// Everything that libharu would accept in silence, or fail on in silence, is refused with a sentence.
#include <filesystem>
#include <fstream>
#include <iterator>

#include "support/catch.h"
#include "support/half_em_font.h"
#include "support/pdf_tools.h"
#include "write/sample_marks.h"
#include "write/write.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

const FontSet& installed_fonts() {
  static FontFault fault;
  static const std::unique_ptr<FontSet> set = open_fonts("/usr/share/fonts", fault);
  REQUIRE(set != nullptr);
  return *set;
}

std::string fault_of(const PaperDocument& made, const FontSet& set = installed_fonts()) {
  const auto written = write_pdf(made, set);
  const auto* fault = std::get_if<WriteFault>(&written);
  return fault == nullptr ? "" : fault->sentence;
}
std::string fault_of(Mark mark) { return fault_of(document({std::move(mark)})); }
std::string fault_of_words(std::string words, Face face = Face::regular) {
  return fault_of(text(at(76, 90), face, 12, std::move(words)));
}

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

// Covers everything, but its file is the one given.
class FileFont : public HalfEmFont {
 public:
  explicit FileFont(std::string path, bool unchanged = true) : path_(std::move(path)), unchanged_(unchanged) {}
  std::string file(Face) const override { return path_; }
  bool file_unchanged(Face) const override { return unchanged_; }

 private:
  std::string path_;
  bool unchanged_;
};

const PaperDocument kOneWord = document({text(at(76, 90), Face::regular, 12, "Cut")});

}  // namespace

TEST_CASE("a document with no pages is refused; an empty page is not", "[pdf]") {
  CHECK(fault_of(PaperDocument{}) == "The document has no pages.");
  CHECK(fault_of(document({})).empty());
}

TEST_CASE("a letter that the face lacks would print as an empty box", "[pdf]") {
  CHECK(fault_of_words("½ cut").empty());
  CHECK(fault_of_words("go → on") == "Page 1: the words \"go → on\": the face regular lacks U+2192.");
  CHECK(fault_of_words("→", Face::fallback).empty());
  CHECK(fault_of_words("ǻ", Face::fallback) == "Page 1: the words \"ǻ\": the face fallback lacks U+01FB.");  // accent lost
}

TEST_CASE("letters above U+FFFF, control characters, NUL and broken bytes would vanish", "[pdf]") {
  CHECK(fault_of_words("\xF0\x9F\x98\x80") == "Page 1: the words \"\xF0\x9F\x98\x80\": the face regular lacks U+1F600.");
  for (const char c : {'\0', '\a', '\t', '\n', '\x7F'}) {
    CAPTURE(static_cast<int>(c));
    CHECK(fault_of_words(std::string("a") + c + "b").find("lacks U+00") != std::string::npos);
  }
  CHECK(fault_of_words("caf\xE9").find("they are not UTF-8") != std::string::npos);
  CHECK(fault_of_words(std::string(10001, 'x')).find("they are too long") != std::string::npos);
  CHECK(fault_of_words(std::string(10000, 'x')).empty());
}

TEST_CASE("far coordinates would be moved without a word", "[pdf]") {
  const Length far = Length::points(14401), edge = Length::points(14400);
  CHECK(fault_of({StrokeMark{line({edge, -edge}, {-edge, edge}), pt(1), {}, {}, {}}}).empty());
  for (const Point& p : {Point{far, Length()}, Point{Length(), far}, Point{-far, Length()}, Point{Length(), -far},
                         Point{Length::ticks(INT64_MAX), Length()}, Point{Length(), Length::ticks(INT64_MIN)}}) {
    CHECK(fault_of({StrokeMark{line(at(0, 0), p), pt(1), {}, {}, {}}}).find("too far") != std::string::npos);
    CHECK(fault_of({FillMark{{move_to(at(0, 0)), curve_to(p, at(0, 9), at(9, 9))}, Ink::black}}).find("too far") !=
          std::string::npos);
    CHECK(fault_of(text(p, Face::regular, 12, "Cut")).find("too far") != std::string::npos);
    CHECK(fault_of({AnchorMark{"step 7", p}}).find("too far") != std::string::npos);
    CHECK(fault_of({LinkMark{Box{p.x, p.y, pt(9), pt(9)}, "step 7"}}).find("no box") != std::string::npos);
  }
  CHECK(fault_of({TextMark{at(0, 0), {run_of(Face::regular, 12, "Cut", far)}}}).find("too far") != std::string::npos);
  CHECK(fault_of({TextMark{at(0, 0), {run_of(Face::regular, 12, "Cut", {}, -far)}}}).find("too far") != std::string::npos);
}

TEST_CASE("paper, type and pens outside libharu's range are refused", "[pdf]") {
  PaperDocument made = document({});
  for (const std::int64_t side : {2, 14401}) {
    made.pages[0].width = pt(side);
    CHECK(fault_of(made) == "Page 1: the paper is smaller than 3 points or larger than 14,400.");
  }
  for (const std::int64_t size : {-1, 0, 601}) {
    CHECK(fault_of(text(at(9, 9), Face::regular, size, "Cut")).find("outside 0 to 600") != std::string::npos);
  }
  CHECK(fault_of(text(at(9, 9), Face::regular, 600, "Cut")).empty());
  CHECK(fault_of(stroke(line(at(0, 0), at(9, 9)), 0)).find("no weight") != std::string::npos);
  CHECK(fault_of(stroke(line(at(0, 0), at(9, 9)), -1)).find("no weight") != std::string::npos);
  CHECK(fault_of({TextMark{at(9, 9), {run_of(Face::regular, 12, "Cut")}, false, 45}}).find("0 or 90") != std::string::npos);
}

TEST_CASE("dashes are 2, 4, 6 or 8 whole lengths of 1 to 100 points", "[pdf]") {
  const Path path = line(at(0, 0), at(100, 0));
  for (const auto& dash : std::vector<std::vector<int>>{{}, {1, 1}, {4, 3, 1, 3}, {1, 2, 3, 4, 5, 6, 7, 8}, {100, 100}}) {
    CHECK(fault_of(stroke(path, 1, dash)).empty());
  }
  for (const auto& dash :
       std::vector<std::vector<int>>{{3}, {3, 2, 1}, {0, 3}, {3, 0}, {-1, 3}, {101, 3}, std::vector<int>(10, 3)}) {
    CHECK(fault_of(stroke(path, 1, dash)).find("a dashed line") != std::string::npos);
  }
}

TEST_CASE("a path that would never be painted is refused", "[pdf]") {
  for (const Path& path : {Path{}, Path{move_to(at(1, 1))}, Path{move_to(at(1, 1)), close_path()}, Path{line_to(at(1, 1))},
                           Path{close_path()}, Path{move_to(at(1, 1)), move_to(at(2, 2)), line_to(at(3, 3))},
                           Path{move_to(at(1, 1)), line_to(at(2, 2)), move_to(at(3, 3))}}) {
    CHECK(fault_of(stroke(path)).find("the path") != std::string::npos);
    CHECK(fault_of({FillMark{path, Ink::black}}).find("the path") != std::string::npos);
    CHECK(fault_of({ClipMark{path, {}}}).find("the path") != std::string::npos);
  }
  CHECK(fault_of(stroke({move_to(at(1, 1)), line_to(at(2, 2)), move_to(at(3, 3)), line_to(at(4, 4))})).empty());
  CHECK(fault_of(stroke({move_to(at(1, 1)), line_to(at(2, 2)), close_path(), line_to(at(4, 4))})).empty());
}

TEST_CASE("twenty clip groups inside each other are printed, one more is refused", "[pdf]") {
  std::vector<Mark> inside{stroke(line(at(0, 0), at(9, 9)))};
  for (int depth = 0; depth < 20; ++depth) inside = {{ClipMark{box(0, 0, 100, 100), std::move(inside)}}};
  const auto written = write_pdf(document(inside), installed_fonts());
  REQUIRE(written.index() == 0);
  if (have("qpdf")) {
    const ScratchFile file("clips.pdf", std::get<std::string>(written));
    CHECK(run("qpdf --check " + file.path()).code == 0);
  }
  inside = {{ClipMark{box(0, 0, 100, 100), std::move(inside)}}};
  CHECK(fault_of(document(inside)) == "Page 1: more than 20 clip groups lie inside each other.");
  // Beside each other they do not add up.
  std::vector<Mark> row;
  for (int i = 0; i < 100; ++i) row.push_back({ClipMark{box(0, 0, 100, 100), {stroke(line(at(0, 0), at(9, 9)))}}});
  CHECK(fault_of(document(row)).empty());
}

TEST_CASE("titles and bookmarks that a PDF cannot show are refused", "[pdf]") {
  PaperDocument made = document({});
  made.title = "Gown \xF0\x9F\x98\x80";
  CHECK(fault_of(made) == "The document's title holds U+1F600, which a PDF cannot show.");
  made.title = "Gown\x01";
  CHECK(fault_of(made) == "The document's title holds U+0001, which a PDF cannot show.");
  made.title = "Gown \xE9";
  CHECK(fault_of(made) == "The document's title is not UTF-8, which a PDF cannot show.");
  made.title = "";
  CHECK(fault_of(made).empty());
  made.bookmarks = {{"", 0, 0, Length()}};
  CHECK(fault_of(made) == "A bookmark has no title.");
  made.bookmarks = {{"Cutting list", 0, 1, Length()}};
  CHECK(fault_of(made) == "The bookmark \"Cutting list\" leads to a page that does not exist.");
  made.bookmarks = {{"Cutting list", -1, 0, Length()}};
  CHECK(fault_of(made) == "The bookmark \"Cutting list\" has no place in the document.");
  made.bookmarks = {{"Deep at once", 3, 0, Length()}, {"Shallow", 1, 0, Length()}};
  CHECK(fault_of(made).empty());
}

TEST_CASE("a font file that libharu cannot open is a fault, and the next document is whole again", "[pdf]") {
  const std::string roboto = installed_fonts().file(Face::regular);
  CHECK(fault_of(kOneWord, FileFont("/nowhere/none.ttf")) == "libharu could not open the font file /nowhere/none.ttf.");
  CHECK(fault_of(kOneWord).empty());  // errors stick to the document that met them, not to the program
  const std::string cut_path = std::string(GOWNSHEAF_BINARY_DIR) + "/cut-short.ttf";
  for (const std::size_t size : {std::size_t{100}, std::size_t{20000}}) {  // libharu gives no error for these
    std::ofstream(cut_path, std::ios::binary | std::ios::trunc) << bytes_of(roboto).substr(0, size);
    CHECK(fault_of(kOneWord, FileFont(cut_path)) == "libharu could not open the font file " + cut_path + ".");
  }
  std::filesystem::remove(cut_path);
  CHECK(fault_of(kOneWord, FileFont(roboto, false)) == "The font file " + roboto + " changed while the packet was made.");
  CHECK(fault_of(kOneWord, HalfEmFont()) == "Page 1: the words \"Cut\": the face regular has no font file.");
  CHECK(fault_of(kOneWord).empty());
}
