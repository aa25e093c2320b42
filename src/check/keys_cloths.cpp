// Keys of what lies on the shelf: cloths and notions.
#include "check/key_row.h"

namespace gownsheaf {

void add_cloth_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("cloths", map).each(block, "cloth").means("Each cloth under its own name."),
      Row("cloths/*/kind", text).must().limits("1", "60")
          .means("A kind of the cloth table; of any other kind, width, weight and thickness are guessed."),
      Row("cloths/*/used as", word).words("outer|lining|interlining|facing|trimming|strengthening|mock-up")
          .guess("~ the first cloth in `from` is outer").means("What the cloth does in the garment."),
      Row("cloths/*/width", length).limits("4 in", "150 in").guess("~ the cloth table").means("Selvage to selvage."),
      Row("cloths/*/selvage", length).limits("0 in", "3 in").is("1/2 in", 'c').means("Lost at each edge."),
      Row("cloths/*/lay", word).words("either way|one way|bias|any way")
          .guess("~ one way for nap, pile, shot and design, else either way").means("Which way up pieces may lie."),
      Row("cloths/*/shrinks", percent).guess("~ the cloth table").form("{ along, across }")
          .means("How much it shrinks along its length."),
      Row("cloths/*/shrinks/along", percent).guess("~ the cloth table").means("Along the length."),
      Row("cloths/*/shrinks/across", percent).is("0 %", 'c').means("Across the width."),
      Row("cloths/*/shrunk already", yes_no).is("no", 'c').means("Whether it is shrunk before it is measured here."),
      Row("cloths/*/bought", list).each(length).limits("0 in", "50 yd").form("{ length, width, arrives }")
          .means("The lengths on the shelf."),
      Row("cloths/*/bought/*/length", length).must().limits("0 in", "50 yd").means("Length of this one."),
      Row("cloths/*/bought/*/width", length).limits("4 in", "150 in").means("Its width, when it differs."),
      Row("cloths/*/bought/*/arrives", day).since(5).means("When it comes."),
      Row("cloths/*/remnants", list).each(block, "remnant").means("Rests from other garments."),
      Row("cloths/*/remnants/*/remnant", name).means("What it is called."),
      Row("cloths/*/remnants/*/width", length).must().limits("", "150 in").means("Its width."),
      Row("cloths/*/remnants/*/length", length).must().means("Its length."),
      Row("cloths/*/remnants/*/bad places", list).each(block, "bad place").since(4).means("Stains and holes."),
      Row("cloths/*/remnants/*/bad places/*/from end", length).limits("0 in", "").means("Distance from the end."),
      Row("cloths/*/remnants/*/bad places/*/from selvage", length).limits("0 in", "").means("Distance from the selvage."),
      Row("cloths/*/remnants/*/bad places/*/width", length).means("Width of the place."),
      Row("cloths/*/remnants/*/bad places/*/length", length).means("Length of the place."),
      Row("cloths/*/sold by", length).limits("", "10 yd").is("1/8 yd or 10 cm, after `show lengths in`", 'c')
          .means("The step that the shop cuts in."),
      Row("cloths/*/straighten", length).limits("0 in", "1 yd").is("2 in", 'c')
          .means("Lost at each end of a bought length when it is squared."),
      Row("cloths/*/repeat", block).means("Size of the pattern that comes again."),
      Row("cloths/*/repeat/along", length).limits("", "5 yd").means("Along the length."),
      Row("cloths/*/repeat/across", length).limits("", "150 in").means("Across the width."),
      Row("cloths/*/repeat/half drop", yes_no).is("no", 'c').means("Whether each other column lies half a repeat lower."),
      Row("cloths/*/design", word).words("plain|stripe|check|figured").is("plain", 'c').means("What shows on it."),
      Row("cloths/*/weight", cloth_weight).guess("~ the cloth table").means("Weight of the cloth for its area."),
      Row("cloths/*/thickness", length).limits("0.03 mm", "12 mm").guess("~ the cloth table").means("Thickness of one layer."),
      Row("cloths/*/stiffness", word).words("limp|soft|crisp|stiff|board").guess("~ the cloth table").since(3)
          .means("How it hangs."),
      Row("cloths/*/overhang", length).since(3).means("How far a strip reaches over an edge before it bends down."),
      Row("cloths/*/care", word).words("wash|steam|dry clean|never wet").guess("~ the cloth table").means("How it is cleaned."),
      Row("cloths/*/frays", length).since(2).means("The least seam that holds in it."),
      Row("cloths/*/sheer", yes_no).since(2).means("Whether one sees through it."),
      Row("cloths/*/surface", word).words("plain|raised").since(2).means("Whether its fibres stand up."),
      Row("cloths/*/burn test", span).since(2).means("Seconds that a flame took to run along a strip of it."),
      Row("cloths/*/old", yes_no).since(2).means("A cloth of unknown past."),
      Row("cloths/*/envelope says", block).since(3).means("What a bought pattern's envelope asks."),
      Row("cloths/*/envelope says/length", length).must().means("Length asked."),
      Row("cloths/*/envelope says/width", length).must().limits("4 in", "150 in").means("At this width."),
      Row("cloths/*/fold", word).words("none|lengthwise|crosswise").is("none", 'c').since(4).means("How it is folded to cut."),
      Row("cloths/*/gap", length).limits("0 in", "").is("0 in", 'c').since(4).means("Left between pieces."),
      Row("cloths/*/keep", list).each(block, "panel").since(4).means("Rectangles to be left whole for later."),
      Row("cloths/*/keep/*/panel", name).must().means("What it is kept for."),
      Row("cloths/*/keep/*/width", length).means("Its width."),
      Row("cloths/*/keep/*/length", length).means("Its length."),
      Row("cloths/*/offered", list).each(block, "offer").since(4).means("Widths the shop offers, to choose from."),
      Row("cloths/*/offered/*/width", length).must().limits("4 in", "150 in").means("Width offered."),
      Row("cloths/*/offered/*/price", money).secret().means("Its price."),
      Row("cloths/*/price", money).secret().since(kLater).means("Price for a length."),
      Row("cloths/*/arrives", day).since(5).means("When it comes."),
      Row("cloths/*/takes to arrive", span).since(5).means("How long it takes from order."),
      Row("cloths/*/restock", span).since(5).means("How long more of it would take."),
      Row("cloths/*/colour", text).since(2).means("Its colour, in words."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_notion_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("notions", map).each(block, "notion").means("All that is not cloth, each under its own name."),
      Row("notions/*/kind", word).must()
          .words("hooks and eyes|hooks and bars|hooks and loops|button|snap|eyelet|busk|buckle|cord|tape|lacing|petersham|"
                 "lace|ribbon|braid|fringe|thread|wadding|other")
          .means("What it is."),
      Row("notions/*/size", text).means("Size as sold, a label: `no. 2`."),
      Row("notions/*/width", length).limits("", "2 yd").means("Width of a tape, ribbon, lace …"),
      Row("notions/*/thickness", length).limits("", "4 in").means("Thickness of a cord, button …"),
      Row("notions/*/across", length).limits("", "6 in").means("Across a button."),
      Row("notions/*/shank", yes_no).since(2).means("Whether the button has a shank."),
      Row("notions/*/bought", list).each(length).or_a(count).limits("0 in", "500 yd")
          .means("Lengths on the shelf, or how many (pairs of hooks and snaps)."),
      Row("notions/*/sold by", length).or_a(count).since(2).means("What the shop sells at once."),
      Row("notions/*/shrinks", percent).since(kLater).means("How much it shrinks."),
      Row("notions/*/shrunk already", yes_no).since(kLater).means("Whether it is shrunk already."),
      Row("notions/*/breaks at", force).since(kLater).means("Strength of a thread."),
      Row("notions/*/holds", force).since(2).means("What one of them held in the maker's own pull test."),
      Row("notions/*/fineness", text).since(kLater).means("Fineness of a thread: `27 tex`, `no. 40`."),
      Row("notions/*/motif", length).since(kLater).means("Length after which a lace's figure comes again."),
      Row("notions/*/price", money).secret().since(kLater).means("Price."),
      Row("notions/*/arrives", day).since(5).means("When it comes."),
      Row("notions/*/colour", text).since(2).means("Its colour, in words."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
