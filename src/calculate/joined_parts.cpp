#include "calculate/joined_parts.h"

#include <algorithm>

#include "calculate/match_places.h"
#include "calculate/new_figure.h"
#include "geometry/region.h"
#include "geometry/slabs.h"
#include "nest/nest.h"

namespace gownsheaf {
namespace {

// Joins are upright lines on the ring as it is held: a quarter turn for joins along the length, so that its far side is first.
Polygon held(const Polygon& ring, bool along) { return along ? nest::posed(ring, {1, false}) : ring; }
Polygon let_go(const Polygon& ring, bool along) { return along ? nest::posed(ring, {3, false}) : ring; }
Point held(const Point& p, const Cut& cut, bool along) { return along ? Point{cut.piece.across - p.y, p.x} : p; }
Point let_go(const Point& p, const Box& box, bool along) {
  return along ? Point{p.y - box.y, box.right() - p.x} : Point{p.x - box.x, p.y - box.y};
}

// The ring in one piece, or nothing: what hangs together along a join only is two pieces.
std::optional<Polygon> whole_ring(Polygon ring) {
  if (ring.size() < 3) return std::nullopt;
  Resolved resolved = resolve({ring}, FillRule::nonzero);
  if (resolved.refused || resolved.region.rings.size() != 1) return std::nullopt;
  return resolved.crossings.empty() ? ring : resolved.region.rings.front();
}

struct Side {
  Length from, to;
};  // of a part, with its seams
std::vector<Side> sides(const std::vector<Length>& joins, Length whole, Length seam) {
  std::vector<Side> all;
  for (std::size_t k = 0; k <= joins.size(); ++k)
    all.push_back({k == 0 ? Length{} : joins[k - 1] - seam, k == joins.size() ? whole : joins[k] + seam});
  return all;
}

std::optional<std::vector<Polygon>> rings_of(const Polygon& ring, const std::vector<Side>& parts) {
  std::vector<Polygon> rings;
  for (const Side& part : parts) {
    auto one = whole_ring(clipped_along(ring, part.from, part.to));
    if (!one) return std::nullopt;
    rings.push_back(std::move(*one));
  }
  return rings;
}

// What is drawn in the piece and lies in this part, and the stitch lines of its joins from edge to edge.
std::vector<LineInPiece> lines_of(const Cut& cut, const Polygon& ring, const Side& side, const std::vector<Length>& joins,
                                  const Box& box, bool along) {
  std::vector<LineInPiece> lines;
  for (const LineInPiece& line : cut.piece.lines) {
    LineInPiece one{line.kind, {}, line.closed};
    bool inside = true;
    for (const Point& p : line.points) {
      const Point at = held(p, cut, along);
      inside = inside && side.from <= at.x && at.x <= side.to;
      one.points.push_back(let_go(at, box, along));
    }
    if (inside) lines.push_back(std::move(one));
  }
  for (const Length x : joins) {
    if (x <= side.from || x >= side.to) continue;
    const std::vector<Length> ys = crossings_at(ring, x);
    if (ys.size() < 2) continue;
    lines.push_back({"mark", {let_go({x, ys.front()}, box, along), let_go({x, ys.back()}, box, along)}, false});
  }
  return lines;
}

// "first part", "second part".
std::string nth_part(std::size_t k) {
  static constexpr const char* kNth[] = {"first", "second",  "third",  "fourth", "fifth",
                                         "sixth", "seventh", "eighth", "ninth",  "tenth"};
  return k < std::size(kNth) ? std::string(kNth[k]) + " part" : "part " + whole_number(static_cast<std::int64_t>(k) + 1);
}

// "cape, upper part" with its key "pieces/cape/felt/part upper".
void name_part(const Cut& whole, const std::string& name, CutPiece& part) {
  const std::size_t end = name.ends_with(" part") ? name.size() - 5 : name.size();
  part.piece = whole.piece.piece + ", " + name;
  part.key = whole.piece.key + "/part " + name.substr(0, end);
}

struct Joined {
  Polygon ring;
  std::vector<Length> joins;
  Length seam;
  bool along = false;
};  // ring: held

std::optional<std::vector<Cut>> parts_at(const Cut& whole, const Joined& how, const std::vector<std::string>& names) {
  const bool drawn = !whole.piece.outline.empty();
  const std::vector<Side> all = sides(how.joins, bounds(how.ring).width, how.seam);
  const auto rings = rings_of(how.ring, all);
  if (!rings) return std::nullopt;
  std::vector<Cut> cuts;
  for (std::size_t k = 0; k < all.size(); ++k) {
    const Polygon ring = let_go((*rings)[k], how.along);
    Cut part = whole;
    CutPiece& c = part.piece;
    c.part_of = whole.piece.piece;
    name_part(whole, names[k], c);
    const Box size = bounds(ring);
    c.along = size.width;
    c.across = size.height;
    c.outline.clear();
    c.lines.clear();
    if (drawn) {
      for (const Point& p : ring) c.outline.push_back({p.x - size.x, p.y - size.y});
      c.lines = lines_of(whole, how.ring, all[k], how.joins, bounds((*rings)[k]), how.along);
    }
    if (c.match) {  // in the places of the part
      const Box in_held = bounds((*rings)[k]);
      c.match = how.along ? Point{c.match->x - in_held.y, c.match->y - (whole.piece.across - in_held.right())}
                          : Point{c.match->x - in_held.x, c.match->y - in_held.y};
    }
    part.takes = c.along;
    part.breadth.reset();
    cuts.push_back(std::move(part));
  }
  return cuts;
}

std::vector<std::string> numbered_parts(std::size_t many) {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < many; ++k) names.push_back(nth_part(k));
  return names;
}

// Each part meets the repeat as if the cut were whole.
void carry_match(std::vector<Cut>& parts, const std::optional<Repeat>& repeat) {
  for (Cut& part : parts) {
    CutPiece& c = part.piece;
    if (!repeat) c.match.reset();
    if (!c.match) continue;
    const Repeat laid = laid_repeat(*repeat);
    c.match = Point{within_repeat(c.match->x, c.along, laid.along), within_repeat(c.match->y, c.across, laid.across)};
  }
}

// Where the drawing lets the piece be joined: its `join` lines that are upright as it is held, rising.
std::vector<Length> drawn_joins(const Cut& cut, bool along) {
  std::vector<Length> at;
  for (const LineInPiece& line : cut.piece.lines) {
    if (line.kind != "join") continue;
    Polygon points;
    for (const Point& p : line.points) points.push_back(held(p, cut, along));
    const Box box = bounds(points);
    if (50 * box.width > box.height) continue;  // it leans, or runs the other way
    const Length x = box.x + box.width.times(1, 2);
    if (std::none_of(at.begin(), at.end(), [&](Length other) { return (x < other ? other - x : x - other) < Length::mm(1); }))
      at.push_back(x);
  }
  std::sort(at.begin(), at.end());
  return at;
}

bool any_drawn_join(const Cut& cut) {
  return std::any_of(cut.piece.lines.begin(), cut.piece.lines.end(), [](const LineInPiece& line) { return line.kind == "join"; });
}

// Of these so many that leave the longest part the shortest. Nothing where they are too few.
std::optional<std::vector<Length>> chosen(const std::vector<Length>& allowed, std::size_t many, Length whole) {
  if (allowed.size() < many || allowed.size() > 16) return std::nullopt;
  std::optional<std::vector<Length>> best;
  Length least;
  for (unsigned bits = 0; bits < (1u << allowed.size()); ++bits) {
    std::vector<Length> these;
    for (std::size_t k = 0; k < allowed.size(); ++k)
      if ((bits >> k & 1u) != 0) these.push_back(allowed[k]);
    if (these.size() != many) continue;
    Length longest = whole - these.back();
    for (std::size_t k = 0; k < many; ++k) longest = std::max(longest, these[k] - (k == 0 ? Length{} : these[k - 1]));
    if (best && longest >= least) continue;
    best = these;
    least = longest;
  }
  return best;
}

// The fewest of these with which every part goes on the cloth: always the furthest that does. Nothing where none do.
std::optional<std::vector<Length>> fewest(const std::vector<Length>& allowed, Length whole, Length usable, Length lost) {
  std::vector<Length> joins;
  Length from;  // of the part in hand, with its seam
  while (whole - from > usable) {
    const Length* furthest = nullptr;
    for (const Length& at : allowed)
      if (at - lost > from && at + lost - from <= usable) furthest = &at;
    if (furthest == nullptr) return std::nullopt;
    joins.push_back(*furthest);
    from = *furthest - lost;
  }
  return joins;
}

bool symmetric(const std::vector<Length>& joins, Length width) {
  for (std::size_t k = 0; k < joins.size(); ++k)
    if (const Length sum = joins[k] + joins[joins.size() - 1 - k];
        (sum < width ? width - sum : sum - width) > Length::tenth_mm(1))
      return false;
  return true;
}

// The two halves of what was opened out on the fold: outer parts are each other's mirror image, a middle one is symmetric.
std::vector<Cut> folded_parts(const Cut& whole, std::vector<Cut> parts) {
  const std::size_t many = parts.size(), half = many / 2;
  for (std::size_t k = 0; k < half; ++k) {
    parts[k].piece.on_fold = false;
    parts[k].piece.pair = true;
    parts[k].piece.copies *= 2;
    if (many < 4) name_part(whole, many == 2 ? "half" : "side part", parts[k].piece);
  }
  if (many == 3) name_part(whole, "middle part", parts[half].piece);
  parts.resize(many - half);
  return parts;
}

// Parts alike; with the centre kept clear and an even number of them, the half of them in two fifths.
std::vector<Length> spread_joins(Length whole, int parts, bool clear_of_centre) {
  std::vector<Length> joins;
  for (int k = 1; k < parts; ++k) {
    if (!clear_of_centre || parts % 2 != 0) joins.push_back(whole.times(k, parts));
    else if (2 * k <= parts) joins.push_back(whole.times(4 * k, 5 * parts));
    else joins.push_back(whole.times(2, 5) + whole.times(3 * (2 * k - parts), 5 * parts));
  }
  return joins;
}

}  // namespace

