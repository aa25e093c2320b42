// What sheets are made of: blocks with keep rules, before any page exists. Widths are in points of the 486 pt live area.
#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "layout/page.h"
#include "layout/text.h"

namespace gownsheaf {

// A heading inside a sheet: rule 2.0 above, text, rule 0.7. Keeps with the two rows or three lines after it.
struct Heading {
  Text text;
};

// Running text, ragged right, no wider than the scale's text width (wide: the full 486).
struct Paragraph {
  Text text;
  bool wide = false;
};

// "At a glance" row, spans 2 + 4: a bold name over small words at the left, sentences at the right, rule 0.7 under it.
struct PairRow {
  Text left, left_under, right;
  bool last = false;
};

struct Column {
  enum class Kind { words, length, count, tick, unit, estimate };
  Text head;
  Kind kind = Kind::words;
  double width = 0;     // points; 0 = shares what is left
  bool bold = false;    // the number to act on
  double padding = -1;  // right padding; -1 = the default (10 pin-up, 8 binder)
};
struct Cell {
  Text text;
};  // a length column's cell holds one length inline (unit in the head), aligned on the fraction; a tag may stand before it
struct Row {
  enum class Kind { plain, group, total } kind = Kind::plain;  // group: first cell only, bold, over the full width
  std::vector<Cell> cells;
};
struct Table {
  std::vector<Column> columns;
  std::vector<Row> rows;
  bool heavy_every_third = false;  // runs of marks
};

// One step of the order of work: box, number, act, reason, cannot-be-undone line; figures at the right.
struct StepBlock {
  int number = 0;
  bool gate = false;          // rules 2.0 above and below, no figure; ends the page in a pin-up set
  std::vector<Text> holds;    // each: HOLD tag, `until …`, its own box; above the act
  Text act;                   // bold
  Text reason;                // condensed; may be empty
  std::string cannot_undo;    // "cuts good cloth"
  Text remark;                // condensed; what it needs and when, under the reason; may be empty
  Text takes;                 // condensed, right-aligned under the figures: how long it takes; may be empty
  std::vector<Text> parts;    // each on its own line with its own box, under the remark
  std::vector<Text> figures;  // right-aligned, 140 wide, one a line, at most three
  std::string anchor;         // links from elsewhere: "step 7"
  std::string id;             // smallest letters, under the figures: what the maker writes to mark it done; may be empty
};

struct WriteIn {
  std::vector<std::pair<Text, double>> blanks;
};  // label and least width of the line in points

// A drawing: marks and labels relative to its own top left. Never split over pages.
struct Label {
  Text text;
  Point at;  // of the anchor point
  enum class Across { left, middle, right } across = Across::left;
  enum class Up { base, middle, top } up = Up::base;  // which part of the text lies at `at`
  int angle = 0;                                      // 0 or 90
  bool on_white = false;                              // white box behind, 2 pt pad
  double size = 0;                                    // points; 0 = the scale's text size; measured inlines keep their own size
};
struct Hatch {
  Path inside;
  int degrees = 45;
  double apart = 8.5;
  double weight = 0.5;
};  // 45 rising, -45 falling, 0 level
using DrawingItem = std::variant<StrokeMark, FillMark, Hatch, Label>;
struct Drawing {
  Length width, height;
  std::vector<DrawingItem> items;       // in drawing order: hatch, fills, outlines, lines, labels
  Text caption;                         // one line under it, up to 486 wide; may be empty
  std::string name;                     // for listings
  bool below_last = false;              // goes on where the drawing before it ended, without white
  std::shared_ptr<const Drawing> head;  // drawn again above it when a page begins with it
};

struct Gap {
  double points = 0;
};
struct Rule {
  double weight = 2.0;
};
// A line of the contents page: filled with page numbers in the second pass.
struct ContentsLine {
  std::string title, anchor;
};

struct Block {
  std::variant<Heading, Paragraph, PairRow, Table, StepBlock, WriteIn, Drawing, Gap, Rule, ContentsLine> what;
  bool keep_with_next = false;  // never deadlocks: ignored when both do not fit an empty page
};

// The eight section words, in order of their place on the outer edge.
enum class Section { glance, buy, cut, pleats, close, fit, work, sums };
std::string_view word_for(Section s);  // "Glance", "Buy", …

struct Sheet {
  std::string id;  // "to buy"
  std::string title;
  std::string anchor;  // for links and the contents page
  Section section = Section::glance;
  Text answer;  // first sentence
  std::vector<Block> blocks;
  // The same said with less, longest first; made only when rows set tight save no page. The first that saves one is taken.
  // They read the project, figures and plans that the sheet was composed from.
  std::vector<std::function<std::vector<Block>()>> shorter;
  bool when_named = false;  // laid out only when a sheet before it, as it was set, prints the page of its anchor
  bool starts_page =
      true;  // binder sheets may share a page when they fit whole under another, or under the end of one of their section
};

}  // namespace gownsheaf
