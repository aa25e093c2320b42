// Keys of the pieces, and of what happens at their edges.
#include "check/key_row.h"

namespace gownsheaf {

void add_piece_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("allowances", block).means("Allowances for the whole garment; a piece may have its own."),
      Row("allowances/seam", length).limits("0 in", "8 in").is("1/2 in", 'c').means("At every seam."),
      Row("allowances/hem", length).limits("0 in", "8 in").is("3 in on skirts and petticoats", 'a')
          .means("At the lower edge of skirt and petticoat pieces."),
      Row("allowances/top", length).limits("0 in", "8 in").is("the seam allowance", 'c')
          .means("At the waist end of skirt and petticoat pieces."),
      Row("pieces", list).each(block, "piece").means("Each piece that is cut, in the maker's order."),
      Row("pieces/*/piece", name).must().means("Name of the piece."),
      Row("pieces/*/part of", word)
          .words("bodice|skirt|sleeve|collar|band|facing|pocket|drapery|petticoat|corset|trimming")
          .guess("~ from the name").means("The part of the garment it belongs to."),
      Row("pieces/*/from", list).each(name).of("cloths").must()
          .means("Cloths it is cut from, outermost first; a cloth named twice is two layers."),
      Row("pieces/*/make", count).or_a(pairs).words("pair").group("?make").is("1", 'c').form("pair, or 2 pairs")
          .means("How many of the piece are made."),
      Row("pieces/*/joined round", length).group("?make").means("As many full widths of cloth as reach this far round."),
      Row("pieces/*/fills", name).of("pleats|rounds").group("?make").means("As many full widths as this run or round needs flat."),
      Row("pieces/*/finished width", length).group("?width").means("Across, stitch line to stitch line, opened out."),
      Row("pieces/*/cut width", length).words("full").group("?width")
          .means("Across, where the scissors go; `full` is selvage to selvage."),
      Row("pieces/*/finished length", length).group("?length").means("Down, stitch line to stitch line or fold."),
      Row("pieces/*/cut length", length).words("share of bought").group("?length")
          .means("Down, where the scissors go; `share of bought` divides what there is."),
      Row("pieces/*/on fold", yes_no).is("no", 'c').means("Whether one half lies on a fold along the length."),
      Row("pieces/*/grain", word).words("along|across|bias").is("along", 'c').means("How its length lies on the cloth."),
      Row("pieces/*/lay", word).words("either way|one way|bias|any way").guess("~ the cloth's")
          .means("Which way up it may lie."),
      Row("pieces/*/by size", map).each(block, "size").since(2).means("Sizes of the piece for each size label."),
      Row("pieces/*/by size/*/finished width", length).means("Finished width in this size."),
      Row("pieces/*/by size/*/cut width", length).means("Cut width in this size."),
      Row("pieces/*/by size/*/finished length", length).means("Finished length in this size."),
      Row("pieces/*/by size/*/cut length", length).means("Cut length in this size."),
      Row("pieces/*/seam allowance", length).limits("0 in", "8 in").guess("~ `allowances`").means("At its seams."),
      Row("pieces/*/hem", length).limits("0 in", "8 in").is("0 in; 3 in on skirts and petticoats", 'a')
          .means("At its lower edge."),
      Row("pieces/*/top", length).limits("0 in", "8 in").guess("~ its seam allowance").means("At its waist end."),
      Row("pieces/*/edge allowances", map).each(length).limits("0 in", "8 in").since(2)
          .means("Allowances of single edges."),
      Row("pieces/*/edges", map).each(length, "edge").since(2)
          .means("Finished lengths of its edges, written `EDGE of PIECE` elsewhere."),
      Row("pieces/*/lining longer by", length).limits("0 in", "8 in").is("1/4 in", 'a').since(3)
          .means("How much longer a flat lining of a close bodice is cut."),
      Row("pieces/*/may be pieced", yes_no).guess("~ yes for full widths").form("{ joins, keep clear of }")
          .means("Whether it may be joined of several bits."),
      Row("pieces/*/may be pieced/joins", count).since(3).means("Joins at most."),
      Row("pieces/*/may be pieced/keep clear of", list).each(text).since(3).means("Where no join may come."),
      Row("pieces/*/match at", list).each(text).since(4).means("Edges where the cloth's repeat must meet."),
      Row("pieces/*/outline", text).since(4).means("Drawing of the piece: `file.svg#name`."),
      Row("pieces/*/outline is", word).words("seam line|cut line").is("seam line", 'c').since(4)
          .means("What the outline shows."),
      Row("pieces/*/square measures", length).since(4).means("Real side of the drawing's test square."),
      Row("pieces/*/optional", yes_no).since(kLater).means("Whether the garment can do without it."),
      Row("pieces/*/pattern", word).words("own|bought").since(kLater).means("Whose pattern it is."),
      Row("pieces/*/print full size", yes_no).since(kLater).means("Whether it is printed at full size."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_seam_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("seams", map).each(block, "seam").means("Each seam under its own name."),
      Row("seams/*/joins", list).each(name).of("edges of pieces").group("+length")
          .means("The edges it joins, each `EDGE of PIECE`."),
      Row("seams/*/length", length).group("+length").agrees("joins").means("Its finished length."),
      Row("seams/*/kind", word).words("dart|princess|side|shoulder|centre back|sleeve|breadth|waist|other")
          .guess("~ its name").means("What seam it is."),
      Row("seams/*/number", count).is("1", 'c').means("How many of it there are."),
      Row("seams/*/sewn", word).words("by machine|by hand").is("by machine", 'c').since(5).means("How it is sewn."),
      Row("seams/*/stitch", word)
          .words("lockstitch|zigzag|chain|chain two-thread|blind|overedge|running|back|half back|whip|herringbone|slip|"
                 "buttonhole|overcast")
          .since(kLater).means("Which stitch."),
      Row("seams/*/ease in", length).limits("0 in", "").is("0 in", 'c').since(2).means("How much longer one side is."),
      Row("seams/*/left open", length).since(2).means("How much of it is left open."),
      Row("edges", map).each(block, "edge").means("Each edge of the garment under its own name."),
      Row("edges/*/of", list).each(name).of("edges of pieces").means("The edges of pieces it is made of."),
      Row("edges/*/length", length).must().means("Its finished length."),
      Row("edges/*/kind", word)
          .words("front closing|back closing|side closing|neck|armhole|wrist|waist|lower edge|other")
          .guess("~ its name").means("What edge it is."),
      Row("edges/*/number", count).is("1", 'c').means("How many of it there are."),
      Row("edges/*/shape", word).words("straight|curved|ring").is("straight", 'c').since(2).means("Its shape."),
      Row("edges/*/finish", word).words("turned|faced|bound|piped|hemmed").guess("~ piped or bound if named there").since(2)
          .means("How it is finished."),
      Row("edges/*/ease to draw", length).limits("0 in", "").since(2).means("How much is drawn in along it."),
      Row("rounds", map).each(block, "round").means("Girths joined of pieces, each under its own name."),
      Row("rounds/*/of", list).each(name).of("pieces").must().means("The pieces that make it."),
      Row("rounds/*/runs", list).each(name).of("pleats").means("Its pleat runs in order from centre front."),
      Row("rounds/*/centre front is", word).words("mid-breadth|a seam").is("mid-breadth", 'a')
          .means("What lies at centre front; seams then fall the same on both sides."),
      Row("rounds/*/finished", length).must().means("Length of the edge it is sewn to."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
