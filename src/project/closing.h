// How the garment closes, what stiffens it and what pulls at it: closures, bones, bone stock, strain. Plain structs,
// filled by check/ and read by calculate/ and packet/. Lengths along an edge are counted from its top.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "project/given.h"
#include "project/named.h"
#include "units/quantities.h"

namespace gownsheaf {

enum class Fasten { hooks_and_eyes, hooks_and_bars, hooks_and_loops, buttons, snaps, lacing, buckle, ties, drawstring, busk };
std::string_view word_for(Fasten f);
enum class Meets { edge_to_edge, overlapping };
std::string_view word_for(Meets m);
enum class DrawnTo { meeting_line, fold, cut_edge };  // where the written width of the sides ends
std::string_view word_for(DrawnTo d);
enum class LaceAs { cross, spiral, staggered_spiral, straight, shop };
std::string_view word_for(LaceAs l);

struct Level {
  std::string name;
  Length from_top;
  SourceSpan at;
};
struct CloserNear {
  std::string level;
  Given<Length> within, at_most;
  SourceSpan at;
};
struct Guard {
  Given<Length> width;
  std::string from;
};  // strip behind the closing, and its cloth

struct Closure {
  Named named;
  std::string edge;      // name of an edge, or "" where a length is written
  Given<Length> length;  // as written, or the edge's
  Fasten fasten = Fasten::hooks_and_eyes;
  SourceSpan fasten_at;
  std::string with;  // notion
  Given<Length> at_most, pitch;
  Given<std::int64_t> number, eyelets;  // eyelets: pairs
  Given<Length> top_inset, bottom_inset;
  std::vector<Level> levels;        // from the top down
  std::vector<std::string> one_at;  // names of levels that must have a fastener
  SourceSpan one_at_at;
  Given<bool> alternate, alone;
  std::int64_t rows = 1;
  Given<std::int64_t> closings;  // how many alike the garment has: one to each cuff
  Given<Length> set_back;
  std::vector<Fasten> compare_with;
  Given<Meets> meets;
  Given<Length> lap, underlap, turn_back;
  std::string facing;              // piece
  std::vector<std::string> sides;  // pieces
  Given<DrawnTo> drawn_to;
  Given<std::string> upper_side;  // left | right
  std::vector<CloserNear> closer_near;
  bool buttonholes_along = false;
  std::optional<Guard> guard;
  Given<std::string> backed_with;  // cloth; Origin::none: nothing
  Given<Length> backing_width;
  LaceAs lace_as = LaceAs::cross;
  Given<Length> gap, tie_ends;  // tie_ends: each
  Given<bool> waist_loops;
  bool eyelets_metal = false;
  Given<std::string> drawstring_at;  // neck | hood | waist | hem | sleeve
  Given<Length> hangs_out;
  Given<std::int64_t> stitches_each;
};

enum class PlacketFinish { continuous_lap, separate_underlap, faced };
std::string_view word_for(PlacketFinish f);
struct Placket {  // a slit that is finished
  Named named;
  std::string seam, edge;
  Given<std::string> side;  // left | right | back | front
  Given<Length> length;
  Given<PlacketFinish> finish;
  std::int64_t number = 1;  // one to each cuff
};

enum class BoneKind { whalebone, featherbone, flat_steel, spiral_steel, synthetic_whalebone, cane, cord };
std::string_view word_for(BoneKind b);

struct Bone {   // one line of the list: `number` equal channels
  Named named;  // the channel's name
  std::string on_seam, on_edge;
  std::int64_t number = 1;
  Given<Length> channel_length;  // finished channel between its shut ends
  Given<Length> bone_length;     // written: cut so, no rule is applied
  std::string stock;
  std::string casing;  // notion, "in the seam", "between two rows" or ""
  Given<Length> channel_width, end_clear;
  Given<bool> crosses_waist_seam;
};

struct BoneStock {
  Named named;
  BoneKind kind = BoneKind::synthetic_whalebone;
  std::vector<Length> sold_as;
  SourceSpan sold_as_at;
  Given<bool> may_be_cut;
  Length kerf;
  Given<Length> width, thickness, end_clear, casing_ends;
  Given<std::vector<Length>> bought;
};

struct Stay {
  std::string with;
  Given<Length> smaller_by;
  Given<std::string> anchored_at;
  bool hooked_first = true;
};
struct WaistBand {
  Given<Length> width;
  bool loose = false;
  Given<std::string> slides_on;
  Given<Ratio> friction;
};
struct AlsoHangs {
  std::string item;
  Mass weighs;
};
struct StrainZone {  // a part of the edge that goes round another girth
  Named named;
  Given<Length> starts, ends;  // down the edge; absent: from the zone before, to the zone after
  std::string goes_round;
  Given<Length> girth, ease;  // girth absent: the strain's own
  Given<std::string> worn, breathes_at;
};

struct Strain {  // all private
  std::string closure;
  SourceSpan at;
  std::string goes_round;  // name of a measure, or "" where a girth is written
  Given<Length> girth;
  Given<std::string> worn;  // easy | close | snug | tight
  Given<Pressure> pressure;
  Given<std::string> over;  // body | soft stays | corset
  Given<std::string> breathes_at;
  Given<std::string> moves;       // standing | walking | dancing
  std::vector<StrainZone> zones;  // as written; what no zone covers goes round `girth`
  Given<std::string> skirt_hangs_from;
  std::optional<Stay> stay;
  std::optional<WaistBand> band;
  std::vector<AlsoHangs> also_hangs;
  Given<Angle> hip_slope;
  Given<Force> fastener_holds;
  Given<Ratio> use_at_most;
};

}  // namespace gownsheaf
