// What would ease a strained closing, each way reckoned anew; what follows when one fastener gives way; and which of the
// rough inputs decides most. The ranges are common practice but where docs/formulas.md#hook-load names a source.
#include <algorithm>

#include "calculate/strained.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

Length let_out_step(ShownIn in) { return in == ShownIn::inches ? in64(16) : Length::mm(5); }

std::vector<Length> usual_pitches(ShownIn in) {
  if (in == ShownIn::inches) return {in64(80), in64(64), in64(48), in64(32), in64(24)};
  return {Length::mm(30), Length::mm(25), Length::mm(20), Length::mm(15), Length::mm(10)};
}

// First, last and the levels that hold one stay; each stretch between them is divided anew.
std::vector<Length> places_at(const ClosingPlan& plan, Length at_most) {
  std::vector<Length> places{plan.fasteners.front().from_top};
  Length from = places.front();
  for (std::size_t i = 1; i < plan.fasteners.size(); ++i) {
    if (plan.fasteners[i].level.empty() && i + 1 < plan.fasteners.size()) continue;
    const Length stretch = plan.fasteners[i].from_top - from;
    const std::int64_t gaps = std::max<std::int64_t>(1, count_of(stretch, at_most, Rounding::up));
    for (std::int64_t k = 1; k <= gaps; ++k) places.push_back(from + stretch.times(k, gaps));
    from = plan.fasteners[i].from_top;
  }
  return places;
}

Length widest(const std::vector<Length>& places) {
  Length most;
  for (std::size_t i = 1; i < places.size(); ++i) most = std::max(most, places[i] - places[i - 1]);
  return most;
}

class Ways {
 public:
  Ways(const Strained& s, LoadPlan& load, Figures& figures) : s_(s), load_(load), figures_(figures) {}

  void all() {
    if (load_.band == "R0") return;
    const std::string& hangs = *s_.strain.skirt_hangs_from;
    const bool heavy = s_.pull.hanging.value > 0 && hangs != "own band";
    if (heavy) {
      carried("own band", share_carried("own band", false, false));
      const double stay = share_carried("bodice and stay", true, false);
      if (hangs != "straps" && s_.edge.share < stay) carried("waist stay", stay);
    }
    if (s_.in_rows() && s_.plan.fasteners.size() > 1) closer();
    if (s_.closure.fasten == Fasten::hooks_and_eyes || s_.closure.fasten == Fasten::hooks_and_bars) {
      PulledEdge more = s_.edge;
      ++more.rows;
      add("second row", more, s_.may_hold).add();
    }
    if (s_.closure.fasten != Fasten::lacing && s_.closure.fasten != Fasten::busk && load_.band >= "R2") laced();
    let_out();
  }

 private:
  NewFigure add(const std::string& way, const PulledEdge& eased, Force may_hold) {
    const EdgePull pull = pull_of(eased);
    WayToEase w;
    w.way = way;
    w.band = std::string(pull.band);
    w.enough = pull.greatest().value <= may_hold.value;
    load_.eased.push_back(w);
    s_.figure(figures_, "eased " + way + "/load band").is(w.band).plain_input(s_.key("load band")).add();
    s_.figure(figures_, "eased " + way + "/may hold").is(may_hold).from(s_.key("fastener may hold")).add();
    NewFigure f = s_.figure(figures_, "eased " + way + "/per fastener");
    f.is(pull.greatest()).from(s_.key("per fastener"));
    return f;
  }

  void carried(const std::string& way, double share) {
    PulledEdge eased = s_.edge;
    eased.share = share;
    add(way, eased, s_.may_hold).add();
  }

