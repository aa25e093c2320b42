// Which size is made: the published table's rows, each sum in words, and laws over random tables.
#include "calculate/sizes.h"
#include "calculate/calculate.h"
#include "calculate/facts.h"
#include "check/check.h"
#include "project/sizes.h"
#include "support/catch.h"
#include "support/faulty.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using Catch::Matchers::WithinAbs;

namespace {

struct Sized {
  Project project;
  Worked worked;
  std::string said;

  Length length(const std::string& key) const {
    INFO(key);
    const auto l = worked.figures.length(key);
    REQUIRE(l.has_value());
    return *l;
  }
  std::string word(const std::string& key) const { return plain_text(worked.figures.at(key), ShownIn::inches); }
  double fraction() const { return std::get<Ratio>(worked.figures.at("size/fraction").value).value(); }
  bool has(const std::string& key) const { return worked.figures.find(key) != nullptr; }
};

Sized sized(const std::string& rest, const std::optional<std::string>& option = {}) {
  Sized s;
  Diagnostics diag;
  const Entry source = read_yaml("gownsheaf: 1\ntitle: Quay bodice\ngarment: bodice\n" + rest, "quay.yaml", diag);
  s.project = check_project(source, support::the_library(), diag, option);
  WorkOptions quick;
  quick.lay_work = 0;
  s.worked = calculate(s.project, support::the_library(), quick, diag);
  for (const Diagnostic& d : diag.sorted()) s.said += std::string(word_for(d.severity)) + " " + d.code + ": " + d.sentence + "\n";
  return s;
}

// ASTM D5585-11e1, body measurements of adult misses, Table 1 in inches (abstract page astm.org/Standards/D5585.htm); the
// waist is that of the curvy figure, with the straight one beside it under a name of its own.
const std::string kAstm = R"(
size table:
  name: ASTM D5585-11e1, misses
  sizes:
    - { size: 8,  bust: 36 1/4 in, underbust: 30 in, waist: 28 in, straight waist: 29 1/2 in }
    - { size: 10, bust: 37 1/4 in, underbust: 31 in, waist: 29 in, straight waist: 30 1/2 in }
    - { size: 12, bust: 38 3/4 in, underbust: 32 1/2 in, waist: 30 3/4 in, straight waist: 32 1/4 in }
    - { size: 14, bust: 40 3/8 in, underbust: 34 in, waist: 32 1/2 in, straight waist: 34 in }
    - { size: 16, bust: 42 1/8 in, underbust: 35 3/4 in, waist: 34 1/2 in, straight waist: 36 in }
    - { size: 18, bust: 44 in, underbust: 37 5/8 in, waist: 36 3/4 in, straight waist: 38 1/4 in }
    - { size: 20, bust: 46 in, underbust: 39 5/8 in, waist: 39 in, straight waist: 40 1/2 in }
)";
std::string body(const std::string& measures) { return "measures: { " + measures + ", other: { straight waist: 30 in } }\n"; }
Length sixteenths_in(std::int64_t sixteenths) { return Length::sixty_fourths(4 * sixteenths); }

}  // namespace

TEST_CASE("ASTM D5585-11e1 Table 1, sizes 8 and 16: bust, underbust and both waists as published (a)", "[sizes]") {
  const Sized s = sized(body("bust: 36 1/4 in") + kAstm);
  CHECK(s.length("size/rows/8/bust") == sixteenths_in(36 * 16 + 4));
  CHECK(s.length("size/rows/8/underbust") == sixteenths_in(30 * 16));
  CHECK(s.length("size/rows/8/waist") == sixteenths_in(28 * 16));
  CHECK(s.length("size/rows/8/straight waist") == sixteenths_in(29 * 16 + 8));
  CHECK(s.length("size/rows/16/bust") == sixteenths_in(42 * 16 + 2));
  CHECK(s.length("size/rows/16/underbust") == sixteenths_in(35 * 16 + 12));
  CHECK(s.length("size/rows/16/waist") == sixteenths_in(34 * 16 + 8));
  CHECK(s.length("size/rows/16/straight waist") == sixteenths_in(36 * 16));
  // On a row: that row is made, nothing lies between.
  CHECK(s.word("size/made") == "8");
  CHECK_FALSE(s.has("size/fraction"));
}

