// What pieces and pleat runs ask of one another: how many full widths reach round a run, how much flat cloth a run has
// when its pieces are joined, and what the runs of a round leave over. Worked out once for a project, then read by the
// pleat figures, the cutting list and the lays.
//
//   joined round = n width - 2 n max(seam, selvage)   full widths, the width after shrinking across
//                = n (cut width - 2 seam)             narrower pieces
//   the rest     = joined round less what earlier runs of the same round take
#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "calculate/tiers.h"
#include "calculate/uneven_pleats.h"
#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// Allowances of a piece. Written `none` is nothing; what was never said is the trade's usual (common practice): seams of
// 1/2 in, a top like the seam, no hem, but 3 in on skirts and petticoats.
struct Allowed {
  Length seam, hem, top;
  bool skirt_ends = false;
};  // skirt_ends: top and hem stand at the ends
Allowed allowed_on(const Piece& piece);

bool is_full_width(const Piece& piece);
std::optional<Length> shrunk_width(const Cloth& cloth);         // selvage to selvage, after shrinking across
std::optional<Length> shrunk_usable_width(const Cloth& cloth);  // less both selvages
// Between seam lines: what one of this piece adds to a round.
std::optional<Length> joined_width(const Piece& piece, const Cloth& cloth);

struct RunSum {
  const PleatRun* run = nullptr;
  bool pleated = false;                  // folded (is_folded), and settled
  PleatSolution sum;                     // in the maker's own measure: of one half when she wrote `half: yes`
  std::optional<Length> flat, finished;  // the same measure; also of plain and gathered runs
  std::optional<Ratio> fullness;
  std::vector<TierSum> tiers;         // of a gathered run, in its own measure
  bool mirrored = false;              // the marks are of one half
  PleatSolution half;                 // what is marked (the half of a whole run, or `sum`)
  std::vector<Length> takes;          // of what is marked: what the first pleats take up, where it was said
  std::vector<PleatLevelSum> levels;  // of what is marked: at the hip and the hem, where they were said
  enum class FlatBy { written, worked, joined, rest, tiers } flat_by = FlatBy::written;
  Length begins_at;                                                      // flat from centre front
  std::optional<Length> in_round(const std::optional<Length>& l) const;  // both halves
};

struct Joined {
  std::optional<Length> length;
  bool unsaid = false;  // nothing to blame on the run: a width is to be measured, or a section did not check clean
};

class RoundSums {
 public:
  RoundSums(const Project& project, Diagnostics& diag);
  const std::vector<RunSum>& runs() const { return runs_; }  // in the project's order
  Joined joined(const std::vector<std::string>& pieces);     // all of these pieces joined, of their first cloth
  // How many of the piece are cut for one layer of this cloth.
  std::optional<std::int64_t> number_of(const Piece& piece, const Cloth& cloth);
  // The flat width, right round, of the run or round that a piece fills.
  std::optional<Length> filled(const std::string& run_or_round);
  const Round* round_of(const PleatRun& run) const;

 private:
  const RunSum& settle(std::size_t index);
  void settle_plain(RunSum& s);
  void settle_gathers(RunSum& s);
  void settle_pleats(RunSum& s);
  bool settle_mirror(RunSum& s, const PleatInput& input);  // false: a fault was said
  Joined flat_from_round(const PleatRun& run);             // in the run's own measure
  Length used_before(const PleatRun& run, bool& known);    // flat from centre front, of one half
  void fault(const PleatRun& run, const PleatFault& fault);

  const Project& project_;
  Diagnostics& diag_;
  std::vector<RunSum> runs_;
  std::vector<int> state_;  // 0 open, 1 being worked out, 2 done
  std::set<std::string> filling_;
};

}  // namespace gownsheaf
