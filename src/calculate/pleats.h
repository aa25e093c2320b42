// Pleat runs: knife, box and inverted. Between the seam lines of one run:
//
//   knife          flat = finished + 2 n d + plus       n count of pleats, d depth (fold to inner fold)
//   box, inverted  flat = finished + 4 n d + plus       visible = finished / n in all three
//   fullness = flat / finished (less plus); "just touching" knife pleats are 3 : 1
//
// Any sufficient subset of flat, finished, count, depth, visible, fullness settles the rest; `visible` is a wish while
// count is unwritten and finished is known: count rounds to the nearest, a tie to fewer, and visible is re-divided so
// that finished comes out exactly. Sources: docs/formulas.md#pleats.
#pragma once
#include <optional>
#include <string>
#include <variant>

#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

struct PleatInput {
  PleatKind kind = PleatKind::knife;   // knife, box, inverted
  std::optional<Length> flat, finished, depth, visible;
  std::optional<std::int64_t> count;
  std::optional<Ratio> fullness;
  Length plus;                          // flat cloth outside the pleats
  std::int64_t count_step = 1;          // 2 where the count must be even: hints then offer no other
};
struct PleatSolution { Length flat, finished, depth, visible, plus; std::int64_t count = 0; bool overlaps = false; bool count_rounded = false; };
// Code is pleats-too-few, pleats-contradict, no-take-up or pleats-too-many. `key` is the run's key that the sentence speaks of
// ("depth"), "" when it speaks of the whole run; the caller looks up its place.
struct PleatFault { std::string code, sentence, hint; std::string key = {}; };
std::variant<PleatSolution, PleatFault> solve_pleats(const PleatInput& input, std::string_view run_name, ShownIn shown_in);

// Marks along the run, running distances (total * i) / n from its start, never sums of rounded steps. `plus` lies at the
// run's start, so the last lay-on mark is the flat width.
std::vector<PleatMark> pleat_marks(PleatKind kind, const PleatSolution& s);

}  // namespace gownsheaf
