// The project's closings to figures and plans.
#include <algorithm>

#include "calculate/closing_levels.h"
#include "calculate/closing_notions.h"
#include "calculate/closures.h"
#include "calculate/new_figure.h"
#include "calculate/piece_edges.h"
#include "calculate/rounds.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

const Length kLapLineToHole = Length::sixty_fourths(8);

class Closing {
 public:
  Closing(const Project& project, const Closure& closure, Figures& figures, Diagnostics& diag)
      : project_(project), closure_(closure), figures_(figures), diag_(diag), in_(shown_in(project)),
        words_(fastener_words(closure.fasten)) {}

  std::optional<ClosingPlan> made() {
    if (!closure_.length.known()) return std::nullopt;
    if (closure_.fasten == Fasten::lacing && !closure_.gap.known() && closure_.gap.origin != Origin::to_measure) {
      say(Severity::error, "lace-gap-needed", closure_.fasten_at, "Lacing needs `gap`.",
          "how far the edges stand apart when laced: `gap: 2 in`");
      return std::nullopt;
    }
    begin_plan();
    if (closure_.fasten != Fasten::drawstring && !add_places()) return std::nullopt;
    for (const Level& level : closure_.levels) figure("at " + level.name).is(level.from_top).written().at(level.at).add();
    add_lap();
    add_strength();
    if (closure_.fasten == Fasten::buttons) add_buttonhole();
    if (closure_.fasten == Fasten::lacing) add_lace();
    if (closure_.fasten == Fasten::drawstring) add_cord();
    if (closure_.fasten == Fasten::ties) add_ties();
    if (!plan_.fasteners.empty()) {
      add_comparison();
      judge_levels(closure_, plan_, in_, diag_);
      judge_eyelets(project_, closure_, diag_);
    }
    return plan_;
  }

 private:
  std::string key(const std::string& quantity) const { return "closures/" + closure_.named.name + "/" + quantity; }
  NewFigure figure(const std::string& quantity) {
    NewFigure f(figures_, in_, "closures", closure_.named.name, quantity);
    f.at(closure_.named.at);
    return f;
  }
  std::string edge_name() const { return closure_.edge.empty() ? closure_.named.name : closure_.edge; }

  void say(Severity severity, std::string code, const SourceSpan& at, std::string sentence, std::string hint) {
    diag_.add(message({closure_.named.name, "closures", "closures"}, severity, std::move(code),
                      at.line > 0 ? at : closure_.named.at, std::move(sentence), std::move(hint)));
  }

  void begin_plan() {
    plan_.closure = closure_.named.name;
    plan_.fasten = std::string(word_for(closure_.fasten));
    plan_.with = closure_.with;
    plan_.edge = closure_.edge;
    plan_.edge_length = *closure_.length;
    plan_.rows = closure_.rows;
    plan_.overlapping = closure_.meets.known() && *closure_.meets == Meets::overlapping;
    plan_.set_back = closure_.set_back.known() ? *closure_.set_back : Length{};
    plan_.at = closure_.named.at;
    for (const Level& l : closure_.levels) plan_.levels.emplace_back(l.name, l.from_top);
    figure("edge length").is(plan_.edge_length).from("", closure_.length).written().add();
  }

  ClosureInput input() const {
    ClosureInput in;
    in.one = words_.one;
    in.many = words_.many;
    in.edge = edge_name();
    in.edge_length = *closure_.length;
    in.top = closure_.top_inset.known() ? *closure_.top_inset : Length{};
    in.bottom = closure_.bottom_inset.known() ? *closure_.bottom_inset : Length{};
    in.at_most = closure_.at_most.value;
    in.pitch = closure_.pitch.value;
    in.number = closure_.number.known() ? closure_.number.value : closure_.eyelets.value;
    in.insets_free = closure_.top_inset.origin != Origin::written && closure_.bottom_inset.origin != Origin::written;
    in.staggered = closure_.fasten == Fasten::lacing && closure_.lace_as == LaceAs::staggered_spiral;
    for (const std::string& name : closure_.one_at)
      for (const Level& level : closure_.levels)
        if (same_name(level.name, name)) in.forced.push_back({level.name, level.from_top});
    for (const CloserNear& near : closure_.closer_near)
      for (const Level& level : closure_.levels)
        if (same_name(level.name, near.level))
          in.closer.push_back({level.name, level.from_top - *near.within, level.from_top + *near.within, *near.at_most});
    const Notion* notion = project_.notion(closure_.with);
    in.closest = kHoldsLevel;
    if (closure_.fasten == Fasten::buttons && notion != nullptr && notion->across.known())
      in.closest = std::max(in.closest, *notion->across);
    return in;
  }

