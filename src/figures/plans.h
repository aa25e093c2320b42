// What drawings and tables need beyond single figures: a lay, a pleat plan, the order of work. Plain structs; every
// number in them that is printed also stands as a Figure, whose key is named here.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "figures/breadth_plans.h"
#include "figures/closing_plans.h"
#include "figures/fitting_plans.h"
#include "figures/say_parts.h"
#include "figures/work_plans.h"
#include "geometry/shapes.h"
#include "units/length.h"
#include "units/quantities.h"

namespace gownsheaf {

// A line drawn in a piece: notch, dart, mark, match. In the same places as the piece's outline.
struct LineInPiece {
  std::string kind;
  Polygon points;
  bool closed = false;
};

// One piece of one cloth as it is cut (per layer it is made from).
struct CutPiece {
  std::string piece, cloth;  // names
  std::int64_t copies = 1;
  bool pair = false;  // copies are left and right
  bool on_fold = false;
  bool full_width = false;  // a breadth, selvage to selvage
  Length across, along;     // cut size, exact: across selvage to selvage, along the cloth's length
  std::string grain;        // "along", "across", "bias"
  std::string allowances;   // words: "seams 5/8 in, hem 3 in, top 1 1/2 in"
  Length seam, hem, top;
  SourceSpan at;
  std::string key;      // figures below it: key + "/cut width", "/cut length", "/copies"
  std::string part_of;  // of a part of a pieced panel: the piece as the maker named it; else ""
  Polygon outline;      // cut line: x along the cloth from the piece's top, y across, least corner 0, 0; empty: a rectangle
  std::vector<LineInPiece> lines = {};  // what is drawn in it
  std::optional<Point> match = {};      // where the cloth's repeat must meet, in the places of the outline
  bool kept = false;                    // no piece of the garment: a panel left whole for later
  const std::string& as_named() const { return part_of.empty() ? piece : part_of; }
};

// A piece where it lies. The cloth's length runs along x from its first end, its width along y from the outer edge of one
// selvage: a full breadth lies at y 0 and is as high as the cloth is wide. turned: a quarter turn, its top across the cloth.
struct LaidPiece {
  std::string piece;
  int copy = 1;
  Box at;  // of the outline where there is one
  bool turned = false;
  bool top_at_right = false, mirrored = false;  // turned end for end; the other hand of a pair
  Polygon outline = {};                 // in the cloth's places; empty: the box. Of a piece on the fold the half that is seen
  int also = 0;                         // the copy that the layer beneath gives; 0: cut from one layer
  bool on_fold = false;                 // its half lies against the fold of the cloth
  bool bias = false;                    // turned by half a quarter besides
  std::vector<LineInPiece> lines = {};  // in the cloth's places
  std::optional<Point> match = {};
};

// How the cloth lies: one layer; folded along its length, both selvages at y 0 and the fold at y = width; folded across, both ends
// at x 0 and the fold at x = length. Width and length are those of what lies there, not of the cloth opened out.
enum class Folded { no, lengthwise, crosswise };

struct LaidStrip {                                    // one bought length, or the length to buy
  std::string name;                                   // "bought length 1", "remnant from the coat", "to buy"
  Length width, usable_width, selvage, length, used;  // used: from the first end, before shrinkage is added
  bool open = false;                                  // length still to be bought
  Folded folded = Folded::no;
  Length starts_at;  // from the cloth's first end, where the first of it lies folded
  std::optional<Length> repeat_along,
      repeat_across;            // where pieces are matched: lines from the first end, and from `repeat_from`
  Length repeat_from;           // y of a repeat's line
  std::vector<Box> bad_places;  // places as of the pieces
  std::vector<LaidPiece> placed;
  std::vector<Box> left_over;         // largest usable rectangles
  std::vector<Length> straight_cuts;  // x where no piece crosses: the cloth may be cut straight across here
};

// An answer to "would it go if …", where the pieces do not all go on what there is.
struct OtherWay {
  std::string words;
  bool goes = false;
};
// A piece that finds no room on what there is. Figures below `key`: alone, what it takes of new cloth; more, how much longer the
// length `on` would have to be (not where no lengthening of it would do).
struct MissingPiece {
  std::string piece, key, on;
};
// A width that the shop offers. Figures below `key`: width, needed, cost.
struct Offer {
  std::string key;
  bool goes = true, best = false;
};

struct LayPlan {
  std::string cloth;
  bool one_way = false;
  bool repeats_one_way = false;          // because of a design that has an up and a down
  std::vector<CutPiece> cut;             // cutting order
  LaidStrip to_buy;                      // the lay on one open length: what must be bought
  std::vector<LaidStrip> on_bought;      // the same pieces on the lengths that lie on the shelf (empty when none written)
  std::vector<std::string> left_out;     // "skirt breadth 3": what does not fit on what was bought
  Length bound;                          // no lay can be shorter
  Length needed;                         // with shrinkage and straightening, rounded up to the shop step
  std::optional<Length> bought;          // sum
  std::optional<Length> spare;           // bought - needed (negative = short)
  std::vector<BreadthPlan> breadths;     // how panels wider than the cloth are joined, and where repeats fall
  bool fits_bought = true;               // every piece laid on what was bought
  std::optional<LaidStrip> opened = {};  // with `to_buy` folded: the rest of that length in one layer, for what is not cut double
  Length total;                          // of the length to buy, folded and opened out: what the lay takes
  std::vector<MissingPiece> missing = {};  // each piece of which copies are left out
  std::vector<OtherWay> other_ways = {};
  std::vector<std::string> pieced = {};    // pieces joined because nothing else goes
  std::vector<CutPiece> kept = {};         // panels left whole, as they are laid
  std::vector<std::string> not_kept = {};  // panels for which there is no room
  std::vector<Offer> offers = {};
  bool cut_short = false;  // a search was stopped before its end: this lay can be had no second time
};

// "two": of how many parts this piece of the lay is joined.
std::string parts_in_words(const LayPlan& plan, const std::string& piece);

struct PleatMark {
  int pleat = 0;
  Length fold, lay_on, edge;
};  // running distances from the run's start; edge: finished
// A seam, placket or pocket where it lies in a run. Figures below `key`: at (as the marks are measured), pleated (from
// centre front) and angle.
struct PleatLanding {
  std::string what, key, lands;
};
// What the folds make at an end of the run: a box pleat where they part, an inverted one where they meet. Its width or
// depth stands as the figure `key`.
struct PleatEnd {
  std::string where, key;
  bool parts = false;
};
struct PleatLevel {
  std::string name;
  Length flat, finished, visible;
  std::vector<PleatMark> marks;
};  // "hip", "hem"
struct PleatPlan {
  std::string run;
  std::string kind;   // word
  bool half = false;  // all that follows is of one half; the other is its mirror
  std::int64_t count = 0;
  Length flat, finished, depth, visible, plus;
  bool overlaps = false;  // depth > visible: pleats lie over each other
  std::string toward;
  std::vector<PleatMark> marks;    // in order along the run; the last lay_on (or line) is flat
  std::vector<Length> seams_at;    // flat distances from the run's start where breadth seams land
  std::string measured_from;       // "centre front"
  bool uneven = false;             // some pleats take up more than others: depth is their average
  std::int64_t takes_said = 0;     // of the first pleats it was said what they take up; the others are alike
  std::vector<PleatLevel> levels;  // the same pleats further down
  std::vector<PleatLanding> landings;
  std::vector<PleatEnd> ends;
  int choices = 0;                 // plans to choose from: figures plan 1 … plan 5
  std::vector<std::string> tiers;  // names, top first
  SourceSpan at;
};

struct PlannedStep {
  std::string id;          // "cut-breadths@slate wool", "own/NAME"
  std::string item;        // "slate wool" or ""
  int number = 0;          // printed number: order of work, from 1
  Say act, reason;         // reason of the first hard predecessor not yet done
  std::vector<Say> shows;  // figure and its words, right-hand column
  std::string cannot_undo;
  std::string gate;
  std::vector<std::string> holds;         // sentences of open holds that gate it: "until …"
  std::vector<std::string> hard_after;    // ids of hard predecessors (after contraction)
  std::vector<std::string> hard_because;  // of each, what goes wrong otherwise; "" where it was passed on
  std::vector<std::string> uses, needs;
  bool done = false;
  Span takes;                 // by the library's rates at the maker's pace, less parts that are done; whole minutes
  std::optional<Span> rests;  // days that pass before what waits for it
  std::string stop;           // where it can be laid down: "after any seam"
  std::string set_up;         // table | machine | iron | hand | figure
  struct Part {
    std::string words;
    std::optional<Span> takes;
    bool done = false;
  };
  std::vector<Part> parts;  // as the maker split it
  bool may_be_left_out = false;
  // Where the days are worked out: the days it is worked on, and the latest day to begin it.
  std::optional<Day> first_day, last_day, latest;
  bool on_longest_chain = false;
  std::string waits_until;   // "until the slate wool is here, 2 May 2027"
  bool conditional = false;  // its condition ended unknown: printed with "if …"
  std::string condition;
  std::string sheet;
  SourceSpan at;
};

enum class MayCut { yes, yes_after, no };
struct CutVerdict {
  std::string cloth;
  std::vector<std::string> parts;  // part-of words cut from it
  MayCut verdict = MayCut::no;
  std::string after;          // "the skirt" for yes_after
  std::string reason;         // sentence
  std::string reason_figure;  // key of a figure in the reason, or ""
  std::string decided;        // "Decided: … because …" or ""
};

struct Plans {
  std::vector<LayPlan> lays;          // in the project's order of cloths
  std::vector<PleatPlan> pleats;      // in the project's order of runs
  std::vector<ClosingPlan> closures;  // in the project's order
  std::vector<BonePlan> bones;        // in the project's order of bone stock
  std::vector<LoadPlan> loads;        // in the project's order of strain
  std::vector<PlannedStep> work;      // in order
  std::optional<WorkPlan> days;       // the work on its days, where hours and a day are written
  std::vector<CutVerdict> may_cut;
  std::vector<FittingPlan> fittings;  // one a gate, in the order of work
  std::vector<CautionPlan> cautions;  // those that the project calls for
};

}  // namespace gownsheaf
