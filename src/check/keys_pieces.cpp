// Keys of the pieces, and of what happens at their edges.
#include "check/key_row.h"

namespace gownsheaf {

void add_piece_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("allowances", block).means("Allowances for the whole garment; a piece may have its own."),
      KeyRow("allowances/seam", length).limits("0 in", "8 in").is("1/2 in", 'c').means("At every seam."),
      KeyRow("allowances/hem", length)
          .limits("0 in", "8 in")
          .is("3 in on skirts and petticoats", 'a')
          .means("At the lower edge of skirt and petticoat pieces."),
      KeyRow("allowances/top", length)
          .limits("0 in", "8 in")
          .is("the seam allowance", 'c')
          .means("At the waist end of skirt and petticoat pieces."),
      KeyRow("pieces", list).each(block, "piece").means("Each piece that is cut, in the maker's order."),
      KeyRow("pieces/*/piece", name).must().means("Name of the piece."),
      KeyRow("pieces/*/part of", word)
          .words("bodice|skirt|sleeve|leg|collar|band|facing|pocket|drapery|petticoat|corset|trimming")
          .guess("~ from the name")
          .means("The part of the garment it belongs to."),
      KeyRow("pieces/*/from", list)
          .each(name)
          .of("cloths")
          .must()
          .means("Cloths it is cut from, outermost first; a cloth named twice is two layers."),
      KeyRow("pieces/*/make", count)
          .or_a(pairs)
          .words("pair")
          .group("?make")
          .is("1", 'c')
          .form("pair, or 2 pairs")
          .means("How many of the piece are made."),
      KeyRow("pieces/*/joined round", length).group("?make").means("As many full widths of cloth as reach this far round."),
      KeyRow("pieces/*/fills", name)
          .of("pleats|rounds")
          .group("?make")
          .means("As many full widths as this run or round needs flat."),
      KeyRow("pieces/*/finished width", length).group("?width").means("Across, stitch line to stitch line, opened out."),
      KeyRow("pieces/*/cut width", length)
          .words("full")
          .group("?width")
          .means("Across, where the scissors go; `full` is selvage to selvage."),
      KeyRow("pieces/*/finished length", length).group("?length").means("Down, stitch line to stitch line or fold."),
      KeyRow("pieces/*/cut length", length)
          .words("share of bought")
          .group("?length")
          .means("Down, where the scissors go; `share of bought` divides what there is."),
      KeyRow("pieces/*/on fold", yes_no).is("no", 'c').means("Whether one half lies on a fold along the length."),
      KeyRow("pieces/*/grain", word).words("along|across|bias").is("along", 'c').means("How its length lies on the cloth."),
      KeyRow("pieces/*/lay", word)
          .words("either way|one way|bias|any way")
          .guess("~ the cloth's")
          .means("Which way up it may lie."),
      KeyRow("pieces/*/by size", map)
          .each(block, "size")
          .means("What differs by size, under each size label; it stands in place of the piece's own."),
      KeyRow("pieces/*/by size/*/finished width", length).group("?width").means("Finished width in this size."),
      KeyRow("pieces/*/by size/*/cut width", length).group("?width").means("Cut width in this size."),
      KeyRow("pieces/*/by size/*/finished length", length).group("?length").means("Finished length in this size."),
      KeyRow("pieces/*/by size/*/cut length", length).group("?length").means("Cut length in this size."),
      KeyRow("pieces/*/by size/*/make", count)
          .or_a(pairs)
          .words("pair")
          .form("pair, or 2 pairs")
          .means("How many are made in this size."),
      KeyRow("pieces/*/by size/*/edges", map).each(length, "edge").means("Finished lengths of its edges in this size."),
      KeyRow("pieces/*/seam allowance", length).limits("0 in", "8 in").guess("~ `allowances`").means("At its seams."),
      KeyRow("pieces/*/hem", length)
          .limits("0 in", "8 in")
          .is("0 in; 3 in on skirts and petticoats", 'a')
          .means("At its lower edge; on a skirt as deep as `skirt › hem`, its seam where that is faced."),
      KeyRow("pieces/*/top", length).limits("0 in", "8 in").guess("~ its seam allowance").means("At its waist end."),
      KeyRow("pieces/*/edge allowances", map)
          .each(length)
          .limits("0 in", "8 in")
          .means("Allowances of single edges; a long side's widens the cut."),
      KeyRow("pieces/*/edges", map)
          .each(length, "edge")
          .means("Finished lengths of its edges, written `EDGE of PIECE` elsewhere."),
      KeyRow("pieces/*/lining longer by", length)
          .limits("0 in", "8 in")
          .is("1/4 in", 'a')
          .means("How much longer a flat lining of a close bodice is cut."),
      KeyRow("pieces/*/may be pieced", yes_no)
          .guess("~ yes for full widths")
          .form("{ joins, keep clear of }")
          .means("Whether it may be joined of several bits."),
      KeyRow("pieces/*/may be pieced/joins", count).means("Joins at most."),
      KeyRow("pieces/*/may be pieced/keep clear of", list)
          .each(text)
          .means("Where no join may come: an edge of the piece, `centre`, or `2 in from edge`."),
      KeyRow("pieces/*/match at", list).each(text).means("Edges where the cloth's repeat must meet."),
      KeyRow("pieces/*/outline", text).means("Drawing of the piece: `file.svg#name`."),
      KeyRow("pieces/*/outline is", word).words("seam line|cut line").is("seam line", 'c').means("What the outline shows."),
      KeyRow("pieces/*/square measures", length)
          .means("What the drawing's test square of 50 mm came out as; the scale is mended by it."),
      KeyRow("pieces/*/optional", yes_no).since(kLater).means("Whether the garment can do without it."),
      KeyRow("pieces/*/pattern", word).words("own|bought").since(kLater).means("Whose pattern it is."),
      KeyRow("pieces/*/print full size", yes_no).since(kLater).means("Whether it is printed at full size."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_seam_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("seams", map).each(block, "seam").means("Each seam under its own name."),
      KeyRow("seams/*/joins", list)
          .each(name)
          .of("edges of pieces")
          .group("+length")
          .means("The edges it joins, each `EDGE of PIECE`."),
      KeyRow("seams/*/length", length).group("+length").agrees("joins").means("Its finished length."),
      KeyRow("seams/*/kind", word)
          .words("dart|princess|side|shoulder|centre back|sleeve|breadth|waist|other")
          .guess("~ its name")
          .means("What seam it is."),
      KeyRow("seams/*/number", count)
          .limits("1", "100")
          .guess("~ as many as its pieces have of the two edges, else 1")
          .means("How many of it there are."),
      KeyRow("seams/*/sewn", word).words("by machine|by hand").is("by machine", 'c').means("How it is sewn."),
      KeyRow("seams/*/stitch", word)
          .words("lockstitch|zigzag|chain|chain two-thread|blind|overedge|running|back|half back|whip|herringbone|slip|"
                 "buttonhole|overcast")
          .since(kLater)
          .means("Which stitch."),
      KeyRow("seams/*/ease in", length).limits("0 in", "").is("0 in", 'c').means("How much longer one side is, to be eased in."),
      KeyRow("seams/*/left open", length).means("How much of it is left open."),
      KeyRow("edges", map).each(block, "edge").means("Each edge of the garment under its own name."),
      KeyRow("edges/*/of", list).each(name).of("edges of pieces").group("+length").means("The edges of pieces it is made of."),
      KeyRow("edges/*/length", length)
          .group("+length")
          .agrees("of")
          .guess("~ that edge of its piece")
          .means("Its finished length."),
      KeyRow("edges/*/kind", word)
          .words("front closing|back closing|side closing|neck|armhole|wrist|knee|waist|lower edge|other")
          .guess("~ its name")
          .means("What edge it is."),
      KeyRow("edges/*/number", count)
          .limits("1", "100")
          .guess("~ two at armhole, wrist and knee, else 1")
          .means("How many of it there are."),
      KeyRow("edges/*/shape", word).words("straight|curved|ring").is("straight", 'c').means("Its shape."),
      KeyRow("edges/*/finish", word)
          .words("turned|faced|bound|piped|hemmed")
          .guess("~ piped or bound if named there")
          .means("How it is finished."),
      KeyRow("edges/*/ease to draw", length).limits("0 in", "").since(kLater).means("How much is drawn in along it."),
      KeyRow("rounds", map).each(block, "round").means("Girths joined of pieces, each under its own name."),
      KeyRow("rounds/*/of", list).each(name).of("pieces").must().means("The pieces that make it."),
      KeyRow("rounds/*/runs", list).each(name).of("pleats").means("Its pleat runs in order from centre front."),
      KeyRow("rounds/*/centre front is", word)
          .words("mid-breadth|a seam")
          .is("mid-breadth", 'a')
          .means("What lies at centre front; seams then fall the same on both sides."),
      KeyRow("rounds/*/finished", length).must().means("Length of the edge it is sewn to."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