  SourceSpan place_of(const ClosureFault& fault) const {
    if (fault.key == "levels")
      for (const Level& level : closure_.levels)
        if (level.from_top > *closure_.length) return level.at;
    if (fault.key == "top inset" && closure_.top_inset.at.line > 0) return closure_.top_inset.at;
    if (fault.key == "top inset") return closure_.bottom_inset.at;
    if (fault.key == "pitch") return closure_.pitch.at;
    if (fault.key == "number") return closure_.number.known() ? closure_.number.at : closure_.eyelets.at;
    if (fault.key == "at most") return closure_.at_most.at.line > 0 ? closure_.at_most.at : closure_.length.at;
    if (fault.key == "one at") return closure_.one_at_at;
    if (fault.key == "closer near") return closure_.closer_near.front().at;
    return closure_.fasten_at;
  }

  bool add_places() {
    const ClosureInput in = input();
    // What is still to be measured settles nothing, but is no fault.
    for (const Origin origin : {closure_.at_most.origin, closure_.number.origin, closure_.pitch.origin, closure_.eyelets.origin})
      if (origin == Origin::to_measure && !in.at_most && !in.number) return true;
    const auto outcome = place_fasteners(in, in_);
    if (const auto* fault = std::get_if<ClosureFault>(&outcome)) {
      say(Severity::error, fault->code, place_of(*fault), fault->sentence, fault->hint);
      return false;
    }
    const ClosurePlaces& places = std::get<ClosurePlaces>(outcome);
    // Levels beyond the edge are wrong whether or not one must stand there.
    for (const Level& level : closure_.levels)
      if (level.from_top > *closure_.length) {
        say(Severity::error, "level-off-edge", level.at,
            "Level " + level.name + " is " + worked(level.from_top, in_) + " down; " + edge_name() + " ends at " +
                worked(*closure_.length, in_) + ".",
            "levels count from the top of the edge");
        return false;
      }
    for (const auto& [forced, away] : places.crowded)
      say(Severity::hold, "levels-crowd", closure_.one_at_at,
          "Two " + words_.many + " would stand only " + worked(away, in_) + " apart at " +
              (forced.level.empty() ? "the ends" : forced.level) + ".",
          "drop it from `one at`, or move the inset");
    plan_.fasteners = places.places;
    plan_.gaps = places.gaps;
    plan_.widest_gap = places.widest;
    plan_.other_side = places.other_side;
    for (const CloserPart& c : in.closer)
      plan_.closer.push_back({c.level, {std::max(Length{}, c.from), std::min(plan_.edge_length, c.to)}});
    if (closure_.alternate.known() && *closure_.alternate)
      for (std::size_t i = 1; i < plan_.fasteners.size(); i += 2) plan_.fasteners[i].other_way = true;
    const auto n = static_cast<std::int64_t>(plan_.fasteners.size());
    if (closure_.closings.known()) plan_.times = *closure_.closings;
    plan_.fasteners_in_all = n * closure_.rows * plan_.times;
    add_count(in, n);
    add_positions();
    return true;
  }

  static Length at_most_between(const ClosureInput& in, Length from, Length to) {
    Length least = *in.at_most;
    for (const CloserPart& c : in.closer) {
      const Length within = std::min(to, c.to) - std::max(from, c.from);
      if (within > c.at_most.times(1, 2) || within == to - from) least = std::min(least, c.at_most);
    }
    return least;
  }

