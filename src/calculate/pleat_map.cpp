#include "calculate/pleat_map.h"

#include <algorithm>
#include <cmath>

#include "calculate/hidden_seams.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kSame = 2;  // ticks: halves are rounded once each

bool one_way_round(const RunSum& s) { return s.pleated && !s.mirrored; }

std::string pleat_of(const Landing& l) { return "pleat\u00A0" + whole_number(l.pleat); }
std::string words_for(const Landing& l) {
  switch (l.in) {
    case Landing::In::fold: return "on the fold of " + pleat_of(l);
    case Landing::In::line: return "at the lay-on line of " + pleat_of(l);
    case Landing::In::hidden: return "hidden in " + pleat_of(l);
    case Landing::In::seen: break;
  }
  return l.pleat == 0 ? "past the last pleat" : "where it shows, before " + pleat_of(l);
}

// One run on the way from centre front.
struct Part {
  const RunSum* sum = nullptr;
  PleatPlan* plan = nullptr;  // none of a plain run
  Length begins, flat, pleated_before, finished;
  bool from_back = false;
  Length end() const { return begins + flat; }
  // From centre front to where its marks begin, and back.
  Length in_run(Length x) const { return from_back ? end() - x : x - begins; }
  Length from_front(Length u) const { return from_back ? end() - u : begins + u; }
};

struct Place {
  const Part* part = nullptr;
  Length in_run, pleated;
  Landing landing;
};

// A round, or a run by itself, from centre front on.
class Way {
 public:
  // closed: the runs reach centre back.
  Way(const Project& project, RoundSums& sums, std::vector<PleatPlan>& plans, const std::vector<const RunSum*>& runs, bool closed)
      : closed_(closed) {
    for (const RunSum* s : runs) half_ = half_ && !one_way_round(*s);
    if (!half_ && runs.size() > 1) return;
    Length pleated;
    for (const RunSum* s : runs) {
      if (!s->flat || !s->finished) {
        parts_.clear();
        return;
      }
      const bool halve = half_ && !s->run->half;
      Part part;
      part.sum = s;
      for (PleatPlan& plan : plans)
        if (same_name(plan.run, s->run->named.name)) part.plan = &plan;
      part.begins = s->begins_at;
      part.flat = s->pleated ? s->half.flat : halve ? s->flat->times(1, 2) : *s->flat;
      part.finished = s->pleated ? s->half.finished : halve ? s->finished->times(1, 2) : *s->finished;
      part.pleated_before = pleated;
      part.from_back = marked_from_the_back(*s);
      pleated += part.finished;
      parts_.push_back(part);
    }
    whole_ = pleated;
    if (parts_.empty()) return;
    const PleatRun& run = *parts_.front().sum->run;
    const Round* round = sums.round_of(run);
    const bool at_front = round != nullptr && round->centre_front_is_seam;
    seams_ = breadth_seams(project, sums, run, half_, at_front);
    if (round == nullptr) return;
    const std::vector<Length> others = breadth_seams(project, sums, run, half_, !at_front);
    if (!others.empty() && std::none_of(others.begin(), others.end(), [&](Length at) { return in_the_open(place(at)); }))
      other_centre_ = at_front ? "mid-breadth" : "a seam";
  }

  // Between the pleats of a run that has them.
  static bool shows(const std::optional<Place>& p) {
    return p && p->part->sum->run->kind != PleatKind::tucks && p->landing.in == Landing::In::seen &&
           !p->landing.to_hidden.is_zero();
  }
  // Shows, or lies in plain cloth, where nothing can hide it.
  static bool in_the_open(const std::optional<Place>& p) {
    return shows(p) || (p && p->part->sum->run->kind == PleatKind::plain);
  }
  // What `centre front is` would hide every seam; "" where neither word does, or where it hides them already.
  const std::string& other_centre() const { return other_centre_; }

  const std::vector<Part>& parts() const { return parts_; }
  const std::vector<Length>& seams() const { return seams_; }
  bool half() const { return half_; }
  bool closed() const { return closed_; }

  std::optional<Place> place(Length x) const {
    for (const Part& part : parts_) {
      if (x < part.begins || x > part.end() + Length::ticks(kSame)) continue;
      Place p;
      p.part = &part;
      p.in_run = part.in_run(std::min(x, part.end()));
      if (part.plan != nullptr && !part.plan->marks.empty()) p.landing = landing_of(part.plan->marks, p.in_run, part.plan->plus);
      else p.landing.pleated = part.flat.is_zero() ? Length{} : part.finished.times(p.in_run.in_ticks(), part.flat.in_ticks());
      p.pleated = part.pleated_before + (part.from_back ? part.finished - p.landing.pleated : p.landing.pleated);
      return p;
    }
    return std::nullopt;
  }
  Angle angle(Length pleated) const { return Angle{(half_ ? 180.0 : 360.0) * (pleated / whole_)}; }
  Length at_angle(double degrees) const {
    return Length::ticks(static_cast<std::int64_t>(static_cast<double>(whole_.in_ticks()) * degrees / (half_ ? 180.0 : 360.0)));
  }

