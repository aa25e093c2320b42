// Finished pages as plain data: every mark has its final place, in Lengths from the page's top left, y down. The PDF
// writer copies marks to ink and decides nothing; the page listing prints the same data as text for tests.
#pragma once
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "fonts/font_set.h"
#include "geometry/shapes.h"

namespace gownsheaf {

struct TextRun {
  Face face = Face::regular;
  Length size;
  Length offset;  // x from the mark's origin, along the (possibly turned) line
  Length rise;    // above the base line; lowered fractions are negative
  std::string utf8;
};
struct TextMark {
  Point at;  // base line origin
  std::vector<TextRun> runs;
  bool white = false;  // white on black; else black
  int angle = 0;       // 0, or 90: reads from below, upwards
};

struct PathStep {
  enum class Kind { move, line, curve, close } kind = Kind::move;
  Point a, b, to;  // curve: control points a, b; move and line use `to`
};
using Path = std::vector<PathStep>;
Path path_of(const Box& box);
Path path_of(Point from, Point to);
Path path_of_polygon(const Polygon& ring);
Path circle(Point centre, Length radius);

enum class Cap { butt, round };
enum class Join { mitre, round };
struct StrokeMark {
  Path path;
  Length weight;
  Cap cap = Cap::butt;
  Join join = Join::mitre;
  std::vector<int> dash;  // whole points, even count up to 8; empty = full line
};
enum class Ink { black, mid_grey, pale_grey, white };  // 0, 0.55, 0.88, 1
struct FillMark {
  Path path;
  Ink ink = Ink::black;
};
struct Mark;
struct ClipMark {
  Path path;
  std::vector<Mark> inside;
};
struct LinkMark {
  Box at;
  std::string anchor;
};
struct AnchorMark {
  std::string name;
  Point at;
};
struct Mark {
  std::variant<TextMark, StrokeMark, FillMark, ClipMark, LinkMark, AnchorMark> what;
};

struct Page {
  Length width, height;
  std::vector<Mark> marks;
};
struct Bookmark {
  std::string title;
  int level = 0;
  int page = 0;
  Length y;
};
struct PaperDocument {
  std::vector<Page> pages;
  std::vector<Bookmark> bookmarks;
  std::string title;  // document facts
  std::string subject;
  std::string made_with;  // fingerprints of project, templates; outside the comparison of listings
  bool print_scaling_none = true;
};

}  // namespace gownsheaf
