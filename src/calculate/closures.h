// Closings: where the fasteners stand along an edge, how far each side is cut past the meeting line, how long a
// buttonhole and a lace are. Sources: docs/formulas.md#closures.
//
//   gaps      the least number whose pitch is not above `at most`; between two forced places each stretch by itself
//   place i   start + (stretch × i) / gaps, each by itself, so that no rounding adds up
//   cut edge  lap + turn back, or lap + seam allowance where a facing is sewn on; the under side with its underlap
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

struct ForcedPlace {
  std::string level;
  Length from_top;
};
struct CloserPart {
  std::string level;
  Length from, to, at_most;
};  // down the edge; a place stands at both of its ends
struct ClosureInput {
  std::string one = "hook", many = "hooks";  // what it is called in messages
  std::string edge = "the edge";             // name in messages
  Length edge_length, top, bottom;           // top, bottom: insets
  std::optional<Length> at_most, pitch;
  std::optional<std::int64_t> number;  // places; with `pitch` too
  std::vector<ForcedPlace> forced;     // any order
  std::vector<CloserPart> closer;      // any order; only with `at_most`
  bool insets_free = false;            // insets not written: a row of written pitch stands in the middle
  bool staggered = false;              // the other side stands half a pitch lower
  Length closest;                      // forced places nearer than this are crowded
};
struct ClosurePlaces {
  std::vector<Fastener> places;                         // from the top down; other_way not filled
  std::vector<Length> gaps;                             // pitch of each stretch, exact to the tick
  std::vector<Length> other_side;                       // staggered: places of the other side
  Length widest;                                        // greatest distance between two neighbours
  std::vector<std::pair<ForcedPlace, Length>> crowded;  // forced place and its distance to the fixed place above it
};
// Code is edge-too-short, level-off-edge, fasteners-contradict, fasteners-too-few or fasteners-too-many; key is the
// closure's key that the sentence speaks of.
struct ClosureFault {
  std::string code, sentence, hint, key;
};
std::variant<ClosurePlaces, ClosureFault> place_fasteners(const ClosureInput& input, ShownIn shown_in);

// Across and thickness; 1/8 in more where the rule says so: for a shank, or for every button.
Length buttonhole_length(Length across, Length thickness, bool eighth_more);
bool buttonhole_eighth_more(const Given<ButtonholeIs>& rule, bool shank);
// A tie as it is cut: what hangs free to be tied, 2 in sewn down beneath the edge, 1/2 in hemmed at its end; common practice.
struct TieCut {
  Length free, sewn_down, hemmed;
  Length cut() const { return free + sewn_down + hemmed; }
};
TieCut tie_cut(Length free);
// The lace through n pairs of eyelets, gap g between the edges, `pitches` between neighbours (n - 1 of them), both tie
// ends not counted. Rounded once for each different diagonal.
Length lace_path(LaceAs as, std::int64_t pairs, Length gap, const std::vector<Length>& pitches);
// What the thickness of the edge takes besides: at each of 2n eyelets the lace goes through it and back over its lip;
// common practice.
Length lace_through(std::int64_t pairs, Length thickness);
// factor × √(a² + b²) to the nearest tick.
Length diagonal(std::int64_t factor, Length a, Length b);

// How far one side is cut past the meeting line.
struct SideCut {
  Length lap, turn;
  bool faced = false;
  Length past() const { return lap + turn; }
};
SideCut side_cut(const Closure& closure, const Piece* piece, bool under);

// Pieces and minutes of one kind with so many places (pairs); minutes absent where no rate is known.
struct FastenerWork {
  std::int64_t pieces = 0;
  std::optional<std::int64_t> minutes;
};
FastenerWork fastener_work(Fasten kind, std::int64_t places, bool metal_eyelets);
// The distance that a kind usually keeps: 1 1/4 in, 2 in, 30 mm; absent for kinds without a rule.
std::optional<Length> usual_at_most(Fasten kind);

struct FastenerWords {
  std::string one, many;
};
FastenerWords fastener_words(Fasten kind);

// Figures and plans of the project's closings, in its order. Errors and holds go to diag.
std::vector<ClosingPlan> add_closures(const Project& project, Figures& figures, Diagnostics& diag);

}  // namespace gownsheaf
