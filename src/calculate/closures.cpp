#include "calculate/closures.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/new_figure.h"
#include "calculate/rounds.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kMostPlaces = 200;

struct Stretch {
  Length from, to;
  std::int64_t gaps = 1;
  std::optional<Length> at_most = {};
};

class Places {
 public:
  Places(const ClosureInput& input, ShownIn in) : input_(input), in_(in), forced_(input.forced) {
    std::sort(forced_.begin(), forced_.end(), [](const ForcedPlace& a, const ForcedPlace& b) {
      return a.from_top != b.from_top ? a.from_top < b.from_top : a.level < b.level;
    });
  }

  std::variant<ClosurePlaces, ClosureFault> made() {
    if (auto fault = off_the_edge()) return *fault;
    if (input_.staggered) return staggered();
    if (input_.pitch) return at_written_pitch();
    if (!input_.number && !input_.at_most) return too_few();
    if (input_.number == 1) return single();
    if (auto fault = fix_stretches()) return *fault;
    if (auto fault = count_gaps()) return *fault;
    return divided();
  }

 private:
  std::string said(Length l) const { return worked(l, in_); }
  ClosureFault fault(std::string code, std::string key, std::string sentence, std::string hint) const {
    return {std::move(code), std::move(sentence), std::move(hint), std::move(key)};
  }

  std::optional<ClosureFault> off_the_edge() const {
    for (const ForcedPlace& f : forced_)
      if (f.from_top > input_.edge_length)
        return fault("level-off-edge", "levels",
                     "Level " + f.level + " is " + said(f.from_top) + " down; " + input_.edge + " ends at " +
                         said(input_.edge_length) + ".",
                     "levels count from the top of the edge");
    if (input_.top + input_.bottom > input_.edge_length)
      return fault("edge-too-short", "top inset",
                   "Insets of " + said(input_.top) + " and " + said(input_.bottom) + " leave nothing of the " +
                       said(input_.edge_length) + " of " + input_.edge + ".",
                   "`top inset` and `bottom inset` are usually 1/4 in each");
    return std::nullopt;
  }

  ClosureFault too_few() const {
    return fault("fasteners-too-few", "", "Nothing says how many " + input_.many + " stand on " + input_.edge + ".",
                 "`number: 6`, or `at most:` the greatest distance between two");
  }
  ClosureFault too_many(Length apart) const {
    return fault("fasteners-too-many", "at most",
                 "More than " + whole_number(kMostPlaces) + " " + input_.many + " would stand on the " +
                     said(input_.edge_length) + " of " + input_.edge + ", " + said(apart) + " apart.",
                 "a greater `at most`; is the unit right?");
  }

  ClosurePlaces single() const {
    ClosurePlaces out;
    if (forced_.empty()) out.places.push_back({input_.top, "", false});
    else out.places.push_back({forced_.front().from_top, forced_.front().level, false});
    return out;
  }

  // A written pitch fixes the row; where it stands comes from the insets.
  std::variant<ClosurePlaces, ClosureFault> at_written_pitch() const {
    const Length span = input_.edge_length - input_.top - input_.bottom;
    const std::int64_t n = input_.number ? *input_.number : count_of(span, *input_.pitch, Rounding::down) + 1;
    if (n > kMostPlaces) return too_many(*input_.pitch);
    const Length row = *input_.pitch * (n - 1);
    if (row > span)
      return fault("edge-too-short", "pitch",
                   whole_number(n) + " " + input_.many + " " + said(*input_.pitch) + " apart take " + said(row) + "; " +
                       input_.edge + " has " + said(span) + " between its insets.",
                   "fewer, a smaller `pitch`, or smaller insets");
    const Length start = input_.insets_free ? (input_.edge_length - row).times(1, 2) : input_.top;
    ClosurePlaces out;
    for (std::int64_t i = 0; i < n; ++i) out.places.push_back({start + *input_.pitch * i, "", false});
    if (n > 1) {
      out.gaps.push_back(*input_.pitch);
      out.widest = *input_.pitch;
    }
    for (const ForcedPlace& f : forced_) {
      const auto at =
          std::find_if(out.places.begin(), out.places.end(), [&](const Fastener& p) { return p.from_top == f.from_top; });
      if (at == out.places.end())
        return fault("fasteners-contradict", "pitch",
                     "A row " + said(*input_.pitch) + " apart from " + said(start) + " puts no " + input_.one + " at " + f.level +
                         ", " + said(f.from_top) + " down.",
                     "drop `pitch` and write `at most: " + said(*input_.pitch) + "`");
      at->level = f.level;
    }
    return out;
  }

