// The checked garment: plain structs, every name resolved, every length of the piece opened out and after shrinking.
// Filled by check/ alone; read by calculate/ and packet/. A section that did not check clean is left empty and named in
// `failed_sections`.
#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "project/body.h"
#include "project/closing.h"
#include "project/given.h"
#include "project/named.h"
#include "project/rules.h"
#include "project/work.h"
#include "units/print.h"
#include "units/quantities.h"

namespace gownsheaf {

enum class Garment { dress, bodice, skirt, petticoat, corset, spencer, coat, waistcoat, other };
std::string_view word_for(Garment g);

struct Accepted {
  std::string code, item, because;
  SourceSpan at;
};

struct Measure {
  Given<Length> both, left, right;
};  // `both` when not given apart
struct WaistToFloor {
  std::vector<std::pair<std::string, Given<Length>>> at;
};  // "all round" | front, side, back | eight names
struct Measures {
  std::map<std::string, Measure> girths_and_lengths;  // key by the file's words: "waist", "hip", …
  WaistToFloor waist_to_floor;
};

enum class UsedAs { outer, lining, interlining, facing, trimming, strengthening, mock_up };
std::string_view word_for(UsedAs u);
enum class LayRule { either_way, one_way, bias, any_way };
std::string_view word_for(LayRule r);

struct BoughtLength {
  Length length;
  std::optional<Length> width;
  std::optional<Day> arrives;
  SourceSpan at;
};
// bad_places: x from the end along the cloth, y from the selvage's outer edge, as it lies there before shrinking.
struct Remnant {
  Named named;
  Length width, length;
  std::vector<Box> bad_places;
};
struct EnvelopeSays {
  Length length, width;
  SourceSpan at;
};  // what a bought pattern asks: this much, this wide
struct KeptPanel {
  Named named;
  std::optional<Length> width;
  Length length;
};  // no width: selvage to selvage
struct OfferedWidth {
  Length width;
  std::optional<Money> price;
  SourceSpan at;
};
enum class ClothFold { none, lengthwise, crosswise };
std::string_view word_for(ClothFold f);
struct Repeat {
  std::optional<Length> along, across;
  bool half_drop = false;
  SourceSpan at;
};

struct Cloth {
  Named named;
  Given<std::string> kind;
  Given<UsedAs> used_as;
  Given<Length> gap;             // left between pieces
  Given<Length> width, selvage;  // selvage: lost at each edge
  Given<LayRule> lay;
  Given<Percent> shrinks_along, shrinks_across;
  Given<bool> shrunk_already;
  Given<std::vector<BoughtLength>> bought;  // absent = not said; an empty list = nothing bought
  std::vector<Remnant> remnants;
  Given<Length> sold_by, straighten;  // straighten: at each end of a bought length
  std::optional<Repeat> repeat;
  Given<std::string> design;  // plain | stripe | check | figured
  Given<MassPerArea> weight;
  Given<Length> thickness;
  Given<std::string> care;
  Given<Length> frays;           // the least seam that holds in it
  Given<bool> sheer, old;        // old: of unknown past
  Given<std::string> surface;    // plain | raised
  Given<Span> burn_test;         // what a flame took to run along a strip, in the maker's own test
  Given<std::string> stiffness;  // limp | soft | crisp | stiff | board
  Given<Length> overhang;        // how far a strip reaches over an edge before it has bent down to 41.5 degrees
  std::optional<EnvelopeSays> envelope_says;
  Given<Day> arrives;                    // all of it that is not there yet
  Given<Span> takes_to_arrive, restock;  // from the order; once more, when it must be ordered again
  Given<ClothFold> fold;                 // how it is folded to cut
  std::vector<KeptPanel> keep;           // left whole for later
  std::vector<OfferedWidth> offered;     // widths to choose from
  Length usable_width() const;           // width less both selvages, before shrinkage across
};

struct Notion {
  Named named;
  std::string kind, size;
  Given<Length> width, thickness, across;
  bool shank = false;  // a button
  Given<std::vector<Length>> bought_lengths;
  Given<std::int64_t> bought_number;
  Given<Day> arrives = {};
};

enum class PartOf { bodice, skirt, sleeve, leg, collar, band, facing, pocket, drapery, petticoat, corset, trimming };
std::string_view word_for(PartOf p);
enum class Grain { along, across, bias };
std::string_view word_for(Grain g);

struct Make {
  enum class Kind { number, pairs, joined_round, fills } kind = Kind::number;
  std::int64_t number = 1;  // number: pieces; pairs: pairs (two pieces each)
  Length joined_round;      // as many full widths as reach
  std::string fills;        // name of a run or round
};

struct Size {  // one direction of a piece
  enum class Kind { unknown, finished, cut, full_width, share_of_bought } kind = Kind::unknown;
  Length value;
  SourceSpan at;
};

struct Joining {                      // of a piece that may be pieced
  std::optional<std::int64_t> joins;  // at most
  bool clear_of_centre = false;
  std::vector<std::string> clear_of;  // edges
  Length clear_from_edge;             // no join nearer to a long side
  SourceSpan at;
};

// A piece's outline out of a drawing, with its allowances.
struct DrawnPiece {
  std::string drawing, which;  // `pieces.svg#front` as written
  SourceSpan at;
  bool was_cut_line = false;  // the drawing shows where the scissors go; else the seam line, and the allowances are added
  Polygon cut;                // where the scissors go: x along the cloth from the piece's top, y across; least corner 0, 0
  struct Line {
    std::string kind, name;
    Polygon points;
    bool closed = false;
  };                             // kind: notch, dart, mark, match, join; name: after its hyphen
  std::vector<Line> lines = {};  // in the places of `cut`
};

struct Piece {
  Named named;
  Given<PartOf> part_of;
  std::vector<std::string> from;  // cloth names, outermost first; twice is two layers
  SourceSpan from_at;
  Given<Make> make;
  Size width, length;  // width across, length down the body, of the piece opened out
  Given<bool> on_fold;
  Given<Grain> grain;
  Given<LayRule> lay;  // absent = the cloth's
  Given<Length> seam_allowance, hem, top;
  Given<bool> may_be_pieced;
  Joining joining;
  std::optional<DrawnPiece> drawn;
  std::vector<std::string> match_at;  // edges where the cloth's repeat must meet
  SourceSpan match_at_span;
  Given<Length> lining_longer_by;
  std::map<std::string, Given<Length>> edges;            // finished lengths, "side"
  std::map<std::string, Given<Length>> edge_allowances;  // where an edge has its own
  std::string made_for;  // "front closing", "hem": a strip that another section asks for; "" = the maker's own piece
};

struct Seam {
  Named named;
  std::vector<std::string> joins;
  Given<Length> length;
  std::string kind;
  std::int64_t number = 1;
  Given<Length> ease_in, left_open;
  bool by_hand = false;
};
struct EdgeLine {
  Named named;
  std::vector<std::string> of;
  Given<Length> length;
  std::string kind;
  std::int64_t number = 1;
  std::string shape, finish;
  Given<Length> ease_to_draw;
};
struct Round {
  Named named;
  std::vector<std::string> of;    // piece names
  std::vector<std::string> runs;  // run names in order from centre front
  bool centre_front_is_seam = false;
  Given<Length> finished;
};

enum class PleatKind { knife, box, inverted, double_box, cartridge, gathers, tucks, plain, inverted_at_seams };
std::string_view word_for(PleatKind k);
enum class Toward { centre_back, centre_front, left, right };
std::string_view word_for(Toward t);

struct Tier {
  Named named;
  Given<Ratio> fullness;
  Given<Length> flat, finished_length;
};
struct RunLevels {
  Given<Length> waist, hip, hem;
};
struct PleatRun {
  Named named;
  PleatKind kind = PleatKind::knife;
  SourceSpan kind_at;
  std::vector<std::string> of;  // piece names
  Given<Length> flat, finished, depth, visible, plus;
  bool flat_is_the_rest = false;
  Given<std::int64_t> count;
  Given<Ratio> fullness;
  bool half = false;  // sizes and count are of one half; the other mirrors it
  Given<Toward> toward;
  Given<Length> begins_at, marks_to;
  RunLevels finished_at, flat_at;                    // at the waist also `finished` and `flat`, where those are unwritten
  Given<Length> first_takes;                         // what the first pleat takes up
  Given<std::vector<Length>> takes;                  // what the first pleats take up; the others share the rest
  Given<Length> stitch, row_gap, interlining_stops;  // stitch, rows: cartridge and gathers
  Given<std::int64_t> rows;
  Given<Length> stitched_down;  // how far from the top
  bool show_plans = false;
  std::vector<Tier> tiers;  // top first, each gathered to the one above
};

struct Pocket {
  Named named;
  Given<std::string> side;                   // left | right | back | front
  Given<Length> past_centre_front, opening;  // flat; opening: the length of the slit
};

struct SkirtHem {
  Given<Length> depth;
  std::string faced_with, stiffened_with, braid;
};
struct Skirt {
  SourceSpan at;
  Given<std::string> kind;         // straight breadths | gored | circle | tiers
  Given<std::string> levelled_at;  // waist | hem
  Given<Length> clears_floor_by;
  Given<Length> hem_round;  // as written
  Given<Mass> weighs;       // on a scale; replaces the estimate
  std::optional<SkirtHem> hem;
};

struct Drapery {
  Named named;
  std::string kind, held;          // words; held: fixed | tacked | detachable
  std::vector<std::string> of;     // pieces
  std::string cut_on, foundation;  // straight | bias; cloth beneath, "" = none or not said
};

struct Trim {
  Named named;
  std::string kind;                // bow | lace | ruche …
  std::vector<std::string> along;  // seams and edges
  Given<Length> length;
  Given<std::int64_t> number, rows;
};
struct Piping {
  Named named;
  std::vector<std::string> along;
  Given<Length> length;
};  // or a binding: seams, then edges

enum class Paper { letter, a4 };
enum class Holes { none, two, three };
struct Print {
  Given<Paper> paper;
  Given<std::string> sheets;  // pin-up | binder | group
  Given<Holes> holes;
  Given<Length> read_from;
};

struct Project {
  std::string file;  // as named on the command line
  std::string title;
  SourceSpan title_at;
  Given<Day> worn_on, today;
  Given<ShownIn> show_lengths_in;
  Given<Garment> garment;
  Given<bool> joined_at_waist;
  Given<std::string> lining_sewn_in;  // flat | bagged | none
  std::vector<Accepted> accept;
  Rules rules;  // where sources disagree
  Measures measures;
  std::map<std::string, Given<Length>> ease;  // may be negative
  std::vector<Cloth> cloths;                  // in the file's order
  std::vector<Notion> notions;
  std::vector<Piece> pieces;
  std::vector<Seam> seams;
  std::vector<EdgeLine> edges;
  std::vector<Round> rounds;
  std::vector<PleatRun> pleats;
  std::optional<Skirt> skirt;
  std::vector<Drapery> drapery;
  std::vector<Piping> piping, binding;
  std::vector<Trim> trims;
  std::vector<Closure> closures;
  std::vector<Placket> plackets;
  std::vector<Pocket> pockets;
  std::vector<Bone> bones;
  std::vector<BoneStock> bone_stock;
  std::vector<Strain> strain;
  Wearer wearer;
  std::set<std::string> worn_for;  // street, dancing, near flame …
  std::vector<StillToMake> still_to_make;
  std::optional<Taken> taken;
  std::map<std::string, Given<Length>> finished_girths;
  std::optional<SizeTable> size_table;
  Given<std::string> size;                // as written or by option: a label, nearest, larger, between
  std::optional<SizeChoice> size_choice;  // absent when nothing is sized, or no size could be chosen
  std::vector<SizedPiece> sized_pieces;   // in the pieces' order
  std::vector<Fitting> fittings;
  Work work;
  Pace pace;
  Print print;
  std::set<std::string> sections_given;   // top-level keys present and not `none`, also those not worked out yet
  std::set<std::string> failed_sections;  // sections with errors: their calculators do not run
  std::vector<std::pair<std::string, SourceSpan>> to_measure;  // key paths written `to measure`

  const Cloth* cloth(std::string_view name) const;  // names compare without regard to case
  const Piece* piece(std::string_view name) const;
  const PleatRun* run(std::string_view name) const;
  const Round* round(std::string_view name) const;
  const Round* skirt_round() const;  // the first whose pieces are a skirt's or a petticoat's
  const Round* waist_round() const;  // that; else the first that is sewn to no sleeve, leg, collar or trimming
  const Closure* closure(std::string_view name) const;
  const EdgeLine* edge(std::string_view name) const;
  const Seam* seam(std::string_view name) const;
  const Notion* notion(std::string_view name) const;
  const BoneStock* stock(std::string_view name) const;
};
bool same_name(std::string_view a, std::string_view b);  // ASCII and NFC case folded already by check; here case only

}  // namespace gownsheaf
