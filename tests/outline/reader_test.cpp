// The reader on drawings of our own: scale, curves, what is shown, limits, ill will.
#include <cmath>

#include "outline/drawings.h"
#include "outline/flatten.h"
#include "outline/numbers.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using drawings::page;
using drawings::read;
using drawings::whole;

TEST_CASE("numbers run together, and what is none", "[reader]") {
  NumberScanner scan("1.5.5-3e1+.25e-1,7.");
  CHECK(*scan.number() == 1.5);
  CHECK(*scan.number() == 0.5);
  CHECK(*scan.number() == -30);
  CHECK(*scan.number() == 0.025);
  scan.skip_comma();
  CHECK(*scan.number() == 7);
  CHECK(scan.done());
  for (const char* none : {"inf", "nan", "-", ".", "e5", "+-1", "1e999"}) {
    CAPTURE(none);
    CHECK_FALSE(NumberScanner(none).number());
  }
  CHECK(read_svg_length("1in")->value == 96);
  CHECK(std::fabs(read_svg_length(" 25.4mm ")->value - 96) < 1e-12);
  CHECK(read_svg_length("50%")->unit == SvgLength::Unit::percent);
  CHECK_FALSE(read_svg_length("3 furlong"));
}

TEST_CASE("sines and cosines agree with the tables", "[reader]") {
  CHECK(of_degrees(90).sine == 1);
  CHECK(of_degrees(90).cosine == 0);
  CHECK(std::fabs(of_degrees(30).sine - 0.5) < 1e-15);
  CHECK(std::fabs(of_degrees(-45).cosine - 0.70710678118654752) < 1e-15);
  for (int d = -720; d <= 720; ++d) {
    const SineCosine t = of_degrees(d + 0.37);
    CHECK(std::fabs(t.sine - std::sin((d + 0.37) * 3.14159265358979323846 / 180)) < 1e-14);
    CHECK(std::fabs(t.sine * t.sine + t.cosine * t.cosine - 1) < 1e-15);
  }
}

TEST_CASE("law: chords of circles and ellipses stay within the stated distance, and on the curve", "[reader][law]") {
  draws::Draws draw(20314);
  for (int round = 0; round < kLawRounds / 20; ++round) {
    const double rx = static_cast<double>(draw.of(1, 400)), ry = rx * static_cast<double>(draw.of(10, 100)) / 100;
    const double degrees = static_cast<double>(draw.of(0, 360));
    FlatPath path({});
    path.move({-rx, 0});
    path.arc(rx, ry, 0, draw.of(0, 1) == 1, draw.of(0, 1) == 1, {rx * 0.6, ry * 0.8});
    FlatPath turned({});
    turned.move({0, 0});
    turned.arc(rx, ry, degrees, true, true, {rx * 0.3, ry * 0.2});
    CAPTURE(rx, ry, degrees);
    const std::vector<Spot>& spots = path.lines().at(0).spots;
    // The arc's ellipse has its centre at 0, 0 or mirrored through the chord's middle: the first spot tells which.
    Spot centre{};
    const double value = spots[1].x * spots[1].x / rx / rx + spots[1].y * spots[1].y / ry / ry;
    if (std::fabs(value - 1) > 1e-6) centre = {-rx + rx * 0.6, ry * 0.8};
    double worst = 0;
    for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
      const auto unit = [&](Spot s) { return Spot{(s.x - centre.x) / rx, (s.y - centre.y) / ry}; };
      const Spot a = unit(spots[i]), b = unit(spots[i + 1]);
      REQUIRE(std::fabs(a.x * a.x + a.y * a.y - 1) < 1e-9);
      for (const double t : {0.25, 0.5, 0.75}) {  // the curve over this share of the chord
        const Spot m{a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
        const double size = std::sqrt(m.x * m.x + m.y * m.y);
        worst = std::max(worst, std::sqrt(std::pow((m.x / size - m.x) * rx, 2) + std::pow((m.y / size - m.y) * ry, 2)));
      }
    }
    REQUIRE(worst <= kFlatMm);
    REQUIRE(turned.lines().at(0).spots.size() > 4);
  }
}