TEST_CASE("ASTM D5585-11e1 Table 1, bust steps from 8 to 20: 1, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2 in (a)", "[sizes]") {
  const Sized s = sized(body("bust: 36 1/4 in") + kAstm);
  const std::vector<std::pair<std::string, std::string>> pairs = {{"8", "10"},  {"10", "12"}, {"12", "14"},
                                                                  {"14", "16"}, {"16", "18"}, {"18", "20"}};
  const std::vector<std::int64_t> sixteenths = {16, 24, 26, 28, 30, 32};
  for (std::size_t i = 0; i < pairs.size(); ++i)
    CHECK(s.length("size/differences/" + pairs[i].second) - s.length("size/differences/" + pairs[i].first) ==
          sixteenths_in(sixteenths[i]));
}

TEST_CASE("bust 36 1/2 in lies 0.25 of the way from 8 (36 1/4) to 10 (37 1/4): ASTM D5585-11e1 with linear interpolation (a, x)",
          "[sizes]") {
  const Sized s = sized(body("bust: 36 1/2 in, waist: 29 in") + kAstm + "size: between\n");
  CHECK_THAT(s.fraction(), WithinAbs(0.25, 0.001));
  CHECK(s.word("size/made") == "8 to 10");
  // The other measures the same part of the way: waist 28 + 0.25 x 1, underbust 30 + 0.25 x 1.
  CHECK(s.length("girths/waist/size") == sixteenths_in(28 * 16 + 4));
  CHECK(s.length("girths/underbust/size") == sixteenths_in(30 * 16 + 4));
  CHECK(s.length("girths/waist/difference") == sixteenths_in(-12));
  CHECK(sized(body("bust: 36 1/2 in") + kAstm).word("size/made") == "8");
  CHECK(sized(body("bust: 36 1/2 in") + kAstm + "size: larger\n").word("size/made") == "10");
}

TEST_CASE("waist 29 3/8 in lies 0.2143 of the way from 10 (29) to 12 (30 3/4), curvy: ASTM D5585-11e1 (a, x)", "[sizes]") {
  const std::string by_waist = "  chosen by: waist\n";
  const Sized s = sized(body("bust: 36 1/2 in, waist: 29 3/8 in") + kAstm + by_waist);
  CHECK_THAT(s.fraction(), WithinAbs(0.2143, 0.001));
  CHECK(std::get<Ratio>(s.worked.figures.at("size/fraction").value) == Ratio::of(3, 14));
  CHECK(s.word("size/made") == "10");
}

TEST_CASE("bust less underbust and the band to the nearest 5 cm: the three examples of EN 13402-3 (a)", "[sizes]") {
  struct Example {
    const char *bust, *underbust;
    std::int64_t over, band;
  };
  for (const Example& e : {Example{"107", "87", 20, 85}, Example{"108", "89", 19, 90}, Example{"100", "82", 18, 80}}) {
    CAPTURE(e.bust);
    const Sized s = sized("measures: { bust: " + std::string(e.bust) + " cm, underbust: " + e.underbust + " cm }\n");
    CHECK(s.length("girths/bust/over underbust") == Length::cm(e.over));
    CHECK(s.worked.figures.count("girths/underbust/band") == e.band);
    CHECK(s.worked.figures.at("girths/underbust/band").is_private);
  }
  // Two halves of the trunk are put together once; a bust smaller than the ribs tells nothing.
  CHECK(sized("measures: { bust: { left: 54 cm, right: 53 cm }, underbust: 87 cm }\n").length("girths/bust/over underbust") ==
        Length::cm(20));
  CHECK_FALSE(sized("measures: { bust: 80 cm, underbust: 87 cm }\n").has("girths/bust/over underbust"));
}

TEST_CASE("halfway between two rows the larger is made, with a note", "[sizes]") {
  const Sized s = sized(body("bust: 36 3/4 in") + kAstm);
  CHECK(s.word("size/made") == "10");
  CHECK(s.said.find("note size-halfway") != std::string::npos);
  CHECK(sized(body("bust: 36 23/32 in") + kAstm).word("size/made") == "8");
}

TEST_CASE("beyond its ends a table is not carried on: the end row is made, and said", "[sizes]") {
  for (const std::string way : {"nearest", "larger", "between"}) {
    CAPTURE(way);
    const Sized over = sized(body("bust: 50 in") + kAstm + "size: " + way + "\n");
    CHECK(over.word("size/made") == "20");
    CHECK(over.length("girths/bust/size") == Length::inches(46));
    CHECK(over.said.find("hold size-outside: Bust 50 in is more than the largest size, 20 (46 in), by 4 in") !=
          std::string::npos);
    const Sized under = sized(body("bust: 30 in") + kAstm + "size: " + way + "\n");
    CHECK(under.word("size/made") == "8");
    CHECK(under.said.find("warning size-outside") != std::string::npos);
  }
}