  void add_count(const ClosureInput& in, std::int64_t n) {
    NewFigure f = figure("count");
    f.is(n).from(key("edge length")).from(key("at most"), closure_.at_most);
    if (in.number) {
      f.written().at(closure_.number.known() ? closure_.number.at : closure_.eyelets.at);
    } else if (in.at_most && !in.pitch) {
      std::string numbers;
      Length from = plan_.fasteners.front().from_top;
      for (const Fastener& p : plan_.fasteners)
        if ((p.fixed || &p == &plan_.fasteners.back()) && p.from_top > from) {
          numbers += (numbers.empty() ? "" : " + ") + worked(p.from_top - from, in_) + " / " +
                     worked(at_most_between(in, from, p.from_top), in_);
          from = p.from_top;
        }
      f.working("number of " + words_.many, "gaps of each stretch = stretch / at most, up to a whole one; all gaps + 1",
                numbers + " + 1");
    }
    f.add();
    const bool lacing = closure_.fasten == Fasten::lacing;
    NewFigure all = figure("in all");
    all.is(plan_.fasteners_in_all * (lacing ? 2 : 1)).from(key("count"));
    if (plan_.times > 1) all.from(key("closings"), closure_.closings);
    if (closure_.rows > 1 || lacing || plan_.times > 1)
      all.working(lacing ? "eyelets in all" : words_.many + " in all",
                  std::string(lacing ? "pairs × 2 × rows" : "count × rows") + (plan_.times > 1 ? " × closings" : ""),
                  whole_number(n) + (lacing ? " × 2 × " : " × ") + whole_number(closure_.rows) +
                      (plan_.times > 1 ? " × " + whole_number(plan_.times) : ""));
    all.add();
    if (n > 1) figure("pitch widest").is(plan_.widest_gap).from(key("count")).from(key("edge length")).add();
    for (std::size_t i = 0; i < plan_.gaps.size(); ++i)
      figure("pitch " + whole_number(static_cast<std::int64_t>(i + 1))).is(plan_.gaps[i]).from(key("count")).add();
  }

  void add_positions() {
    figure("top inset")
        .is(plan_.fasteners.front().from_top)
        .from("", closure_.top_inset)
        .written()
        .at(closure_.top_inset.at)
        .add();
    figure("bottom inset")
        .is(plan_.edge_length - last_place())
        .from(key("edge length"))
        .from("closures/" + closure_.named.name + "/bottom inset", closure_.bottom_inset)
        .add();
    std::size_t start = 0;
    for (std::size_t i = 0; i < plan_.fasteners.size(); ++i) {
      const Fastener& p = plan_.fasteners[i];
      NewFigure f = figure("fastener " + whole_number(static_cast<std::int64_t>(i + 1)));
      f.is(p.from_top).from(key("count")).from(key("edge length")).from(key("top inset"));
      if (!p.level.empty()) f.plain_input(key("levels/" + p.level));
      if (i > 0) {
        std::size_t end = i;  // the next fixed place
        while (end + 1 < plan_.fasteners.size() && !plan_.fasteners[end].fixed) ++end;
        const auto k = static_cast<std::int64_t>(i - start), n = static_cast<std::int64_t>(end - start);
        const Length from = plan_.fasteners[start].from_top, to = plan_.fasteners[end].from_top;
        f.working(words_.one + " " + whole_number(static_cast<std::int64_t>(i + 1)) + " from the top",
                  "start + step × stretch / gaps",
                  worked(from, in_) + " + " + whole_number(k) + " × " + worked(to - from, in_) + " / " + whole_number(n));
      }
      f.add();
      if (p.fixed) start = i;
    }
    for (std::size_t i = 0; i < plan_.other_side.size(); ++i)
      figure("other side " + whole_number(static_cast<std::int64_t>(i + 1)))
          .is(plan_.other_side[i])
          .from(key("count"))
          .from(key("edge length"))
          .add();
  }

