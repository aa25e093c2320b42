// Law: whatever marks a document holds, if it is not refused it is a clean PDF, and the same bytes when written again.
#include <random>

#include "support/pdf_tools.h"
#include "write/sample_marks.h"
#include "write/write.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

#ifdef GOWNSHEAF_SANITIZED
constexpr int kDocuments = 30;
#else
constexpr int kDocuments = 300;  // each is written twice and read by qpdf, so not the 10,000 of other laws
#endif

class Dice {
 public:
  explicit Dice(std::uint32_t seed) : dice_(seed) {}
  std::int64_t below(std::int64_t n) { return static_cast<std::int64_t>(dice_() % static_cast<std::uint64_t>(n)); }
  Length length(std::int64_t least, std::int64_t most) {  // points, to the tick
    return Length::ticks(least * Length::kPerPoint + below((most - least) * Length::kPerPoint));
  }
  Point point() { return {length(-50, 700), length(-50, 900)}; }

  Path path() {
    Path made;
    for (std::int64_t parts = 1 + below(3); parts > 0; --parts) {
      made.push_back(move_to(point()));
      for (std::int64_t steps = 1 + below(5); steps > 0; --steps) {
        made.push_back(below(3) == 0 ? curve_to(point(), point(), point()) : line_to(point()));
      }
      if (below(2) == 0) made.push_back(close_path());
    }
    return made;
  }

  std::string words() {
    static const std::vector<std::string> kWords{"Cut",    "two", "½",    "(front)", "\\", ")", "gown",
                                                 "13 1/2", "é",   "Łódź", "£4.10",   "<>", "%", "“a”"};
    std::string made;
    for (std::int64_t n = below(6); n >= 0; --n) made += kWords[static_cast<std::size_t>(below(14))] + " ";
    return made;
  }

  Mark mark(int depth, Face face) {
    const std::int64_t kind = below(depth < 4 ? 6 : 5);
    switch (kind == 0 && !with_words_ ? 1 : kind) {
      case 0: {
        TextMark made{point(), {}, below(4) == 0, below(3) == 0 ? 90 : 0};
        for (std::int64_t n = below(4); n >= 0; --n) {
          made.runs.push_back({face, length(5, 40), length(0, 300), length(-9, 9), words()});
        }
        return {made};
      }
      case 1: {
        StrokeMark made{path(), length(0, 9) + Length::ticks(1), {}, {}, {}};
        made.cap = below(2) == 0 ? Cap::butt : Cap::round;
        made.join = below(2) == 0 ? Join::mitre : Join::round;
        for (std::int64_t n = below(4) * 2; n > 0; --n) made.dash.push_back(static_cast<int>(1 + below(12)));
        return {made};
      }
      case 2: return {FillMark{path(), static_cast<Ink>(below(4))}};
      case 3: return {LinkMark{Box{length(0, 500), length(0, 500), length(1, 90), length(1, 90)}, anchor()}};
      case 4: return {AnchorMark{anchor(), point()}};
      default: return {ClipMark{path(), marks(depth + 1, face)}};
    }
  }

  std::vector<Mark> marks(int depth, Face face) {
    std::vector<Mark> made;
    for (std::int64_t n = below(depth == 0 ? 12 : 4); n >= 0; --n) made.push_back(mark(depth, face));
    return made;
  }

  PaperDocument any_document() {
    PaperDocument made;
    made.title = words();
    with_words_ = below(3) == 0;  // opening a face takes libharu longer than all the rest
    made.print_scaling_none = below(2) == 0;
    for (std::int64_t n = below(4); n >= 0; --n) {
      made.pages.push_back({length(100, 900), length(100, 900), marks(0, static_cast<Face>(below(4)))});
    }
    for (std::int64_t n = below(5); n > 0; --n) {
      const auto page = static_cast<int>(below(static_cast<std::int64_t>(made.pages.size())));
      made.bookmarks.push_back({words(), static_cast<int>(below(4)), page, length(0, 800)});
    }
    return made;
  }

 private:
  std::string anchor() { return std::string("step ") + static_cast<char>('1' + below(5)); }
  std::mt19937 dice_;
  bool with_words_ = true;
};

}  // namespace

TEST_CASE("random documents are clean PDFs and the same bytes twice", "[pdf][law]") {
  FontFault fault;
  const auto fonts = open_fonts("/usr/share/fonts", fault);
  REQUIRE(fonts != nullptr);
  const bool qpdf = have("qpdf");
  Dice dice(1866);
  for (int round = 0; round < kDocuments; ++round) {
    CAPTURE(round);
    const PaperDocument made = dice.any_document();
    const auto written = write_pdf(made, *fonts);
    if (const auto* refused = std::get_if<WriteFault>(&written)) FAIL(refused->sentence);
    const auto& pdf = std::get<std::string>(written);
    const auto again = write_pdf(made, *fonts);
    REQUIRE(pdf == std::get<std::string>(again));
    REQUIRE(page_listing(made) == page_listing(made));
    if (!qpdf) continue;
    const ScratchFile file("random-pages.pdf", pdf);
    REQUIRE(run("qpdf --check " + file.path()).code == 0);
  }
}
