// What blocks become before any page exists: slabs, each as wide as the live area, stacked by the page builder and never
// parted inside (but by force when one is taller than an empty page).
#pragma once
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "layout/lay_out.h"
#include "layout/marks.h"

namespace gownsheaf {

inline constexpr Length kLiveWidth = Length::points(486);
inline constexpr double kHeavyRule = 2.0, kHeadRule = 1.4;

struct Slab {
  Length height;
  Length space_before;                                 // left out at the top of a page
  std::vector<Mark> marks;                             // from the slab's own top left
  enum class Keep { no, soft, hard } keep = Keep::no;  // with the next; soft yields first when the chain is too tall
  double rule_above = 0;                               // weight; 0 = none
  double rule_at_top = 0;                              // in its place when nothing stands above it but a title
  std::vector<Length> cuts;                            // where it may be parted by force: ends of its lines, growing
  std::shared_ptr<const std::vector<Slab>> again;      // repeated when a page begins with this slab: table head, group row
  bool gap = false;                                    // only white: vanishes at the top of a page
  bool ends_page = false;                              // nothing after it on its page
  bool changed = false;                                // holds a figure that is another since the packet before
  std::string names;                                   // the anchor whose page number it prints
  std::string drawing;                                 // the name of a drawing, for the fault when no page can hold it
};
using Slabs = std::vector<Slab>;

// How close a sheet is set so that it does not run a few lines onto another page; type keeps its size.
enum class Closeness {
  usual,
  tight,      // rows at their least height, less white between blocks
  condensed,  // and the plain words of rows in Condensed
};

// What all blocks of a document are laid out with.
struct Bench {
  const Typesetter& type;
  const std::map<std::string, int>& pages;  // anchor -> page number; empty in the first pass
  Closeness close = Closeness::usual;
  bool tight() const { return close != Closeness::usual; }

  const TypeScale& scale() const { return type.scale(); }
  bool pin_up() const { return scale().step >= 20; }
  double either(double in_pin_up, double in_binder) const { return pin_up() ? in_pin_up : in_binder; }
  Length step() const { return Length::points(scale().step); }
  Length capital(double size) const;
  // From the top of a line of this step to its base line: capitals stand in the middle.
  Length base(double step, double size) const { return (pt(step) + capital(size)).times(1, 2); }
  Length text_base() const { return base(scale().step, scale().text); }
  double row_padding() const { return tight() ? either(3.5, 2) : either(6, 3.5); }
  double row_height() const { return tight() ? either(21, 16) : scale().row_height; }
};

// Lines under one another, the first base line at `at`. A right edge is given for lines that end on it.
void set_lines(std::vector<Mark>& marks, const Bench& bench, const std::vector<Text>& lines, Point at, Length pitch,
               double size = 0);
void set_ending_at(std::vector<Mark>& marks, const Bench& bench, const Text& line, Point end, double size = 0);
// One line when it fits the live width, else lines of at most `room`.
std::vector<Text> caption_lines(const Bench& bench, const Text& text, Length room, double size = 0);
Text with_faces(Text text, Face face);       // words and lengths in this face
Text closer(Text text, const Bench& bench);  // plain words in Condensed when rows are set so
Text made_bold(Text text);                   // Regular to Bold, Condensed to Condensed Bold
Text cut_to_width(const Bench& bench, const std::string& words, Face face, Length room, double size);  // with … when too long

Slabs title_slabs(const Sheet& sheet, const Bench& bench);
Slab continued_slab(const Sheet& sheet, const Bench& bench);
Slabs slabs_of(const Heading& heading, const Bench& bench);
Slabs slabs_of(const Paragraph& paragraph, const Bench& bench);
Slabs slabs_of(const PairRow& row, const Bench& bench);
Slabs slabs_of(const WriteIn& write_in, const Bench& bench);
Slabs slabs_of(const Gap& gap, const Bench& bench);
Slabs slabs_of(const Rule& rule, const Bench& bench);
Slabs slabs_of(const ContentsLine& line, const Bench& bench);
Slabs slabs_of(const Drawing& drawing, const Bench& bench);
Slabs slabs_of(const Table& table, const Bench& bench);
Slabs slabs_of(const StepBlock& step, const Bench& bench);
// All blocks of a sheet with the keep rules between them.
Slabs slabs_of(const std::vector<Block>& blocks, const Bench& bench);

}  // namespace gownsheaf
