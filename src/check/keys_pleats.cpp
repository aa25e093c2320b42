// Keys of pleat runs, the skirt, plackets, pockets and drapery.
#include "check/key_row.h"

namespace gownsheaf {

void add_pleat_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("pleats", list).each(block, "run").means("Each run of pleats, tucks or gathers, in the maker's order."),
      KeyRow("pleats/*/run", name).must().means("Name of the run."),
      KeyRow("pleats/*/kind", word)
          .must()
          .words("knife|box|inverted|double box|cartridge|gathers|tucks|plain|inverted at seams")
          .means("How the cloth is taken in."),
      KeyRow("pleats/*/of", list).each(name).of("pieces").means("The pieces that are pleated."),
      KeyRow("pleats/*/flat", length)
          .words("the rest")
          .guess("~ the joined round of `of`")
          .means("The run laid open, between its seam lines."),
      KeyRow("pleats/*/finished", length).means("The run after pleating."),
      KeyRow("pleats/*/count", count).means("How many pleats."),
      KeyRow("pleats/*/depth", length).means("Fold to inner fold."),
      KeyRow("pleats/*/visible", length)
          .means("What shows of each pleat; a wish unless it settles the count, then `finished` comes out exactly."),
      KeyRow("pleats/*/fullness", ratio).limits("1", "20").means("Flat for each unit finished."),
      KeyRow("pleats/*/plus", length).limits("0 in", "").is("0 in", 'x').means("Flat cloth outside the pleats."),
      KeyRow("pleats/*/half", yes_no).is("no", 'c').means("Sizes and count are of one half; the other mirrors it."),
      KeyRow("pleats/*/toward", word)
          .words("centre back|centre front|left|right")
          .guess("~ centre back")
          .means("Which way the folds turn."),
      KeyRow("pleats/*/begins at", length)
          .limits("0 in", "")
          .guess("~ after the run before")
          .means("Where it begins, flat from centre front."),
      KeyRow("pleats/*/finished at", block).means("Finished length at several levels, for uneven pleats."),
      KeyRow("pleats/*/finished at/waist", length).means("At the waist."),
      KeyRow("pleats/*/finished at/hip", length).means("At the hip."),
      KeyRow("pleats/*/finished at/hem", length).means("At the hem."),
      KeyRow("pleats/*/flat at", block).means("Flat length at several levels; `flat` where unwritten."),
      KeyRow("pleats/*/flat at/waist", length).means("At the waist."),
      KeyRow("pleats/*/flat at/hip", length).means("At the hip."),
      KeyRow("pleats/*/flat at/hem", length).means("At the hem."),
      KeyRow("pleats/*/first takes", length).means("Take-up of the first pleat; the others share the rest."),
      KeyRow("pleats/*/takes", list).each(length).means("Take-up of the first pleats, in order; the others share the rest."),
      KeyRow("pleats/*/stitched down", length).means("How far below the top pleats are stitched down."),
      KeyRow("pleats/*/stitch", length)
          .guess("~ 3/8 in in cartridge pleats")
          .means("Length of a gathering stitch; a ridge is two of them."),
      KeyRow("pleats/*/rows", count).is("3", 'c').means("Rows of gathering stitches."),
      KeyRow("pleats/*/row gap", length).is("1/4 in", 'c').means("Distance between rows."),
      KeyRow("pleats/*/interlining stops", length)
          .limits("0 in", "")
          .is("0 in", 'c')
          .means("How far below the top the interlining stops."),
      KeyRow("pleats/*/marks to", length)
          .limits("0.1 mm", "1 in")
          .is("1/32 in or 1 mm, after `show lengths in`", 'c')
          .means("The step that marks are rounded to."),
      KeyRow("pleats/*/show plans", yes_no).means("Whether five plans to choose from and a trial strip are shown."),
      KeyRow("pleats/*/tiers", list).each(block, "tier").means("Tiers, top first, each gathered to the one above."),
      KeyRow("pleats/*/tiers/*/tier", name).must().means("Name of the tier."),
      KeyRow("pleats/*/tiers/*/fullness", ratio).limits("1", "20").means("Flat for each unit of the tier above."),
      KeyRow("pleats/*/tiers/*/flat", length).means("Its length laid open."),
      KeyRow("pleats/*/tiers/*/finished length", length).means("Its depth, finished."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_skirt_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("skirt", block).means("The skirt as a whole."),
      KeyRow("skirt/kind", word).must().words("straight breadths|gored|circle|tiers").means("How it is cut."),
      KeyRow("skirt/circle", word).words("full|3/4|half|third|quarter").since(kLater).means("How much of a circle it is."),
      KeyRow("skirt/gores", count).since(kLater).means("Number of gores."),
      KeyRow("skirt/hem round", length)
          .limits("1 in", "")
          .guess("~ its breadths, or the round of its pieces, joined")
          .means("Length round the hem."),
      KeyRow("skirt/train", length).since(kLater).means("How far it lies on the floor behind."),
      KeyRow("skirt/levelled at", word)
          .words("waist|hem")
          .guess("~ waist for straight breadths, else hem")
          .means("Where the length is trued."),
      KeyRow("skirt/clears floor by", length).limits("0 in", "40 in").is("1 in", 'c').means("Hem to floor."),
      KeyRow("skirt/hem", block).means("How the hem is made."),
      KeyRow("skirt/hem/depth", length).limits("0 in", "20 in").means("Its finished depth."),
      KeyRow("skirt/hem/faced with", name).of("cloths").means("Cloth that faces it."),
      KeyRow("skirt/hem/stiffened with", name).of("cloths").means("Cloth that stiffens it."),
      KeyRow("skirt/hem/braid", name).of("notions").means("Braid at its edge."),
      KeyRow("skirt/weighs", mass).means("Its weight on a scale; replaces the estimate."),
      KeyRow("skirt/held out by", list).each(block, "support").since(kLater).means("Shape of what holds it out."),
      KeyRow("skirt/held out by/*/at", length).limits("0 in", "").since(kLater).means("Distance below the waist."),
      KeyRow("skirt/held out by/*/round", length).means("Girth there."),
      KeyRow("plackets", list).each(block, "placket").means("Openings in seams and edges."),
      KeyRow("plackets/*/placket", name).must().means("Name of the placket."),
      KeyRow("plackets/*/seam", name).of("seams").group("?where").means("Seam it lies in."),
      KeyRow("plackets/*/edge", name).of("edges").group("?where").means("Edge it lies in."),
      KeyRow("plackets/*/side", word).words("left|right|back|front").means("Side of the wearer."),
      KeyRow("plackets/*/length", length).is("10 in", 'a').means("Its length."),
      KeyRow("plackets/*/number", count)
          .limits("1", "100")
          .guess("~ one to each wrist and knee, else 1")
          .means("How many alike there are."),
      KeyRow("plackets/*/finish", word).words("continuous lap|separate underlap|faced").means("How it is finished."),
      KeyRow("pockets", list).each(block, "pocket").means("Pockets set in the skirt."),
      KeyRow("pockets/*/pocket", name).must().means("Name of the pocket."),
      KeyRow("pockets/*/kind", word).words("in seam|welt|patch").since(kLater).means("What pocket it is."),
      KeyRow("pockets/*/number", count).is("1", 'c').since(kLater).means("How many."),
      KeyRow("pockets/*/seam", name).of("seams").since(kLater).means("Seam it lies in."),
      KeyRow("pockets/*/side", word).words("left|right|back|front").means("Side of the wearer."),
      KeyRow("pockets/*/past centre front", length)
          .limits("0 in", "")
          .guess("~ the line under a fold nearest 95 degrees, of those from 80 to 110")
          .means("Flat distance from centre front."),
      KeyRow("pockets/*/of", list).each(name).of("pieces").since(kLater).means("The pieces it is on."),
      KeyRow("pockets/*/below waist", length).limits("0 in", "").since(kLater).means("Distance below the waist."),
      KeyRow("pockets/*/opening", length).means("Length of its opening."),
      KeyRow("pockets/*/bag", block).since(kLater).means("Size of its bag."),
      KeyRow("pockets/*/bag/width", length).means("Width of the bag."),
      KeyRow("pockets/*/bag/length", length).means("Length of the bag."),
      KeyRow("drapery", list).each(block, "drapery").form("none").means("What is draped over bodice or skirt."),
      KeyRow("drapery/*/drapery", name).must().means("Its name."),
      KeyRow("drapery/*/kind", word).words("bertha|overskirt|sash|fichu|apron").means("What it is."),
      KeyRow("drapery/*/held", word).words("fixed|tacked|detachable").must().means("How it is held."),
      KeyRow("drapery/*/of", list).each(name).of("pieces").means("Its pieces."),
      KeyRow("drapery/*/cut on", word).words("straight|bias").since(kLater).means("Its grain."),
      KeyRow("drapery/*/foundation", name).of("cloths").words("none").means("Cloth beneath it."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
