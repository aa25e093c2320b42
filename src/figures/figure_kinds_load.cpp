#include "figures/figure_kinds_load.h"

namespace gownsheaf {

const std::vector<FigureKind>& load_figure_kinds() {
  constexpr Shown kMark = Shown::mark, kExact = Shown::exact;
  constexpr Action kNone = Action::none;
  static const std::vector<FigureKind> kinds{
      {"closures", "girth", "length", kMark, kNone, "", "the girth that the closing goes round", true},
      {"closures", "shortfall", "length", kMark, kNone, "hook-load", "how much smaller than that girth it is worn", true},
      {"closures", "pressure", "pressure", kExact, kNone, "hook-load", "pressure on the body, an estimate", true},
      {"closures", "line load at rest", "line load", kExact, kNone, "hook-load",
       "pull along the closing, standing still; an estimate", true},
      {"closures", "line load", "line load", kExact, kNone, "hook-load",
       "the same with a deep breath, in movement or sitting; an estimate", true},
      {"closures", "zone ZONE/girth", "length", kMark, kNone, "", "the girth that this part of the edge goes round", true},
      {"closures", "zone ZONE/starts", "length", kMark, kNone, "", "from the top of the edge to where this part begins", true},
      {"closures", "zone ZONE/ends", "length", kMark, kNone, "", "from the top of the edge to where this part ends", true},
      {"closures", "zone ZONE/shortfall", "length", kMark, kNone, "hook-load", "how much smaller it is worn there", true},
      {"closures", "zone ZONE/pressure", "pressure", kExact, kNone, "hook-load", "pressure there, an estimate", true},
      {"closures", "zone ZONE/line load at rest", "line load", kExact, kNone, "hook-load",
       "pull there, standing still; an estimate", true},
      {"closures", "zone ZONE/line load", "line load", kExact, kNone, "hook-load",
       "the same with a deep breath, in movement or sitting; an estimate", true},
      {"closures", "hanging pull", "force", kExact, kNone, "hook-load", "what the skirt adds at the lowest fastener; an estimate",
       true},
      {"closures", "pull K", "force", kExact, kNone, "hook-load", "what this fastener takes; an estimate", true},
      {"closures", "per fastener", "force", kExact, kNone, "hook-load", "the most that one fastener takes; an estimate", true},
      {"closures", "per fastener/low", "force", kExact, kNone, "load-range", "the same with the one input that lowers it most",
       true},
      {"closures", "per fastener/high", "force", kExact, kNone, "load-range", "the same with the one input that raises it most",
       true},
      {"closures", "one holds", "force", kExact, kNone, "hook-load", "what one fastener holds; untested unless written", true},
      {"closures", "fastener may hold", "force", kExact, kNone, "hook-load", "what one may be asked to hold; untested", true},
      {"closures", "if one opens", "force", kExact, kNone, "load-eased",
       "what a neighbour takes when the worst of them opens; an estimate", true},
      {"closures", "eased WAY/per fastener", "force", kExact, kNone, "load-eased",
       "the most that one takes, eased in this way; an estimate", true},
      {"closures", "eased WAY/may hold", "force", kExact, kNone, "load-eased", "what one may then be asked to hold; untested",
       true},
      {"closures", "eased WAY/load band", "word", kExact, kNone, "load-eased", "the band, eased in this way", true},
      {"closures", "eased WAY/by", "length", kMark, kNone, "load-eased", "how much is let out all round", true},
      {"closures", "eased WAY/apart", "length", kMark, kNone, "load-eased", "the widest distance between two, in this way", true},
      {"closures", "eased WAY/places", "count", kExact, kNone, "load-eased", "how many places, in this way", true},
      {"closures", "varied INPUT/low", "force", kExact, kNone, "load-range",
       "the most that one takes at the easier end of this input", true},
      {"closures", "varied INPUT/high", "force", kExact, kNone, "load-range", "the most that one takes at its harder end", true},
      {"closures", "hip slope", "angle", kExact, kNone, "band-hold", "how far the hip slopes from the vertical", true},
      {"closures", "friction", "word", kExact, kNone, "band-hold", "friction of the band on what it lies on", true},
      {"closures", "band width", "length", kMark, kNone, "", "width of the skirt's own band", true},
      {"closures", "band tension", "force", kExact, kNone, "band-hold", "what the band must be drawn to; an estimate", true},
      {"closures", "band pressure", "pressure", kExact, kNone, "band-hold", "pressure under the band; an estimate", true},
      {"closures", "comfort line", "pressure", kExact, kNone, "band-hold", "what is borne under a belt at the wearer's age",
       true},
      {"closures", "strap end", "force", kExact, kNone, "band-hold", "what each of four strap ends carries; an estimate", true},
      // A class of five that many bodies share: who sews the edge must know it, so it is passed on.
      {"closures", "load band", "word", kExact, kNone, "hook-load", "how strongly the closing is built, R0 to R4", false},
      {"skirt", "weight", "mass", kExact, kNone, "cloth-weight", "weight of the skirt, weighed or an estimate", false},
      {"skirt", "weight/CLOTH", "mass", kExact, kNone, "cloth-weight", "weight of this layer of the skirt, an estimate", false},
  };
  return kinds;
}

}  // namespace gownsheaf