TEST_CASE("law: chords of cubics stay within the stated distance", "[reader][law]") {
  draws::Draws draw(20315);
  for (int round = 0; round < kLawRounds / 20; ++round) {
    const auto spot = [&] {
      return Spot{static_cast<double>(draw.of(0, 5000)) / 10, static_cast<double>(draw.of(0, 5000)) / 10};
    };
    const Spot a = spot(), b = spot(), c = spot(), d = spot();
    FlatPath path({});
    path.move(a);
    path.cubic(b, c, d);
    const std::vector<Spot>& spots = path.lines().at(0).spots;
    const std::size_t n = spots.size() - 1;
    for (std::size_t i = 0; i < n; ++i) {
      const double t = (static_cast<double>(i) + 0.5) / static_cast<double>(n), s = 1 - t;
      const Spot on{s * s * s * a.x + 3 * s * s * t * b.x + 3 * s * t * t * c.x + t * t * t * d.x,
                    s * s * s * a.y + 3 * s * s * t * b.y + 3 * s * t * t * c.y + t * t * t * d.y};
      const Spot chord{(spots[i].x + spots[i + 1].x) / 2, (spots[i].y + spots[i + 1].y) / 2};
      REQUIRE(std::hypot(on.x - chord.x, on.y - chord.y) <= kFlatMm);
    }
  }
}

TEST_CASE("a drawing in px alone is read at 96 to the inch, and says so", "[reader]") {
  const auto r = read("<svg width=\"960\" height=\"480\"><rect width=\"96\" height=\"48\"/></svg>");
  REQUIRE(r.drawing);
  CHECK(r.codes() == std::set<std::string>{"guessed-scale"});
  CHECK(r.drawing->outlines.at(0).box == Box{{}, {}, Length::inches(1), Length::sixty_fourths(32)});
}

TEST_CASE("prefixes, switches, titles and lines of other vocabularies", "[reader]") {
  const auto r = read(
      "<s:svg xmlns:s=\"http://www.w3.org/2000/svg\" xmlns:x=\"urn:x\" width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\">"
      "<x:path d=\"M0 0h9v9z\"/><path d=\"M0 0h9v9z\"/><s:g id=\"layer\"><s:path id=\"front\" d=\"M10 10h50v50h-50z\"><s:title> Bodice \n front </s:title></s:path></s:g></s:svg>");
  REQUIRE(r.drawing);
  REQUIRE(r.drawing->outlines.size() == 1);
  CHECK(r.drawing->outlines[0].title == "Bodice front");
  CHECK(r.drawing->outlines[0].drawn.within == std::vector<std::string>{"layer"});
}

TEST_CASE("style: what wins over what", "[reader]") {
  const auto r = whole(
      "<style>.a{display:none!important} #b.c{display:none} g{visibility:hidden} @media print{.d{display:none}} .e>.f{display:none}</style>"
      "<path id='a' class='a' style='display:inline' d='M0 0h9v9z'/><path id='b' class='c' d='M0 0h9v9z'/>"
      "<g><path id='g' d='M0 0h9v9z'/></g><path id='d' class='d' d='M0 0h9v9z'/>");
  REQUIRE(r.drawing->outlines.size() == 1);
  CHECK(r.drawing->outlines[0].drawn.id == "d");
  CHECK(r.codes() == std::set<std::string>{"style-unread"});
}

TEST_CASE("what cannot be read is refused with its line, and nothing is returned", "[reader]") {
  const std::string deep(4000, 'g');
  std::string groups;
  for (int i = 0; i < 300; ++i) groups += "<g>";
  std::string closing;
  for (int i = 0; i < 300; ++i) closing += "</g>";
  std::string rules, points, tangle;
  for (int i = 0; i < 5100; ++i) rules += ".r" + std::to_string(i) + "{display:none}";
  for (int i = 0; i < 50010; ++i) points += "h1v1";
  for (int i = 0; i < 1500; ++i) tangle += std::to_string(i % 2 * 100) + " " + std::to_string((i * 7919) % 1499) + " ";
  const std::vector<std::pair<std::string, std::string>> wrong = {
      {"<path d='M0 0h9v9z'/><path d='L5 5z'/>", "path-syntax"},
      {"<path id='p' d='M0 0 L 5 x'/>", "path-syntax"},
      {"<path d='M0 0 L 5'/>", "path-syntax"},
      {"<polygon points='1 2 a'/>", "path-syntax"},
      {"<rect width='3 furlong' height='2'/>", "drawing-number"},
      {"<g transform='rotate(a)'/>", "drawing-number"},
      {"<g transform='scale(1,2,3)'/>", "drawing-number"},
      {"<path style='transform: rotate(3deg)' d='M0 0h9v9z'/>", "style-transform"},
      {"<svg viewBox='0 0 0 5'><path d='M0 0h9v9z'/></svg>", "drawing-number"},
      {"<path d='M0 0h1e9v9z'/>", "drawing-far"},
      {"<path d='M0 0h1e300v9z' transform='scale(1e300)'/>", "drawing-far"},
      {groups + "<path d='M0 0h9v9z'/>" + closing, "drawing-deep"},
      {"<g id='a'><use href='#a'/></g>", "drawing-ring"},
      {"<defs><g id='a'><use href='#b'/></g></defs><g id='b'><use href='#a'/></g>", "drawing-ring"},
      {"<style>" + rules + "</style>", "drawing-heavy"},
      {"<path d='M0 0" + points + "z'/>", "outline-long"},
      {"<polygon points='" + tangle + "'/>", "outline-tangled"},
      {"<path d='&bomb;'/>", "drawing-entity"},
  };
  for (const auto& [inside, code] : wrong) {
    CAPTURE(inside.substr(0, 200), code);
    const auto r = read(page("<rect id='good' width='20' height='20'/>\n" + inside));
    CHECK_FALSE(r.drawing);
    CHECK(r.codes().count(code) == 1);
    for (const Diagnostic& d : r.diag.sorted())
      if (d.code == code && code != "drawing-heavy") CHECK(d.at.line == 3);
  }
}

