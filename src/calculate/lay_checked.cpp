#include "calculate/lay_checked.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/lay_shelf.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

bool drawn(const Cut& cut) { return cut.in_lay && (cut.bias || !cut.piece.outline.empty()); }

// What lies on the shelf, opened out.
std::vector<LaidStrip> flat_shelf(const Cloth& cloth) {
  Cloth flat = cloth;
  flat.fold.value = ClothFold::none;
  return shelf(flat);
}

// Why no lay whatever holds the pieces on the shelf, or "".
std::string impossible(const ClothCuts& cuts, ShownIn in) {
  const Cloth& cloth = *cuts.cloth;
  const LaidStrip open = open_strip(cloth);
  const Length usable = open.usable_width * (open.folded == Folded::lengthwise ? 2 : 1);
  Area there, pieces;
  Length longest;
  for (const LaidStrip& strip : flat_shelf(cloth)) {
    there += Area::of(strip.usable_width, strip.length);
    longest = std::max(longest, strip.length);
  }
  for (const Cut& cut : cuts.cuts) {
    if (!cut.in_lay) continue;
    pieces += area_of(cut, usable) * cut.piece.copies;
    const bool may_be_joined = cut.source != nullptr && cut.source->may_be_pieced.known() && *cut.source->may_be_pieced;
    if (!cut.bias && !cut.may_turn && !may_be_joined && cut.piece.along > longest)
      return capital(cloth.named.name) + ": " + cut.piece.piece + " is " + worked(cut.piece.along, in) + " long, and " +
             (longest.is_zero() ? "no cloth is there" : "the longest cloth there is has " + worked(longest, in)) + ".";
  }
  if (pieces <= there || usable <= Length{}) return "";
  return capital(cloth.named.name) + ": laid without any gap its pieces would take a length of " +
         worked(pieces.over(usable, Rounding::up), in) + ", and there is " + worked(there.over(usable, Rounding::down), in) + ".";
}

}  // namespace

bool of_the_search(const std::string& code) {
  static constexpr const char* kCodes[] = {"chart-short", "cloth-short", "lengths-too-short",
                                           "not-laid",    "panel-lost",  "pieced-last"};
  return std::any_of(std::begin(kCodes), std::end(kCodes), [&](const char* c) { return code == c; });
}

LayPlan lay_checked(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag) {
  const std::size_t before = figures.all().size();
  LayWork boxes = work;
  boxes.rectangles = boxes.outlines = 0;
  Diagnostics found;
  LayPlan plan = lay_out_cloth(project, cuts, boxes, figures, found);
  if (found.in_order_found().empty()) return plan;
  if (std::none_of(cuts.cuts.begin(), cuts.cuts.end(), drawn)) {
    figures.forget_after(before);
    return lay_out_cloth(project, cuts, work, figures, diag);
  }
  bool unknown = false;
  for (const Diagnostic& d : found.in_order_found()) {
    if (of_the_search(d.code)) unknown = true;
    else diag.add(d);
  }
  if (!unknown) return plan;
  const Cloth& cloth = *cuts.cloth;
  const SourceSpan at = cloth.bought.known() && cloth.bought.at.line > 0 ? cloth.bought.at : cloth.named.at;
  const std::string never = impossible(cuts, shown_in(project));
  const Subject about{cloth.named.name, "cloths", "cutting layouts"};
  if (!never.empty())
    diag.add(message(about, Severity::hold, "cloth-short", at, never,
                     "`gownsheaf packet` lays the pieces out and says how much to buy"));
  else
    diag.add(message(about, Severity::note, "lay-unsearched", at,
                     "Whether the pieces of " + cloth.named.name +
                         " go on what there is only a search can say, and `check` does not search: "
                         "laid in rows as boxes they do not.",
                     "`gownsheaf packet` searches, and says"));
  return plan;
}

}  // namespace gownsheaf