  Length last_place() const {
    return plan_.other_side.empty() ? plan_.fasteners.back().from_top
                                    : std::max(plan_.other_side.back(), plan_.fasteners.back().from_top);
  }

  void add_lap() {
    plan_.lap = closure_.lap.known() ? *closure_.lap : Length{};
    plan_.underlap = closure_.underlap.known() ? *closure_.underlap : Length{};
    figure("set back").is(plan_.set_back).from("", closure_.set_back).written().add();
    figure("lap").is(plan_.lap).from("", closure_.lap).written().add();
    figure("underlap").is(plan_.underlap).from("", closure_.underlap).written().add();
    if (closure_.fasten == Fasten::drawstring && closure_.sides.empty()) return;
    const Piece* first = closure_.sides.empty() ? nullptr : project_.piece(closure_.sides.front());
    const SideCut upper = side_cut(closure_, first, false);
    if (upper.faced) figure("seam with facing").is(upper.turn).written().add();
    else figure("turn back").is(upper.turn).from("", closure_.turn_back).written().add();
    if (closure_.sides.size() > 1) {
      add_side(closure_.sides[0], first, false);
      add_side(closure_.sides[1], project_.piece(closure_.sides[1]), true);
    } else if (!plan_.overlapping && plan_.lap == plan_.underlap) {
      add_side("both sides", first, false);
    } else {
      add_side("upper side", first, false);
      add_side("under side", first, true);
    }
  }

  void add_side(const std::string& side, const Piece* piece, bool under) {
    const SideCut cut = side_cut(closure_, piece, under);
    const std::string lap = under ? "underlap" : "lap", turn = cut.faced ? "seam with facing" : "turn back";
    figure("cut past meeting line/" + side)
        .is(cut.past())
        .from(key(lap))
        .from(key(turn))
        .working("cut edge of " + side, lap + " + " + turn, worked(cut.lap, in_) + " + " + worked(cut.turn, in_))
        .add();
    plan_.cut_sides.push_back(side);
  }

  void add_strength() {
    if (closure_.guard && closure_.guard->width.known())
      figure("guard width").is(*closure_.guard->width).from("", closure_.guard->width).written().add();
    if (closure_.backed_with.known())
      figure("backing width").is(*closure_.backing_width).from("", closure_.backing_width).written().add();
    if (closure_.stitches_each.known())
      figure("stitches each").is(*closure_.stitches_each).from("", closure_.stitches_each).written().add();
  }

  void add_buttonhole() {
    const Notion* notion = project_.notion(closure_.with);
    if (notion == nullptr || !notion->across.known()) return;
    const Length thick = notion->thickness.known() ? *notion->thickness : Length::sixty_fourths(8);
    const std::string of = "notions/" + notion->named.name + "/";
    const Given<Length> thickness = notion->thickness.known()
                                        ? notion->thickness
                                        : Given<Length>::standing(thick, 'c', "1/8 in, where no thickness is written");
    const Given<ButtonholeIs>& rule = project_.rules.buttonhole_is;
    const bool more = buttonhole_eighth_more(rule, notion->shank);
    figure("buttonhole")
        .is(buttonhole_length(*notion->across, thick, more))
        .from(of + "across", notion->across)
        .from(of + "thickness", thickness)
        .from("rules/buttonhole is")
        .working("length of each buttonhole",
                 std::string("across + thickness") + (!more           ? ""
                                                      : notion->shank ? " + 1/8 in for the shank"
                                                                      : " + 1/8 in, by the rule"),
                 worked(*notion->across, in_) + " + " + worked(thick, in_) + (more ? " + " + worked(kLapLineToHole, in_) : ""))
        .add();
    if (!closure_.buttonholes_along) figure("buttonhole begins").is(kLapLineToHole).from(key("buttonhole")).add();
  }

