// Keys of pleat runs, the skirt, plackets, pockets and drapery.
#include "check/key_row.h"

namespace gownsheaf {

void add_pleat_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("pleats", list).each(block, "run").means("Each run of pleats, tucks or gathers, in the maker's order."),
      Row("pleats/*/run", name).must().means("Name of the run."),
      Row("pleats/*/kind", word).must().words("knife|box|inverted|double box|cartridge|gathers|tucks|plain|inverted at seams")
          .means("How the cloth is taken in."),
      Row("pleats/*/of", list).each(name).of("pieces").means("The pieces that are pleated."),
      Row("pleats/*/flat", length).words("the rest").guess("~ the joined round of `of`")
          .means("The run laid open, between its seam lines."),
      Row("pleats/*/finished", length).means("The run after pleating."),
      Row("pleats/*/count", count).means("How many pleats."),
      Row("pleats/*/depth", length).means("Fold to inner fold."),
      Row("pleats/*/visible", length)
          .means("What shows of each pleat; a wish unless it settles the count, then `finished` comes out exactly."),
      Row("pleats/*/fullness", ratio).limits("1", "20").means("Flat for each unit finished."),
      Row("pleats/*/plus", length).limits("0 in", "").is("0 in", 'x').means("Flat cloth outside the pleats."),
      Row("pleats/*/half", yes_no).is("no", 'c').means("Sizes and count are of one half; the other mirrors it."),
      Row("pleats/*/toward", word).words("centre back|centre front|left|right").guess("~ centre back")
          .means("Which way the folds turn."),
      Row("pleats/*/begins at", length).limits("0 in", "").guess("~ after the run before")
          .means("Where it begins, flat from centre front."),
      Row("pleats/*/finished at", block).since(3).means("Finished length at several levels, for uneven pleats."),
      Row("pleats/*/finished at/waist", length).means("At the waist."),
      Row("pleats/*/finished at/hip", length).means("At the hip."),
      Row("pleats/*/finished at/hem", length).means("At the hem."),
      Row("pleats/*/flat at", block).since(3).means("Flat length at several levels."),
      Row("pleats/*/flat at/waist", length).means("At the waist."),
      Row("pleats/*/flat at/hip", length).means("At the hip."),
      Row("pleats/*/flat at/hem", length).means("At the hem."),
      Row("pleats/*/first takes", length).since(3).means("Take-up of the first pleat; the last takes the rest."),
      Row("pleats/*/takes", list).each(length).since(3).means("Take-up of each pleat; the last takes the rest."),
      Row("pleats/*/stitched down", length).since(3).means("How far pleats are stitched down."),
      Row("pleats/*/stitch", length).since(3).means("Length of a gathering stitch."),
      Row("pleats/*/rows", count).is("3", 'c').since(3).means("Rows of gathering stitches."),
      Row("pleats/*/row gap", length).is("1/4 in", 'c').since(3).means("Distance between rows."),
      Row("pleats/*/interlining stops", length).limits("0 in", "").is("0 in", 'c').since(3)
          .means("How far below the top the interlining stops."),
      Row("pleats/*/marks to", length).limits("0.1 mm", "1 in").is("1/32 in or 1 mm, after `show lengths in`", 'c')
          .means("The step that marks are rounded to."),
      Row("pleats/*/show plans", yes_no).since(3).means("Whether five plans are shown to choose from."),
      Row("pleats/*/tiers", list).each(block, "tier").since(3).means("Tiers, top first, each gathered to the one above."),
      Row("pleats/*/tiers/*/tier", name).must().means("Name of the tier."),
      Row("pleats/*/tiers/*/fullness", ratio).limits("1", "20").means("Flat for each unit of the tier above."),
      Row("pleats/*/tiers/*/flat", length).means("Its length laid open."),
      Row("pleats/*/tiers/*/finished length", length).means("Its depth, finished."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_skirt_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("skirt", block).means("The skirt as a whole."),
      Row("skirt/kind", word).must().words("straight breadths|gored|circle|tiers").means("How it is cut."),
      Row("skirt/circle", word).words("full|3/4|half|third|quarter").since(kLater).means("How much of a circle it is."),
      Row("skirt/gores", count).since(kLater).means("Number of gores."),
      Row("skirt/hem round", length).since(kLater).means("Length round the hem."),
      Row("skirt/train", length).since(kLater).means("How far it lies on the floor behind."),
      Row("skirt/levelled at", word).words("waist|hem").guess("~ waist for straight breadths, else hem")
          .means("Where the length is trued."),
      Row("skirt/clears floor by", length).limits("0 in", "40 in").is("1 in", 'c').means("Hem to floor."),
      Row("skirt/hem", block).means("How the hem is made."),
      Row("skirt/hem/depth", length).limits("0 in", "20 in").means("Its finished depth."),
      Row("skirt/hem/faced with", name).of("cloths").means("Cloth that faces it."),
      Row("skirt/hem/stiffened with", name).of("cloths").means("Cloth that stiffens it."),
      Row("skirt/hem/braid", name).of("notions").means("Braid at its edge."),
      Row("skirt/weighs", mass).since(2).means("Its weight on a scale; replaces the estimate."),
      Row("skirt/held out by", list).each(block, "support").since(kLater).means("Shape of what holds it out."),
      Row("skirt/held out by/*/at", length).limits("0 in", "").means("Distance below the waist."),
      Row("skirt/held out by/*/round", length).means("Girth there."),
      Row("plackets", list).each(block, "placket").since(kLater).means("Openings in seams and edges."),
      Row("plackets/*/placket", name).must().means("Name of the placket."),
      Row("plackets/*/seam", name).of("seams").group("?where").means("Seam it lies in."),
      Row("plackets/*/edge", name).of("edges").group("?where").means("Edge it lies in."),
      Row("plackets/*/side", word).words("left|right|back|front").means("Side of the wearer."),
      Row("plackets/*/length", length).is("10 in", 'a').means("Its length."),
      Row("plackets/*/finish", word).words("continuous lap|separate underlap|faced").means("How it is finished."),
      Row("pockets", list).each(block, "pocket").since(kLater).means("Pockets."),
      Row("pockets/*/pocket", name).must().means("Name of the pocket."),
      Row("pockets/*/kind", word).words("in seam|welt|patch").means("What pocket it is."),
      Row("pockets/*/number", count).is("1", 'c').means("How many."),
      Row("pockets/*/seam", name).of("seams").means("Seam it lies in."),
      Row("pockets/*/side", word).words("left|right|back|front").means("Side of the wearer."),
      Row("pockets/*/past centre front", length).limits("0 in", "").means("Flat distance from centre front."),
      Row("pockets/*/of", list).each(name).of("pieces").means("The pieces it is on."),
      Row("pockets/*/below waist", length).limits("0 in", "").means("Distance below the waist."),
      Row("pockets/*/opening", length).means("Length of its opening."),
      Row("pockets/*/bag", block).means("Size of its bag."),
      Row("pockets/*/bag/width", length).means("Width of the bag."),
      Row("pockets/*/bag/length", length).means("Length of the bag."),
      Row("drapery", list).each(block, "drapery").since(2).form("none").means("What is draped over bodice or skirt."),
      Row("drapery/*/drapery", name).must().means("Its name."),
      Row("drapery/*/kind", word).words("bertha|overskirt|sash|fichu|apron").means("What it is."),
      Row("drapery/*/held", word).words("fixed|tacked|detachable").must().means("How it is held."),
      Row("drapery/*/of", list).each(name).of("pieces").means("Its pieces."),
      Row("drapery/*/cut on", word).words("straight|bias").means("Its grain."),
      Row("drapery/*/foundation", name).of("cloths").words("none").means("Cloth beneath it."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