TEST_CASE("a table of finished girths is held against body and ease: 36 + 2 1/2 = 38 1/2 in is nearest 12", "[sizes]") {
  const Sized s = sized(body("bust: 36 in") + "ease: { bust: 2 1/2 in }\n" + kAstm + "  girths are: finished\n");
  CHECK(s.length("size/held against") == sixteenths_in(38 * 16 + 8));
  CHECK(s.word("size/made") == "12");
  CHECK(s.length("girths/bust/finished") == sixteenths_in(38 * 16 + 8));
  CHECK(s.length("girths/bust/difference") == sixteenths_in(4));  // 38 3/4 - 38 1/2
}

TEST_CASE("finished girth = body + ease, also where it is made smaller; all of it private", "[sizes]") {
  const Sized s = sized(
      "measures: { bust: { left: 18 in, right: 18 1/2 in }, waist: 29 3/8 in }\nease: { bust: 1 in, waist: 1/2 in less }\n");
  CHECK(s.length("girths/bust/body") == sixteenths_in(36 * 16 + 8));  // two halves of the trunk
  CHECK(s.length("girths/bust/finished") == sixteenths_in(37 * 16 + 8));
  CHECK(s.length("girths/waist/finished") == sixteenths_in(28 * 16 + 14));
  for (const char* key : {"girths/bust/body", "girths/bust/finished", "girths/waist/ease", "girths/waist/finished"})
    CHECK(s.worked.figures.at(key).is_private);
  CHECK_FALSE(s.has("size/made"));
}

TEST_CASE("what tells the body's girth is private; the size's name and the table are not", "[sizes]") {
  const Sized s = sized(body("bust: 36 1/2 in, waist: 29 in") + "ease: { waist: 1/2 in }\n" + kAstm + "size: between\n");
  for (const Figure& f : s.worked.figures.all()) {
    CAPTURE(f.key);
    const bool open = f.key == "size/made" || f.key == "size/chosen by" || f.key.starts_with("size/rows/") ||
                      f.key.starts_with("garment/") || f.key.starts_with("steps/") || f.key.starts_with("rules/");
    CHECK(f.is_private != open);
  }
}

TEST_CASE("the chosen girth follows the garment: bust for a bodice, hip for a skirt, chest for a coat", "[sizes]") {
  const std::string table =
      "size table: { name: ours, sizes: [{ size: 1, bust: 30 in, chest: 31 in, hip: 32 in }, { size: 2, bust: 40 in, chest: 41 in, hip: 42 in }] }\n";
  const std::string measures = "measures: { bust: 40 in, chest: 31 in, hip: 32 in }\n";
  CHECK(sized(measures + table).word("size/chosen by") == "bust");
  for (const auto& [garment, girth] : {std::pair("skirt", "hip"), std::pair("coat", "chest"), std::pair("waistcoat", "chest")}) {
    Diagnostics diag;
    const Entry source =
        read_yaml("gownsheaf: 1\ntitle: T\ngarment: " + std::string(garment) + "\n" + measures + table, "t.yaml", diag);
    const Project project = check_project(source, support::the_library(), diag);
    REQUIRE(project.size_choice);
    CHECK(project.size_choice->chosen_by == girth);
    CHECK(project.size_choice->made == "1");
  }
}

TEST_CASE("pieces given by size: the row made, or the same part of the way between two", "[sizes]") {
  const std::string piece =
      "cloths: { twill: { kind: wool suiting, width: 58 in, bought: [3 yd] } }\n"
      "pieces:\n"
      "  - { piece: bodice front, from: [twill], cut width: 3 in, finished length: 16 in, seam allowance: 1 in,\n"
      "      by size: { 8: { finished width: 10 in }, 10: { finished width: 10 1/2 in, finished length: 17 in }, 12: { finished width: 11 in } } }\n";
  const std::string front = "pieces/bodice front/twill/";
  // Size 10 by label: 10 1/2 in and two seams of 1 in; the piece's own cut width is put aside.
  const Sized ten = sized(body("bust: 36 1/2 in") + kAstm + piece + "size: 10\n");
  CHECK(ten.length(front + "cut width") == sixteenths_in(12 * 16 + 8));
  CHECK(ten.length("size/pieces/bodice front/finished width") == sixteenths_in(10 * 16 + 8));
  CHECK(ten.length("size/pieces/bodice front/finished length") == Length::inches(17));
  // Between, a quarter of the way: 10 + 0.25 x 1/2. The length is given for one of the two only: a hold, and it stands.
  const Sized between = sized(body("bust: 36 1/2 in") + kAstm + piece + "size: between\n");
  CHECK(between.length("size/pieces/bodice front/finished width") == sixteenths_in(10 * 16 + 2));
  CHECK(between.length(front + "cut width") == sixteenths_in(12 * 16 + 2));
  CHECK(between.said.find("hold size-not-between: The length of bodice front is given for 10, not for 8") != std::string::npos);
  CHECK(between.length("size/pieces/bodice front/finished length") == Length::inches(17));
}