  void add_lace() {
    if (plan_.fasteners.empty() || !closure_.gap.known()) return;
    const Length gap = *closure_.gap, ends = *closure_.tie_ends;
    const bool loops = closure_.waist_loops.known() && *closure_.waist_loops;
    figure("gap").is(gap).from("", closure_.gap).written().at(closure_.gap.at).add();
    std::vector<Length> pitches;
    for (std::size_t i = 1; i < plan_.fasteners.size(); ++i)
      pitches.push_back(plan_.fasteners[i].from_top - plan_.fasteners[i - 1].from_top);
    // Neighbours of one stretch differ by a tick at most; the pitch of the row stands for them where there is one stretch.
    if (plan_.gaps.size() == 1) std::fill(pitches.begin(), pitches.end(), plan_.gaps.front());
    const auto n = static_cast<std::int64_t>(plan_.fasteners.size());
    const Length path = lace_path(closure_.lace_as, n, gap, pitches);
    const std::int64_t times = loops ? 4 : 2;
    const Length through = add_through_eyelets(n);
    NewFigure f = figure("lace length");
    f.is(path + through + ends * times).from(key("gap")).from(key("count")).from(key("tie ends"), closure_.tie_ends);
    if (!through.is_zero()) f.from(key("through the eyelets"));
    f.working("lace of " + closure_.named.name,
              lace_formula() + (through.is_zero() ? "" : " + through the eyelets") + (loops ? " + 4 × loop" : " + 2 × tie end"),
              "g " + worked(gap, in_) + ", d " + worked(plan_.widest_gap, in_) + ", n " + whole_number(n) + ": " +
                  worked(path, in_) + " + " + (through.is_zero() ? "" : worked(through, in_) + " + ") + whole_number(times) +
                  " × " + worked(ends, in_));
    f.add();
  }

  // What the cloth's thickness takes; nothing where a layer's is not known.
  Length add_through_eyelets(std::int64_t pairs) {
    const Piece* side = closure_.sides.empty() ? nullptr : project_.piece(closure_.sides.front());
    if (side == nullptr) return {};
    std::vector<std::string> layers = side->from;
    if (closure_.backed_with.known() &&
        std::none_of(layers.begin(), layers.end(), [&](const std::string& l) { return same_name(l, *closure_.backed_with); }))
      layers.push_back(*closure_.backed_with);
    Length thick;
    NewFigure f = figure("through the eyelets");
    for (const std::string& name : layers) {
      const Cloth* cloth = project_.cloth(name);
      if (cloth == nullptr || !cloth->thickness.known()) return {};
      thick += *cloth->thickness;
      f.from("cloths/" + name + "/thickness", cloth->thickness);
    }
    const Length all = lace_through(pairs, thick);
    const auto fine = [](Length l) { return text_of(l, ShownIn::centimetres, Length::tenth_mm(1), Rounding::nearest).plain(); };
    f.is(all)
        .from(key("count"))
        .working("lace of " + closure_.named.name + " through its eyelets", "eyelets × 2 × thickness of the edge",
                 whole_number(2 * pairs) + " × 2 × " + fine(thick))
        .add();
    return all;
  }

  std::string lace_formula() const {
    switch (closure_.lace_as) {
      case LaceAs::cross: return "g + 2(n − 1)√(g² + d²)";
      case LaceAs::spiral: return "n g + (n − 1)√(g² + d²)";
      case LaceAs::staggered_spiral: return "(2n − 1)√(g² + (d/2)²)";
      case LaceAs::straight: return "(n − 1)g + 2√(g² + d²) + (n − 2)√(g² + 4d²)";
      case LaceAs::shop: return "(n − 1)g + (n − 1)√(g² + d²) + √(g² + (n − 1)²d²)";
    }
    return "";
  }

