#include "calculate/lay_strips.h"

#include <algorithm>
#include <tuple>

namespace gownsheaf {
namespace {

LaidStrip strip_of(const Cloth& cloth, std::string name, Length width, Length length) {
  LaidStrip strip;
  strip.name = std::move(name);
  strip.width = width;
  strip.selvage = selvage_of(cloth);
  strip.usable_width = std::max(Length{}, width - 2 * strip.selvage);
  strip.length = length;
  return strip;
}

Length after_shrinking_across(const Cloth& cloth, Length width) {
  const bool shrunk = cloth.shrunk_already.known() && *cloth.shrunk_already;
  if (shrunk || !cloth.shrinks_across.known()) return width;
  const Ratio s = cloth.shrinks_across->of_one;
  return width.times(s.d - s.n, s.d, Rounding::down);
}

// By a half drop every other breadth begins half a repeat lower, so that its motif meets its neighbour's.
bool drops(const Cut& cut, const std::vector<int>& these) { return cut.half_drop && these.front() % 2 != 0; }

// The second of each pair is the other hand's: its outline mirrored.
bool other_hand(const Cut& cut, const std::vector<int>& these) { return cut.piece.pair && !cut.piece.outline.empty() && these.front() % 2 != 0; }

struct ToLay { std::size_t cut; std::vector<int> copies; };
std::vector<ToLay> parts_to_lay(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies) {
  std::vector<ToLay> parts;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const bool two_kinds = cuts[i].half_drop || (cuts[i].piece.pair && !cuts[i].piece.outline.empty());
    std::vector<int> first, second;
    for (const int c : copies[i]) (two_kinds && c % 2 != 0 ? second : first).push_back(c);
    if (!first.empty()) parts.push_back({i, std::move(first)});
    if (!second.empty()) parts.push_back({i, std::move(second)});
  }
  return parts;
}

// How a piece may lie, its top to the left first. A mirrored one is flipped across the cloth.
std::vector<nest::Pose> poses_of(const Cut& cut, bool mirrored) {
  const int upright = mirrored ? 2 : 0;
  std::vector<nest::Pose> poses{{upright, mirrored}};
  const bool outline = !cut.piece.outline.empty();
  if (outline && cut.end_for_end) poses.push_back({2 - upright, mirrored});
  if (cut.may_turn) poses.push_back({1, mirrored});
  if (cut.may_turn && outline) poses.push_back({3, mirrored});
  return poses;
}

Polygon moved_to(Polygon outline, Length x, Length y) {
  for (Point& p : outline) p = {p.x + x, p.y + y};
  return outline;
}

}  // namespace

std::vector<std::vector<int>> all_copies(const std::vector<Cut>& cuts) {
  std::vector<std::vector<int>> copies(cuts.size());
  for (std::size_t i = 0; i < cuts.size(); ++i)
    if (cuts[i].in_lay)
      for (int c = 0; c < static_cast<int>(cuts[i].piece.copies); ++c) copies[i].push_back(c);
  return copies;
}

LaidStrip open_strip(const Cloth& cloth) {
  LaidStrip strip = strip_of(cloth, "to buy", *shrunk_width(cloth), {});
  strip.open = true;
  return strip;
}

std::vector<LaidStrip> shelf(const Cloth& cloth) {
  std::vector<LaidStrip> strips;
  if (cloth.bought.known()) {
    const bool one = cloth.bought->size() == 1;
    std::int64_t n = 0;
    for (const BoughtLength& b : *cloth.bought) {
      ++n;
      const Length width = after_shrinking_across(cloth, b.width ? *b.width : *cloth.width);
      strips.push_back(strip_of(cloth, one ? "bought length" : "bought length " + whole_number(n), width, laid_length(cloth, b.length)));
    }
  }
  const Ratio s = shrinks_along(cloth);
  for (const Remnant& r : cloth.remnants) {
    const auto along = [&](Length l, Rounding way) { return l.times(s.d - s.n, s.d, way); };
    LaidStrip strip = strip_of(cloth, "remnant " + r.named.name, after_shrinking_across(cloth, r.width), along(r.length, Rounding::down));
    for (const Box& bad : r.bad_places) {  // rather too large: across it reaches from where it has shrunk to, to where it lay
      const Length x = along(bad.x, Rounding::down), low = after_shrinking_across(cloth, bad.y);
      strip.bad_places.push_back({x, low, along(bad.right(), Rounding::up) - x, bad.bottom() - low});
    }
    strips.push_back(std::move(strip));
  }
  std::stable_sort(strips.begin(), strips.end(), [](const LaidStrip& a, const LaidStrip& b) { return a.length > b.length; });
  return strips;
}

