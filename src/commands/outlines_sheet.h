// The sheet that shows which outline of a drawing is which.
#pragma once
#include "layout/lay_out.h"
#include "outline/outline.h"

namespace gownsheaf {

// All outlines in their places with a number in each; under it a table: number, what to write in the project, name, size.
Sheet outlines_sheet(const SvgDrawing& drawing, const Typesetter& typesetter, const PageShape& shape);

// `?` for each letter that no face holds: it would stop the sheet, and a name is a help here, not the answer.
std::string in_letters_held(const FontSet& fonts, std::string text);

}  // namespace gownsheaf
