#include "nest/skyline.h"

#include <algorithm>

namespace gownsheaf::nest {
namespace {

constexpr Length kNoLimit = Length::ticks(INT64_MAX / 4);

// Least place of the lattice at or past x.
Length on_lattice(Length x, const std::optional<Length>& every, const std::optional<Length>& from) {
  if (!every) return x;
  const std::int64_t step = every->in_ticks(), phase = from->in_ticks();
  std::int64_t k = (x.in_ticks() - phase) / step;
  while (phase + k * step < x.in_ticks()) ++k;
  while (phase + (k - 1) * step >= x.in_ticks()) --k;
  return Length::ticks(phase + k * step);
}

bool better(const Spot& a, const Spot& b, bool by_end) {
  const Length a_first = by_end ? a.end : a.x, b_first = by_end ? b.end : b.x;
  if (a_first != b_first) return a_first < b_first;
  if (a.waste_behind != b.waste_behind) return a.waste_behind < b.waste_behind;
  if (a.x != b.x) return a.x < b.x;
  return a.y < b.y;
}

}  // namespace

// A rectangle takes its gap with it, below and after; the strip is a gap wider, so that none is kept at its far edge.
Skyline::Skyline(Length width, std::optional<Length> length, Length gap, const std::vector<Box>* obstacles)
    : width_(width + gap), gap_(gap), length_(length), obstacles_(obstacles) {
  clear();
}

void Skyline::clear() {
  segments_.assign(1, Segment{Length(), width_, Length()});
  holes_.clear();
}

// Moves x past obstacles and onto the lattice until both are content; none when that passes `limit`.
std::optional<Length> Skyline::settle(const Wanted& wanted, Length x, Length y, Length limit) const {
  for (bool moved = true; moved;) {
    moved = false;
    x = on_lattice(x, wanted.lattice_step, wanted.lattice_phase);
    for (const Box& o : *obstacles_) {
      if (overlap(o, Box{x, y, wanted.along, wanted.across})) {
        x = o.right();
        moved = true;
      }
    }
    if (x + wanted.along > limit) return std::nullopt;
  }
  return x;
}

std::optional<Spot> Skyline::at_edge(const Wanted& wanted, Length y) const {
  const Length end_y = y + wanted.across + gap_;
  if (y < wanted.clear || end_y > width_) return std::nullopt;
  Length x;
  for (const Segment& s : segments_) {
    if (s.y + s.height > y && s.y < end_y) x = std::max(x, s.x);
  }
  const std::optional<Length> settled = settle(wanted, x, y, length_.value_or(kNoLimit));
  if (!settled) return std::nullopt;
  Length waste;
  for (const Segment& s : segments_) {
    if (s.y + s.height <= y || s.y >= end_y) continue;
    const Length shared = std::min(s.y + s.height, end_y) - std::max(s.y, y);
    waste += Length::ticks((*settled - s.x).in_ticks() / Length::kPerMm * (shared.in_ticks() / Length::kPerMm));
  }
  return Spot{*settled, y, waste, *settled + wanted.along, -1};
}

std::optional<Spot> Skyline::in_hole(const Wanted& wanted, int hole) const {
  const Box& h = holes_[static_cast<std::size_t>(hole)];
  const Length y =
      wanted.fixed_y.value_or(on_lattice(std::max(h.y, wanted.clear), wanted.lattice_step_y, wanted.lattice_phase_y));
  if (y < h.y || y < wanted.clear || y + wanted.across + gap_ > h.bottom()) return std::nullopt;
  const std::optional<Length> x = settle(wanted, h.x, y, h.right() - gap_);
  if (!x) return std::nullopt;
  return Spot{*x, y, Length(), *x + wanted.along, hole};
}

std::optional<Spot> Skyline::find(const Wanted& wanted, bool by_end) const {
  std::optional<Spot> best;
  const auto offer = [&](const std::optional<Spot>& spot) {
    if (spot && (!best || better(*spot, *best, by_end))) best = spot;
  };
  for (int h = 0; h < static_cast<int>(holes_.size()); ++h) offer(in_hole(wanted, h));
  if (best) return best;  // a hole costs nothing
  if (wanted.fixed_y) return at_edge(wanted, *wanted.fixed_y);
  for (const Segment& s : segments_) {
    offer(at_edge(wanted, on_lattice(std::max(s.y, wanted.clear), wanted.lattice_step_y, wanted.lattice_phase_y)));
    Length last = s.y + s.height - wanted.across - gap_;  // as far down as it goes
    if (wanted.lattice_step_y) {
      const Length up = on_lattice(last, wanted.lattice_step_y, wanted.lattice_phase_y);
      last = up == last ? last : up - *wanted.lattice_step_y;
    }
    offer(at_edge(wanted, last));
  }
  return best;
}

void Skyline::place(const Wanted& wanted, const Spot& spot) {
  const Box taken{spot.x, spot.y, wanted.along + gap_, wanted.across + gap_};
  if (spot.hole >= 0) {  // what is left of the hole: after it, below it, before it
    const Box h = holes_[static_cast<std::size_t>(spot.hole)];
    holes_.erase(holes_.begin() + spot.hole);
    const Box rest[] = {{taken.right(), h.y, h.right() - taken.right(), h.height},
                        {h.x, taken.bottom(), taken.right() - h.x, h.bottom() - taken.bottom()},
                        {h.x, h.y, taken.right() - h.x, taken.y - h.y},
                        {h.x, taken.y, taken.x - h.x, taken.height}};
    for (const Box& r : rest) {
      if (r.width > gap_ && r.height > gap_) holes_.push_back(r);
    }
    return;
  }
  std::vector<Segment> next;
  next.reserve(segments_.size() + 2);
  for (const Segment& s : segments_) {
    const Length s_end = s.y + s.height;
    if (s_end <= taken.y || s.y >= taken.bottom()) {
      next.push_back(s);
      continue;
    }
    if (s.y < taken.y) next.push_back({s.y, taken.y - s.y, s.x});
    const Length from = std::max(s.y, taken.y), to = std::min(s_end, taken.bottom());
    if (s.x < taken.x) holes_.push_back({s.x, from, taken.x - s.x, to - from});
    if (from == taken.y) next.push_back({taken.y, taken.height, taken.right()});
    if (s_end > taken.bottom()) next.push_back({taken.bottom(), s_end - taken.bottom(), s.x});
  }
  segments_.clear();
  for (const Segment& s : next) {
    if (!segments_.empty() && segments_.back().x == s.x) {
      segments_.back().height += s.height;
    } else {
      segments_.push_back(s);
    }
  }
}

}  // namespace gownsheaf::nest
