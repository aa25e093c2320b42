// The closed table of facts. One line a fact: name, type, of what item, the words it may be, what it says, and whether a
// calculator works it out already. A fact that is not worked out is unknown, never no.
#include <algorithm>

#include "templates/condition.h"

namespace gownsheaf {
namespace {

using T = FactType;
constexpr bool kNotYet = false;

std::vector<FactKind> table() {
  std::vector<FactKind> t{
      // the garment
      {"garment kind",
       T::word,
       "",
       {"dress", "bodice", "skirt", "petticoat", "corset", "spencer", "coat", "waistcoat", "other"},
       "what is made"},
      {"bodice", T::yes_no, "", {}, "some piece is part of a bodice"},
      {"skirt", T::yes_no, "", {}, "some piece is part of a skirt"},
      {"sleeves", T::yes_no, "", {}, "some piece is part of a sleeve"},
      {"legs", T::yes_no, "", {}, "some piece is part of a leg"},
      {"collar", T::yes_no, "", {}, "some piece is part of a collar"},
      {"band", T::yes_no, "", {}, "some piece is part of a band"},
      {"petticoat", T::yes_no, "", {}, "some piece is part of a petticoat"},
      {"corset", T::yes_no, "", {}, "some piece is part of a corset"},
      {"drapery", T::yes_no, "", {}, "a drapery is named, or some piece is part of one"},
      {"drapery foundation", T::yes_no, "", {}, "some drapery is mounted on a foundation"},
      {"tailored", T::yes_no, "", {}, "it is built on canvas: a waistcoat, a coat, a spencer"},
      {"joined at waist", T::yes_no, "", {}, "bodice and skirt are sewn together at the waist"},
      {"fitted", T::yes_no, "", {}, "the ease at some girth is 2 in or less"},
      {"sides differ", T::yes_no, "", {}, "some measure is given apart for left and right"},
      {"waist ease", T::length, "", {}, "ease at the waist; less than nothing when it is made smaller"},
      {"pattern", T::word, "", {"own", "bought"}, "whose pattern it is", kNotYet},
      {"between sizes", T::yes_no, "", {}, "the measures lie between two rows of the size table"},
      {"size to fit", T::yes_no, "", {}, "a size is chosen, or the ease at some girth is written"},
      {"mock-up rounds", T::count, "", {}, "mock-ups fitted so far"},
      {"largest change", T::length, "", {}, "the largest change found in the last mock-up"},
      {"gates open", T::count, "", {}, "fittings that are not signed"},
      // the wearer
      {"age", T::count, "", {}, "the wearer's age in years"},
      {"child", T::yes_no, "", {}, "the wearer is under 16"},
      {"over corset", T::yes_no, "", {}, "the measures were taken over a corset"},
      {"underlayers to make", T::count, "", {}, "underlayers that are not finished"},
      {"measures stale", T::yes_no, "", {}, "the measures are 8 weeks old or the layers changed"},
      {"worn for street", T::yes_no, "", {}, "it is worn in the street"},
      {"worn for dancing", T::yes_no, "", {}, "it is worn for dancing"},
      {"worn for stairs", T::yes_no, "", {}, "it is worn on stairs"},
      {"worn for stage", T::yes_no, "", {}, "it is worn on a stage"},
      {"worn for near flame", T::yes_no, "", {}, "it is worn near a flame"},
      {"second mock-up", T::yes_no, "", {}, "a change of the last fitting is more than its edges may take"},
      {"made tight", T::yes_no, "", {}, "some girth is made smaller than the body"},
      {"drawstring", T::yes_no, "", {}, "something closes by a drawstring"},
      {"metal eyelets", T::yes_no, "", {}, "metal eyelets are set for a lace"},
      {"steel bones", T::yes_no, "", {}, "some bone, or a busk, is of steel"},
      // cloth
      {"burns fast", T::yes_no, "", {}, "a strip of some cloth burned faster than class 1 of 16 CFR 1610"},
      {"cloths", T::count, "", {}, "cloths that the garment names"},
      {"nap", T::yes_no, "", {}, "some cloth must lie one way"},
      {"silk", T::yes_no, "", {}, "some cloth's kind is a silk"},
      {"velvet", T::yes_no, "", {}, "some cloth's kind is a velvet"},
      {"never wet", T::yes_no, "", {}, "some cloth must never be wetted"},
      {"repeat", T::yes_no, "", {}, "some cloth has a repeat"},
      {"shrinkage differs", T::yes_no, "", {}, "layers of one piece shrink apart by over 1/4 in on the longest such piece"},
      {"sheer", T::yes_no, "", {}, "some cloth is sheer"},
      {"old cloth", T::yes_no, "", {}, "some cloth is of unknown past"},
      {"used as",
       T::word,
       "cloth",
       {"outer", "lining", "interlining", "facing", "trimming", "strengthening", "mock-up"},
       "what this cloth is for"},
      {"cloth care", T::word, "cloth", {"wash", "steam", "dry clean", "never wet"}, "how this cloth may be cleaned"},
      {"shrunk already", T::yes_no, "cloth", {}, "this cloth was shrunk before it was measured"},
      {"cloth short", T::yes_no, "cloth", {}, "less of this cloth was bought than is needed"},
      {"cloth weight", T::cloth_weight, "cloth", {}, "weight of this cloth"},
      {"cloth breadths", T::count, "cloth", {}, "full breadths cut from this cloth"},
      {"cloth pieces", T::count, "cloth", {}, "all parts cut from this cloth, full breadths too"},
      {"other pieces", T::count, "cloth", {}, "parts cut from this cloth that are no full breadths"},
      {"raised surface", T::yes_no, "cloth", {}, "this cloth has a raised surface"},
      {"late cloth", T::yes_no, "cloth", {}, "this cloth arrives after the work on it must begin"},
      {"panel kept", T::yes_no, "cloth", {}, "a panel of this cloth is kept whole", kNotYet},
      // bodice
      {"lining", T::word, "", {"none", "flat", "bagged"}, "how the lining is sewn in"},
      {"interlined bodice", T::yes_no, "", {}, "a bodice piece is cut in an interlining too"},
      {"sleeves lined", T::yes_no, "", {}, "a sleeve is cut in a lining too"},
      {"legs lined", T::yes_no, "", {}, "a leg is cut in a lining too"},
      {"darts", T::count, "", {}, "darts among the seams"},
      {"princess seams", T::yes_no, "", {}, "some seam is a princess seam"},
      {"bias edge", T::yes_no, "", {}, "some edge grows when it is handled: neck, armhole, or a piece on the bias"},
      {"boned", T::yes_no, "", {}, "bones are named"},
      {"piping", T::yes_no, "", {}, "piping is named"},
      {"binding", T::yes_no, "", {}, "a binding is named"},
      {"bones", T::count, "", {}, "bones in all"},
      {"longest bone", T::length, "", {}, "the longest bone as it is cut"},
      {"bones on seams", T::yes_no, "", {}, "some bone lies on a seam"},
      {"bones cross waist", T::yes_no, "", {}, "some bone crosses the waist seam"},
      {"hand seams", T::yes_no, "", {}, "some seam but the skirt's is sewn by hand"},
      {"machine seams", T::yes_no, "", {}, "some seam but the skirt's is sewn by machine"},
      {"skirt sewn by hand", T::yes_no, "", {}, "some seam of the skirt is sewn by hand"},
      {"piped seams", T::count, "", {}, "seams that are piped"},
      {"piped length", T::length, "", {}, "length of the seams and edges that are piped"},
      {"cord", T::length, "", {}, "the thickest cord in the piping", kNotYet},
      {"neck edge", T::word, "", {"turned", "faced", "bound", "piped"}, "how the neck is finished"},
      {"armhole edge", T::word, "", {"turned", "faced", "bound", "piped"}, "how the armhole is finished"},
      {"waist stay", T::yes_no, "", {}, "a stay goes round the waist inside"},
      // skirt
      {"skirt kind", T::word, "", {"straight breadths", "gored", "circle", "tiers"}, "how the skirt is cut"},
      {"skirt breadths", T::count, "", {}, "full breadths in the outside of the skirt"},
      {"skirt interlined", T::yes_no, "", {}, "a skirt piece is cut in an interlining too"},
      {"skirt levelled at", T::word, "", {"waist", "hem"}, "which end of the skirt is levelled"},
      {"hem depth", T::length, "", {}, "depth of the skirt's hem"},
      {"hem round", T::length, "", {}, "length of the hem edge"},
      {"floor clearance", T::length, "", {}, "how far the hem clears the floor"},
      {"hem stiffening", T::yes_no, "", {}, "the hem is stiffened"},
      {"hem facing", T::yes_no, "", {}, "the hem is faced with another cloth"},
      {"hem braid", T::yes_no, "", {}, "a braid goes round the hem"},
      {"placket", T::yes_no, "", {}, "a placket is named"},
      {"pocket", T::yes_no, "", {}, "a pocket is named"},
      {"placket length", T::length, "", {}, "the longest placket", kNotYet},
      {"pocket kind", T::word, "", {"in seam", "welt", "patch"}, "how the pocket is made", kNotYet},
      {"seam left open", T::yes_no, "", {}, "a whole seam is left open until the pleats are laid"},
      {"train", T::yes_no, "", {}, "the skirt has a train", kNotYet},
      {"flounces", T::yes_no, "", {}, "a piece is a flounce, a frill or a ruffle"},
      {"tiers", T::count, "", {}, "tiers of the skirt", kNotYet},
      {"skirt weight", T::mass, "", {}, "weight of the skirt, weighed or estimated"},
      {"skirt hangs from",
       T::word,
       "",
       {"hooks", "bodice waist", "bodice and stay", "own band", "straps", "nothing"},
       "what carries the skirt"},
      // pleats
      {"pleats", T::yes_no, "", {}, "some run has folds"},
      {"pleat kind",
       T::word,
       "run",
       {"knife", "box", "inverted", "double box", "cartridge", "gathers", "tucks", "plain", "inverted at seams"},
       "kind of this run"},
      {"pleat plies", T::ratio, "run", {}, "cloths that lie on each other in this run: flat / finished"},
      {"gauging", T::yes_no, "", {}, "some run is cartridge pleated"},
      {"waist thickness", T::length, "", {}, "the thickest place of the waist seam", kNotYet},
      {"seams hidden", T::yes_no, "run", {}, "breadth seams of this run lie inside folds", kNotYet},
      // closings
      {"closures", T::count, "", {}, "closings in all"},
      {"fasten",
       T::word,
       "closure",
       {"hooks and eyes", "hooks and bars", "hooks and loops", "buttons", "snaps", "lacing", "buckle", "ties", "drawstring",
        "busk"},
       "how this closing fastens"},
      {"closes at", T::word, "closure", {"front", "back", "side"}, "where this closing lies"},
      {"closed alone", T::yes_no, "closure", {}, "the wearer closes it herself"},
      {"fasteners", T::count, "closure", {}, "fasteners in this closing"},
      {"line load", T::line_load, "closure", {}, "pull along this closing, with breath"},
      {"load band", T::word, "closure", {"R0", "R1", "R2", "R3", "R4"}, "how strongly this closing is backed"},
      {"waistband", T::yes_no, "", {}, "the skirt has a band of its own"},
      {"guard", T::yes_no, "closure", {}, "a guard lies behind this closing"},
      {"drawstring at", T::word, "closure", {"neck", "hood", "waist", "hem", "sleeve"}, "where this drawstring runs"},
      {"drawstring end", T::length, "closure", {}, "how far this drawstring hangs out"},
      // the rest
      {"trims", T::yes_no, "", {}, "trims are named"},
      {"drapery held", T::word, "", {"none", "fixed", "tacked", "detachable"}, "how the drapery is held, all of it alike"},
      {"lace", T::yes_no, "", {}, "a notion is lace"},
      {"lace short", T::yes_no, "", {}, "less lace lies ready than the trim takes", kNotYet},
      {"bows", T::count, "", {}, "bows to make"},
      {"other trims", T::count, "", {}, "trimmings that are neither bows nor lace"},
      {"trims on sleeves", T::yes_no, "", {}, "some trim goes on a sleeve", kNotYet},
      {"all by hand", T::yes_no, "", {}, "every seam is sewn by hand"},
      {"helper days", T::count, "", {}, "days with a second person"},
      {"days left", T::count, "", {}, "days from today to the day it is worn"},
      {"rehearsal day", T::yes_no, "", {}, "a day for the dress rehearsal is written"},
      {"hours short", T::count, "", {}, "hours of work that are left over when the last day for work is past, rounded up"},
  };
  std::sort(t.begin(), t.end(), [](const FactKind& a, const FactKind& b) { return a.name < b.name; });
  return t;
}

}  // namespace

const std::vector<FactKind>& fact_kinds() {
  static const std::vector<FactKind> kinds = table();
  return kinds;
}

const FactKind* find_fact(std::string_view name) {
  const auto& kinds = fact_kinds();
  const auto at = std::lower_bound(kinds.begin(), kinds.end(), name,
                                   [](const FactKind& kind, std::string_view wanted) { return kind.name < wanted; });
  return at != kinds.end() && at->name == name ? &*at : nullptr;
}

}  // namespace gownsheaf