TEST_CASE("by size gives the number of a piece and the lengths of its edges too; seams and edges follow", "[sizes]") {
  const std::string piece =
      "cloths: { twill: { kind: wool suiting, width: 58 in, bought: [9 yd] } }\n"
      "pieces:\n"
      "  - { piece: skirt breadth, from: [twill], cut width: full, finished length: 30 in, by size: { 8: { make: 3 }, 10: { make: 3 }, 12: { make: 4 } } }\n"
      "  - { piece: bodice front, make: pair, from: [twill], finished width: 9 in, finished length: 16 in, edges: { side: 1 in, neck: 5 in },\n"
      "      by size: { 8: { edges: { Side: 8 in, front: 13 in } }, 10: { edges: { side: 8 1/4 in, front: 13 1/2 in } }, 12: { edges: { side: 9 in, front: 14 in } } } }\n"
      "seams: { side: { joins: [side of bodice front, side of bodice front], number: 2 } }\n"
      "edges: { centre front: { of: [front of bodice front] } }\n";
  const Sized twelve = sized(body("bust: 36 1/2 in") + kAstm + piece + "size: 12\n");
  CHECK(twelve.worked.figures.count("pieces/skirt breadth/twill/copies") == 4);
  CHECK(twelve.worked.figures.count("size/pieces/skirt breadth/number made") == 4);
  CHECK(*twelve.project.seam("side")->length == Length::inches(9));
  CHECK(*twelve.project.edge("centre front")->length == Length::inches(14));
  CHECK(*twelve.project.piece("bodice front")->edges.at("neck") ==
        Length::inches(5));  // what no size gives stays the piece's own
  // Between 8 and 10, a quarter of the way: 8 + 1/4 x 1/4, 13 + 1/4 x 1/2; three breadths in both.
  const Sized between = sized(body("bust: 36 1/2 in") + kAstm + piece + "size: between\n");
  CHECK(*between.project.seam("side")->length == Length::sixty_fourths(4 * (8 * 16 + 1)));
  CHECK(*between.project.edge("centre front")->length == Length::sixty_fourths(4 * (13 * 16 + 2)));
  CHECK(between.length("size/pieces/bodice front/length of front") == Length::sixty_fourths(4 * (13 * 16 + 2)));
  CHECK(between.worked.figures.count("pieces/skirt breadth/twill/copies") == 3);
  CHECK(between.said.find("size-not-between") == std::string::npos);
  // Between 10 and 12 no number of breadths lies: the larger size's stands, and it is said.
  const Sized none = sized(body("bust: 38 in") + kAstm + piece + "size: between\n");
  CHECK(none.worked.figures.count("pieces/skirt breadth/twill/copies") == 4);
  CHECK(
      none.said.find(
          "hold size-not-between: The number of skirt breadth is 3 for 10 and 4 for 12: none lies between them. That of 12 stands.") !=
      std::string::npos);
}

TEST_CASE("the option wins over the file, and saying what the file says changes nothing", "[sizes]") {
  const std::string file = body("bust: 36 1/2 in") + kAstm + "size: 8\n";
  CHECK(sized(file, "12").word("size/made") == "12");
  CHECK(sized(file, "12").project.size.at.line == 0);
  CHECK(sized(file, "8").project.size.at == sized(file).project.size.at);
  const Sized unknown = sized(file, "15");
  CHECK(unknown.said.find("error size-unknown: The table has no size 15; it has 8, 10, 12, 14, 16, 18 and 20.") !=
        std::string::npos);
  CHECK_FALSE(unknown.project.size_choice.has_value());
  CHECK_FALSE(unknown.has("size/made"));
}

