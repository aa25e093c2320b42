#include "calculate/width_chart.h"

namespace gownsheaf {
namespace {

// Eighths of a yard; columns 35-36, 39, 41, 44-45, 50, 52-54, 58-60, 66 in.
constexpr int kEighths[12][8] = {
    {14, 12, 12, 11, 10, 9, 8, 7},    {16, 14, 14, 13, 12, 11, 10, 9},  {18, 16, 16, 14, 13, 12, 11, 10},
    {20, 18, 18, 17, 14, 14, 13, 12}, {23, 20, 20, 18, 16, 15, 14, 13}, {25, 22, 22, 20, 18, 16, 15, 14},
    {27, 24, 23, 22, 19, 18, 16, 15}, {30, 26, 25, 23, 21, 19, 18, 17}, {34, 28, 27, 25, 22, 21, 19, 18},
    {36, 30, 29, 27, 24, 22, 21, 20}, {38, 32, 31, 29, 26, 23, 22, 21}, {40, 34, 33, 31, 27, 25, 23, 22},
};
constexpr int kWidths[8] = {35, 39, 41, 44, 50, 52, 58, 66};
constexpr int kWidest = 68;  // a cloth much wider than the last column has none

}  // namespace

const std::vector<ChartRow>& width_chart() {
  static const std::vector<ChartRow> rows = [] {
    std::vector<ChartRow> all;
    for (const auto& row : kEighths) {
      ChartRow one;
      for (const int eighths : row) one.lengths.push_back(Length::inches(36).times(eighths, 8));
      all.push_back(std::move(one));
    }
    return all;
  }();
  return rows;
}

const std::vector<Length>& chart_widths() {
  static const std::vector<Length> widths = [] {
    std::vector<Length> all;
    for (const int inches : kWidths) all.push_back(Length::inches(inches));
    return all;
  }();
  return widths;
}

std::optional<std::size_t> chart_column(Length width) {
  const std::vector<Length>& widths = chart_widths();
  if (width < widths.front() || width > Length::inches(kWidest)) return std::nullopt;
  std::size_t column = 0;
  while (column + 1 < widths.size() && widths[column + 1] <= width) ++column;
  return column;
}

std::optional<Length> by_width_chart(Length envelope_length, Length envelope_width, Length cloth_width) {
  const auto from = chart_column(envelope_width), to = chart_column(cloth_width);
  if (!from || !to) return std::nullopt;
  for (const ChartRow& row : width_chart())
    if (row.lengths[*from] >= envelope_length) return row.lengths[*to];
  return std::nullopt;
}

}  // namespace gownsheaf
