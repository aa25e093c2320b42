#include "calculate/loads.h"

#include <algorithm>

#include "calculate/load.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

constexpr Length in64(std::int64_t n) { return Length::sixty_fourths(n); }

// How much smaller than the body each word is; common practice.
struct Worn { std::string_view word; Length less; };
const Worn kWorn[] = {{"easy", Length{}}, {"close", in64(16)}, {"snug", in64(32)}, {"tight", Length::inches(1)}};

std::string pounds(Force f) { return decimal(f.value / kNewtonsPerPoundForce, 1) + " lbf"; }
std::string newtons(Force f) { return decimal(f.value, 0) + " N"; }

class Strained {
 public:
  Strained(const Project& project, const Strain& strain, const Closure& closure, const ClosingPlan& plan,
           std::optional<Mass> skirt, Figures& figures, Diagnostics& diag)
      : project_(project), strain_(strain), closure_(closure), plan_(plan), skirt_(skirt), in_(shown_in(project)),
        figures_(figures), diag_(diag) {}

  std::optional<LoadPlan> work_out() {
    if (!strain_.girth.known()) return std::nullopt;
    find_pressure();
    LoadPlan load;
    load.closure = closure_.named.name;
    load.at = strain_.at;
    load.at_rest = hoop_tension(pressure_, *strain_.girth);
    const double breath = breath_factor(strain_.breathes_at.value.value_or("")), move = movement_factor(*strain_.moves);
    const double factor = std::max(breath, move);
    load.moving = LoadPerLength{load.at_rest.value * factor};
    const Force hang = hanging();
    // What hangs counts as well: as the pull on a fastener with the usual 1 1/4 in to itself.
    const Length usual = in64(80);
    const Force one = with_hanging(fastener_pull(load.moving, usual), hang);
    load.band = std::string(load_band({one.value / (usual.in_mm() / 1000)}));
    pull_each(load, hang);
    load.fastener = *std::max_element(load.pulls.begin(), load.pulls.end());
    const Force holds = strain_.fastener_holds.known() ? *strain_.fastener_holds : usual_holds();
    const Ratio share = *strain_.use_at_most;
    load.holds = Force{holds.value * static_cast<double>(share.n) / static_cast<double>(share.d)};
    add_figures(load, hang, factor, breath >= move ? "a deep breath" : "dancing");
    judge(load);
    return load;
  }

 private:
  NewFigure figure(std::string_view quantity) {
    NewFigure f(figures_, in_, "closures", closure_.named.name, quantity);
    f.at(strain_.at);
    return f;
  }
  std::string key(std::string_view quantity) const { return "closures/" + closure_.named.name + "/" + std::string(quantity); }

  Force usual_holds() const {
    const Notion* notion = project_.notion(closure_.with);
    return usual_capacity(word_for(closure_.fasten), notion == nullptr ? "" : notion->size);
  }

  void find_pressure() {
    const bool corset = strain_.over.known() && *strain_.over == "corset";
    const Length girth = *strain_.girth;
    if (strain_.pressure.known()) {
      pressure_ = *strain_.pressure;
      pressure_from_ = "written";
      return;
    }
    shortfall_ = Length{};
    const auto ease = project_.ease.find(strain_.goes_round);
    if (strain_.worn.known()) {
      for (const Worn& w : kWorn)
        if (w.word == *strain_.worn) shortfall_ = w.less;
      pressure_from_ = "worn " + *strain_.worn;
    } else if (ease != project_.ease.end() && ease->second.known()) {
      shortfall_ = -*ease->second;
      pressure_from_ = "ease";
    }
    pressure_ = worn_pressure(*shortfall_, girth, corset);
  }

  Length waist_seam() const {
    const auto finished = std::find_if(project_.rounds.begin(), project_.rounds.end(),
                                       [](const Round& r) { return r.finished.known(); });
    return finished != project_.rounds.end() ? *finished->finished : *strain_.girth;
  }

  bool stay_holds() const {
    return strain_.stay && strain_.stay->smaller_by.known() && *strain_.stay->smaller_by >= in64(32) &&
           strain_.stay->anchored_at.value.value_or("") != "lining only";
  }

  Mass hung() const {
    Mass sum = skirt_.value_or(Mass{});
    for (const AlsoHangs& h : strain_.also_hangs) sum.value += h.weighs.value;
    return sum;
  }

  Force hanging() const {
    if (*strain_.skirt_hangs_from == "nothing") return {};
    const double share = share_carried(*strain_.skirt_hangs_from, stay_holds(), strain_.band && strain_.band->loose);
    return hanging_pull(hung(), waist_seam(), share);
  }

  // Each fastener pulls over half the distance to its neighbours; an end one over its inset as well. The skirt hangs from
  // the lowest.
  void pull_each(LoadPlan& load, Force hang) const {
    const auto& f = plan_.fasteners;
    for (std::size_t i = 0; i < f.size(); ++i) {
      const Length above = i == 0 ? f[i].from_top : (f[i].from_top - f[i - 1].from_top).times(1, 2);
      const Length below = i + 1 == f.size() ? std::max(Length{}, plan_.edge_length - f[i].from_top)
                                             : (f[i + 1].from_top - f[i].from_top).times(1, 2);
      Force pull = fastener_pull(load.moving, above + below);
      pull.value /= static_cast<double>(std::max<std::int64_t>(1, plan_.rows));
      if (i + 1 == f.size()) pull = with_hanging(pull, hang);
      load.pulls.push_back(pull);
    }
  }