std::optional<std::vector<Cut>> joined_of(const Cut& cut, int parts, const std::optional<Repeat>& repeat) {
  const CutPiece& c = cut.piece;
  const Joining none;
  const Joining& rules = cut.source != nullptr ? cut.source->joining : none;
  if (rules.joins && *rules.joins < parts - 1) return std::nullopt;
  const bool drawn = any_drawn_join(cut);
  const bool along =
      drawn ? drawn_joins(cut, false).empty() : !rules.clear_of.empty();  // a join across would meet the long edges
  if (along && c.on_fold) return std::nullopt;
  const Polygon ring = held(c.outline.empty() ? rectangle(c.along, c.across) : c.outline, along);
  const Length whole = bounds(ring).width;
  std::vector<Length> joins;
  if (drawn) {
    auto these = chosen(drawn_joins(cut, along), static_cast<std::size_t>(parts - 1), whole);
    if (!these) return std::nullopt;
    joins = std::move(*these);
  } else {
    joins = spread_joins(whole, parts, rules.clear_of_centre);
  }
  const Length least = drawn ? 2 * c.seam : std::max(rules.clear_from_edge, 4 * c.seam);
  if (joins.front() < least || whole - joins.back() < least) return std::nullopt;
  for (std::size_t k = 1; k < joins.size(); ++k)
    if (joins[k] - joins[k - 1] < (drawn ? 2 : 4) * c.seam) return std::nullopt;
  std::vector<std::string> names = numbered_parts(static_cast<std::size_t>(parts));
  if (parts == 2)
    names = along ? std::vector<std::string>{"far part", "near part"} : std::vector<std::string>{"upper part", "lower part"};
  auto cuts = parts_at(cut, {ring, joins, c.seam, along}, names);
  if (cuts) carry_match(*cuts, repeat);
  return cuts;
}