TEST_CASE("steps may ask whether the measures lie between two rows, and whether there is a size or an ease", "[sizes]") {
  const auto fact = [](const Sized& s, const char* name) {
    return facts_of(s.project, s.worked.figures, s.worked.plans)(name, "");
  };
  CHECK(fact(sized(body("bust: 36 1/2 in") + kAstm), "between sizes") == FactValue(true));
  CHECK(fact(sized(body("bust: 36 1/4 in") + kAstm), "between sizes") == FactValue(false));
  CHECK(fact(sized("measures: { bust: 36 in }\n"), "between sizes") == FactValue(false));
  CHECK(fact(sized(body("waist: 29 in") + kAstm), "between sizes") == FactValue{});  // no bust: unknown
  CHECK(fact(sized(body("bust: 36 1/4 in") + kAstm), "size to fit") == FactValue(true));
  CHECK(fact(sized("measures: { bust: 36 in }\nease: { bust: 1 in }\n"), "size to fit") == FactValue(true));
  CHECK(fact(sized("measures: { bust: 36 in }\n"), "size to fit") == FactValue(false));
}

TEST_CASE(
    "law: over random tables the fraction is from 0 to 1, exact on rows, rises with the girth, and never goes past the ends",
    "[sizes]") {
  draws::Draws draw(1868);
  for (int round = 0; round < kLawRounds; ++round) {
    CAPTURE(round);
    std::vector<Length> rising, other;
    const std::int64_t rows = draw.of(1, 14);
    Length girth = Length::ticks(draw.of(5 * Length::kPerInch, 40 * Length::kPerInch)), second = girth;
    for (std::int64_t i = 0; i < rows; ++i) {
      rising.push_back(girth);
      other.push_back(second);
      girth += Length::ticks(draw.of(1, 4 * Length::kPerInch));
      second += Length::ticks(draw.of(0, 4 * Length::kPerInch));
    }
    // On every row: that row, in whatever way.
    const std::size_t on = static_cast<std::size_t>(draw.of(0, rows - 1));
    const SizeChoice at_row = place_in_table(rising, rising[on]);
    REQUIRE(at_row.lies == SizeChoice::Lies::on_a_row);
    REQUIRE((nearest_row(at_row) == on && larger_row(at_row) == on));
    REQUIRE(between_rows(rising[at_row.below], rising[at_row.above], at_row.fraction) == rising[on]);

    Length a = Length::ticks(draw.of(4 * Length::kPerInch, 100 * Length::kPerInch)),
           b = Length::ticks(draw.of(4 * Length::kPerInch, 100 * Length::kPerInch));
    if (b < a) std::swap(a, b);
    const SizeChoice low = place_in_table(rising, a), high = place_in_table(rising, b);
    for (const SizeChoice& place : {low, high}) {
      REQUIRE(place.fraction.n >= 0);
      REQUIRE(place.fraction.n <= place.fraction.d);
      REQUIRE((place.below == place.above || place.above == place.below + 1));
      REQUIRE((place.lies == SizeChoice::Lies::between_rows) == (place.below != place.above));
      const Length g = *place.girth;
      if (place.lies == SizeChoice::Lies::between_rows) {
        REQUIRE(rising[place.below] < g);
        REQUIRE(g < rising[place.above]);
        // Between its rows a girth is found again exactly.
        REQUIRE(between_rows(rising[place.below], rising[place.above], place.fraction) == g);
      }
      // No row lies nearer than the nearest; the larger of two as near.
      const auto apart = [&](std::size_t i) { return g > rising[i] ? g - rising[i] : rising[i] - g; };
      for (std::size_t i = 0; i < rising.size(); ++i) {
        REQUIRE(apart(nearest_row(place)) <= apart(i));
        if (apart(i) == apart(nearest_row(place))) REQUIRE(i <= nearest_row(place));
      }
      if (g <= rising.back()) REQUIRE(rising[larger_row(place)] >= g);
      const Length made = between_rows(other[place.below], other[place.above], place.fraction);
      REQUIRE(made >= other.front());
      REQUIRE(made <= other.back());
    }
    // A larger girth never makes anything smaller.
    REQUIRE(between_rows(other[low.below], other[low.above], low.fraction) <=
            between_rows(other[high.below], other[high.above], high.fraction));
    REQUIRE(nearest_row(low) <= nearest_row(high));
    REQUIRE(larger_row(low) <= larger_row(high));
  }
}