  // Both sides together stand 2n - 1 equal half pitches from first to last.
  std::variant<ClosurePlaces, ClosureFault> staggered() const {
    if (!forced_.empty())
      return fault("fasteners-contradict", "one at",
                   "Staggered eyelets have their own places; none can be held at " + forced_.front().level + ".",
                   "drop `one at`, or lace it `cross`");
    const Length span = input_.edge_length - input_.top - input_.bottom;
    ClosurePlaces out;
    if (input_.pitch) {
      ClosureInput one_side = input_;
      one_side.staggered = false;
      if (!one_side.number)
        one_side.number = std::max<std::int64_t>(1, count_of(span + input_.pitch->times(1, 2), *input_.pitch, Rounding::down));
      one_side.edge_length = input_.edge_length - input_.pitch->times(1, 2);
      auto made = Places(one_side, in_).made();
      if (made.index() == 1) return made;
      out = std::get<0>(std::move(made));
      for (const Fastener& f : out.places) out.other_side.push_back(f.from_top + input_.pitch->times(1, 2));
      return out;
    }
    if (!input_.number && !input_.at_most) return too_few();
    // pitch = 2 span / (2n - 1) not above `at most`
    const std::int64_t halves = input_.number ? 2 * *input_.number - 1 : count_of(span * 2, *input_.at_most, Rounding::up) | 1;
    const std::int64_t n = (halves + 1) / 2;
    if (n > kMostPlaces) return too_many(*input_.at_most);
    for (std::int64_t i = 0; i < n; ++i) {
      out.places.push_back({input_.top + span.times(2 * i, halves), "", false});
      out.other_side.push_back(input_.top + span.times(2 * i + 1, halves));
    }
    out.widest = span.times(2, halves);
    out.gaps.push_back(out.widest);
    return out;
  }

  // First place, forced ones, last place: what lies between two of them is divided evenly.
  std::optional<ClosureFault> fix_stretches() {
    const Length first = forced_.empty() ? input_.top : std::min(input_.top, forced_.front().from_top);
    const Length last = forced_.empty() ? input_.edge_length - input_.bottom
                                        : std::max(input_.edge_length - input_.bottom, forced_.back().from_top);
    fixed_.push_back({"", first});
    for (const ForcedPlace& f : forced_) {
      const Length away = f.from_top - fixed_.back().from_top;
      if (away.is_zero()) {
        fixed_.back().level += (fixed_.back().level.empty() ? "" : ", ") + f.level;
        continue;
      }
      if (away < input_.closest) crowded_.push_back({f, away});
      fixed_.push_back(f);
    }
    const Length away = last - fixed_.back().from_top;
    if (!away.is_zero()) {
      if (away < input_.closest && !forced_.empty()) crowded_.push_back({fixed_.back(), away});
      fixed_.push_back({"", last});
    }
    if (const auto fault = fix_closer(first, last)) return fault;
    for (std::size_t i = 1; i < fixed_.size(); ++i)
      stretches_.push_back({fixed_[i - 1].from_top, fixed_[i].from_top, 1, at_most_of(fixed_[i - 1].from_top)});
    if (stretches_.empty() && input_.number)
      return fault("edge-too-short", "number",
                   whole_number(*input_.number) + " " + input_.many + " have no room between the insets of " + input_.edge + ".",
                   "smaller insets");
    return std::nullopt;
  }

  // Where they come closer, a place stands at both ends of the part, unless one is within half that pitch already.
  std::optional<ClosureFault> fix_closer(Length first, Length last) {
    if (input_.closer.empty()) return std::nullopt;
    if (!input_.at_most || input_.number)
      return fault(
          "fasteners-contradict", "closer near",
          "`closer near` says how far apart they stand at " + input_.closer.front().level + "; their number is written as well.",
          "drop `number`, and write `at most`");
    for (const CloserPart& c : input_.closer) {
      if (c.at_most >= *input_.at_most)
        return fault(
            "closer-not-closer", "closer near",
            "Near " + c.level + " they stand " + said(c.at_most) + " apart at most, elsewhere " + said(*input_.at_most) + ".",
            "a smaller `at most` under `closer near`");
      for (const Length end : {std::clamp(c.from, first, last), std::clamp(c.to, first, last)}) {
        const auto after = std::find_if(fixed_.begin(), fixed_.end(), [&](const ForcedPlace& f) { return f.from_top > end; });
        const Length half = c.at_most.times(1, 2);
        if (after != fixed_.end() && after->from_top - end < half) continue;
        if (after != fixed_.begin() && end - std::prev(after)->from_top < half) continue;
        fixed_.insert(after, {"", end});
      }
    }
    return std::nullopt;
  }

