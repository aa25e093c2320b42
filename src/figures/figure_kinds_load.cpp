#include "figures/figure_kinds_load.h"

namespace gownsheaf {

const std::vector<FigureKind>& load_figure_kinds() {
  constexpr Shown kMark = Shown::mark, kExact = Shown::exact;
  constexpr Action kNone = Action::none;
  static const std::vector<FigureKind> kinds{
      {"closures", "girth", "length", kMark, kNone, "", "the girth that the closing goes round", true},
      {"closures", "shortfall", "length", kMark, kNone, "hook-load", "how much smaller than that girth it is worn", true},
      {"closures", "pressure", "pressure", kExact, kNone, "hook-load", "pressure on the body, an estimate", true},
      {"closures", "line load at rest", "line load", kExact, kNone, "hook-load", "pull along the closing, standing still; an estimate", true},
      {"closures", "line load", "line load", kExact, kNone, "hook-load", "the same with a deep breath or dancing; an estimate", true},
      {"closures", "hanging pull", "force", kExact, kNone, "hook-load", "what the skirt adds at the lowest fastener; an estimate", true},
      {"closures", "pull K", "force", kExact, kNone, "hook-load", "what this fastener takes; an estimate", true},
      {"closures", "per fastener", "force", kExact, kNone, "hook-load", "the most that one fastener takes; an estimate", true},
      {"closures", "fastener may hold", "force", kExact, kNone, "hook-load", "what one may be asked to hold; untested", true},
      // A class of five that many bodies share: who sews the edge must know it, so it is passed on.
      {"closures", "load band", "word", kExact, kNone, "hook-load", "how strongly the closing is built, R0 to R4", false},
      {"skirt", "weight", "mass", kExact, kNone, "cloth-weight", "weight of the skirt, weighed or an estimate", false},
      {"skirt", "weight/CLOTH", "mass", kExact, kNone, "cloth-weight", "weight of this layer of the skirt, an estimate", false},
  };
  return kinds;
}

}  // namespace gownsheaf
