// Keys of closing, boning, and what pulls at them.
#include "check/key_row.h"

namespace gownsheaf {

namespace {
constexpr std::string_view kFasten =
    "hooks and eyes|hooks and bars|hooks and loops|buttons|snaps|lacing|buckle|ties|drawstring|busk";
constexpr std::string_view kBreathesAt = "ribs|upper belly|navel|lower belly|hip bone|natural waist";
}  // namespace

void add_closing_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("closures", list).each(block, "closure").since(2).means("Each closing of the garment."),
      Row("closures/*/closure", name).must().means("Name of the closure."),
      Row("closures/*/edge", name).of("edges").group("where").means("Edge that closes."),
      Row("closures/*/length", length).group("where").means("Length that closes, where no edge is named."),
      Row("closures/*/fasten", word).words(kFasten).must().means("What it closes with."),
      Row("closures/*/with", name).of("notions").means("Which notion."),
      Row("closures/*/at most", length).is("1 1/4 in hooks, 2 in snaps, 30 mm eyelets", 'a').means("Greatest distance between two."),
      Row("closures/*/number", count).means("How many."),
      Row("closures/*/pitch", length).means("Distance between two eyelets of a side."),
      Row("closures/*/eyelets", count).means("Pairs of eyelets."),
      Row("closures/*/top inset", length).limits("0 in", "").is("1/4 in", 'c').means("Top of the edge to the first."),
      Row("closures/*/bottom inset", length).limits("0 in", "").is("1/4 in", 'c').means("The last to the foot of the edge."),
      Row("closures/*/levels", map).each(length, "level").limits("0 in", "").means("Named places, from the top."),
      Row("closures/*/one at", list).each(text).means("Levels that must have a fastener."),
      Row("closures/*/alternate", yes_no).is("no", 'c').means("Hooks and eyes change sides in turn."),
      Row("closures/*/closer near", list).each(block, "place").since(3).means("Where fasteners come closer."),
      Row("closures/*/closer near/*/at", text).must().means("A level."),
      Row("closures/*/closer near/*/within", length).means("How far to both sides."),
      Row("closures/*/closer near/*/at most", length).means("Greatest distance there."),
      Row("closures/*/rows", count).is("1", 'c').means("Rows of fasteners."),
      Row("closures/*/set back", length).limits("0 in", "").guess("~ the rules").means("How far they sit behind the edge."),
      Row("closures/*/alone", yes_no).means("Whether the wearer closes it herself."),
      Row("closures/*/compare with", any_of_these).words(kFasten).means("Other kinds whose pieces and minutes are shown beside."),
      Row("closures/*/meets", word).words("edge to edge|overlapping").means("How the two sides meet."),
      Row("closures/*/lap", length).limits("0 in", "").guess("~ 0 edge to edge; button across / 2 + 1/4 in")
          .means("Upper side past the meeting line."),
      Row("closures/*/underlap", length).limits("0 in", "").guess("~ as `lap`").means("Under side past the meeting line."),
      Row("closures/*/turn back", length).group("?turn").is("1 in", 'a').means("Width turned back at the edge."),
      Row("closures/*/facing", name).of("pieces").group("?turn").means("Piece that faces the edge."),
      Row("closures/*/sides", list).each(name).of("pieces").means("Pieces that carry the two sides."),
      Row("closures/*/drawn to", word).words("meeting line|fold|cut edge").is("meeting line", 'c')
          .means("Where the written width of those pieces ends."),
      Row("closures/*/upper side", word).words("left|right").means("Which side lies on top."),
      Row("closures/*/buttonholes", word).words("across|along").is("across", 'c').means("How buttonholes lie."),
      Row("closures/*/guard", block).means("Strip behind the closing."),
      Row("closures/*/guard/width", length).means("Its width."),
      Row("closures/*/guard/from", name).of("cloths").means("Its cloth."),
      Row("closures/*/backed with", name).of("cloths").words("none").means("Cloth that strengthens the edge."),
      Row("closures/*/backing width", length).guess("~ the closing rules").means("Its width."),
      Row("closures/*/lace as", word).words("cross|spiral|staggered spiral|straight|shop").is("cross", 'c').means("How it is laced."),
      Row("closures/*/gap", length).limits("0 in", "").means("How far the edges stand apart when laced."),
      Row("closures/*/tie ends", length).is("24 in", 'c').means("Lace left at each end to tie."),
      Row("closures/*/waist loops", yes_no).means("Whether the lace has pulls at the waist."),
      Row("closures/*/eyelets are", word).words("worked|metal").is("worked", 'c').means("How eyelets are made."),
      Row("closures/*/at", word).words("neck|hood|waist|hem|sleeve").means("Where a drawstring runs."),
      Row("closures/*/hangs out", length).limits("0 in", "").means("How far a drawstring's ends hang out."),
      Row("closures/*/stitches each", count).is("15", 'a').means("Stitches that hold each fastener."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_bone_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("bones", list).each(block, "bone channel").since(2).means("Each channel that holds a bone."),
      Row("bones/*/channel", name).must().means("Name of the channel."),
      Row("bones/*/on seam", name).of("seams").group("?where").means("Seam it follows."),
      Row("bones/*/on edge", name).of("edges").group("?where").means("Edge it follows."),
      Row("bones/*/number", count).is("1", 'c').means("How many."),
      Row("bones/*/length", length).group("size").means("Finished channel between its shut ends."),
      Row("bones/*/bone length", length).group("size").means("Length the bone is cut to; no rule is applied."),
      Row("bones/*/stock", name).of("bone stock").must().means("What bone it is cut from."),
      Row("bones/*/casing", name).of("notions").words("in the seam|between two rows").means("What holds the bone."),
      Row("bones/*/channel width", length).means("Width of the channel."),
      Row("bones/*/end clear", length).limits("-2 in", "2 in").guess("~ the rule of its kind").means("Left free at each end."),
      Row("bones/*/crosses waist seam", yes_no).means("Whether it crosses the waist seam."),
      Row("bone stock", map).each(block, "bone stock").since(2).means("Bones as sold, each under its own name."),
      Row("bone stock/*/kind", word)
          .words("whalebone|featherbone|flat steel|spiral steel|synthetic whalebone|cane|cord").must().means("What it is."),
      Row("bone stock/*/sold as", list).each(length).must().means("Lengths the shops have."),
      Row("bone stock/*/may be cut", yes_no).guess("~ its kind").means("Whether it can be cut to length."),
      Row("bone stock/*/kerf", length).limits("0 in", "1 in").is("0 in", 'c').means("Lost at each cut."),
      Row("bone stock/*/width", length).means("Its width."),
      Row("bone stock/*/thickness", length).means("Its thickness."),
      Row("bone stock/*/bought", list).each(length).means("Lengths on the shelf."),
      Row("bone stock/*/price", money).secret().means("Price of one length."),
      Row("bone stock/*/end clear", length).limits("-2 in", "2 in").means("Left free at each end of a channel."),
      Row("bone stock/*/casing ends", length).is("1 in", 'a').means("Casing that each channel takes beyond its length."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_strain_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("strain", list).each(block, "strain").secret().since(2).means("How close it is worn and how weight hangs; an estimate."),
      Row("strain/*/closure", name).of("closures").must().means("The closure that is pulled."),
      Row("strain/*/goes round", name).of("measures").or_a(length).must().means("Measure or girth it goes round."),
      Row("strain/*/worn", word).words("easy|close|snug|tight").group("?worn").guess("~ `ease` at that girth").means("How close."),
      Row("strain/*/pressure", pressure).group("?worn").limits("0 mmHg", "80 mmHg").means("Pressure on the body."),
      Row("strain/*/over", word).words("body|soft stays|corset").guess("~ the layers in `taken`").means("What is beneath."),
      Row("strain/*/breathes at", word).words(kBreathesAt).is("natural waist", 'c').means("Where the girth lies for breath."),
      Row("strain/*/moves", word).words("standing|walking|dancing").guess("~ `worn for`").means("What is done in it."),
      Row("strain/*/zones", list).each(block, "zone").since(3).means("Parts of a long closing, each with its girth."),
      Row("strain/*/zones/*/zone", name).must().means("Name of the zone."),
      Row("strain/*/zones/*/starts", length).limits("0 in", "").means("Where it starts down the edge."),
      Row("strain/*/zones/*/ends", length).means("Where it ends."),
      Row("strain/*/zones/*/goes round", name).of("measures").or_a(length).means("Measure or girth there."),
      Row("strain/*/zones/*/ease", length).limits("-20 in", "40 in").means("Ease there."),
      Row("strain/*/zones/*/worn", word).words("easy|close|snug|tight").means("How close there."),
      Row("strain/*/zones/*/breathes at", word).words(kBreathesAt).means("Where it lies for breath."),
      Row("strain/*/skirt hangs from", word).words("hooks|bodice waist|bodice and stay|own band|straps|nothing")
          .guess("~ own band if separate").means("What carries the skirt."),
      Row("strain/*/stay", block).means("Band inside the waist that takes the pull."),
      Row("strain/*/stay/with", name).of("notions").means("What it is made of."),
      Row("strain/*/stay/smaller by", length).limits("0 in", "").means("How much smaller than the waist."),
      Row("strain/*/stay/anchored at", word).words("every bone|every seam|lining only").means("Where it is sewn down."),
      Row("strain/*/stay/hooked first", yes_no).is("yes", 'c').means("Whether it is closed before the bodice."),
      Row("strain/*/band", block).means("The skirt's own waistband."),
      Row("strain/*/band/width", length).means("Its width."),
      Row("strain/*/band/slack", word).words("none|loose").means("Whether it is loose."),
      Row("strain/*/band/slides on", word).words("silk|cotton|wool|skin").group("?slides").means("What it lies on."),
      Row("strain/*/band/friction", ratio).limits("1/20", "1").group("?slides").means("Friction, measured."),
      Row("strain/*/also hangs", list).each(block, "weight").means("Petticoats and bustle on the same waist."),
      Row("strain/*/also hangs/*/item", text).must().means("What hangs."),
      Row("strain/*/also hangs/*/weighs", mass).must().means("Its weight."),
      Row("strain/*/hip slope", angle).guess("~ hip, waist and hip depth").means("Slope of the hip."),
      Row("strain/*/fastener holds", force).guess("~ the notion's").means("What one fastener holds."),
      Row("strain/*/use at most", ratio).limits("1/20", "1").is("1/2", 'c').means("Share of it that may be used."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
