// Ways to bring the breadth seams of a pleated run under its pleats, where as it is written one of them shows. Nothing is
// altered: the maker is told what to write. Formulas: docs/formulas.md#breadth-seams.
#pragma once
#include <optional>
#include <vector>

#include "calculate/rounds.h"

namespace gownsheaf {

// Whether none of the places shows between the pleats; a place at the edge of a hidden fold is hidden.
bool all_hidden(const std::vector<PleatMark>& marks, const std::vector<Length>& places, Length plus);

// The nearest count, at most three more or fewer, whose pleats of the same cloth, re-divided, hide every place; as the run
// would write it. Places are in the run, as its marks are measured. Nothing where the run writes a depth, a visible width
// or take-ups, which fix the count, and nothing where no such count is found.
std::optional<std::int64_t> count_that_hides(const RunSum& sum, const std::vector<Length>& places);

}  // namespace gownsheaf