  // What a placket at this side of the wearer stands in: the nearest seam there.
  std::optional<Length> seam_at(double degrees) const {
    std::optional<Length> best;
    double least = 0;
    for (const Length seam : seams_) {
      const auto p = place(seam);
      if (!p) continue;
      const double away = std::abs(angle(p->pleated).value - degrees);
      if (!best || away < least) {
        best = seam;
        least = away;
      }
    }
    return best;
  }

  // The line under a fold nearest 95 degrees, of those from 80 to 110; in cloth without folds 95 degrees itself.
  std::optional<Length> pocket_place() const {
    std::optional<Length> best;
    double least = 15.5;
    for (const Part& part : parts_) {
      if (part.plan == nullptr) continue;
      for (const PleatMark& m : part.plan->marks) {
        const Length x = part.from_front(m.lay_on);
        const auto p = place(x);
        if (!p) continue;
        const double away = std::abs(angle(p->pleated).value - 95);
        if (away < least) {
          best = x;
          least = away;
        }
      }
    }
    if (best) return best;
    const Length wanted = at_angle(95);
    for (const Part& part : parts_)
      if (wanted >= part.pleated_before && wanted <= part.pleated_before + part.finished &&
          (part.plan == nullptr || part.plan->marks.empty()))
        return part.begins + part.flat.times((wanted - part.pleated_before).in_ticks(), part.finished.in_ticks());
    return std::nullopt;
  }

 private:
  std::vector<Part> parts_;
  std::vector<Length> seams_;
  std::string other_centre_;
  Length whole_;
  bool half_ = true, closed_ = true;
};

class PleatMap {
 public:
  PleatMap(const Project& project, Way& way, std::vector<PleatPlan>& plans, Figures& figures, Diagnostics& diag)
      : project_(project), way_(way), plans_(plans), in_(shown_in(project)), figures_(figures), diag_(diag) {}