TEST_CASE("uses that repeat a long line thousands of times are refused before they fill the memory", "[reader]") {
  std::string points, uses;
  for (int i = 0; i < 20000; ++i) points += i % 2 ? "h1v1" : "h1v-1";
  for (int i = 0; i < 9000; ++i) uses += "<use href='#a'/>";
  const auto r = read(page("<path id='a' d='M0 0" + points + "v9z'/>" + uses));
  CHECK_FALSE(r.drawing);
  CHECK(r.codes().count("drawing-heavy") == 1);
}

TEST_CASE("long names of many groups round many shapes, and many shapes, are refused before they fill the memory", "[reader]") {
  std::string groups, closing, shapes;
  for (int i = 0; i < 190; ++i) groups += "<g id='" + std::string(190, 'n') + "'>", closing += "</g>";
  for (int i = 0; i < 12000; ++i) shapes += "<path d='M0 0h1'/>";
  CHECK(read(page(groups + shapes + closing)).codes().count("drawing-heavy") == 1);
  std::string squares;
  for (int i = 0; i < 10001; ++i) squares += "<path d='M0 0h1v1z'/>";
  CHECK(read(page(squares)).codes().count("drawing-heavy") == 1);
}

TEST_CASE("law: a drawing with bytes changed, lost or doubled is read or refused, never worse", "[reader][law]") {
  const std::string good = page(
      "<!-- kept --><style>.n{fill-rule:evenodd}</style><defs><path id='d' d='M0 0h9v9z'/></defs><use href='#d' x='3'/>"
      "<g id='layer' transform='rotate(30) translate(5,5)'><path id='f' class='n' d='M10 10c5 5 10-5 20 0s9 9 9 9q3 3-3 9t-9 0a9 5 30 0 1-17-18z'/></g>"
      "<ellipse cx='100' cy='50%' rx='9' ry='5'/><polygon points='1,2 30,4 5,60'/><text class='name'>Front &amp; back</text>");
  draws::Draws draw(20316);
  int read_whole = 0;
  for (int round = 0; round < kLawRounds / 4; ++round) {
    std::string text = good;
    for (std::int64_t n = draw.of(1, 3); n > 0; --n) {
      const auto at = static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(text.size()) - 1));
      switch (draw.of(0, 3)) {
        case 0: text[at] = static_cast<char>(draw.of(1, 255)); break;
        case 1: text.erase(at, static_cast<std::size_t>(draw.of(1, 9))); break;
        case 2:
          text.insert(at, text.substr(static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(text.size()) - 1)), 12));
          break;
        default: text.insert(at, std::string(1, "0123456789eE.-+ ,%&;<>\"'#"[draw.of(0, 24)])); break;
      }
    }
    const auto r = read(text);
    CAPTURE(text);
    REQUIRE((r.drawing.has_value() != r.diag.has_errors()));
    if (!r.drawing) continue;
    ++read_whole;
    for (const DrawnOutline& o : r.drawing->outlines) REQUIRE(area(o.region) > Area());
  }
  CHECK(read_whole > kLawRounds / 40);
}
