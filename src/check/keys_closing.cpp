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
      KeyRow("closures", list).each(block, "closure").means("Each closing of the garment."),
      KeyRow("closures/*/closure", name).must().means("Name of the closure."),
      KeyRow("closures/*/edge", name).of("edges").group("where").means("Edge that closes."),
      KeyRow("closures/*/length", length)
          .limits("1/4 in", "")
          .group("where")
          .means("Length that closes, where no edge is named."),
      KeyRow("closures/*/fasten", word).words(kFasten).must().means("What it closes with."),
      KeyRow("closures/*/with", name).of("notions").means("Which notion."),
      KeyRow("closures/*/at most", length)
          .limits("1/8 in", "")
          .is("1 1/4 in hooks, 2 in snaps, 30 mm eyelets", 'a')
          .means("Greatest distance between two."),
      KeyRow("closures/*/number", count).limits("1", "200").means("How many."),
      KeyRow("closures/*/closings", count)
          .limits("1", "100")
          .guess("~ one to each wrist and knee, else 1")
          .means("How many closings alike there are, each with its own fasteners."),
      KeyRow("closures/*/pitch", length).limits("1/8 in", "").means("Distance between two eyelets of a side."),
      KeyRow("closures/*/eyelets", count).limits("1", "200").means("Pairs of eyelets."),
      KeyRow("closures/*/top inset", length).limits("0 in", "").is("1/4 in", 'c').means("Top of the edge to the first."),
      KeyRow("closures/*/bottom inset", length).limits("0 in", "").is("1/4 in", 'c').means("The last to the foot of the edge."),
      KeyRow("closures/*/levels", map).each(length, "level").limits("0 in", "").means("Named places, from the top."),
      KeyRow("closures/*/one at", list).each(text).means("Levels that must have a fastener."),
      KeyRow("closures/*/alternate", yes_no).is("no", 'c').means("Hooks and eyes change sides in turn."),
      KeyRow("closures/*/closer near", list).each(block, "place").means("Where fasteners come closer."),
      KeyRow("closures/*/closer near/*/at", text).must().means("A level."),
      KeyRow("closures/*/closer near/*/within", length).is("3 in", 'c').means("How far to both sides."),
      KeyRow("closures/*/closer near/*/at most", length).limits("1/8 in", "").is("3/4 in", 'c').means("Greatest distance there."),
      KeyRow("closures/*/rows", count).limits("1", "4").is("1", 'c').means("Rows of fasteners."),
      KeyRow("closures/*/set back", length).limits("0 in", "").guess("~ the rules").means("How far they sit behind the edge."),
      KeyRow("closures/*/alone", yes_no).means("Whether the wearer closes it herself."),
      KeyRow("closures/*/compare with", any_of_these)
          .words(kFasten)
          .means("Other kinds whose pieces and minutes are shown beside."),
      KeyRow("closures/*/meets", word).words("edge to edge|overlapping").means("How the two sides meet."),
      KeyRow("closures/*/lap", length)
          .limits("0 in", "")
          .guess("~ 0 edge to edge; button across / 2 + 1/4 in")
          .means("Upper side past the meeting line."),
      KeyRow("closures/*/underlap", length).limits("0 in", "").guess("~ as `lap`").means("Under side past the meeting line."),
      KeyRow("closures/*/turn back", length).group("?turn").is("1 in", 'a').means("Width turned back at the edge."),
      KeyRow("closures/*/facing", name).of("pieces").group("?turn").means("Piece that faces the edge."),
      KeyRow("closures/*/sides", list).each(name).of("pieces").means("Pieces that carry the two sides."),
      KeyRow("closures/*/drawn to", word)
          .words("meeting line|fold|cut edge")
          .is("meeting line", 'c')
          .means("Where the written width of those pieces ends."),
      KeyRow("closures/*/upper side", word).words("left|right").means("Which side lies on top."),
      KeyRow("closures/*/buttonholes", word).words("across|along").is("across", 'c').means("How buttonholes lie."),
      KeyRow("closures/*/guard", block).means("Strip behind the closing."),
      KeyRow("closures/*/guard/width", length).means("Its width."),
      KeyRow("closures/*/guard/from", name).of("cloths").means("Its cloth."),
      KeyRow("closures/*/backed with", name).of("cloths").words("none").means("Cloth that strengthens the edge."),
      KeyRow("closures/*/backing width", length).guess("~ the closing rules").means("Its width."),
      KeyRow("closures/*/lace as", word)
          .words("cross|spiral|staggered spiral|straight|shop")
          .is("cross", 'c')
          .means("How it is laced."),
      KeyRow("closures/*/gap", length).limits("0 in", "").means("How far the edges stand apart when laced."),
      KeyRow("closures/*/tie ends", length)
          .is("24 in lace, 12 in ties", 'c')
          .means("Lace left at each end to tie; of ties, what hangs free of each."),
      KeyRow("closures/*/waist loops", yes_no).means("Whether the lace has pulls at the waist."),
      KeyRow("closures/*/eyelets are", word).words("worked|metal").is("worked", 'c').means("How eyelets are made."),
      KeyRow("closures/*/at", word).words("neck|hood|waist|hem|sleeve").means("Where a drawstring runs."),
      KeyRow("closures/*/hangs out", length).limits("0 in", "").means("How far a drawstring's ends hang out."),
      KeyRow("closures/*/stitches each", count).is("15", 'a').means("Stitches that hold each fastener."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_bone_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("bones", list).each(block, "bone channel").means("Each channel that holds a bone."),
      KeyRow("bones/*/channel", name).must().means("Name of the channel."),
      KeyRow("bones/*/on seam", name).of("seams").group("?where").means("Seam it follows."),
      KeyRow("bones/*/on edge", name).of("edges").group("?where").means("Edge it follows."),
      KeyRow("bones/*/number", count).guess("~ one to each seam it is on, else 1").means("How many."),
      KeyRow("bones/*/length", length).group("size").means("Finished channel between its shut ends."),
      KeyRow("bones/*/bone length", length).group("size").means("Length the bone is cut to; no rule is applied."),
      KeyRow("bones/*/stock", name).of("bone stock").must().means("What bone it is cut from."),
      KeyRow("bones/*/casing", name).of("notions").words("in the seam|between two rows").means("What holds the bone."),
      KeyRow("bones/*/channel width", length).means("Width of the channel."),
      KeyRow("bones/*/end clear", length).limits("-2 in", "2 in").guess("~ the rule of its kind").means("Left free at each end."),
      KeyRow("bones/*/crosses waist seam", yes_no).means("Whether it crosses the waist seam."),
      KeyRow("bone stock", map).each(block, "bone stock").means("Bones as sold, each under its own name."),
      KeyRow("bone stock/*/kind", word)
          .words("whalebone|featherbone|flat steel|spiral steel|synthetic whalebone|cane|cord")
          .must()
          .means("What it is."),
      KeyRow("bone stock/*/sold as", list).each(length).must().means("Lengths the shops have."),
      KeyRow("bone stock/*/may be cut", yes_no).guess("~ its kind").means("Whether it can be cut to length."),
      KeyRow("bone stock/*/kerf", length).limits("0 in", "1 in").is("0 in", 'c').means("Lost at each cut."),
      KeyRow("bone stock/*/width", length).means("Its width."),
      KeyRow("bone stock/*/thickness", length).since(kLater).means("Its thickness."),
      KeyRow("bone stock/*/bought", list).each(length).means("Lengths on the shelf."),
      KeyRow("bone stock/*/price", money).secret().since(kLater).means("Price of one length."),
      KeyRow("bone stock/*/end clear", length).limits("-2 in", "2 in").means("Left free at each end of a channel."),
      KeyRow("bone stock/*/casing ends", length).is("1 in", 'a').means("Casing that each channel takes beyond its length."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_strain_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("strain", list).each(block, "strain").secret().means("How close it is worn and how weight hangs; an estimate."),
      KeyRow("strain/*/closure", name).of("closures").must().means("The closure that is pulled."),
      KeyRow("strain/*/goes round", name).of("measures").or_a(length).must().means("Measure or girth it goes round."),
      KeyRow("strain/*/worn", word)
          .words("easy|close|snug|tight")
          .group("?worn")
          .guess("~ `ease` at that girth")
          .means("How close."),
      KeyRow("strain/*/pressure", pressure).group("?worn").limits("0 mmHg", "80 mmHg").means("Pressure on the body."),
      KeyRow("strain/*/over", word).words("body|soft stays|corset").guess("~ the layers in `taken`").means("What is beneath."),
      KeyRow("strain/*/breathes at", word).words(kBreathesAt).is("natural waist", 'c').means("Where the girth lies for breath."),
      KeyRow("strain/*/moves", word).words("standing|walking|dancing").guess("~ `worn for`").means("What is done in it."),
      KeyRow("strain/*/zones", list).each(block, "zone").means("Parts of a long closing, each with its girth."),
      KeyRow("strain/*/zones/*/zone", name).must().means("Name of the zone."),
      KeyRow("strain/*/zones/*/starts", length).limits("0 in", "").means("Where it starts down the edge."),
      KeyRow("strain/*/zones/*/ends", length).means("Where it ends."),
      KeyRow("strain/*/zones/*/goes round", name).of("measures").or_a(length).means("Measure or girth there."),
      KeyRow("strain/*/zones/*/ease", length).group("?worn").limits("-20 in", "40 in").means("Ease there."),
      KeyRow("strain/*/zones/*/worn", word).words("easy|close|snug|tight").group("?worn").means("How close there."),
      KeyRow("strain/*/zones/*/breathes at", word).words(kBreathesAt).means("Where it lies for breath."),
      KeyRow("strain/*/skirt hangs from", word)
          .words("hooks|bodice waist|bodice and stay|own band|straps|nothing")
          .guess("~ own band if separate")
          .means("What carries the skirt."),
      KeyRow("strain/*/stay", block).means("Band inside the waist that takes the pull."),
      KeyRow("strain/*/stay/with", name).of("notions").means("What it is made of."),
      KeyRow("strain/*/stay/smaller by", length).limits("0 in", "").means("How much smaller than the waist."),
      KeyRow("strain/*/stay/anchored at", word).words("every bone|every seam|lining only").means("Where it is sewn down."),
      KeyRow("strain/*/stay/hooked first", yes_no).is("yes", 'c').means("Whether it is closed before the bodice."),
      KeyRow("strain/*/band", block).means("The skirt's own waistband."),
      KeyRow("strain/*/band/width", length).is("1 in", 'c').means("Its width."),
      KeyRow("strain/*/band/slack", word).words("none|loose").means("Whether it is loose."),
      KeyRow("strain/*/band/slides on", word)
          .words("silk|cotton|wool|skin")
          .group("?slides")
          .is("cotton", 'c')
          .means("What it lies on."),
      KeyRow("strain/*/band/friction", ratio).limits("1/20", "1").group("?slides").means("Friction, measured."),
      KeyRow("strain/*/also hangs", list).each(block, "weight").means("Petticoats and bustle on the same waist."),
      KeyRow("strain/*/also hangs/*/item", text).must().means("What hangs."),
      KeyRow("strain/*/also hangs/*/weighs", mass).must().means("Its weight."),
      KeyRow("strain/*/hip slope", angle).guess("~ hip, waist and hip depth").means("Slope of the hip."),
      KeyRow("strain/*/fastener holds", force).guess("~ the notion's").means("What one fastener holds."),
      KeyRow("strain/*/use at most", ratio).limits("1/20", "1").is("1/2", 'c').means("Share of it that may be used."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