  void closer() {
    // One step closer than now; two where the first is not enough.
    int tried = 0;
    for (const Length pitch : usual_pitches(s_.in)) {
      if (pitch >= s_.plan.widest_gap || tried == 2) continue;
      PulledEdge eased = s_.edge;
      eased.places = places_at(s_.plan, pitch);
      if (eased.places.size() <= s_.edge.places.size()) continue;
      const std::string way = ++tried == 1 ? "closer" : "closer still";
      add(way, eased, s_.may_hold).add();
      s_.figure(figures_, "eased " + way + "/apart").is(widest(eased.places)).from(s_.key("edge length")).add();
      s_.figure(figures_, "eased " + way + "/places")
          .is(static_cast<std::int64_t>(eased.places.size()))
          .from(s_.key("edge length"))
          .add();
      if (load_.eased.back().enough) return;
    }
  }

  void laced() {
    PulledEdge eased = s_.edge;
    const Length pitch = s_.in == ShownIn::inches ? in64(48) : Length::mm(20);
    eased.places = places_at(s_.plan, pitch);
    eased.rows = 1;
    const double share = s_.strain.use_at_most->value();
    add("lacing", eased, {usual_capacity("lacing", "", true, false).value * share}).add();
    s_.figure(figures_, "eased lacing/apart").is(widest(eased.places)).from(s_.key("edge length")).add();
    s_.figure(figures_, "eased lacing/places")
        .is(static_cast<std::int64_t>(eased.places.size()))
        .from(s_.key("edge length"))
        .add();
  }

  void let_out() {
    const Length step = let_out_step(s_.in), most = step * 8;
    if (std::none_of(s_.edge.zones.begin(), s_.edge.zones.end(),
                     [](const PulledZone& z) { return !z.pressure && z.shortfall > Length{}; }))
      return;
    const auto by = [&](const std::string& way, Length out) {
      PulledEdge eased = s_.edge;
      for (PulledZone& z : eased.zones) z.shortfall -= out;
      add(way, eased, s_.may_hold).add();
      s_.figure(figures_, "eased " + way + "/by").is(out).from(s_.key("line load")).add();
    };
    by("let out", step);
    const auto lower = let_out_to_lower_band(s_.edge, step, most);
    if (lower && *lower > step) by("let out a band", *lower);
  }

  const Strained& s_;
  LoadPlan& load_;
  Figures& figures_;
};

template <class Change>
std::function<void(PulledEdge&)> each_zone(Change change) {
  return [change](PulledEdge& e) {
    for (PulledZone& z : e.zones) change(z);
  };
}

// A tenth more or less of every distance along the edge.
void stretch(PulledEdge& e, std::int64_t n, std::int64_t d) {
  e.edge = e.edge.times(n, d);
  for (Length& p : e.places) p = p.times(n, d);
  for (PulledZone& z : e.zones) {
    z.starts = z.starts.times(n, d);
    z.ends = z.ends.times(n, d);
  }
}

struct Ranged {
  Variation variation;
  std::string range;
};

