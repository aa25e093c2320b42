#include "figures/figure_kinds_yardage.h"

namespace gownsheaf {

std::vector<FigureKind> yardage_figure_kinds() {
  constexpr Shown kCut = Shown::cut, kMark = Shown::mark, kCloth = Shown::cloth, kExact = Shown::exact;
  constexpr Action kNone = Action::none, kRecut = Action::recut, kRemark = Action::remark, kBuy = Action::buy;
  return {
      {"cloths", "by the chart", "length", kCloth, kBuy, "width-chart", "what the width chart makes of the envelope's length",
       false},
      {"cloths", "envelope length", "length", kCloth, kNone, "", "what the bought pattern's envelope asks", false},
      {"cloths", "envelope width", "length", kMark, kNone, "", "the width that the envelope reckons with", false},

      {"pieces", "parts", "count", kExact, kRecut, "pieced-panels", "widths of cloth that one panel is joined of", false},
      {"pieces", "join K", "length", kMark, kRemark, "pieced-panels", "a join's stitch line, from the panel's long edge", false},
      {"pieces", "part NAME/cut width", "length", kCut, kRecut, "pieced-panels",
       "where the scissors go, across, on a part of a pieced panel", false},
      {"pieces", "part NAME/cut length", "length", kCut, kRecut, "pieced-panels",
       "where the scissors go, down a part of a pieced panel", false},
      {"pieces", "part NAME/copies", "count", kExact, kRecut, "pieced-panels", "how many of this part are cut", false},
      {"pieces", "repeat along", "length", kMark, kNone, "", "the pattern's repeat along the cloth", false},
      {"pieces", "taken", "length", kMark, kRecut, "repeats", "what one copy takes of the cloth's length", false},
      {"pieces", "repeats", "count", kExact, kNone, "repeats", "repeats that one copy takes", false},
      {"pieces", "lining longer by", "length", kMark, kRecut, "", "what a flat lining has more in length", false},

      {"pieces", "in pleats/joins", "count", kExact, kNone, "joined-layer", "joins in all, where they fall inside pleats", false},
      {"pieces", "in pleats/cloth", "length", kMark, kNone, "joined-layer", "length of cloth, joins inside pleats", false},
      {"pieces", "by breadths/joins", "count", kExact, kNone, "joined-layer", "joins in all, seams over the shell's seams",
       false},
      {"pieces", "by breadths/cloth", "length", kMark, kNone, "joined-layer", "length of cloth, seams over the shell's seams",
       false},
      {"pieces", "turned/joins", "count", kExact, kNone, "joined-layer", "joins in all, the cloth turned with its length round",
       false},
      {"pieces", "turned/cloth", "length", kMark, kNone, "joined-layer", "length of cloth, turned with its length round", false},

      {"rounds", "runs/NAME/uses", "length", kMark, kNone, "round-sum", "flat cloth of the round that this run uses", false},
      {"rounds", "runs/NAME/share", "percent", kExact, kNone, "round-sum", "part of the joined round that this run uses", false},
  };
}

}  // namespace gownsheaf
