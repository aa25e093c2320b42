// Folded runs: pleats and tucks. Between the seam lines of one run:
//
//   knife          flat = finished + 2 n d + plus       n count of pleats, d depth (fold to inner fold)
//   tucks          the same: a tuck is a fold stitched along its own depth
//   box, inverted  flat = finished + 4 n d + plus       visible = finished / n in all
//   double box     flat = finished + 8 n d + plus       two folds on each side of the part that shows
//   inverted at seams   as inverted; the seam lies in the inner fold, so one edge gets d and the other 3 d
//   fullness = flat / finished (less plus); "just touching" knife pleats are 3 : 1
//
// Any sufficient subset of flat, finished, count, depth, visible, fullness settles the rest; `visible` is a wish while
// count is unwritten and finished is known: count rounds to the nearest, a tie to fewer, and visible is re-divided so
// that finished comes out exactly. So is `fullness` where it settles the count together with depth and one of the widths.
// Sources: docs/formulas.md#pleats.
#pragma once
#include <optional>
#include <string>
#include <variant>

#include "figures/plans.h"
#include "project/project.h"

namespace gownsheaf {

bool is_folded(PleatKind kind);            // not gathers, cartridge or plain
std::int64_t folds_under(PleatKind kind);  // depths of cloth that one pleat takes: 2, 4 or 8

struct PleatInput {
  PleatKind kind = PleatKind::knife;  // a folded kind: is_folded
  std::optional<Length> flat, finished, depth, visible;
  std::optional<std::int64_t> count;
  std::optional<Ratio> fullness;
  Length plus;                  // flat cloth outside the pleats
  std::int64_t count_step = 1;  // 2 where the count must be even: hints then offer no other
};
struct PleatSolution {
  Length flat, finished, depth, visible, plus;
  std::int64_t count = 0;
  bool overlaps = false;
  bool count_rounded = false;
};
// Code is pleats-too-few, pleats-contradict, no-take-up or pleats-too-many. `key` is the run's key that the sentence speaks of
// ("depth"), "" when it speaks of the whole run; the caller looks up its place.
struct PleatFault {
  std::string code, sentence, hint;
  std::string key = {};
};
std::variant<PleatSolution, PleatFault> solve_pleats(const PleatInput& input, std::string_view run_name, ShownIn shown_in);

// Marks along the run, running distances (total * i) / n from its start, never sums of rounded steps. `plus` lies at the
// run's start, so the last lay-on mark is the flat width. takes: the cloth that the first pleats take up, where it was
// said; the others share the rest alike. No more of them than pleats, nor more cloth than the run takes up; with one for
// every pleat, all of it.
std::vector<PleatMark> pleat_marks(PleatKind kind, const PleatSolution& s, const std::vector<Length>& takes = {});

}  // namespace gownsheaf