std::vector<Ranged> plausible(const Strained& s) {
  const auto& zones = s.edge.zones;
  const bool metric = s.in == ShownIn::centimetres;
  std::vector<Ranged> out;
  const auto add = [&](const char* input, std::string range, std::function<void(PulledEdge&)> least,
                       std::function<void(PulledEdge&)> most) {
    out.push_back({{input, std::move(least), std::move(most)}, std::move(range)});
  };
  if (std::any_of(zones.begin(), zones.end(), [](const PulledZone& z) { return !z.pressure; })) {
    const Length by = metric ? Length::mm(6) : in64(16);
    add("how close it is worn", metric ? "6 mm to either side" : "1/4 in to either side",
        each_zone([by](PulledZone& z) { z.shortfall -= by; }), each_zone([by](PulledZone& z) { z.shortfall += by; }));
    add(
        "pressure of each percent", "2 to 5 mmHg", [](PulledEdge& e) { e.each_percent = 2; },
        [](PulledEdge& e) { e.each_percent = 5; });
  }
  const bool by_study =
      std::any_of(s.zones.begin(), s.zones.end(), [](const ZoneFrom& z) { return z.pressure_from == kByStudy; });
  if (by_study) {
    const auto of_study = [&s](CorsetPressure study, std::string_view place) {
      return [&s, p = corset_pressure(study, place)](PulledEdge& e) {
        for (std::size_t i = 0; i < e.zones.size(); ++i)
          if (s.zones[i].pressure_from == kByStudy) e.zones[i].pressure = p;
      };
    };
    add("which study is right", "7 to 47 mmHg", of_study(CorsetPressure::of_2011, ""),
        of_study(CorsetPressure::of_1910, "hip bone"));
  } else if (std::any_of(zones.begin(), zones.end(), [](const PulledZone& z) { return z.pressure.has_value(); })) {
    const auto part = [](double share) {
      return each_zone([share](PulledZone& z) {
        if (z.pressure) z.pressure->value *= share;
      });
    };
    add("pressure as written", "a fifth to either side", part(0.8), part(1.2));
  }
  add("breath, posture and movement", "1.3 to 3.2 times", each_zone([](PulledZone& z) { z.factor = 1.3; }),
      each_zone([](PulledZone& z) { z.factor = 3.2; }));
  const Length girth = metric ? Length::mm(12) : in64(32);
  add("the girth", metric ? "12 mm to either side" : "1/2 in to either side",
      each_zone([girth](PulledZone& z) { z.girth -= girth; }), each_zone([girth](PulledZone& z) { z.girth += girth; }));
  add(
      "distance between two", "a tenth to either side", [](PulledEdge& e) { stretch(e, 9, 10); },
      [](PulledEdge& e) { stretch(e, 11, 10); });
  if (s.edge.hung.value > 0) {
    add(
        "weight of the skirt", "a quarter to either side", [](PulledEdge& e) { e.hung.value *= 0.75; },
        [](PulledEdge& e) { e.hung.value *= 1.25; });
    add(
        "what else carries it", "0.3 less to 0.1 more", [](PulledEdge& e) { e.share = std::min(1.0, e.share + 0.1); },
        [](PulledEdge& e) { e.share = std::max(0.0, e.share - 0.3); });
  }
  return out;
}

}  // namespace

void add_what_eases(const Strained& s, LoadPlan& load, Figures& figures) {
  if (const auto worst = worst_failure(s.edge)) {
    load.gives_way = worst->fastener;
    load.neighbour = worst->neighbour;
    load.neighbour_takes = worst->takes;
    const std::string of = whole_number(static_cast<std::int64_t>(worst->fastener + 1));
    s.figure(figures, "if one opens")
        .is(worst->takes)
        .from(s.key("pull " + of))
        .from(s.key("line load"))
        .working("when number " + of + " opens, an estimate", "the neighbour's own stretch and half of what is left open",
                 "number " + whole_number(static_cast<std::int64_t>(worst->neighbour + 1)) + " from the top")
        .add();
  }
  Ways(s, load, figures).all();
}

void add_what_matters(const Strained& s, LoadPlan& load, Figures& figures) {
  const std::vector<Ranged> ranges = plausible(s);
  std::vector<Variation> variations;
  for (const Ranged& r : ranges) variations.push_back(r.variation);
  Force low = load.fastener, high = load.fastener;
  for (const Varied& v : sensitivity(s.edge, variations)) {
    const auto range = std::find_if(ranges.begin(), ranges.end(), [&](const Ranged& r) { return r.variation.input == v.input; });
    load.matters.push_back({v.input, range->range});
    s.figure(figures, "varied " + v.input + "/low").is(v.low).from(s.key("per fastener")).add();
    s.figure(figures, "varied " + v.input + "/high").is(v.high).from(s.key("per fastener")).add();
    low = std::min(low, v.low);
    high = std::max(high, v.high);
  }
  s.figure(figures, "per fastener/low").is(low).from(s.key("per fastener")).add();
  s.figure(figures, "per fastener/high").is(high).from(s.key("per fastener")).add();
}

}  // namespace gownsheaf