  // The pitch of a stretch that begins at `from`: a closer part holds it from its first place to its last.
  std::optional<Length> at_most_of(Length from) const {
    std::optional<Length> least = input_.at_most;
    const auto next = std::find_if(fixed_.begin(), fixed_.end(), [&](const ForcedPlace& f) { return f.from_top > from; });
    for (const CloserPart& c : input_.closer)
      if (next != fixed_.end()) {
        const Length within = std::min(next->from_top, c.to) - std::max(from, c.from);
        if (within > c.at_most.times(1, 2) || within == next->from_top - from) least = std::min(*least, c.at_most);
      }
    return least;
  }

  std::optional<ClosureFault> count_gaps() {
    if (!input_.number) {
      std::int64_t all = 1;
      for (Stretch& s : stretches_) all += s.gaps = count_of(s.to - s.from, *s.at_most, Rounding::up);
      if (all > kMostPlaces) return too_many(*input_.at_most);
      return std::nullopt;
    }
    const auto fixed = static_cast<std::int64_t>(fixed_.size());
    if (*input_.number > kMostPlaces) return too_many((input_.edge_length).times(1, *input_.number));
    if (*input_.number < fixed)
      return fault("fasteners-contradict", "number",
                   whole_number(*input_.number) + " " + input_.many + " cannot stand at " + whole_number(fixed) +
                       " fixed places: the first, the last and those of `one at`.",
                   "`number: " + whole_number(fixed) + "` or more");
    // Each further gap goes where the pitch is widest, the upper of two alike; that keeps the widest as small as can be.
    for (std::int64_t left = *input_.number - fixed; left > 0; --left) {
      auto widest = stretches_.begin();
      for (auto s = stretches_.begin(); s != stretches_.end(); ++s)
        if (Exact(s->to - s->from) / Exact(s->gaps) > Exact(widest->to - widest->from) / Exact(widest->gaps)) widest = s;
      ++widest->gaps;
    }
    if (input_.at_most)
      for (const Stretch& s : stretches_)
        if (Exact(s.to - s.from) > Exact(*input_.at_most) * Exact(s.gaps))
          return fault("fasteners-contradict", "number",
                       whole_number(*input_.number) + " " + input_.many + " stand up to " +
                           said((s.to - s.from).times(1, s.gaps)) + " apart; `at most` says " + said(*input_.at_most) + ".",
                       "drop `number` or `at most`");
    return std::nullopt;
  }

  ClosurePlaces divided() const {
    ClosurePlaces out;
    out.crowded = crowded_;
    out.places.push_back({fixed_.front().from_top, fixed_.front().level, false, true});
    for (std::size_t k = 0; k < stretches_.size(); ++k) {
      const Stretch& s = stretches_[k];
      for (std::int64_t i = 1; i <= s.gaps; ++i)
        out.places.push_back(
            {s.from + (s.to - s.from).times(i, s.gaps), i == s.gaps ? fixed_[k + 1].level : "", false, i == s.gaps});
      out.gaps.push_back((s.to - s.from).times(1, s.gaps));
      out.widest = std::max(out.widest, out.gaps.back());
    }
    return out;
  }

  const ClosureInput& input_;
  ShownIn in_;
  std::vector<ForcedPlace> forced_, fixed_;
  std::vector<Stretch> stretches_;
  std::vector<std::pair<ForcedPlace, Length>> crowded_;
};

Int128 root(Int128 n) {  // whole square root, rounded down
  if (n < 2) return n;
  Int128 low = 1, high = Int128{1} << 62;
  while (low < high) {
    const Int128 middle = (low + high + 1) / 2;
    if (middle <= n / middle) low = middle;
    else high = middle - 1;
  }
  return low;
}

}  // namespace

std::variant<ClosurePlaces, ClosureFault> place_fasteners(const ClosureInput& input, ShownIn shown_in) {
  return Places(input, shown_in).made();
}

Length diagonal(std::int64_t factor, Length a, Length b) {
  const Int128 x = a.in_ticks(), y = b.in_ticks(), f = factor;
  const Int128 square = f * f * (x * x + y * y);
  const Int128 down = root(square);
  return Length::ticks(static_cast<std::int64_t>(square - down * down > down ? down + 1 : down));
}

Length buttonhole_length(Length across, Length thickness, bool eighth_more) {
  return across + thickness + (eighth_more ? Length::sixty_fourths(8) : Length{});
}