std::optional<std::vector<Cut>> joined_outline(const Project& project, const Cut& whole, const PanelInput& input,
                                               PiecedPanel& panel, Figures& figures) {
  const Length lost = input.lose == StripsLose::both_seams ? input.seam : input.seam.times(1, 2, Rounding::up),
               width = whole.piece.across;
  // Held, the far side of the outline is first; the panel counts from the near one.
  const Polygon ring = held(whole.piece.outline, true);
  std::optional<std::vector<Cut>> parts;
  Length shift;
  const auto cut_at = [&](const std::vector<Length>& from_near) {
    std::vector<Length> joins;
    for (const Length join : from_near) joins.push_back(width - join - shift);
    std::reverse(joins.begin(), joins.end());
    if (joins.front() > 2 * lost && width - joins.back() > 2 * lost)
      parts = parts_at(whole, {ring, joins, lost, true}, numbered_parts(joins.size() + 1));
  };
  if (any_drawn_join(whole)) {
    std::vector<Length> allowed;
    for (const Length at : drawn_joins(whole, true)) allowed.insert(allowed.begin(), width - at);
    const auto joins = fewest(allowed, width, input.usable, lost);
    if (!joins) return std::nullopt;
    cut_at(*joins);
    panel.joins = *joins;
    panel.parts.resize(joins->size() + 1);
  } else {
    Length room = input.usable;  // for a shift to either side
    for (const PanelPart& part : panel.parts) room = std::min(room, input.usable - part.cut);
    const bool fixed = input.clear_of_first || input.clear_of_last || input.clear_of_centre || whole.piece.on_fold;
    for (const int step : {0, 1, -1, 2, -2, 3, -3, 4, -4}) {
      if (parts || (step != 0 && fixed)) break;
      shift = room.times(step, 4);
      cut_at(panel.joins);
    }
  }
  const std::optional<std::int64_t> most = whole.source != nullptr ? whole.source->joining.joins : std::nullopt;
  if (!parts || (most && static_cast<std::int64_t>(parts->size()) > *most + 1)) return std::nullopt;
  std::reverse(parts->begin(), parts->end());  // as the panel has them
  for (Length& join : panel.joins) join += shift;
  for (std::size_t k = 0; k < parts->size(); ++k) {
    CutPiece& c = (*parts)[k].piece;
    name_part(whole, nth_part(k), c);
    c.allowances = (c.allowances == "none added" ? "" : c.allowances + ", ") + "joins " + worked(lost, shown_in(project));
  }
  carry_match(*parts, project.cloth(whole.piece.cloth)->repeat);
  if (whole.piece.on_fold && symmetric(panel.joins, width)) *parts = folded_parts(whole, std::move(*parts));
  for (Cut& part : *parts) part.piece.on_fold = whole.piece.on_fold && !part.piece.pair && symmetric(panel.joins, width);
  add_part_figures(project, whole, *parts, figures);
  return parts;
}

void add_part_figures(const Project& project, const Cut& whole, const std::vector<Cut>& parts, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const Cut& part : parts) {
    const std::string name = part.piece.key.substr(whole.piece.key.size() + 1);
    const auto one = [&](const char* quantity) {
      NewFigure f(figures, in, "pieces", whole.piece.piece, name + "/" + quantity, whole.piece.cloth);
      f.at(whole.piece.at);
      return f;
    };
    one("cut width").is(part.piece.across).from(whole.piece.key + "/cut width").add();
    one("cut length")
        .is(part.piece.along)
        .from(whole.piece.key + "/cut length")
        .working("cut length of " + part.piece.piece, "its side of the join + seam", worked(part.piece.along, in))
        .add();
    one("copies").is(part.piece.copies).from(whole.piece.key + "/copies").add();
  }
}

}  // namespace gownsheaf
