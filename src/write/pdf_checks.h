// What must be true of a document before libharu sees it, because libharu accepts it in silence and prints something
// else: far coordinates are moved, missing letters become boxes, an unpainted path vanishes. Knows nothing of libharu.
#pragma once
#include <string>

#include "fonts/font_set.h"
#include "layout/page.h"

namespace gownsheaf {

inline constexpr int kClipsInside = 20;        // libharu holds 28 saved states to a page; one is used for each clip group
inline constexpr int kFarthestPoints = 14400;  // the largest page side of PDF; libharu moves what is past 32,767
inline constexpr int kLargestTypePoints = 600;
inline constexpr int kLongestDashPoints = 100;
inline constexpr int kLongestRun = 10000;  // bytes; far below any string limit of libharu

// One sentence about the first thing found that cannot be printed, with its page; "" when all is well.
std::string why_unprintable(const PaperDocument& document, const FontSet& fonts);

}  // namespace gownsheaf
