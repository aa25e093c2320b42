// The width conversion chart: how much cloth of another width a pattern takes, in yards.
//
// Read as it is printed: the row is the first whose figure in the envelope's column is not less than what the envelope
// says, the answer stands in the column of the cloth's width. The chart is an average of lays, not a law of area: areas
// against the 36 in column run from 0.89 to 1.09. Source: docs/sources.md#width-chart.
#pragma once
#include <optional>
#include <vector>

#include "units/length.h"

namespace gownsheaf {

// Column of a width, from 0; nothing where the chart has none. Between two columns the narrower counts.
std::optional<std::size_t> chart_column(Length width);
// Nothing where a width has no column, or the length is past the chart's last row.
std::optional<Length> by_width_chart(Length envelope_length, Length envelope_width, Length cloth_width);

struct ChartRow {
  std::vector<Length> lengths;
};  // by column
const std::vector<ChartRow>& width_chart();
const std::vector<Length>& chart_widths();  // narrowest cloth of each column

}  // namespace gownsheaf
