#include "calculate/loads.h"

#include <algorithm>

#include "calculate/strained.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

// How much smaller than the body each word is; common practice.
struct Worn {
  std::string_view word;
  Length less;
};
const Worn kWorn[] = {{"easy", Length{}}, {"close", in64(16)}, {"snug", in64(32)}, {"tight", Length::inches(1)}};

Length worn_shortfall(std::string_view word) {
  for (const Worn& w : kWorn)
    if (w.word == word) return w.less;
  return {};
}

bool stay_holds(const Strain& strain) {
  return strain.stay && strain.stay->smaller_by.known() && *strain.stay->smaller_by >= in64(32) &&
         strain.stay->anchored_at.value.value_or("") != "lining only";
}

class Putting {  // a Strained together
 public:
  Putting(Strained& s, Diagnostics& diag) : s_(s), diag_(diag) {}

  bool done(std::optional<Mass> skirt) {
    if (!add_zones()) return false;
    s_.edge.edge = s_.plan.edge_length;
    for (const Fastener& f : s_.plan.fasteners) s_.edge.places.push_back(f.from_top);
    s_.edge.rows = s_.plan.rows;
    s_.edge.over_corset = s_.strain.over.known() && *s_.strain.over == "corset";
    const Round* round = s_.project.waist_round();
    s_.waist_seam = round != nullptr && round->finished.known() ? *round->finished : *s_.zones.back().girth;
    s_.edge.seam = s_.waist_seam;
    if (*s_.strain.skirt_hangs_from != "nothing") {
      s_.edge.hung = skirt.value_or(Mass{});
      for (const AlsoHangs& h : s_.strain.also_hangs) s_.edge.hung.value += h.weighs.value;
    }
    s_.edge.share = share_carried(*s_.strain.skirt_hangs_from, stay_holds(s_.strain), s_.strain.band && s_.strain.band->loose);
    s_.pull = pull_of(s_.edge);
    const Notion* notion = s_.project.notion(s_.closure.with);
    s_.holds = s_.strain.fastener_holds.known()
                   ? *s_.strain.fastener_holds
                   : usual_capacity(word_for(s_.closure.fasten), notion == nullptr ? "" : notion->size,
                                    s_.closure.backed_with.known(), s_.closure.eyelets_metal);
    const Ratio share = *s_.strain.use_at_most;
    s_.may_hold = Force{s_.holds.value * static_cast<double>(share.n) / static_cast<double>(share.d)};
    return true;
  }

 private:
  struct Stretch {
    const StrainZone* zone;
    Length starts, ends;
  };

  bool fault(const char* code, const StrainZone& zone, const SourceSpan& at, std::string sentence, std::string hint) {
    diag_.add(message({s_.closure.named.name, "strain", "closure reinforcement", true}, Severity::error, code,
                      at.line > 0 ? at : zone.named.at, std::move(sentence), std::move(hint)));
    return false;
  }
  std::string said(Length l) const { return worked(l, s_.in); }

  // From the top down, what no zone covers between them.
  bool add_zones() {
    std::vector<Stretch> written;
    const Length edge = s_.plan.edge_length;
    for (std::size_t i = 0; i < s_.strain.zones.size(); ++i) {
      const StrainZone& z = s_.strain.zones[i];
      const Length starts = z.starts.known() ? *z.starts : written.empty() ? Length{} : written.back().ends;
      Length ends = edge;
      if (z.ends.known()) ends = *z.ends;
      else if (i + 1 < s_.strain.zones.size() && s_.strain.zones[i + 1].starts.known()) ends = *s_.strain.zones[i + 1].starts;
      if (ends > edge || starts >= ends)
        return fault(
            "zone-off-edge", z, z.ends.known() ? z.ends.at : z.starts.at,
            "Zone " + z.named.name + " runs from " + said(starts) + " to " + said(ends) + " of an edge of " + said(edge) + ".",
            "`starts` and `ends` count down from the top of the edge");
      written.push_back({&z, starts, ends});
    }
    std::sort(written.begin(), written.end(), [](const Stretch& a, const Stretch& b) {
      return a.starts != b.starts ? a.starts < b.starts : a.zone->named.name < b.zone->named.name;
    });
    Length reached;
    for (const Stretch& w : written) {
      if (w.starts < reached)
        return fault("zones-overlap", *w.zone, w.zone->starts.at,
                     "Zone " + w.zone->named.name + " starts at " + said(w.starts) + "; " + s_.zones.back().name + " ends at " +
                         said(reached) + ".",
                     "one girth for each part of the edge: `starts: " + said(reached) + "`");
      if (w.starts > reached && !add_zone(nullptr, reached, w.starts)) return false;
      if (!add_zone(w.zone, w.starts, w.ends)) return false;
      reached = w.ends;
    }
    return reached >= edge || add_zone(nullptr, reached, edge);
  }

