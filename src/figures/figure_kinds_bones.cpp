#include "figures/figure_kinds_bones.h"

namespace gownsheaf {

const std::vector<FigureKind>& bone_figure_kinds() {
  constexpr Shown kCut = Shown::cut, kMark = Shown::mark, kExact = Shown::exact;
  constexpr Action kNone = Action::none, kRecut = Action::recut, kRemark = Action::remark, kBuy = Action::buy;
  static const std::vector<FigureKind> kinds{
      {"bones", "channel length", "length", kMark, kRemark, "", "the finished channel between its shut ends", false},
      {"bones", "bone length", "length", kMark, kRecut, "bones", "what the bone is cut to", false},
      {"bones", "number", "count", kExact, kRecut, "", "channels of this kind", false},
      {"bone stock", "bones", "count", kExact, kRecut, "bones", "bones cut from this stock", false},
      {"bone stock", "total length", "length", kMark, kNone, "bones", "all its bones end to end", false},
      {"bone stock", "length to buy", "length", kCut, kBuy, "cutting-stock", "stock to buy beyond what lies on the shelf", false},
      {"bone stock", "bound", "length", kCut, kNone, "cutting-stock", "no plan of cutting buys less", false},
      {"bone stock", "sold length K", "length", kMark, kBuy, "", "a length the shops have", false},
      {"bone stock", "to buy K", "count", kExact, kBuy, "cutting-stock", "how many of this length to buy", false},
      {"bone stock", "bar K/length", "length", kMark, kRecut, "", "the length that is cut up", false},
      {"bone stock", "bar K/left", "length", kMark, kNone, "cutting-stock", "what is left of it", false},
      {"notions", "casing needed", "length", kCut, kBuy, "bones", "casing for all channels", false},
  };
  return kinds;
}

}  // namespace gownsheaf
