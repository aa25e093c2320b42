// Keys of what lies on the shelf: cloths and notions.
#include "check/key_row.h"

namespace gownsheaf {

void add_cloth_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("cloths", map).each(block, "cloth").means("Each cloth under its own name."),
      KeyRow("cloths/*/kind", text)
          .must()
          .limits("1", "60")
          .means("A kind of the cloth table; of any other kind, width, weight and thickness are guessed."),
      KeyRow("cloths/*/used as", word)
          .words("outer|lining|interlining|facing|trimming|strengthening|mock-up")
          .guess("~ the first cloth in `from` is outer")
          .means("What the cloth does in the garment."),
      KeyRow("cloths/*/width", length).limits("4 in", "150 in").guess("~ the cloth table").means("Selvage to selvage."),
      KeyRow("cloths/*/selvage", length).limits("0 in", "3 in").is("1/2 in", 'c').means("Lost at each edge."),
      KeyRow("cloths/*/lay", word)
          .words("either way|one way|bias|any way")
          .guess("~ one way for nap, pile, shot and design, else either way")
          .means("Which way up pieces may lie."),
      KeyRow("cloths/*/shrinks", percent)
          .guess("~ the cloth table")
          .form("{ along, across }")
          .means("How much it shrinks along its length."),
      KeyRow("cloths/*/shrinks/along", percent).guess("~ the cloth table").means("Along the length."),
      KeyRow("cloths/*/shrinks/across", percent).is("0 %", 'c').means("Across the width."),
      KeyRow("cloths/*/shrunk already", yes_no).is("no", 'c').means("Whether it is shrunk before it is measured here."),
      KeyRow("cloths/*/bought", list)
          .each(length)
          .limits("0 in", "50 yd")
          .form("{ length, width, arrives }")
          .means("The lengths on the shelf."),
      KeyRow("cloths/*/bought/*/length", length).must().limits("0 in", "50 yd").means("Length of this one."),
      KeyRow("cloths/*/bought/*/width", length).limits("4 in", "150 in").means("Its width, when it differs."),
      KeyRow("cloths/*/bought/*/arrives", day).means("When it comes."),
      KeyRow("cloths/*/remnants", list).each(block, "remnant").means("Rests from other garments."),
      KeyRow("cloths/*/remnants/*/remnant", name).means("What it is called."),
      KeyRow("cloths/*/remnants/*/width", length).must().limits("", "150 in").means("Its width."),
      KeyRow("cloths/*/remnants/*/length", length).must().means("Its length."),
      KeyRow("cloths/*/remnants/*/bad places", list).each(block, "bad place").means("Stains and holes."),
      KeyRow("cloths/*/remnants/*/bad places/*/from end", length).limits("0 in", "").means("Distance from the end."),
      KeyRow("cloths/*/remnants/*/bad places/*/from selvage", length).limits("0 in", "").means("Distance from the selvage."),
      KeyRow("cloths/*/remnants/*/bad places/*/width", length).means("Width of the place."),
      KeyRow("cloths/*/remnants/*/bad places/*/length", length).means("Length of the place."),
      KeyRow("cloths/*/sold by", length)
          .limits("", "10 yd")
          .is("1/8 yd or 10 cm, after `show lengths in`", 'c')
          .means("The step that the shop cuts in."),
      KeyRow("cloths/*/straighten", length)
          .limits("0 in", "1 yd")
          .is("2 in", 'c')
          .means("Lost at each end of a bought length when it is squared."),
      KeyRow("cloths/*/repeat", block).means("Size of the pattern that comes again."),
      KeyRow("cloths/*/repeat/along", length).limits("", "5 yd").means("Along the length."),
      KeyRow("cloths/*/repeat/across", length).limits("", "150 in").means("Across the width."),
      KeyRow("cloths/*/repeat/half drop", yes_no).is("no", 'c').means("Whether each other column lies half a repeat lower."),
      KeyRow("cloths/*/design", word).words("plain|stripe|check|figured").is("plain", 'c').means("What shows on it."),
      KeyRow("cloths/*/weight", cloth_weight).guess("~ the cloth table").means("Weight of the cloth for its area."),
      KeyRow("cloths/*/thickness", length).limits("0.03 mm", "12 mm").guess("~ the cloth table").means("Thickness of one layer."),
      KeyRow("cloths/*/stiffness", word).words("limp|soft|crisp|stiff|board").guess("~ the cloth table").means("How it hangs."),
      KeyRow("cloths/*/overhang", length).means("How far a strip reaches over an edge before it bends down."),
      KeyRow("cloths/*/care", word)
          .words("wash|steam|dry clean|never wet")
          .guess("~ the cloth table")
          .means("How it is cleaned."),
      KeyRow("cloths/*/frays", length).means("The least seam that holds in it."),
      KeyRow("cloths/*/sheer", yes_no).means("Whether one sees through it."),
      KeyRow("cloths/*/surface", word).words("plain|raised").means("Whether its fibres stand up."),
      KeyRow("cloths/*/burn test", span).means("Seconds that a flame took to run along a strip of it."),
      KeyRow("cloths/*/old", yes_no).means("A cloth of unknown past."),
      KeyRow("cloths/*/envelope says", block).means("What a bought pattern's envelope asks."),
      KeyRow("cloths/*/envelope says/length", length).must().means("Length asked."),
      KeyRow("cloths/*/envelope says/width", length).must().limits("4 in", "150 in").means("At this width."),
      KeyRow("cloths/*/fold", word).words("none|lengthwise|crosswise").is("none", 'c').means("How it is folded to cut."),
      KeyRow("cloths/*/gap", length).limits("0 in", "").is("0 in", 'c').means("Left between pieces."),
      KeyRow("cloths/*/keep", list).each(block, "panel").means("Rectangles to be left whole for later."),
      KeyRow("cloths/*/keep/*/panel", name).must().means("What it is kept for."),
      KeyRow("cloths/*/keep/*/width", length).limits("", "150 in").guess("~ selvage to selvage").means("Its width."),
      KeyRow("cloths/*/keep/*/length", length).must().means("Its length."),
      KeyRow("cloths/*/offered", list).each(block, "offer").means("Widths the shop offers, to choose from."),
      KeyRow("cloths/*/offered/*/width", length).must().limits("4 in", "150 in").means("Width offered."),
      KeyRow("cloths/*/offered/*/price", money).secret().means("Its price."),
      KeyRow("cloths/*/price", money).secret().since(kLater).means("Price for a length."),
      KeyRow("cloths/*/arrives", day).means("When it comes."),
      KeyRow("cloths/*/takes to arrive", span).means("How long it takes from order."),
      KeyRow("cloths/*/restock", span).means("How long more of it would take."),
      KeyRow("cloths/*/colour", text).since(2).means("Its colour, in words."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_notion_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("notions", map).each(block, "notion").means("All that is not cloth, each under its own name."),
      KeyRow("notions/*/kind", word)
          .must()
          .words("hooks and eyes|hooks and bars|hooks and loops|button|snap|eyelet|busk|buckle|cord|tape|lacing|petersham|"
                 "lace|ribbon|braid|fringe|thread|wadding|other")
          .means("What it is."),
      KeyRow("notions/*/size", text).means("Size as sold, a label: `no. 2`."),
      KeyRow("notions/*/width", length).limits("", "2 yd").means("Width of a tape, ribbon or lace."),
      KeyRow("notions/*/thickness", length).limits("", "4 in").means("Thickness of a cord or button."),
      KeyRow("notions/*/across", length).limits("", "6 in").means("Across a button."),
      KeyRow("notions/*/shank", yes_no).means("Whether the button has a shank."),
      KeyRow("notions/*/bought", list)
          .each(length)
          .or_a(count)
          .limits("0 in", "500 yd")
          .means("Lengths on the shelf, or how many (pairs of hooks and snaps)."),
      KeyRow("notions/*/sold by", length).or_a(count).since(2).means("What the shop sells at once."),
      KeyRow("notions/*/shrinks", percent).since(kLater).means("How much it shrinks."),
      KeyRow("notions/*/shrunk already", yes_no).since(kLater).means("Whether it is shrunk already."),
      KeyRow("notions/*/breaks at", force).since(kLater).means("Strength of a thread."),
      KeyRow("notions/*/holds", force).since(2).means("What one of them held in the maker's own pull test."),
      KeyRow("notions/*/fineness", text).since(kLater).means("Fineness of a thread: `27 tex`, `no. 40`."),
      KeyRow("notions/*/motif", length).since(kLater).means("Length after which a lace's figure comes again."),
      KeyRow("notions/*/price", money).secret().since(kLater).means("Price."),
      KeyRow("notions/*/arrives", day).means("When it comes."),
      KeyRow("notions/*/colour", text).since(2).means("Its colour, in words."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
