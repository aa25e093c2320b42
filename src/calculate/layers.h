// The cloths of one piece as layers that must go together: a flat lining's extra length, and what is said where one layer
// is stiffer, shrinks otherwise, or would lie against the nap.
#pragma once
#include <optional>

#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// What a flat lining of a close bodice is cut longer than its outer cloth: as written, else 1/4 in where the garment is
// boned (read, docs/sources.md#flat-lining). Nothing for any other cloth.
std::optional<Given<Length>> lining_longer_by(const Project& project, const Piece& piece, const Cloth& cloth);

// Warnings: interlining-stiff, shrink-differs, lining-short. Hold: nap-turned.
void check_layers(const Project& project, Diagnostics& diag);

}  // namespace gownsheaf
