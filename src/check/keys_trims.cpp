// Keys of piping, binding, bias patches, trims and stitching.
#include "check/key_row.h"

namespace gownsheaf {

void add_bias_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("piping", list).each(block, "piping").since(kLater).means("Each piping."),
      Row("piping/*/piping", name).must().means("Name of the piping."),
      Row("piping/*/seams", list).each(name).of("seams").group("+where").means("Seams that are piped."),
      Row("piping/*/edges", list).each(name).of("edges").group("+where").means("Edges that are piped."),
      Row("piping/*/length", length).group("+where").means("Length, where no seam or edge is named."),
      Row("piping/*/from", name).of("cloths").must().means("Cloth of the strips."),
      Row("piping/*/cord", name).of("notions").or_a(length).words("none").means("Cord in it, or its thickness; none is flat piping."),
      Row("piping/*/seam allowance", length).limits("0 in", "8 in").guess("~ the garment's").means("At its raw edges."),
      Row("piping/*/strip", length).guess("~ the rule").means("Width the strip is cut."),
      Row("piping/*/each end", length).limits("0 in", "").is("1 in", 'c').means("Left over at each end."),
      Row("piping/*/no joins near", list).each(text).means("Where no join may come."),
      Row("binding", list).each(block, "binding").since(kLater).means("Each binding."),
      Row("binding/*/binding", name).must().means("Name of the binding."),
      Row("binding/*/seams", list).each(name).of("seams").group("+where").means("Seams that are bound."),
      Row("binding/*/edges", list).each(name).of("edges").group("+where").means("Edges that are bound."),
      Row("binding/*/length", length).group("+where").means("Length, where no seam or edge is named."),
      Row("binding/*/from", name).of("cloths").must().means("Cloth of the strips."),
      Row("binding/*/finished", length).means("Width that shows."),
      Row("binding/*/seam allowance", length).limits("0 in", "8 in").guess("~ the garment's").means("At its raw edges."),
      Row("binding/*/strip", length).guess("~ the rule").means("Width the strip is cut."),
      Row("binding/*/each end", length).limits("0 in", "").is("1 in", 'c').means("Left over at each end."),
      Row("binding/*/no joins near", list).each(text).means("Where no join may come."),
      Row("bias patches", list).each(block, "bias patch").since(kLater).means("Patches that bias strips are cut from."),
      Row("bias patches/*/patch", name).must().means("Name of the patch."),
      Row("bias patches/*/from", name).of("cloths").means("Its cloth."),
      Row("bias patches/*/width", length).means("Its width."),
      Row("bias patches/*/length", length).means("Its length."),
      Row("bias patches/*/square", length).means("Side of a square patch."),
      Row("bias patches/*/yields", length).means("Length of strip it must give."),
      Row("bias patches/*/strip", length).must().means("Width of the strip."),
      Row("bias patches/*/cut as", word).words("single strips|joined strips|tube").means("How it is cut."),
      Row("bias patches/*/shortest strip", length).means("The shortest strip worth keeping."),
      Row("bias patches/*/join seam", length).limits("0 in", "2 in").is("1/4 in", 'c').means("Seam of a join."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_trim_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("trims", list).each(block, "trim").since(kLater).means("Each trimming."),
      Row("trims/*/trim", name).must().means("Name of the trimming."),
      Row("trims/*/kind", word).words("bow|rosette|ruche|flounce|puff|lace|band|fringe").must().means("What it is."),
      Row("trims/*/along", list).each(name).of("seams|edges").means("Seams and edges it follows."),
      Row("trims/*/length", length).means("Length it follows."),
      Row("trims/*/number", count).means("How many."),
      Row("trims/*/with", name).of("notions").means("Notion it is made of."),
      Row("trims/*/from", list).each(name).of("cloths").means("Cloth it is made of."),
      Row("trims/*/have", length).means("All there is of it."),
      Row("trims/*/fullness", ratio).limits("1", "20").group("?full").means("Flat for each unit finished."),
      Row("trims/*/as full as it goes", yes_no).group("?full").means("As full as what there is allows."),
      Row("trims/*/finished", length).means("Its depth, finished."),
      Row("trims/*/rows", count).means("Rows of it."),
      Row("trims/*/overlap", length).limits("0 in", "").means("How far rows lie over each other."),
      Row("trims/*/corners", count).limits("0", "500").means("Corners it turns."),
      Row("trims/*/loops", list).each(length).means("Loops of a bow."),
      Row("trims/*/ends", list).each(length).means("Ends of a bow."),
      Row("trims/*/wrap", length).means("Wrap round a bow's middle."),
      Row("trims/*/cut strips", word).words("across|along|bias").means("How its strips are cut."),
      Row("trims/*/set", word).words("gathered|side pleated|box pleated|flat").means("How it is set."),
      Row("trims/*/matters", count).means("How much it matters; 1 is dropped last."),
      Row("stitching", list).each(block, "stitching").since(kLater).means("Sewing that thread is reckoned for."),
      Row("stitching/*/stitching", name).must().means("Its name."),
      Row("stitching/*/seams", list).each(name).of("seams").means("Seams sewn so."),
      Row("stitching/*/length", length).means("Length sewn so."),
      Row("stitching/*/stitch", word)
          .words("lockstitch|zigzag|chain|chain two-thread|blind|overedge|running|back|half back|whip|herringbone|slip|"
                 "buttonhole|overcast")
          .must().means("Which stitch."),
      Row("stitching/*/stitches", rate).means("How close: `10 per in`."),
      Row("stitching/*/seam thickness", length).guess("~ the layers").means("Thickness sewn through."),
      Row("stitching/*/bite", length).means("Width of the stitch."),
      Row("stitching/*/with", name).of("notions").means("Which thread."),
      Row("stitching/*/unpicked", block).means("Thread measured from an unpicked seam."),
      Row("stitching/*/unpicked/seam", length).means("Length of seam unpicked."),
      Row("stitching/*/unpicked/needle", length).means("Needle thread it held."),
      Row("stitching/*/unpicked/looper", length).means("Looper thread it held."),
      Row("pace", block).since(5).means("How fast the maker sews."),
      Row("pace/i am", word).words("practised|expert|new to this").is("practised", 'c').means("How practised."),
      Row("pace/threading", percent).is("15 %", 'c').means("Time that threading takes."),
      Row("pace/needleful", length).is("24 in", 'c').means("Thread in the needle."),
      Row("pace/all by hand", yes_no).means("Whether nothing is sewn by machine."),
      Row("pace/*", rate).means("Any kind of work and its pace: `20 stitches per min`, `20 min each`."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