LaidOut lay_on(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, std::vector<LaidStrip> strips,
               Length breadth_usable, Length gap, const LayWork& work) {
  LaidOut out;
  nest::Request request;
  request.gap = gap;
  for (const LaidStrip& s : strips) {
    nest::Strip strip;
    strip.width = s.usable_width;
    if (!s.open) strip.length = s.length;
    for (const Box& bad : s.bad_places) {
      const Length low = std::max(Length{}, bad.y - s.selvage), high = std::min(bad.bottom() - s.selvage, s.usable_width);
      if (low < high) strip.obstacles.push_back({bad.x, low, std::min(bad.right(), s.length) - bad.x, high - low});
    }
    request.strips.push_back(strip);
  }
  std::vector<std::size_t> cut_of_part;
  std::vector<std::vector<int>> copies_of_part;
  for (const auto& [i, these] : parts_to_lay(cuts, copies)) {
    const Cut& cut = cuts[i];
    const bool full = cut.piece.full_width;
    const Length across = full ? breadth_usable : cut.piece.across;
    nest::Part part;
    // Cloth that is taken besides, for a repeat, is no part of the outline: then its box is laid, that much longer.
    const bool as_drawn = !cut.piece.outline.empty() && work.outlines > 0 && cut.takes == cut.piece.along;
    part.outline = as_drawn ? cut.piece.outline : rectangle(cut.takes, across);
    part.copies = static_cast<int>(these.size());
    part.poses = poses_of(cut, other_hand(cut, these));
    if (full) part.fixed_y = Length{};
    if (cut.repeat) part.lattice = nest::Part::Lattice{*cut.repeat, drops(cut, these) ? cut.repeat->times(1, 2) : Length{}};
    bool fits_all = true;
    for (std::size_t k = 0; k < strips.size(); ++k) {
      const LaidStrip& s = strips[k];
      const bool upright = across <= s.usable_width && (s.open || cut.takes <= s.length);
      const bool turned = cut.may_turn && cut.takes <= s.usable_width && (s.open || across <= s.length);
      if (upright || turned) part.strips.push_back(static_cast<int>(k));
      else fits_all = false;
    }
    if (part.strips.empty()) {  // for nest an empty list means any strip
      for (const int c : these) out.left_out.emplace_back(i, c);
      continue;
    }
    copies_of_part.push_back(these);
    if (fits_all) part.strips.clear();
    request.parts.push_back(std::move(part));
    cut_of_part.push_back(i);
  }
  if (!request.parts.empty() && !request.strips.empty()) {
    const nest::Lay lay = nest::lay_parts(request, {work.rectangles, work.outlines});
    out.unsupported = lay.unsupported;
    out.bound = lay.bound;
    for (const nest::Placed& p : lay.placed) {
      const std::size_t i = cut_of_part[static_cast<std::size_t>(p.part)];
      const Cut& cut = cuts[i];
      LaidStrip& strip = strips[static_cast<std::size_t>(p.strip)];
      LaidPiece piece;
      piece.piece = cut.piece.piece;
      piece.copy = copies_of_part[static_cast<std::size_t>(p.part)][static_cast<std::size_t>(p.copy)] + 1;
      piece.turned = p.pose.quarter_turns % 2 != 0;
      piece.at = {p.at.x, p.at.y + strip.selvage, cut.piece.along, cut.piece.across};
      if (piece.turned) std::swap(piece.at.width, piece.at.height);
      if (!cut.piece.outline.empty()) {
        piece.mirrored = p.pose.mirrored;
        piece.top_at_right = p.pose.quarter_turns == (p.pose.mirrored ? 0 : 2);
        piece.outline = moved_to(nest::posed(cut.piece.outline, p.pose), piece.at.x, piece.at.y);
      }
      if (cut.piece.full_width) {  // selvage to selvage
        piece.at.y = Length{};
        piece.at.height = cut.piece.across;
      }
      strip.used = std::max(strip.used, p.at.x + (piece.turned ? piece.at.width : cut.takes));
      strip.placed.push_back(piece);
    }
    for (const auto& [part, copy] : lay.left_out) {
      const std::size_t i = cut_of_part[static_cast<std::size_t>(part)];
      out.left_out.emplace_back(i, copies_of_part[static_cast<std::size_t>(part)][static_cast<std::size_t>(copy)]);
    }
  }
  std::sort(out.left_out.begin(), out.left_out.end());
  for (LaidStrip& s : strips)
    std::sort(s.placed.begin(), s.placed.end(), [](const LaidPiece& a, const LaidPiece& b) {
      return std::tie(a.at.x, a.at.y, a.piece, a.copy) < std::tie(b.at.x, b.at.y, b.piece, b.copy);
    });
  out.strips = std::move(strips);
  return out;
}

}  // namespace gownsheaf