  void add_seams() {
    for (const Part& part : way_.parts()) {
      std::vector<Place> places;
      for (const Length seam : way_.seams())
        if (const auto p = way_.place(seam); p && p->part == &part) places.push_back(*p);
      std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.in_run < b.in_run; });
      for (std::size_t i = 0; i < places.size(); ++i) {
        if (part.plan != nullptr) part.plan->seams_at.push_back(places[i].in_run);
        const std::string number = "seam " + whole_number(static_cast<std::int64_t>(i + 1));
        const Place& p = places[i];
        add("pleats", part.sum->run->named.name, number, p, "breadth " + number);
        if (Way::shows(p) && *project_.rules.pleat_seams == PleatSeams::inner_fold) say_seam_shows(part, p, number);
      }
    }
  }

  void add_placket(const Placket& placket) {
    const std::optional<double> side = side_of(placket.side);
    const Seam* seam = project_.seam(placket.seam);
    if (!side || seam == nullptr || (seam->kind != "breadth" && seam->kind != "centre back" && seam->kind != "side")) return;
    const auto x = way_.seam_at(*side);
    const auto p = x ? way_.place(*x) : std::nullopt;
    if (!p) return;
    figure("plackets", placket.named.name, "past centre front")
        .is(*x)
        .plain_input("plackets/" + placket.named.name + "/side")
        .plain_input("pieces")
        .plain_input("cloths")
        .add();
    add("plackets", placket.named.name, "", *p, "placket " + placket.named.name);
    warn_inside(placket.named, "plackets", "The placket " + placket.named.name, *p,
                [&](Length by) { return "move its seam " + shift(*p->part, by) + ", or the pleats"; });
  }

  void add_pocket(const Pocket& pocket) {
    const auto x = pocket.past_centre_front.known() ? std::optional(*pocket.past_centre_front) : way_.pocket_place();
    const auto p = x ? way_.place(*x) : std::nullopt;
    if (!p) return;
    NewFigure f = figure("pockets", pocket.named.name, "past centre front");
    f.is(*x).at(pocket.named.at);
    if (pocket.past_centre_front.known()) f.written().from("", pocket.past_centre_front);
    else
      f.plain_input("pleats").label('c').working("place of the pocket",
                                                 "the line under a fold nearest 95 degrees, of those from 80 to 110", "");
    f.add();
    if (pocket.opening.known())
      figure("pockets", pocket.named.name, "opening").is(*pocket.opening).written().at(pocket.opening.at).add();
    add("pockets", pocket.named.name, "", *p, "pocket " + pocket.named.name + (pocket.side.known() ? ", " + *pocket.side : ""));
    warn_inside(pocket.named, "pockets", "The pocket " + pocket.named.name, *p, [&](Length by) {
      const Length clear = p->part->from_front(p->in_run + by);
      return "`past centre front: " + text_of(clear, in_, pleat_step(in_), Rounding::nearest).plain() + "` lies on the fold line";
    });
    const double degrees = way_.angle(p->pleated).value;
    if (pocket.past_centre_front.known() && way_.half() && (degrees < 80 || degrees > 110))
      diag_.add(message(
          {pocket.named.name, "pockets", "pleats"}, Severity::note, "pocket-out-of-reach", pocket.named.at,
          "The pocket " + pocket.named.name + " lies " + decimal(degrees, 0) + " degrees from centre front after pleating.",
          "a hand reaches best between 80 and 110 degrees; common practice"));
  }

  // What folds make where they meet or part: at centre front and centre back, and between two runs.
  void add_ends() {
    const std::vector<Part>& parts = way_.parts();
    if (!way_.half()) return;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (!turns(parts[i])) continue;
      const bool to_back = !parts[i].from_back;
      if (i == 0 && parts[i].begins.is_zero()) add_end(parts[i], "centre front", to_back, 2);
      if (i + 1 == parts.size() && way_.closed()) add_end(parts[i], "centre back", !to_back, 2);
      if (i + 1 < parts.size() && turns(parts[i + 1]) && parts[i + 1].from_back == to_back)
        add_end(parts[i], parts[i + 1].sum->run->named.name, !to_back, 1);
    }
  }

 private:
  NewFigure figure(std::string_view section, const std::string& item, std::string_view quantity) {
    return NewFigure(figures_, in_, section, item, quantity);
  }

  void add(const std::string& section, const std::string& item, const std::string& part, const Place& p,
           const std::string& what) {
    const std::string below = part.empty() ? "" : part + "/", key = section + "/" + item + (part.empty() ? "" : "/" + part);
    const std::string flat = part.empty() ? key + "/in the run" : key;
    if (part.empty()) figure(section, item, "in the run").is(p.in_run).from(key + "/past centre front").add();
    else if (figures_.find(key) == nullptr)
      figure(section, item, part).is(p.in_run).plain_input("pieces").plain_input("cloths").add();
    figure(section, item, below + "pleated").is(p.pleated).from(flat).add();
    figure(section, item, below + "angle").is(way_.angle(p.pleated)).from(key + "/pleated").add();
    if (PleatPlan* plan = plan_for(*p.part))
      plan->landings.push_back(
          {what, key,
           p.part->plan == plan && !plan->marks.empty() ? words_for(p.landing) : "in " + p.part->sum->run->named.name});
  }

  // The sheet that tells of this part: its own, or of a plain run the next that has one.
  PleatPlan* plan_for(const Part& part) {
    if (part.plan != nullptr) return part.plan;
    for (const Part& other : way_.parts())
      if (other.plan != nullptr) return other.plan;
    return nullptr;
  }

  std::string shift(const Part& part, Length by) const {
    const bool backward = (by < Length{}) != part.from_back;
    const Length size = by < Length{} ? -by : by;
    return text_of(size, in_, pleat_step(in_), Rounding::nearest).plain() +
           (backward ? " toward centre front" : " toward centre back");
  }

  void say_seam_shows(const Part& part, const Place& p, const std::string& number) {
    const std::string& run = part.sum->run->named.name;
    const Hiding hiding = how_to_hide(part);
    diag_.add(message(
        {run, "pleats", "pleats"}, Severity::warning, "seam-shows", part.sum->run->named.at,
        "Breadth " + number + " of " + run + " falls where it shows, " +
            (p.landing.pleat == 0 ? "past the last pleat" : "before pleat " + whole_number(p.landing.pleat)) + hiding.words + ".",
        hiding.to_type + shift(part, p.landing.to_hidden) + " it is hidden; or `rules: { pleat seams: as they fall }`"));
  }

  // How all of its seams would lie under the pleats, and what to write for it; empty where no way was found.
  struct Hiding {
    std::string words, to_type;
  };
  Hiding how_to_hide(const Part& part) const {
    if (const std::string& centre = way_.other_centre(); !centre.empty())
      return {
          "; with " + std::string(centre == "a seam" ? "a seam" : "the middle of a breadth") + " at centre front none would show",
          "`centre front is: " + centre + "`; "};
    std::vector<Length> places;
    for (const Length seam : way_.seams())
      if (const auto p = way_.place(seam); p && p->part == &part) places.push_back(p->in_run);
    const auto count = count_that_hides(*part.sum, places);
    if (!count) return {};
    return {"; " + whole_number(*count) + " pleats would hide every seam of it", "`count: " + whole_number(*count) + "`; "};
  }

  template <class Clear>
  void warn_inside(const Named& named, const std::string& section, const std::string& what, const Place& p, Clear clear) {
    if (p.landing.in != Landing::In::hidden) return;
    diag_.add(message({named.name, section, "pleats"}, Severity::warning, "pleat-on-placket", named.at,
                      what + " falls inside pleat " + whole_number(p.landing.pleat) + " of " + p.part->sum->run->named.name + ".",
                      clear(p.landing.to_edge)));
  }

  static std::optional<double> side_of(const Given<std::string>& side) {
    if (!side.known()) return std::nullopt;
    return *side == "front" ? 0.0 : *side == "back" ? 180.0 : 90.0;
  }

  static bool turns(const Part& part) { return part.sum->pleated && part.sum->run->kind == PleatKind::knife; }

  void add_end(const Part& part, const std::string& where, bool parts, std::int64_t sides) {
    const std::string& run = part.sum->run->named.name;
    const bool middle = sides == 2;
    const std::string quantity = middle ? "at " + where : "at the next run";
    figure("pleats", run, quantity + "/makes")
        .is(std::string(parts ? "box pleat" : "inverted pleat"))
        .plain_input("pleats/" + run + "/toward")
        .add();
    if (parts && middle && part.sum->half.plus.is_zero())
      figure("pleats", run, quantity + "/wide")
          .is(2 * part.sum->half.visible)
          .from("pleats/" + run + "/visible")
          .working("the box pleat at " + where, "2 × visible", "2 × " + worked(part.sum->half.visible, in_))
          .add();
    if (part.plan != nullptr)
      part.plan->ends.push_back({middle ? "at " + where : "where it joins " + where, "pleats/" + run + "/" + quantity, parts});
  }

  const Project& project_;
  Way& way_;
  std::vector<PleatPlan>& plans_;
  ShownIn in_;
  Figures& figures_;
  Diagnostics& diag_;
};

}  // namespace

