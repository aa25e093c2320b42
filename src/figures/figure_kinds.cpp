// The static table of figure kinds. Words in capitals inside a quantity stand for a name or a number: `mark K/fold` is
// met by `mark 3/fold`, `lay/PIECE N/from end` by `lay/skirt breadth 2/from end`,
// `at LEVEL` by `at fullest bust`.
#include "figures/figure_kinds_bones.h"
#include "figures/figure_kinds_closing.h"
#include "figures/figure_kinds_load.h"
#include "figures/figure_kinds_yardage.h"
#include "figures/figures.h"

namespace gownsheaf {
namespace {

constexpr Shown kCut = Shown::cut, kMark = Shown::mark, kPleat = Shown::pleat_mark, kCloth = Shown::cloth, kExact = Shown::exact;
constexpr Action kNone = Action::none, kRecut = Action::recut, kRemark = Action::remark, kBuy = Action::buy;

const std::vector<FigureKind>& table() {
  static const std::vector<FigureKind> kinds = [] {
    std::vector<FigureKind> all{
        {"garment", "worn on", "day", kExact, kNone, "", "the day it is worn", false},

        {"garment", "pieces", "count", kExact, kNone, "step-times",
         "pieces of the bodice or corset, for the time of pattern and mock-up", false},
        {"garment", "bones", "count", kExact, kNone, "step-times", "bones in all, for the time they take", false},
        {"garment", "channels", "length", kMark, kNone, "step-times", "channels of all bones, for the time they take", false},
        {"garment", "seams", "length", kMark, kNone, "step-times",
         "seams and darts but those of the skirt, for the time they take", false},
        {"garment", "machine seams", "length", kMark, kNone, "step-times", "those of them sewn by machine, darts apart", false},
        {"garment", "hand seams", "length", kMark, kNone, "step-times", "those of them sewn by hand, darts apart", false},
        {"garment", "seam edges", "length", kMark, kNone, "step-times", "both allowances of those seams, for the time they take",
         false},
        {"garment", "darts", "length", kMark, kNone, "step-times", "all darts, for the time they take", false},
        {"garment", "princess seams", "length", kMark, kNone, "step-times", "princess seams, for the time it takes to clip them",
         false},
        {"garment", "left open", "length", kMark, kNone, "step-times", "the seam left open for the pleating, for its time",
         false},
        {"garment", "layer edges", "length", kMark, kNone, "step-times",
         "round each inner layer of the bodice, for the time of basting", false},
        {"garment", "marked edges", "length", kMark, kNone, "step-times",
         "round the pieces that are marked, for the time of marking", false},
        {"garment", "sleeve edges", "length", kMark, kNone, "step-times",
         "round the inner layers of the sleeves, for the time of basting", false},
        {"garment", "leg edges", "length", kMark, kNone, "step-times",
         "round the inner layers of the legs, for the time of basting", false},
        {"garment", "leg seams", "length", kMark, kNone, "step-times",
         "side and inside seams of both legs, for the time they take", false},
        {"garment", "sleeve seams", "length", kMark, kNone, "step-times", "seams of both sleeves, for the time they take", false},
        {"garment", "corset edges", "length", kMark, kNone, "step-times", "top and foot of a corset, for the time of binding",
         false},
        {"garment", "collar edges", "length", kMark, kNone, "step-times", "round the collar, for the time it takes", false},
        {"garment", "band", "length", kMark, kNone, "step-times", "the band, for the time it takes", false},
        {"garment", "drapery pieces", "count", kExact, kNone, "step-times", "pieces of the drapery, for the time of cutting",
         false},
        {"garment", "drapery edges", "length", kMark, kNone, "step-times", "round the drapery, for the time of binding", false},
        {"garment", "flounce strips", "length", kMark, kNone, "step-times", "flounces laid flat, for the time of gathering",
         false},
        {"garment", "neck", "length", kMark, kNone, "step-times", "the neck edge, for the time it takes", false},
        {"garment", "armholes", "length", kMark, kNone, "step-times", "both armholes, for the time they take", false},
        {"garment", "wrists", "length", kMark, kNone, "step-times", "both wrists, for the time they take", false},
        {"garment", "knees", "length", kMark, kNone, "step-times", "both knees, for the time they take", false},
        {"garment", "lower edge", "length", kMark, kNone, "step-times", "the lower edge, for the time it takes", false},
        {"garment", "stayed edges", "length", kMark, kNone, "step-times", "neck and armholes, for the time of staying them",
         false},
        {"garment", "closing edges", "length", kMark, kNone, "step-times", "both edges of every closing, for the time they take",
         false},
        {"garment", "felled edges", "length", kMark, kNone, "step-times",
         "edges that a separate lining is felled to, for the time it takes", false},
        {"garment", "bows", "count", kExact, kNone, "step-times", "bows, for the time they take", false},
        {"garment", "trims", "count", kExact, kNone, "step-times", "trimmings that are measured for, for the time it takes",
         false},
        {"garment", "trim runs", "length", kMark, kNone, "step-times",
         "lines of the trimmings but lace and bows, for the time of making", false},
        {"garment", "lace runs", "length", kMark, kNone, "step-times", "lines of the lace, for the time of joining and gathering",
         false},
        {"garment", "sewn trims", "length", kMark, kNone, "step-times",
         "lines of all trimmings but bows, for the time of sewing on", false},
        {"garment", "piped", "length", kMark, kNone, "step-times", "piped seams and edges, for the time they take", false},
        {"garment", "strips", "length", kMark, kNone, "step-times",
         "piped and bound seams and edges, for the time of cutting strips", false},
        {"garment", "pockets", "count", kExact, kNone, "step-times", "pockets, for the time they take", false},
        {"garment", "plackets", "count", kExact, kNone, "step-times", "plackets, for the time they take", false},
        {"garment", "openings", "count", kExact, kNone, "step-times", "pockets and plackets, for the time of marking", false},
        {"cloths", "other parts", "count", kExact, kNone, "step-times",
         "parts that are no full breadths, for the time of cutting", false},
        {"pleats", "in all", "count", kExact, kNone, "step-times", "pleats or ridges on both halves", false},
        {"pleats", "thread runs", "length", kMark, kNone, "step-times", "gathering thread in all rows, for the time it takes",
         false},
        {"steps", "takes", "time", kExact, kNone, "step-times", "how long the step takes, at the maker's pace", false},
        {"skirt", "seams", "length", kMark, kNone, "step-times", "seams of the skirt's breadths, for the time they take", false},
        {"skirt", "basting rows", "length", kMark, kNone, "step-times", "rows that hold the interlining, for the time of basting",
         false},
        {"skirt", "top sewn", "length", kMark, kNone, "step-times",
         "the skirt's top edge but where it is gauged, for the time of sewing", false},

        {"rules", "NAME", "word", kExact, kNone, "", "the rule used where published sources disagree", false},

        {"measures", "waist to floor/longest", "length", kMark, kNone, "skirt-length",
         "the longest of the lengths from waist to floor", true},
        {"measures", "waist to floor/PLACE", "length", kMark, kNone, "", "waist to floor at this place, in the shoes", true},
        {"measures", "NAME/left", "length", kMark, kNone, "", "the measure on the left side", true},
        {"measures", "NAME/right", "length", kMark, kNone, "", "the measure on the right side", true},
        {"measures", "NAME", "length", kMark, kNone, "", "a body measure over the layers named", true},

        {"size", "made", "word", kExact, kRecut, "", "the size that is made", false},
        {"size", "chosen by", "word", kExact, kNone, "", "the measure that decides the size", false},
        {"size", "held against", "length", kMark, kNone, "size-girth", "the girth that was held against the table", true},
        {"size", "fraction", "ratio", kExact, kNone, "between-sizes",
         "how far the girth lies from the row below to the row above", true},
        {"size", "rows/LABEL/NAME", "length", kMark, kNone, "", "a measure of this size, as the table has it", false},
        {"size", "differences/LABEL", "length", kMark, kNone, "size-difference",
         "this size's girth less the girth held against it", true},
        {"size", "pieces/PIECE/number made", "count", kExact, kNone, "", "how many of the piece the size that is made takes",
         false},
        {"size", "pieces/PIECE/QUANTITY", "length", kMark, kNone, "between-sizes",
         "what the piece takes from the size that is made", false},
        {"size", "pieces/PIECE/QUANTITY/LABEL", "length", kMark, kNone, "",
         "the same in one of two sizes between which it is made", true},
        {"girths", "body", "length", kMark, kNone, "all-round", "a measure of the body, its two sides put together", true},
        {"girths", "ease", "length", kMark, kNone, "", "what the finished garment has more than the body", true},
        {"girths", "finished", "length", kMark, kRemark, "finished-girth", "the garment's girth when it is finished", true},
        {"girths", "size", "length", kMark, kNone, "between-sizes", "what the size that is made has at this measure", false},
        {"girths", "over underbust", "length", kMark, kNone, "bust-over-underbust",
         "how far the bust stands over the ribs below it", true},
        {"girths", "band", "count", kExact, kNone, "underbust-band",
         "the band, in centimetres, that a bought underbodice is labelled with", true},
        {"girths", "difference", "length", kMark, kNone, "size-difference", "the size's girth less what it is compared with",
         true},

        {"cloths", "width", "length", kMark, kNone, "", "the cloth's width, selvage to selvage", false},
        {"cloths", "usable width", "length", kMark, kNone, "usable-width", "width less both selvages and shrinkage across",
         false},
        {"cloths", "shrinks", "percent", kExact, kNone, "", "shrinkage along the cloth", false},
        {"cloths", "density", "count", kExact, kNone, "density",
         "parts in a hundred of the lay, between the selvages, that are pieces", false},
        {"cloths", "bias strip", "length", kMark, kNone, "bias-strip",
         "the longest bias strip that the left-over cloth still gives in one piece", false},
        {"cloths", "bias strip width", "length", kMark, kNone, "", "how wide that bias strip is", false},
        {"cloths", "keep/NAME/across", "length", kMark, kNone, "", "a panel to be left whole, across", false},
        {"cloths", "keep/NAME/along", "length", kMark, kNone, "", "a panel to be left whole, along", false},
        {"cloths", "offered K/width", "length", kMark, kNone, "", "a width that the shop offers", false},
        {"cloths", "offered K/needed", "length", kCloth, kBuy, "length-to-buy", "what must be bought of it in this width", false},
        {"cloths", "offered K/cost", "money", kExact, kNone, "best-buy", "what that costs", true},
        {"cloths", "best buy", "count", kExact, kNone, "best-buy", "the offer that costs least, else takes the least cloth",
         true},
        {"cloths", "breadths", "count", kExact, kRecut, "breadths", "full breadths cut from it", false},
        {"cloths", "breadth cut length", "length", kCut, kRecut, "cut-length", "the cut length of its longest full breadth",
         false},
        {"cloths", "pieces", "count", kExact, kNone, "", "all parts cut from it, copies counted", false},
        {"cloths", "lay length", "length", kCut, kNone, "lay", "length of the lay, before shrinkage is added", false},
        {"cloths", "bound", "length", kCut, kNone, "lay-bound", "no lay of these pieces can be shorter", false},
        {"cloths", "needed", "length", kCloth, kBuy, "length-to-buy", "what must be bought, up to the shop's step", false},
        {"cloths", "bought", "length", kCloth, kNone, "", "all the lengths that lie on the shelf", false},
        {"cloths", "spare", "length", kCloth, kNone, "spare-and-short", "bought less needed", false},
        {"cloths", "short", "length", kCloth, kBuy, "spare-and-short", "what must be bought more, in one piece", false},
        {"cloths", "missing/PIECE/alone", "length", kCloth, kNone, "spare-and-short",
         "what a piece that finds no room takes of new cloth", false},
        {"cloths", "missing/PIECE/more", "length", kCut, kNone, "spare-and-short",
         "how much longer a bought length would have to be for it", false},
        {"cloths", "lay/PIECE N/from end", "length", kMark, kNone, "lay", "from the cloth's first end to the piece", false},
        {"cloths", "lay/PIECE N/from selvage", "length", kMark, kNone, "lay", "from the selvage to the piece", false},
        {"cloths", "left over N/across", "length", kMark, kNone, "left-over", "a left-over rectangle, across the cloth", false},
        {"cloths", "left over N/along", "length", kMark, kNone, "left-over", "a left-over rectangle, along the cloth", false},

        {"pieces", "cut width", "length", kCut, kRecut, "cut-width", "where the scissors go, across; opened out", false},
        {"pieces", "cut length", "length", kCut, kRecut, "cut-length", "where the scissors go, down the piece", false},
        {"pieces", "copies", "count", kExact, kRecut, "copies", "how many are cut from this cloth", false},
        {"pieces", "half width", "length", kCut, kRecut, "half-width", "from the fold to the cut edge", false},
        {"pieces", "finished width", "length", kMark, kNone, "", "stitch line to stitch line, round the body", false},
        {"pieces", "finished length", "length", kMark, kNone, "", "stitch line to stitch line or fold, down the body", false},
        {"pieces", "seam allowance", "length", kMark, kNone, "", "allowed beyond the stitch line at the seams", false},
        {"pieces", "hem", "length", kMark, kNone, "", "allowed at the lower edge", false},
        {"pieces", "top", "length", kMark, kNone, "", "allowed at the waist end", false},

        {"pleats", "kind", "word", kExact, kRemark, "", "knife, box, inverted", false},
        {"pleats", "count", "count", kExact, kRemark, "pleats", "number of pleats in the run, as the maker counts it", false},
        {"pleats", "half count", "count", kExact, kRemark, "pleats", "pleats in one half of a whole run", false},
        {"pleats", "half flat", "length", kPleat, kRemark, "pleats", "one half of a whole run laid open", false},
        {"pleats", "half finished", "length", kPleat, kRemark, "pleats", "one half of a whole run after pleating", false},
        {"pleats", "flat", "length", kPleat, kRemark, "pleats", "the run laid open, between seam lines", false},
        {"pleats", "finished", "length", kPleat, kRemark, "pleats", "the run after pleating", false},
        {"pleats", "plus", "length", kPleat, kRemark, "pleats", "flat cloth outside the pleats, at the run's start", false},
        {"pleats", "begins at", "length", kPleat, kRemark, "pleats", "where the run begins, flat from centre front", false},
        {"pleats", "depth", "length", kPleat, kRemark, "pleats", "fold to inner fold", false},
        {"pleats", "visible", "length", kPleat, kRemark, "pleats", "what shows of each pleat", false},
        {"pleats", "fullness", "ratio", kExact, kNone, "pleats", "flat less plus, over finished", false},
        {"pleats", "near edge", "length", kCut, kRecut, "pleats", "inverted at seams: cloth added to the first edge of each seam",
         false},
        {"pleats", "far edge", "length", kCut, kRecut, "pleats", "inverted at seams: cloth added to the other edge of each seam",
         false},
        {"pleats", "ridges", "count", kExact, kRemark, "gauging", "cartridge pleats: ridges in the run", false},
        {"pleats", "stitch", "length", kPleat, kRemark, "gauging",
         "length of one stitch, re-divided so that the ridges are whole", false},
        {"pleats", "quarter K/flat", "length", kPleat, kRemark, "gauging",
         "gathered runs: a quarter mark on the flat cloth, from the run's start", false},
        {"pleats", "quarter K/edge", "length", kPleat, kRemark, "gauging", "where that mark lies on the finished edge", false},
        {"pleats", "rows", "count", kExact, kRemark, "", "rows of gathering stitches", false},
        {"pleats", "row gap", "length", kPleat, kRemark, "", "from one row of stitches to the next", false},
        {"pleats", "closes to", "length", kPleat, kNone, "gauging", "the least width that the ridges can be drawn up to", false},
        {"pleats", "cloths thick", "ratio", kExact, kNone, "waist-thickness",
         "cloths of one kind that lie on each other, on average", false},
        {"pleats", "waist thickness", "length", kPleat, kNone, "waist-thickness", "thickness of the pleated edge at its seam",
         false},
        {"pleats", "interlining stops", "length", kPleat, kRemark, "", "the interlining is cut away so far below the top", false},
        {"pleats", "takes up", "length", kPleat, kRemark, "uneven-pleats", "cloth that all pleats of what is marked take up",
         false},
        {"pleats", "pleat K/takes", "length", kPleat, kRemark, "uneven-pleats", "cloth that one pleat takes up", false},
        {"pleats", "at LEVEL/flat", "length", kPleat, kRemark, "uneven-pleats", "the run laid open, at the hip or the hem",
         false},
        {"pleats", "at LEVEL/finished", "length", kPleat, kRemark, "uneven-pleats",
         "the run after pleating, at the hip or the hem", false},
        {"pleats", "at LEVEL/takes up", "length", kPleat, kRemark, "uneven-pleats", "cloth that all pleats take up there", false},
        {"pleats", "at LEVEL/visible", "length", kPleat, kRemark, "uneven-pleats", "what shows of each pleat there", false},
        {"pleats", "at LEVEL/pleat K/takes", "length", kPleat, kRemark, "uneven-pleats", "cloth that one pleat takes up there",
         false},
        {"pleats", "at LEVEL/mark K/fold", "length", kPleat, kRemark, "pleat-marks", "the fold line there, from the run's start",
         false},
        {"pleats", "at LEVEL/mark K/lay on", "length", kPleat, kRemark, "pleat-marks", "the line that the fold is laid to there",
         false},
        {"pleats", "at LEVEL/mark K/edge", "length", kPleat, kRemark, "pleat-marks", "where the fold lies there after pleating",
         false},
        {"pleats", "mark K/fold", "length", kPleat, kRemark, "pleat-marks", "the fold line, from the run's start", false},
        {"pleats", "mark K/lay on", "length", kPleat, kRemark, "pleat-marks",
         "the line that the fold is laid to, from the run's start", false},
        {"pleats", "mark K/edge", "length", kPleat, kRemark, "pleat-marks",
         "where the fold lies after pleating, from the run's start", false},
        {"pleats", "stitched down", "length", kMark, kRemark, "", "the pleats are stitched down so far below the top", false},
        {"pleats", "stitching", "length", kMark, kNone, "stitched-down", "length of all the stitching of pleats", false},
        {"pleats", "tier NAME/flat", "length", kMark, kRecut, "tiers", "length of the tier laid open", false},
        {"pleats", "tier NAME/fullness", "ratio", kExact, kNone, "tiers", "flat for each unit of the edge above", false},
        {"pleats", "tier NAME/finished length", "length", kCut, kRecut, "", "depth of the tier, finished", false},
        {"pleats", "tiers deep", "length", kMark, kNone, "tiers", "depth of all tiers together", false},
        {"pleats", "plan K/kind", "word", kExact, kNone, "", "a plan to choose from: its kind of pleat", false},
        {"pleats", "plan K/count", "count", kExact, kNone, "pleat-choices", "its pleats", false},
        {"pleats", "plan K/flat", "length", kPleat, kNone, "pleat-choices", "its cloth, laid open", false},
        {"pleats", "plan K/visible", "length", kPleat, kNone, "pleat-choices", "what shows of each of its pleats", false},
        {"pleats", "plan K/depth", "length", kPleat, kNone, "pleat-choices", "how deep each is", false},
        {"pleats", "plan K/cloths thick", "ratio", kExact, kNone, "pleat-choices", "cloths on each other, on average", false},
        {"pleats", "plan K/waist thickness", "length", kExact, kNone, "pleat-choices", "thickness at the seam", false},
        {"pleats", "seam K", "length", kPleat, kRemark, "breadth-seams", "where a breadth seam lands, flat from the run's start",
         false},
        {"pleats", "seam K/pleated", "length", kPleat, kNone, "pleat-map", "where it lies after pleating, from centre front",
         false},
        {"pleats", "seam K/angle", "angle", kExact, kNone, "pleat-map", "the same as an angle from centre front", false},
        {"pleats", "at PLACE/makes", "word", kExact, kNone, "pleat-ends",
         "box pleat where folds part, inverted pleat where they meet", false},
        {"pleats", "at PLACE/wide", "length", kPleat, kNone, "pleat-ends", "width of the box pleat there", false},
        {"plackets", "past centre front", "length", kPleat, kNone, "pleat-map", "the seam it stands in, flat from centre front",
         false},
        {"plackets", "in the run", "length", kPleat, kNone, "pleat-map", "the same as the marks of its run are measured", false},
        {"plackets", "pleated", "length", kPleat, kNone, "pleat-map", "where it lies after pleating, from centre front", false},
        {"plackets", "angle", "angle", kExact, kNone, "pleat-map", "the same as an angle from centre front", false},
        {"pockets", "past centre front", "length", kPleat, kRemark, "pleat-map", "where it is set, flat from centre front",
         false},
        {"pockets", "in the run", "length", kPleat, kRemark, "pleat-map", "the same as the marks of its run are measured", false},
        {"pockets", "pleated", "length", kPleat, kNone, "pleat-map", "where it lies after pleating, from centre front", false},
        {"pockets", "angle", "angle", kExact, kNone, "pleat-map", "the same as an angle from centre front", false},
        {"pockets", "opening", "length", kMark, kRemark, "", "length of its slit", false},

        {"rounds", "joined round", "length", kMark, kNone, "joined-round", "the breadths joined, between seam lines", false},
        {"rounds", "finished", "length", kMark, kNone, "", "the edge that the round is sewn to", false},
        {"rounds", "explained", "length", kMark, kNone, "round-sum", "flat cloth that lies in a run", false},
        {"rounds", "unexplained", "length", kMark, kNone, "round-sum", "flat cloth that lies in no run", false},

        {"seams", "ease in", "length", kMark, kNone, "", "by how much one side is longer, to be eased in", false},

        {"sharing", "edges", "count", kExact, kNone, "fitting-change", "edges of the seams that cross it", false},
        {"sharing", "each edge", "length", kPleat, kNone, "fitting-change", "what 1 in or 1 cm of change comes to in each edge",
         false},

        {"fittings", "PLACE/found", "length", kMark, kNone, "", "by how much it was off at the fitting", true},
        {"fittings", "PLACE/edges", "count", kExact, kNone, "fitting-change", "edges, or pleats, that share the change", true},
        {"fittings", "PLACE/each edge", "length", kPleat, kRemark, "fitting-change", "what each edge is moved", true},
        {"fittings", "PLACE/each pleat", "length", kPleat, kRemark, "fitting-change", "what each pleat shows more or less", true},
        {"fittings", "PLACE/left over", "length", kMark, kNone, "fitting-change", "what the edges cannot take", true},
        {"fittings", "PLACE/round", "length", kPleat, kNone, "thicker-layers", "what thicker layers add to the girth", true},

        {"cloths", "burn class", "word", kExact, kNone, "burn-class",
         "class of 16 CFR 1610 that the maker's own strip test points to", false},

        {"skirt", "joined round", "length", kMark, kNone, "joined-round", "the skirt's straight breadths joined", false},
        {"skirt", "hem depth", "length", kMark, kNone, "", "depth of the hem", false},
        {"skirt", "hem round", "length", kMark, kNone, "joined-round", "length of the hem edge", false},
    };
    for (const FigureKind& kind : yardage_figure_kinds()) all.push_back(kind);
    for (const FigureKind& kind : closing_figure_kinds()) all.push_back(kind);
    for (const FigureKind& kind : bone_figure_kinds()) all.push_back(kind);
    for (const FigureKind& kind : load_figure_kinds()) all.push_back(kind);
    return all;
  }();
  return kinds;
}

bool is_capital_word(std::string_view s) {
  if (s.empty()) return false;
  for (const char c : s)
    if (c < 'A' || c > 'Z') return false;
  return true;
}

bool is_number(std::string_view s) {
  if (s.empty()) return false;
  for (const char c : s)
    if (c < '0' || c > '9') return false;
  return true;
}

// One part of a path against one part of a table row: "mark K" meets "mark 3", "PIECE N" meets "skirt breadth 2".
bool part_meets(std::string_view row, std::string_view seen) {
  if (row == seen) return true;
  if (seen.empty()) return false;
  if (is_capital_word(row)) return true;
  const auto row_space = row.rfind(' ');
  const auto seen_space = seen.rfind(' ');
  if (row_space == std::string_view::npos || seen_space == std::string_view::npos) return false;
  const std::string_view last = row.substr(row_space + 1);
  if (last.size() > 1 && is_capital_word(last))  // "at LEVEL" meets "at fullest bust"
    return seen.size() > row_space + 1 && seen.substr(0, row_space + 1) == row.substr(0, row_space + 1);
  if (last != "K" && last != "N") return false;
  return is_number(seen.substr(seen_space + 1)) && part_meets(row.substr(0, row_space), seen.substr(0, seen_space));
}

bool path_meets(std::string_view row, std::string_view seen) {
  while (true) {
    const auto a = row.find('/');
    const auto b = seen.find('/');
    if ((a == std::string_view::npos) != (b == std::string_view::npos)) return false;
    if (!part_meets(row.substr(0, a), seen.substr(0, b))) return false;
    if (a == std::string_view::npos) return true;
    row.remove_prefix(a + 1);
    seen.remove_prefix(b + 1);
  }
}

}  // namespace

const std::vector<FigureKind>& figure_kinds() { return table(); }

const FigureKind* find_figure_kind(std::string_view section, std::string_view quantity) {
  for (const FigureKind& kind : table())
    if (kind.section == section && path_meets(kind.quantity, quantity)) return &kind;
  return nullptr;
}

}  // namespace gownsheaf
