// The figures of a strained closing: each zone's girth, pressure and pull, and what every fastener takes.
#include <algorithm>

#include "calculate/strained.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

class Added {
 public:
  Added(const Strained& s, LoadPlan& load, Figures& figures) : s_(s), load_(load), figures_(figures) {}

  void all() {
    // Without written zones the edge is one zone, and its figures are the closing's own.
    zoned_ = !s_.strain.zones.empty();
    for (std::size_t i = 0; i < s_.zones.size(); ++i)
      if (figures_.find(s_.key(prefix(i) + "line load")) == nullptr) zone(i);
    if (zoned_) {
      const std::string heaviest = prefix(s_.pull.heaviest);
      s_.figure(figures_, "line load at rest").is(load_.at_rest).from(s_.key(heaviest + "line load at rest")).add();
      NewFigure f = s_.figure(figures_, "line load");
      f.is(load_.moving);
      for (std::size_t i = 0; i < s_.zones.size(); ++i) f.from(s_.key(prefix(i) + "line load"));
      f.working("the most along the edge, an estimate", "the zone that pulls most", s_.zones[s_.pull.heaviest].name).add();
    }
    NewFigure band = s_.figure(figures_, "load band");
    band.is(load_.band).plain_input(s_.key("line load"));
    if (s_.pull.hanging.value > 0) band.plain_input(s_.key("hanging pull"));
    band.add();
    if (s_.pull.hanging.value > 0) {
      NewFigure hanging = s_.figure(figures_, "hanging pull");
      hanging.is(s_.pull.hanging).from("skirt/weight").plain_input("strain/" + s_.closure.named.name + "/skirt hangs from");
      hanging.working("what hangs on the lowest, an estimate", "(1 − share a stay or band takes) × weight / seam × 6 in",
                      "(1 − " + decimal(s_.edge.share, 1) + ") × " + plain_text(Value(s_.edge.hung), s_.in) + " / " +
                          worked(s_.waist_seam, s_.in) + " × 6 in");
      hanging.add();
    }
    for (std::size_t i = 0; i < load_.pulls.size(); ++i) {
      NewFigure pull = s_.figure(figures_, "pull " + whole_number(static_cast<std::int64_t>(i + 1)));
      pull.is(load_.pulls[i])
          .from(s_.key("line load"))
          .from(s_.key("fastener " + whole_number(static_cast<std::int64_t>(i + 1))));
      if (i + 1 == load_.pulls.size() && s_.pull.hanging.value > 0) pull.from(s_.key("hanging pull"));
      pull.add();
    }
    const auto number = whole_number(static_cast<std::int64_t>(load_.most + 1));
    s_.figure(figures_, "per fastener")
        .is(load_.fastener)
        .from(s_.key("pull " + number))
        .working("the most that one fastener takes, an estimate",
                 "line load × half the distance on both sides; the lowest with the skirt's pull",
                 "number " + number + " from the top")
        .add();
    s_.figure(figures_, "one holds")
        .is(s_.holds)
        .from("strain/" + s_.closure.named.name + "/fastener holds", s_.strain.fastener_holds)
        .add();
    s_.figure(figures_, "fastener may hold")
        .is(s_.may_hold)
        .from(s_.key("one holds"))
        .from("strain/" + s_.closure.named.name + "/use at most", s_.strain.use_at_most)
        .working("what one should be asked for", "what one holds × the share that may be used",
                 plain_text(Value(s_.holds), s_.in) + " × " + whole_number(s_.strain.use_at_most->n) + "/" +
                     whole_number(s_.strain.use_at_most->d))
        .add();
  }

 private:
  std::string prefix(std::size_t i) const { return zoned_ ? "zone " + s_.zones[i].name + "/" : ""; }

  void zone(std::size_t i) {
    const ZoneFrom& from = s_.zones[i];
    const PulledZone& z = s_.edge.zones[i];
    const ZonePull& p = s_.pull.zones[i];
    const std::string at = prefix(i), said = zoned_ ? " at " + from.name : "";
    s_.figure(figures_, at + "girth").is(z.girth).from("", from.girth).written().add();
    if (zoned_) {
      const bool one_rest = from.written != nullptr || std::count_if(s_.zones.begin(), s_.zones.end(),
                                                                     [](const ZoneFrom& f) { return f.written == nullptr; }) == 1;
      if (one_rest) s_.figure(figures_, at + "starts").is(z.starts).written().add();
      if (one_rest) s_.figure(figures_, at + "ends").is(z.ends).written().add();
    }
    if (!z.pressure) {
      NewFigure f = s_.figure(figures_, at + "shortfall");
      f.is(z.shortfall).from(s_.key(at + "girth"));
      if (from.written != nullptr && from.written->ease.known())
        f.from("strain/" + s_.closure.named.name + "/zones/" + from.name + "/ease", from.written->ease);
      else if (from.written != nullptr && from.written->worn.known())
        f.from("strain/" + s_.closure.named.name + "/zones/" + from.name + "/worn", from.written->worn);
      else if (from.pressure_from == "ease") f.plain_input("ease/" + from.goes_round);
      else f.from("strain/" + s_.closure.named.name + "/worn", s_.strain.worn);
      f.add();
    }
    NewFigure pressure = s_.figure(figures_, at + "pressure");
    pressure.is(p.pressure).from(s_.key(at + "girth"));
    const bool by_study = from.pressure_from == kByStudy;
    if (!z.pressure) pressure.from(s_.key(at + "shortfall"));
    if (by_study) pressure.from("rules/corset pressure").label('a');
    pressure.working("pressure" + said + ", an estimate (" + from.pressure_from + ")",
                     by_study     ? "mean of the study that the rules name"
                     : z.pressure ? "as written"
                                  : "3.5 mmHg for each % smaller, twice that over a corset; 6 mmHg at least",
                     by_study     ? std::string(word_for(*s_.project.rules.corset_pressure))
                     : z.pressure ? ""
                                  : worked(z.shortfall, s_.in) + " of " + worked(z.girth, s_.in));
    pressure.add();
    s_.figure(figures_, at + "line load at rest")
        .is(p.at_rest)
        .from(s_.key(at + "pressure"))
        .from(s_.key(at + "girth"))
        .working("pull along the closing at rest" + said + ", an estimate", "pressure × girth / 2π",
                 plain_text(Value(p.pressure), s_.in) + " × " + worked(z.girth, s_.in) + " / 6.283")
        .add();
    s_.figure(figures_, at + "line load")
        .is(p.moving)
        .from(s_.key(at + "line load at rest"))
        .working("with " + from.because + said + ", an estimate", "at rest × " + decimal(z.factor, 1),
                 plain_text(Value(p.at_rest), s_.in) + " × " + decimal(z.factor, 1))
        .add();
  }

  const Strained& s_;
  LoadPlan& load_;
  Figures& figures_;
  bool zoned_ = false;
};

}  // namespace

void add_load_figures(const Strained& s, LoadPlan& load, Figures& figures) { Added(s, load, figures).all(); }

}  // namespace gownsheaf
