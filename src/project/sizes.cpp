#include "project/sizes.h"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace gownsheaf {
namespace {

constexpr std::string_view kFromTheTop[] = {"head", "neck",  "high bust", "bust",    "chest",     "underbust", "waist",
                                            "hip",  "thigh", "calf",      "armhole", "upper arm", "elbow",     "wrist"};

}  // namespace

SizeChoice place_in_table(const std::vector<Length>& rising, Length girth) {
  if (rising.empty()) throw std::invalid_argument("a size table without rows");
  SizeChoice place;
  place.girth = girth;
  const auto above = std::lower_bound(rising.begin(), rising.end(), girth);
  using Lies = SizeChoice::Lies;
  if (above == rising.end()) {
    place.lies = Lies::over_the_table;
    place.below = place.above = rising.size() - 1;
    return place;
  }
  place.below = place.above = static_cast<std::size_t>(above - rising.begin());
  if (*above == girth) return place;
  if (above == rising.begin()) {
    place.lies = Lies::under_the_table;
    return place;
  }
  --place.below;
  place.lies = Lies::between_rows;
  const std::int64_t over = (girth - rising[place.below]).in_ticks();
  const std::int64_t step = (rising[place.above] - rising[place.below]).in_ticks();
  place.fraction = Ratio::of(over, step);
  place.halfway = 2 * over == step;
  return place;
}

std::size_t nearest_row(const SizeChoice& place) {
  return 2 * static_cast<Int128>(place.fraction.n) >= place.fraction.d ? place.above : place.below;
}

std::size_t larger_row(const SizeChoice& place) { return place.above; }

Length between_rows(Length low, Length high, Ratio fraction) { return low + (high - low).times(fraction.n, fraction.d); }

bool is_of_the_trunk(std::string_view measure) {
  for (const std::string_view girth : {"bust", "high bust", "underbust", "chest", "waist", "hip"})
    if (measure == girth) return true;
  return false;
}

std::optional<Length> all_round(const Project& project, std::string_view measure) {
  const auto it = project.measures.girths_and_lengths.find(std::string(measure));
  if (it == project.measures.girths_and_lengths.end()) return {};
  const Measure& m = it->second;
  if (m.both.known()) return *m.both;
  if (!m.left.known() || !m.right.known()) return {};
  return is_of_the_trunk(measure) ? *m.left + *m.right : std::max(*m.left, *m.right);
}

std::optional<Length> girth_of(const SizeRow& row, std::string_view measure) {
  const auto it = row.girths.find(std::string(measure));
  if (it == row.girths.end() || !it->second.known()) return {};
  return *it->second;
}

std::vector<std::string> measures_sized(const Project& project) {
  std::set<std::string> all;
  for (const auto& [name, ease] : project.ease)
    if (ease.known()) all.insert(name);
  if (project.size_table)
    for (const SizeRow& row : project.size_table->sizes)
      for (const auto& [name, girth] : row.girths)
        if (girth.known()) all.insert(name);
  std::vector<std::string> in_order;
  for (const std::string_view name : kFromTheTop)
    if (all.erase(std::string(name)) > 0) in_order.emplace_back(name);
  in_order.insert(in_order.end(), all.begin(), all.end());
  return in_order;
}

}  // namespace gownsheaf
