// What `gownsheaf outlines` answers, as JSON.
#pragma once
#include <string>

#include "outline/outline.h"

namespace gownsheaf {

// {"outlines": [{"id", "title", "bbox_mm", "area_mm2", "rings", "pick", "line"}], "marks": [...], "open_lines": [...],
// "warnings": [...]}; mm to four places, from the top left of the page, y down.
std::string outlines_json(const SvgDrawing& drawing, const Diagnostics& diag);

}  // namespace gownsheaf
