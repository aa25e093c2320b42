// A project's strained closing with all it is worked from; inside calculate/ only. loads.cpp puts it together, the others
// add its figures and judge it.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/new_figure.h"
#include "calculate/pulled_edge.h"
#include "figures/plans.h"

namespace gownsheaf {

constexpr Length in64(std::int64_t n) { return Length::sixty_fourths(n); }

struct ZoneFrom {                       // where a zone of PulledEdge comes from
  std::string name;                     // "waist", or kRestOfEdge
  const StrainZone* written = nullptr;  // else the strain itself
  std::string goes_round;               // measure, or ""
  Given<Length> girth;
  std::string pressure_from;  // "worn snug", "ease", "written", kByStudy, "nothing written"
  std::string because;        // what makes it move most: "a deep breath", "sitting and bending", "dancing"
};
inline constexpr const char* kByStudy = "a published study";
inline constexpr const char* kRestOfEdge = "rest of the edge";

struct Strained {
  const Project& project;
  const Strain& strain;
  const Closure& closure;
  const ClosingPlan& plan;
  ShownIn in;
  PulledEdge edge;
  std::vector<ZoneFrom> zones;  // as edge.zones
  EdgePull pull;
  Force holds;     // one fastener, untested
  Force may_hold;  // the share of it that is asked
  Length waist_seam;

  std::string key(std::string_view quantity) const { return "closures/" + closure.named.name + "/" + std::string(quantity); }
  NewFigure figure(Figures& figures, std::string_view quantity) const {
    NewFigure f(figures, in, "closures", closure.named.name, quantity);
    f.at(strain.at);
    return f;
  }
  bool in_rows() const;           // hooks of every kind, and lacing: they keep a band's distance
  std::string fasteners() const;  // "hooks", "eyelets", "buttons"
};

void add_load_figures(const Strained& s, LoadPlan& load, Figures& figures);
// What eases it, what the neighbours of a fastener that gives way take, which input matters most.
void add_what_eases(const Strained& s, LoadPlan& load, Figures& figures);
void add_what_matters(const Strained& s, LoadPlan& load, Figures& figures);
// Whether the skirt's own band holds it up by friction, or its straps.
void add_band_hold(const Strained& s, LoadPlan& load, Figures& figures);
void judge_load(const Strained& s, const LoadPlan& load, Diagnostics& diag);

}  // namespace gownsheaf