bool marked_from_the_back(const RunSum& s) {
  return s.mirrored && s.run->toward.known() && *s.run->toward == Toward::centre_front;
}

void add_pleat_map(const Project& project, RoundSums& sums, std::vector<PleatPlan>& plans, Figures& figures, Diagnostics& diag) {
  struct Walk {
    std::vector<const RunSum*> runs;
    bool closed;
  };
  std::vector<Walk> ways;
  const auto sum_of = [&](const std::string& name) -> const RunSum* {
    for (const RunSum& s : sums.runs())
      if (same_name(s.run->named.name, name)) return &s;
    return nullptr;
  };
  for (const Round& round : project.rounds) {
    std::vector<const RunSum*> runs;
    for (const std::string& name : round.runs)
      if (const RunSum* s = sum_of(name)) runs.push_back(s);
    if (!runs.empty() && runs.size() == round.runs.size()) ways.push_back({runs, true});
  }
  for (const RunSum& s : sums.runs())
    if (sums.round_of(*s.run) == nullptr && s.run->kind != PleatKind::plain) {
      const bool shared = std::any_of(project.pleats.begin(), project.pleats.end(), [&](const PleatRun& other) {
        return &other != s.run && !other.of.empty() && other.of == s.run->of;
      });
      ways.push_back({{&s}, !shared && s.begins_at.is_zero()});
    }
  bool first = true;  // plackets and pockets are of the skirt: of the first way that goes round breadths
  for (const auto& [runs, closed] : ways) {
    Way way(project, sums, plans, runs, closed);
    if (way.parts().empty()) continue;
    PleatMap map(project, way, plans, figures, diag);
    map.add_seams();
    map.add_ends();
    const bool skirt = std::any_of(runs.begin(), runs.end(), [](const RunSum* s) { return !s->run->of.empty(); });
    if (!first || !skirt) continue;
    first = false;
    for (const Placket& placket : project.plackets) map.add_placket(placket);
    for (const Pocket& pocket : project.pockets) map.add_pocket(pocket);
  }
}

}  // namespace gownsheaf
