#include "calculate/lay_missing.h"

#include <algorithm>

namespace gownsheaf {
namespace {

std::vector<Missing> by_cut(const LaidOut& laid) {
  std::vector<Missing> all;
  for (const auto& [cut, copy] : laid.left_out) {
    if (all.empty() || all.back().cut != cut) all.push_back({cut, {}, {}, {}, ""});
    all.back().copies.push_back(copy);
  }
  return all;
}

std::vector<std::vector<int>> copies_that_go(const std::vector<Cut>& cuts, const LaidOut& laid) {
  std::vector<std::vector<int>> copies = all_copies(cuts);
  for (const auto& [cut, copy] : laid.left_out)
    copies[cut].erase(std::remove(copies[cut].begin(), copies[cut].end(), copy), copies[cut].end());
  return copies;
}

// The open strip of a lay that is no longer than there is, with its end again.
void close(LaidOut& laid, std::size_t k, Length whole) {
  LaidStrip& strip = laid.strips[k];
  strip.open = false;
  const bool crosswise = strip.folded == Folded::crosswise;
  LaidStrip* rest = k + 1 < laid.strips.size() && laid.strips[k + 1].open ? &laid.strips[k + 1] : nullptr;
  if (rest == nullptr) {
    strip.length = crosswise ? whole.times(1, 2, Rounding::down) : whole;
    return;
  }
  rest->open = false;
  rest->length = whole - rest->starts_at;
  strip.length = crosswise ? rest->starts_at.times(1, 2) : rest->starts_at;
}

}  // namespace

std::optional<WithOneOpen> lay_with_one_open(const Cloth& cloth, const std::vector<Cut>& cuts,
                                             const std::vector<std::vector<int>>& copies, const LayAsked& asked) {
  std::vector<LaidStrip> strips = shelf(cloth);
  const auto longest =
      std::find_if(strips.begin(), strips.end(), [](const LaidStrip& s) { return s.name.rfind("bought", 0) == 0; });
  if (longest == strips.end()) return std::nullopt;
  const bool all_alike =
      std::all_of(strips.begin(), strips.end(), [&](const LaidStrip& s) { return s.folded == longest->folded; });
  if (!all_alike) return std::nullopt;
  const Length whole = longest->folded == Folded::crosswise ? 2 * longest->length : longest->length;
  std::rotate(longest, longest + 1, strips.end());  // the open one must be the last
  strips.back().open = true;
  strips.back().length = Length{};
  WithOneOpen out;
  out.on = strips.back().name;
  out.laid = lay_on(cuts, copies, std::move(strips), asked);
  if (!out.laid.unsupported.empty() || !out.laid.left_out.empty()) return std::nullopt;
  const auto at =
      std::find_if(out.laid.strips.begin(), out.laid.strips.end(), [&](const LaidStrip& s) { return s.name == out.on; });
  const bool opened = at + 1 != out.laid.strips.end() && (at + 1)->open;
  out.more = taken(*at, opened ? &*(at + 1) : nullptr) - whole;
  if (out.more <= Length{}) close(out.laid, static_cast<std::size_t>(at - out.laid.strips.begin()), whole);
  return out;
}

std::vector<Missing> what_is_missing(const Cloth& cloth, const std::vector<Cut>& cuts, LaidOut& laid, const LayAsked& asked,
                                     std::size_t at_most) {
  std::vector<Missing> all = by_cut(laid);
  for (std::size_t i = 0; i < std::min(all.size(), at_most); ++i) {
    std::vector<std::vector<int>> copies = copies_that_go(cuts, laid);
    Missing& missing = all[i];
    copies[missing.cut].insert(copies[missing.cut].end(), missing.copies.begin(), missing.copies.end());
    std::sort(copies[missing.cut].begin(), copies[missing.cut].end());
    std::optional<WithOneOpen> with = lay_with_one_open(cloth, cuts, copies, asked);
    if (with && with->more <= Length{}) {  // it goes after all; what the others miss is asked again
      const std::vector<std::pair<std::size_t, int>> before = std::move(laid.left_out);
      laid = std::move(with->laid);
      for (const auto& one : before)
        if (one.first != missing.cut) laid.left_out.push_back(one);
      return what_is_missing(cloth, cuts, laid, asked, at_most);
    }
    if (with) {
      missing.more = with->more;
      missing.on = with->on;
    }
    std::vector<std::vector<int>> only(cuts.size());
    only[missing.cut] = missing.copies;
    const LaidOut alone = lay_on(cuts, only, {open_strip(cloth)}, asked);
    missing.alone = taken(alone.strips.front(), alone.strips.size() > 1 ? &alone.strips[1] : nullptr);
  }
  all.resize(std::min(all.size(), at_most));
  return all;
}

}  // namespace gownsheaf