// A button that is said to have a shank gets its 1/8 in where no rule is written.
bool buttonhole_eighth_more(const Given<ButtonholeIs>& rule, bool shank) {
  if (rule.origin != Origin::written || !rule.known()) return shank;
  return *rule == ButtonholeIs::eighth_more || (*rule == ButtonholeIs::more_for_a_shank && shank);
}

Length lace_through(std::int64_t pairs, Length thickness) { return thickness * (4 * pairs); }

TieCut tie_cut(Length free) { return {free, Length::inches(2), Length::sixty_fourths(32)}; }

Length lace_path(LaceAs as, std::int64_t pairs, Length gap, const std::vector<Length>& pitches) {
  if (pairs < 2) return gap;
  Length all;
  // Neighbours with one pitch are taken together and rounded once.
  const auto diagonals = [&](std::int64_t times, bool halved) {
    for (std::size_t i = 0; i < pitches.size();) {
      std::size_t end = i;
      while (end < pitches.size() && pitches[end] == pitches[i]) ++end;
      const auto n = static_cast<std::int64_t>(end - i) * times;
      all += diagonal(n, gap, halved ? pitches[i].times(1, 2) : pitches[i]);
      i = end;
    }
  };
  switch (as) {
    case LaceAs::cross: diagonals(2, false); return all + gap;
    case LaceAs::spiral: diagonals(1, false); return all + gap * pairs;
    case LaceAs::staggered_spiral: {
      const Length half = pitches.front().times(1, 2);
      return diagonal(2 * pairs - 1, gap, half);
    }
    case LaceAs::straight:
      all = gap * (pairs - 1) + diagonal(1, gap, pitches.front()) + diagonal(1, gap, pitches.back());
      for (std::size_t i = 1; i < pitches.size(); ++i) all += diagonal(1, gap, pitches[i - 1] + pitches[i]);
      return all;
    case LaceAs::shop: {
      Length row;
      for (const Length p : pitches) row += p;
      diagonals(1, false);
      return all + gap * (pairs - 1) + diagonal(1, gap, row);
    }
  }
  return all;
}

SideCut side_cut(const Closure& closure, const Piece* piece, bool under) {
  SideCut cut;
  const Given<Length>& lap = under ? closure.underlap : closure.lap;
  cut.lap = lap.known() ? *lap : Length{};
  cut.faced = !closure.facing.empty();
  if (!cut.faced) cut.turn = closure.turn_back.known() ? *closure.turn_back : Length::inches(1);
  else if (piece != nullptr) cut.turn = allowed_on(*piece).seam;
  else cut.turn = Length::sixty_fourths(32);
  return cut;
}

std::optional<Length> usual_at_most(Fasten kind) {
  switch (kind) {
    case Fasten::hooks_and_eyes:
    case Fasten::hooks_and_bars:
    case Fasten::hooks_and_loops: return Length::sixty_fourths(80);
    case Fasten::snaps: return Length::inches(2);
    case Fasten::lacing: return Length::mm(30);
    default: return std::nullopt;
  }
}

// Minutes of a practised home maker: common practice, no source (docs/formulas.md#fasteners-compared).
FastenerWork fastener_work(Fasten kind, std::int64_t places, bool metal_eyelets) {
  switch (kind) {
    case Fasten::hooks_and_eyes:
    case Fasten::hooks_and_bars: return {2 * places, 8 * places};
    case Fasten::hooks_and_loops: return {2 * places, 10 * places};
    case Fasten::buttons: return {places, 19 * places};
    case Fasten::snaps: return {2 * places, 6 * places};
    case Fasten::lacing: return {2 * places, (metal_eyelets ? 4 : 16) * places};
    case Fasten::ties:
    case Fasten::busk: return {2 * places, std::nullopt};
    case Fasten::buckle: return {places, std::nullopt};
    case Fasten::drawstring: return {1, std::nullopt};
  }
  return {};
}

FastenerWords fastener_words(Fasten kind) {
  switch (kind) {
    case Fasten::hooks_and_eyes:
    case Fasten::hooks_and_bars:
    case Fasten::hooks_and_loops: return {"hook", "hooks"};
    case Fasten::buttons: return {"button", "buttons"};
    case Fasten::snaps: return {"snap", "snaps"};
    case Fasten::lacing: return {"pair of eyelets", "pairs of eyelets"};
    case Fasten::buckle: return {"buckle", "buckles"};
    case Fasten::ties: return {"pair of ties", "pairs of ties"};
    case Fasten::busk: return {"stud", "studs"};
    case Fasten::drawstring: return {"drawstring", "drawstrings"};
  }
  return {};
}

}  // namespace gownsheaf
