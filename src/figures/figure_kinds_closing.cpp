// Figure kinds of closings and of the notions they take.
#include "figures/figure_kinds_closing.h"

namespace gownsheaf {

const std::vector<FigureKind>& closing_figure_kinds() {
  constexpr Shown kCut = Shown::cut, kMark = Shown::mark, kExact = Shown::exact;
  constexpr Action kNone = Action::none, kRecut = Action::recut, kRemark = Action::remark, kBuy = Action::buy;
  static const std::vector<FigureKind> kinds{
      {"closures", "edge length", "length", kMark, kNone, "", "length of the edge that closes", false},
      {"closures", "count", "count", kExact, kRemark, "closures", "fasteners in one row; of lacing pairs of eyelets", false},
      {"closures", "in all", "count", kExact, kBuy, "closures", "fasteners of all rows; of lacing all eyelets", false},
      {"closures", "pitch widest", "length", kMark, kRemark, "closures", "greatest distance between two fasteners", false},
      {"closures", "pitch K", "length", kMark, kRemark, "closures", "distance between two in this stretch, from the top", false},
      {"closures", "top inset", "length", kMark, kRemark, "", "top of the edge to the first fastener", false},
      {"closures", "bottom inset", "length", kMark, kRemark, "closures", "the last fastener to the foot of the edge", false},
      {"closures", "fastener K", "length", kMark, kRemark, "closures", "from the top of the edge to the middle of this fastener",
       false},
      {"closures", "other side K", "length", kMark, kRemark, "closures",
       "staggered lacing: from the top to this eyelet of the other side", false},
      {"closures", "at LEVEL", "length", kMark, kRemark, "", "a named place, from the top of the edge", false},
      {"closures", "set back", "length", kMark, kRemark, "", "how far the fasteners sit behind the edge", false},
      {"closures", "lap", "length", kMark, kRecut, "closing-cut", "upper side past the meeting line", false},
      {"closures", "underlap", "length", kMark, kRecut, "closing-cut", "under side past the meeting line", false},
      {"closures", "turn back", "length", kMark, kRecut, "", "turned in at the edge", false},
      {"closures", "seam with facing", "length", kMark, kRecut, "", "seam allowance where the facing is sewn on", false},
      {"closures", "cut past meeting line/SIDE", "length", kCut, kRecut, "closing-cut",
       "meeting line to the cut edge of this side", false},
      {"closures", "guard width", "length", kMark, kNone, "", "width of the strip behind the closing", false},
      {"closures", "backing width", "length", kMark, kNone, "", "width of the strip that strengthens the edge", false},
      {"closures", "buttonhole", "length", kMark, kRemark, "buttonhole", "length of each buttonhole", false},
      {"closures", "buttonhole begins", "length", kMark, kRemark, "buttonhole", "past the lap line, toward the edge", false},
      {"closures", "gap", "length", kMark, kNone, "", "between the edges when laced", false},
      {"closures", "through the eyelets", "length", kMark, kNone, "lacing", "lace that the thickness of the edge takes", false},
      {"closures", "lace length", "length", kCut, kBuy, "lacing", "lace or cord, its ends to tie counted", false},
      {"closures", "ties", "count", kExact, kBuy, "ties", "how many ties are cut, two a place", false},
      {"closures", "tie length", "length", kCut, kBuy, "ties", "each tie as it is cut", false},
      {"closures", "tie free", "length", kMark, kNone, "", "what of each tie hangs free to be tied", false},
      {"closures", "tape length", "length", kCut, kBuy, "ties", "tape for all ties of this closing", false},
      {"closures", "stitches each", "count", kExact, kNone, "", "stitches that hold each fastener", false},
      {"closures", "compare KIND/places", "count", kExact, kNone, "fasteners-compared", "places of another kind on this edge",
       false},
      {"closures", "compare KIND/pieces", "count", kExact, kNone, "fasteners-compared", "pieces to be sewn on", false},
      {"closures", "compare KIND/minutes", "count", kExact, kNone, "fasteners-compared", "minutes of sewing; common practice",
       false},

      {"plackets", "length", "length", kMark, kRemark, "", "length of the slit", false},
      {"plackets", "strip wide", "length", kCut, kRecut, "plackets", "cut width of its strip", false},
      {"plackets", "strip long", "length", kCut, kRecut, "plackets", "cut length of its strip", false},
      {"plackets", "set back", "length", kMark, kNone, "plackets", "how far the strip's edge stands back", false},
      {"plackets", "facing wide", "length", kMark, kRecut, "plackets", "finished width of each of its two facings", false},
      {"plackets", "facing long", "length", kMark, kRecut, "plackets", "finished length of each of its two facings", false},
      {"plackets", "underlap wide", "length", kMark, kRecut, "plackets", "finished width of its underlap", false},
      {"plackets", "underlap long", "length", kMark, kRecut, "plackets", "finished length of its underlap", false},

      {"notions", "fasteners needed", "count", kExact, kBuy, "closures", "what all closings take of it", false},
      {"notions", "stay needed", "length", kCut, kBuy, "stays", "ribbon of a waist stay, or tape along the edges that are stayed",
       false},
      {"notions", "braid needed", "length", kCut, kBuy, "hem-braid", "braid round the hem, its ends turned under", false},
      {"notions", "lace needed", "length", kCut, kBuy, "lacing", "all laces that are cut from it", false},
  };
  return kinds;
}

}  // namespace gownsheaf