  // False where its girth is not known yet.
  bool add_zone(const StrainZone* zone, Length starts, Length ends) {
    const Strain& strain = s_.strain;
    ZoneFrom from;
    from.name = zone == nullptr ? kRestOfEdge : zone->named.name;
    from.written = zone;
    const bool own_girth = zone != nullptr && (zone->girth.known() || !zone->goes_round.empty());
    from.girth = own_girth ? zone->girth : strain.girth;
    from.goes_round = own_girth ? zone->goes_round : strain.goes_round;
    if (!from.girth.known()) return false;
    PulledZone pulled;
    pulled.starts = starts;
    pulled.ends = ends;
    pulled.girth = *from.girth;
    find_shortfall(zone, from, pulled);
    const std::string place =
        zone != nullptr && zone->breathes_at.known() ? *zone->breathes_at : strain.breathes_at.value.value_or("");
    const bool by_study = from.pressure_from == kByStudy;
    if (by_study) pulled.pressure = corset_pressure(*s_.project.rules.corset_pressure, place);
    const double breath = breath_factor(place), moves = movement_factor(*strain.moves);
    const double sits =
        by_study ? corset_moving_factor(*s_.project.rules.corset_pressure, *strain.moves) : posture_factor(place, *strain.moves);
    pulled.factor = std::max({breath, sits, moves});
    from.because = breath >= pulled.factor ? "a deep breath" : sits >= pulled.factor ? "sitting and bending" : "dancing";
    s_.edge.zones.push_back(pulled);
    s_.zones.push_back(std::move(from));
    return true;
  }

  void find_shortfall(const StrainZone* zone, ZoneFrom& from, PulledZone& pulled) const {
    const Strain& strain = s_.strain;
    const auto ease = s_.project.ease.find(from.goes_round);
    const auto worn = [&](const std::string& word) {
      pulled.shortfall = worn_shortfall(word);
      from.pressure_from = "worn " + word;
    };
    if (zone != nullptr && zone->ease.known()) {
      pulled.shortfall = -*zone->ease;
      from.pressure_from = "ease";
    } else if (zone != nullptr && zone->worn.known()) {
      worn(*zone->worn);
    } else if (strain.pressure.known()) {
      pulled.pressure = *strain.pressure;
      from.pressure_from = "written";
    } else if (strain.worn.known() && zone == nullptr) {
      worn(*strain.worn);
    } else if (ease != s_.project.ease.end() && ease->second.known()) {
      pulled.shortfall = -*ease->second;
      from.pressure_from = "ease";
    } else if (strain.worn.known()) {
      worn(*strain.worn);
    } else if (laced_by_study(s_.project, strain)) {
      from.pressure_from = kByStudy;
    } else {
      from.pressure_from = "nothing written";
    }
  }

  Strained& s_;
  Diagnostics& diag_;
};

}  // namespace

bool Strained::in_rows() const {
  return closure.fasten == Fasten::hooks_and_eyes || closure.fasten == Fasten::hooks_and_bars ||
         closure.fasten == Fasten::hooks_and_loops || closure.fasten == Fasten::lacing;
}

std::string Strained::fasteners() const {
  if (closure.fasten == Fasten::lacing) return "eyelets";
  return in_rows() ? "hooks" : std::string(word_for(closure.fasten));
}

bool laced_by_study(const Project& project, const Strain& strain) {
  if (strain.worn.known() || strain.pressure.known()) return false;
  const auto ease = project.ease.find(strain.goes_round);
  if (ease != project.ease.end() && ease->second.known()) return false;
  if (project.garment.known() && *project.garment == Garment::corset) return true;
  const Closure* closure = project.closure(strain.closure);
  return closure != nullptr && std::any_of(closure->sides.begin(), closure->sides.end(), [&](const std::string& side) {
           const Piece* piece = project.piece(side);
           return piece != nullptr && piece->part_of.known() && *piece->part_of == PartOf::corset;
         });
}

Length band_pitch(std::string_view band) {
  if (band == "R0" || band == "R1") return in64(80);
  if (band == "R2") return Length::inches(1);
  return in64(48);
}

std::vector<LoadPlan> add_loads(const Project& project, const Plans& plans, std::optional<Mass> skirt, Figures& figures,
                                Diagnostics& diag) {
  std::vector<LoadPlan> loads;
  for (const Strain& strain : project.strain) {
    const Closure* closure = project.closure(strain.closure);
    const auto plan = std::find_if(plans.closures.begin(), plans.closures.end(),
                                   [&](const ClosingPlan& p) { return same_name(p.closure, strain.closure); });
    if (closure == nullptr || plan == plans.closures.end() || plan->fasteners.empty()) continue;
    Strained s{project, strain, *closure, *plan, shown_in(project), {}, {}, {}, {}, {}, {}};
    if (!Putting(s, diag).done(skirt)) continue;
    LoadPlan load;
    load.closure = closure->named.name;
    load.at = strain.at;
    load.by_study = std::any_of(s.zones.begin(), s.zones.end(), [](const ZoneFrom& z) { return z.pressure_from == kByStudy; });
    load.at_rest = s.pull.zones[s.pull.heaviest].at_rest;
    load.moving = s.pull.zones[s.pull.heaviest].moving;
    load.band = std::string(s.pull.band);
    load.pulls = s.pull.pulls;
    load.fastener = s.pull.greatest();
    load.most = s.pull.most;
    load.capacity = s.holds;
    load.holds = s.may_hold;
    for (std::size_t i = 0; i < s.zones.size(); ++i)
      load.zones.push_back({s.zones[i].name, s.edge.zones[i].starts, s.edge.zones[i].ends, s.pull.zones[i].moving});
    add_load_figures(s, load, figures);
    add_band_hold(s, load, figures);
    add_what_eases(s, load, figures);
    add_what_matters(s, load, figures);
    judge_load(s, load, diag);
    loads.push_back(std::move(load));
  }
  return loads;
}

}  // namespace gownsheaf