  // Two ties a place; `tie ends` is what hangs free of each.
  void add_ties() {
    if (plan_.fasteners.empty() || !closure_.tie_ends.known()) return;
    const TieCut tie = tie_cut(*closure_.tie_ends);
    figure("ties")
        .is(plan_.fasteners_in_all * 2)
        .from(key("in all"))
        .working("ties of " + closure_.named.name, "places × 2", whole_number(plan_.fasteners_in_all) + " × 2")
        .add();
    figure("tie length")
        .is(tie.cut())
        .from("closures/" + closure_.named.name + "/tie ends", closure_.tie_ends)
        .working("each tie of " + closure_.named.name + ", as cut", "free to tie + sewn down + hemmed",
                 worked(tie.free, in_) + " + " + worked(tie.sewn_down, in_) + " + " + worked(tie.hemmed, in_))
        .add();
    figure("tie free").is(tie.free).from("", closure_.tie_ends).written().add();
    figure("tape length")
        .is(tie.cut() * (plan_.fasteners_in_all * 2))
        .from(key("ties"))
        .from(key("tie length"))
        .working("tape for the ties of " + closure_.named.name, "ties × tie length",
                 whole_number(plan_.fasteners_in_all * 2) + " × " + worked(tie.cut(), in_))
        .add();
  }

  void add_cord() {
    const Length out = closure_.hangs_out.known() ? *closure_.hangs_out : Length{};
    figure("lace length")
        .is(plan_.edge_length + out * 2)
        .from(key("edge length"))
        .from(key("hangs out"), closure_.hangs_out)
        .working("cord of " + closure_.named.name, "edge + 2 × what hangs out",
                 worked(plan_.edge_length, in_) + " + 2 × " + worked(out, in_))
        .add();
  }

  void add_comparison() {
    if (closure_.compare_with.empty()) return;
    std::vector<Fasten> kinds{closure_.fasten};
    for (const Fasten kind : closure_.compare_with)
      if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end() && kind != Fasten::drawstring) kinds.push_back(kind);
    for (const Fasten kind : kinds) {
      const std::string word(word_for(kind));
      std::int64_t places = plan_.fasteners_in_all;
      if (kind != closure_.fasten) {
        ClosureInput other = input();
        other.staggered = false;
        other.pitch.reset();
        // Another kind keeps its own usual distance; hooks stay as far apart as hooks were asked for.
        const bool both_hooks = fastener_words(kind).one == words_.one;
        if (usual_at_most(kind) && !both_hooks) {
          other.at_most = fastener_words(kind).one == "hook" ? *project_.rules.hook_pitch : usual_at_most(kind);
          other.number.reset();
        }
        const auto outcome = place_fasteners(other, in_);
        if (outcome.index() == 1) continue;
        places = static_cast<std::int64_t>(std::get<0>(outcome).places.size()) * plan_.times;
      }
      const FastenerWork work = fastener_work(kind, places, closure_.eyelets_metal);
      const std::string compare = "compare " + word + "/";
      figure(compare + "places").is(places).from(key("edge length")).add();
      figure(compare + "pieces")
          .is(work.pieces)
          .from(key(compare + "places"))
          .working("pieces of " + word, work.pieces == places ? "one a place" : "places × 2",
                   whole_number(places) + (work.pieces == places ? "" : " × 2"))
          .add();
      if (work.minutes)
        figure(compare + "minutes")
            .is(*work.minutes)
            .from(key(compare + "places"))
            .working("minutes of " + word, "places × minutes each, common practice",
                     whole_number(places) + " × " + whole_number(*work.minutes / places))
            .add();
      plan_.compared.push_back(word);
    }
  }

  const Project& project_;
  const Closure& closure_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
  FastenerWords words_;
  ClosingPlan plan_;
};

}  // namespace

std::vector<ClosingPlan> add_closures(const Project& project, Figures& figures, Diagnostics& diag) {
  std::vector<ClosingPlan> plans;
  for (const Closure& closure : project.closures)
    if (auto plan = Closing(project, closure, figures, diag).made()) plans.push_back(std::move(*plan));
  add_closing_notions(project, plans, figures, diag);
  return plans;
}

}  // namespace gownsheaf
