#include "calculate/uneven_pleats.h"

#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

Length take_up(const PleatSolution& s) { return s.flat - s.plus - s.finished; }

Length all_of(const std::vector<Length>& lengths) {
  Length sum;
  for (const Length l : lengths) sum += l;
  return sum;
}

std::string pleats(std::size_t n) { return whole_number(static_cast<std::int64_t>(n)) + (n == 1 ? " pleat" : " pleats"); }

std::optional<PleatFault> too_much_taken(const std::string& run, const std::string& where, const PleatSolution& s,
                                         const std::vector<Length>& takes, const std::string& key, ShownIn in) {
  if (all_of(takes) <= take_up(s)) return std::nullopt;
  return PleatFault{"pleats-contradict",
                    "The first " + (takes.size() == 1 ? std::string("pleat") : pleats(takes.size())) + " of " + run +
                        (takes.size() == 1 ? " takes up " : " take up ") + worked(all_of(takes), in) + "; " + where +
                        " there are only " + worked(take_up(s), in) + " to take up.",
                    "less in the first, more cloth, or less `finished` there", key};
}

}  // namespace

Length taken_by(const PleatSolution& s, const std::vector<Length>& takes, std::int64_t k) {
  if (k <= static_cast<std::int64_t>(takes.size())) return takes[static_cast<std::size_t>(k - 1)];
  return (take_up(s) - all_of(takes)).times(1, s.count - static_cast<std::int64_t>(takes.size()));
}

std::optional<PleatFault> uneven_contradiction(const PleatRun& run, ShownIn in) {
  const std::string& name = run.named.name;
  const std::string key = run.takes.known() ? "takes" : "first takes";
  const bool uneven = run.takes.known() || run.first_takes.known();
  const bool levels =
      run.finished_at.hip.known() || run.finished_at.hem.known() || run.flat_at.hip.known() || run.flat_at.hem.known();
  if (!is_folded(run.kind) && (uneven || levels))
    return PleatFault{"pleats-contradict",
                      "Run " + name + " has no pleats, and `" + (uneven ? key : "finished at") + "` is of pleats.",
                      "drop it, or let `kind` be one that is folded: `kind: knife`", uneven ? key : "finished at"};
  if (is_folded(run.kind) && !run.tiers.empty())
    return PleatFault{"pleats-contradict", "Run " + name + " is pleated, and tiers are gathered.",
                      "`kind: gathers`, or drop `tiers`", "tiers"};
  if (!run.tiers.empty() && (run.flat.known() || run.fullness.known()))
    return PleatFault{"pleats-contradict", "The first tier of " + name + " says how full it is, and so does the run.",
                      "drop `" + std::string(run.flat.known() ? "flat" : "fullness") + "` of the run", "tiers"};
  if (!is_folded(run.kind) && run.stitched_down.known())
    return PleatFault{"pleats-contradict", "Run " + name + " has no pleats that could be stitched down.",
                      "drop `stitched down`, or let `kind` be one that is folded", "stitched down"};
  if (run.takes.known() && run.first_takes.known())
    return PleatFault{"pleats-contradict", "What the first pleat of " + name + " takes up is said twice.", "drop `first takes`",
                      "first takes"};
  if (uneven && run.depth.known())
    return PleatFault{"pleats-contradict", "`depth` makes the pleats of " + name + " alike; `" + key + "` does not.",
                      "drop `depth`: it follows from `flat`, `finished` and `count`", "depth"};
  const std::pair<const Given<Length>*, const Given<Length>*> twice[] = {{&run.finished, &run.finished_at.waist},
                                                                         {&run.flat, &run.flat_at.waist}};
  for (const auto& [plain, at_waist] : twice)
    if (plain->known() && at_waist->known() && **plain != **at_waist) {
      const std::string word = plain == &run.finished ? "finished" : "flat";
      return PleatFault{"pleats-contradict",
                        "Run " + name + ": `" + word + "` says " + worked(**plain, in) + ", `" + word + " at` says " +
                            worked(**at_waist, in) + " at the waist.",
                        "drop one of the two", word + " at"};
    }
  return std::nullopt;
}

std::variant<UnevenSum, PleatFault> settle_uneven(const PleatRun& run, const PleatSolution& marked, bool halved, ShownIn in) {
  const std::string& name = run.named.name;
  const std::string key = run.takes.known() ? "takes" : "first takes";
  UnevenSum out;
  if (run.takes.known()) out.takes = *run.takes;
  else if (run.first_takes.known()) out.takes = {*run.first_takes};
  const auto n = static_cast<std::size_t>(marked.count);
  if (out.takes.size() > n)
    return PleatFault{"pleats-contradict",
                      "`" + key + "` of " + name + " names " + pleats(out.takes.size()) + "; there " +
                          (n == 1 ? "is only 1" : "are only " + whole_number(marked.count)) + (halved ? " in each half." : "."),
                      "name the first ones; the others share the rest", key};
  if (out.takes.size() == n) {
    const Length off = all_of(out.takes) - take_up(marked);
    if ((off < Length{} ? -off : off) > pleat_step(in).times(1, 2))
      return PleatFault{"pleats-contradict",
                        "The " + pleats(n) + " of " + name + " take up " + worked(all_of(out.takes), in) + "; between " +
                            worked(marked.flat - marked.plus, in) + " flat and " + worked(marked.finished, in) +
                            " finished there are " + worked(take_up(marked), in) + ".",
                        "leave the last one out of `" + key + "`: it takes the rest", key};
    out.takes.pop_back();
  }
  if (auto fault = too_much_taken(name, "at its seam", marked, out.takes, key, in)) return *fault;

  const struct {
    const char* name;
    const Given<Length>& flat;
    const Given<Length>& finished;
  } levels[] = {{"hip", run.flat_at.hip, run.finished_at.hip}, {"hem", run.flat_at.hem, run.finished_at.hem}};
  for (const auto& level : levels) {
    if (!level.flat.known() && !level.finished.known()) continue;
    if (!level.finished.known())
      return PleatFault{"pleats-too-few", "Run " + name + ": `flat at` has the " + level.name + ", and `finished at` has not.",
                        "write `" + std::string(level.name) + ":` and its length in `finished at`", "flat at"};
    PleatSolution s = marked;
    const auto in_mark = [&](Length l) { return halved ? l.times(1, 2) : l; };
    if (level.flat.known()) s.flat = in_mark(*level.flat);
    s.finished = in_mark(*level.finished);
    if (take_up(s) < Length{})
      return PleatFault{
          "no-take-up",
          "Run " + name + " finishes at " + worked(s.finished, in) + " at the " + level.name + " but is only " +
              worked(s.flat - s.plus, in) + " flat there.",
          "a pleated edge is shorter than its cloth: `flat at: { " + std::string(level.name) + ": … }` if it is cut wider there",
          "finished at"};
    s.visible = s.finished.times(1, s.count);
    s.depth = take_up(s).times(1, folds_under(run.kind) * s.count);
    if (auto fault = too_much_taken(name, "at the " + std::string(level.name), s, out.takes, key, in)) return *fault;
    out.levels.push_back({level.name, s});
  }
  return out;
}

}  // namespace gownsheaf
