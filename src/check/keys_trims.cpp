// Keys of piping, binding, bias patches, trims and stitching.
#include "check/key_row.h"

namespace gownsheaf {

void add_bias_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("piping", list).each(block, "piping").means("Each piping."),
      KeyRow("piping/*/piping", name).must().means("Name of the piping."),
      KeyRow("piping/*/seams", list).each(name).of("seams").group("+where").means("Seams that are piped."),
      KeyRow("piping/*/edges", list).each(name).of("edges").group("+where").means("Edges that are piped."),
      KeyRow("piping/*/length", length).group("+where").means("Length, where no seam or edge is named."),
      KeyRow("piping/*/from", name).since(kLater).of("cloths").must().means("Cloth of the strips."),
      KeyRow("piping/*/cord", name)
          .since(kLater)
          .of("notions")
          .or_a(length)
          .words("none")
          .means("Cord in it, or its thickness; none is flat piping."),
      KeyRow("piping/*/seam allowance", length)
          .since(kLater)
          .limits("0 in", "8 in")
          .guess("~ the garment's")
          .means("At its raw edges."),
      KeyRow("piping/*/strip", length).since(kLater).guess("~ the rule").means("Width the strip is cut."),
      KeyRow("piping/*/each end", length).since(kLater).limits("0 in", "").is("1 in", 'c').means("Left over at each end."),
      KeyRow("piping/*/no joins near", list).since(kLater).each(text).means("Where no join may come."),
      KeyRow("binding", list).each(block, "binding").means("Each binding."),
      KeyRow("binding/*/binding", name).must().means("Name of the binding."),
      KeyRow("binding/*/seams", list).each(name).of("seams").group("+where").means("Seams that are bound."),
      KeyRow("binding/*/edges", list).each(name).of("edges").group("+where").means("Edges that are bound."),
      KeyRow("binding/*/length", length).group("+where").means("Length, where no seam or edge is named."),
      KeyRow("binding/*/from", name).since(kLater).of("cloths").must().means("Cloth of the strips."),
      KeyRow("binding/*/finished", length).since(kLater).means("Width that shows."),
      KeyRow("binding/*/seam allowance", length)
          .since(kLater)
          .limits("0 in", "8 in")
          .guess("~ the garment's")
          .means("At its raw edges."),
      KeyRow("binding/*/strip", length).since(kLater).guess("~ the rule").means("Width the strip is cut."),
      KeyRow("binding/*/each end", length).since(kLater).limits("0 in", "").is("1 in", 'c').means("Left over at each end."),
      KeyRow("binding/*/no joins near", list).since(kLater).each(text).means("Where no join may come."),
      KeyRow("bias patches", list).each(block, "bias patch").since(kLater).means("Patches that bias strips are cut from."),
      KeyRow("bias patches/*/patch", name).must().means("Name of the patch."),
      KeyRow("bias patches/*/from", name).of("cloths").means("Its cloth."),
      KeyRow("bias patches/*/width", length).means("Its width."),
      KeyRow("bias patches/*/length", length).means("Its length."),
      KeyRow("bias patches/*/square", length).means("Side of a square patch."),
      KeyRow("bias patches/*/yields", length).means("Length of strip it must give."),
      KeyRow("bias patches/*/strip", length).must().means("Width of the strip."),
      KeyRow("bias patches/*/cut as", word).words("single strips|joined strips|tube").means("How it is cut."),
      KeyRow("bias patches/*/shortest strip", length).means("The shortest strip worth keeping."),
      KeyRow("bias patches/*/join seam", length).limits("0 in", "2 in").is("1/4 in", 'c').means("Seam of a join."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_trim_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("trims", list).each(block, "trim").means("Each trimming."),
      KeyRow("trims/*/trim", name).must().means("Name of the trimming."),
      KeyRow("trims/*/kind", word).words("bow|rosette|ruche|flounce|puff|lace|band|fringe").must().means("What it is."),
      KeyRow("trims/*/along", list).each(name).of("seams|edges").means("Seams and edges it follows."),
      KeyRow("trims/*/length", length).means("Length it follows."),
      KeyRow("trims/*/number", count).means("How many."),
      KeyRow("trims/*/with", name).since(kLater).of("notions").means("Notion it is made of."),
      KeyRow("trims/*/from", list).since(kLater).each(name).of("cloths").means("Cloth it is made of."),
      KeyRow("trims/*/have", length).since(kLater).means("All there is of it."),
      KeyRow("trims/*/fullness", ratio).since(kLater).limits("1", "20").group("?full").means("Flat for each unit finished."),
      KeyRow("trims/*/as full as it goes", yes_no).since(kLater).group("?full").means("As full as what there is allows."),
      KeyRow("trims/*/finished", length).since(kLater).means("Its depth, finished."),
      KeyRow("trims/*/rows", count).means("Rows of it."),
      KeyRow("trims/*/overlap", length).since(kLater).limits("0 in", "").means("How far rows lie over each other."),
      KeyRow("trims/*/corners", count).since(kLater).limits("0", "500").means("Corners it turns."),
      KeyRow("trims/*/loops", list).since(kLater).each(length).means("Loops of a bow."),
      KeyRow("trims/*/ends", list).since(kLater).each(length).means("Ends of a bow."),
      KeyRow("trims/*/wrap", length).since(kLater).means("Wrap round a bow's middle."),
      KeyRow("trims/*/cut strips", word).since(kLater).words("across|along|bias").means("How its strips are cut."),
      KeyRow("trims/*/set", word).since(kLater).words("gathered|side pleated|box pleated|flat").means("How it is set."),
      KeyRow("trims/*/matters", count).since(kLater).means("How much it matters; 1 is dropped last."),
      KeyRow("stitching", list).each(block, "stitching").since(kLater).means("Sewing that thread is reckoned for."),
      KeyRow("stitching/*/stitching", name).must().means("Its name."),
      KeyRow("stitching/*/seams", list).each(name).of("seams").means("Seams sewn so."),
      KeyRow("stitching/*/length", length).means("Length sewn so."),
      KeyRow("stitching/*/stitch", word)
          .words("lockstitch|zigzag|chain|chain two-thread|blind|overedge|running|back|half back|whip|herringbone|slip|"
                 "buttonhole|overcast")
          .must()
          .means("Which stitch."),
      KeyRow("stitching/*/stitches", rate).means("How close: `10 per in`."),
      KeyRow("stitching/*/seam thickness", length).guess("~ the layers").means("Thickness sewn through."),
      KeyRow("stitching/*/bite", length).means("Width of the stitch."),
      KeyRow("stitching/*/with", name).of("notions").means("Which thread."),
      KeyRow("stitching/*/unpicked", block).means("Thread measured from an unpicked seam."),
      KeyRow("stitching/*/unpicked/seam", length).means("Length of seam unpicked."),
      KeyRow("stitching/*/unpicked/needle", length).means("Needle thread it held."),
      KeyRow("stitching/*/unpicked/looper", length).means("Looper thread it held."),
      KeyRow("pace", block).means("How fast the maker sews."),
      KeyRow("pace/i am", word).words("practised|expert|new to this").is("practised", 'c').means("How practised."),
      KeyRow("pace/threading", percent).is("15 %", 'c').means("Time that threading takes."),
      KeyRow("pace/needleful", length).is("24 in", 'c').since(kLater).means("Thread in the needle."),
      KeyRow("pace/all by hand", yes_no).means("Whether nothing is sewn by machine."),
      KeyRow("pace/*", rate).means("Any kind of work and its pace: `20 stitches per min`, `20 min each`."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