  void add_figures(const LoadPlan& load, Force hang, double factor, const std::string& reason) {
    figure("girth").is(*strain_.girth).from("", strain_.girth).written().add();
    if (shortfall_) {
      NewFigure f = figure("shortfall");
      f.is(*shortfall_).from(key("girth"));
      if (strain_.worn.known()) f.from("strain/" + closure_.named.name + "/worn", strain_.worn);
      else f.plain_input("ease/" + strain_.goes_round);
      f.add();
    }
    NewFigure pressure = figure("pressure");
    pressure.is(pressure_).from(key("girth"));
    if (shortfall_) pressure.from(key("shortfall"));
    pressure.working("pressure, an estimate (" + pressure_from_ + ")",
                     strain_.pressure.known() ? "as written" : "3.5 mmHg for each % smaller, twice that over a corset; 6 mmHg at least",
                     shortfall_ ? worked(*shortfall_, in_) + " of " + worked(*strain_.girth, in_) : "");
    pressure.add();
    figure("line load at rest").is(load.at_rest).from(key("pressure")).from(key("girth"))
        .working("pull along the closing at rest, an estimate", "pressure × girth / 2π",
                 plain_text(Value(pressure_), in_) + " × " + worked(*strain_.girth, in_) + " / 6.283")
        .add();
    figure("line load").is(load.moving).from(key("line load at rest"))
        .working("with " + reason + ", an estimate", "at rest × " + decimal(factor, 1),
                 plain_text(Value(load.at_rest), in_) + " × " + decimal(factor, 1))
        .add();
    figure("load band").is(load.band).plain_input(key("line load")).add();
    if (hang.value > 0)
      figure("hanging pull").is(hang).from("skirt/weight").plain_input("strain/" + closure_.named.name + "/skirt hangs from").add();
    for (std::size_t i = 0; i < load.pulls.size(); ++i)
      figure("pull " + whole_number(static_cast<std::int64_t>(i + 1))).is(load.pulls[i]).from(key("line load")).add();
    figure("per fastener").is(load.fastener).from(key("line load"))
        .working("the most that one fastener takes, an estimate", "line load × half the distance on both sides; the lowest with the skirt's pull",
                 plain_text(Value(load.moving), in_) + " × " + worked(plan_.widest_gap, in_))
        .add();
    figure("fastener may hold").is(load.holds).from("strain/" + closure_.named.name + "/use at most", strain_.use_at_most)
        .from("strain/" + closure_.named.name + "/fastener holds", strain_.fastener_holds).add();
  }

  void say(Severity severity, std::string code, std::string sentence, std::string hint) {
    diag_.add(message({closure_.named.name, "strain", "closure reinforcement", true}, severity, std::move(code), strain_.at, std::move(sentence), std::move(hint)));
  }

  void judge(const LoadPlan& load) {
    const bool metric = in_ == ShownIn::centimetres;
    const auto force = [&](Force f) { return metric ? newtons(f) : pounds(f); };
    const Mass weight = hung();
    const std::string hangs = *strain_.skirt_hangs_from;
    const bool heavy = weight.value > 3 * 16 * kGramsPerOunce;
    if (weight.value > 0 && (hangs == "hooks" || (hangs == "bodice waist" && heavy)))
      say(Severity::hold, "skirt-on-hooks",
          "About " + plain_text(Value(weight), in_) + " of skirt would hang on " +
              (hangs == "hooks" ? "hooks" : "a bodice without a stay") + ".",
          "give it a `stay`, or `skirt hangs from: own band`; an estimate, common practice");
    if (load.fastener.value > load.holds.value && load.band != "R0")
      say(Severity::hold, "fastener-overloaded",
          "One of the fasteners may take about " + force(load.fastener) + "; " + force(load.holds) + " is what it should be asked for.",
          "closer together (`at most`), a second row, or lacing; untested figures, an estimate");
    const Length too_tight = Length::inches(1);
    const bool boned_foundation = project_.garment.known() && *project_.garment == Garment::corset;
    if (shortfall_ && *shortfall_ > too_tight && !boned_foundation)
      say(Severity::hold, "too-tight",
          "It is " + worked(*shortfall_, in_) + " smaller than the " + strain_.goes_round + " it goes round; more than " +
              worked(too_tight, in_) + " is not built.",
          "lace the corset, not the bodice: less in `ease`; common practice");
    const Length pitch = band_pitch(load.band);
    const bool in_rows = closure_.fasten == Fasten::hooks_and_eyes || closure_.fasten == Fasten::hooks_and_bars ||
                         closure_.fasten == Fasten::hooks_and_loops || closure_.fasten == Fasten::lacing;
    if (in_rows && load.band != "R0" && plan_.widest_gap > pitch)
      say(Severity::warning, "pitch-too-wide",
          "At this strength fasteners stand " + worked(pitch, in_) + " apart at most; here " + worked(plan_.widest_gap, in_) + ".",
          "`at most: " + worked(pitch, in_) + "`; common practice");
  }

  const Project& project_;
  const Strain& strain_;
  const Closure& closure_;
  const ClosingPlan& plan_;
  std::optional<Mass> skirt_;
  ShownIn in_;
  Figures& figures_;
  Diagnostics& diag_;
  Pressure pressure_;
  std::string pressure_from_ = "nothing written";
  std::optional<Length> shortfall_;
};

}  // namespace

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
    if (auto load = Strained(project, strain, *closure, *plan, skirt, figures, diag).work_out()) loads.push_back(std::move(*load));
  }
  return loads;
}

}  // namespace gownsheaf
