#include "calculate/cut_list.h"

#include <algorithm>

#include "calculate/cut_parts.h"
#include "calculate/cut_sizes.h"
#include "calculate/joined_layers.h"
#include "calculate/joined_parts.h"
#include "calculate/layers.h"
#include "calculate/match_places.h"
#include "calculate/new_figure.h"
#include "calculate/piece_edges.h"
#include "calculate/yardage.h"
#include "diagnostics/message.h"
#include "nest/nest.h"

namespace gownsheaf {
namespace {

class CutList {
 public:
  CutList(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag)
      : project_(project), sums_(sums), figures_(figures), diag_(diag), in_(shown_in(project)) {}

  std::vector<ClothCuts> made() {
    std::vector<ClothCuts> all;
    for (const Cloth& cloth : project_.cloths) all.push_back({&cloth, {}});
    for (const Piece& piece : project_.pieces) {
      add_piece_figures(piece);
      say_closings_cut_short(piece);
      std::vector<std::string> seen;
      for (const std::string& name : piece.from) {
        const auto same = [&](const std::string& s) { return same_name(s, name); };
        if (std::any_of(seen.begin(), seen.end(), same)) continue;
        seen.push_back(name);
        const std::int64_t layers = std::count_if(piece.from.begin(), piece.from.end(), same);
        for (ClothCuts& cuts : all)
          if (same_name(cuts.cloth->named.name, name)) add_cut(piece, cuts, layers);
      }
    }
    all.erase(std::remove_if(all.begin(), all.end(), [](const ClothCuts& c) { return c.cuts.empty(); }), all.end());
    for (ClothCuts& cuts : all)
      std::stable_sort(cuts.cuts.begin(), cuts.cuts.end(), [](const Cut& a, const Cut& b) {
        if (a.piece.full_width != b.piece.full_width) return a.piece.full_width;
        if (a.piece.along != b.piece.along) return a.piece.along > b.piece.along;
        return a.piece.across > b.piece.across;
      });
    return all;
  }

 private:
  NewFigure figure(const Piece& piece, std::string_view quantity, std::string_view cloth = "") {
    NewFigure f(figures_, in_, "pieces", piece.named.name, quantity, cloth);
    f.at(piece.named.at);
    return f;
  }
  std::string key(const Piece& piece, std::string_view quantity) const {
    return "pieces/" + piece.named.name + "/" + std::string(quantity);
  }

  void say(Severity severity, std::string code, const Piece& piece, const SourceSpan& at, std::string sentence,
           std::string hint) {
    diag_.add(message({piece.named.name, "pieces", "cutting list"}, severity, std::move(code), at, std::move(sentence),
                      std::move(hint)));
  }

  void add_piece_figures(const Piece& piece) {
    const Allowed a = allowed_on(piece);
    if (piece.width.kind == Size::Kind::finished)
      figure(piece, "finished width").is(piece.width.value).written().at(piece.width.at).add();
    if (piece.length.kind == Size::Kind::finished)
      figure(piece, "finished length").is(piece.length.value).written().at(piece.length.at).add();
    figure(piece, "seam allowance").is(a.seam).from("", piece.seam_allowance).written().add();
    if (!a.skirt_ends) return;
    // Of a piece that is no skirt the end that nothing is written for has its seam, which is no guess.
    const bool hangs = piece.part_of.known() && (*piece.part_of == PartOf::skirt || *piece.part_of == PartOf::petticoat);
    const auto end = [&](const char* name, Length is, const Given<Length>& given) {
      NewFigure f = figure(piece, name);
      f.is(is).written();
      if (hangs || given.origin == Origin::written) f.from("", given);
      else f.from("pieces/" + piece.named.name + "/seam allowance");
      f.add();
    };
    end("hem", a.hem, piece.hem);
    end("top", a.top, piece.top);
  }

  std::optional<std::int64_t> copies(const Piece& piece, const Cloth& cloth, std::int64_t layers) {
    const auto number = sums_.number_of(piece, cloth);
    if (!number) return std::nullopt;
    return *number * layers;
  }

  void say_closings_cut_short(const Piece& piece) {
    for (const ClosingShort& s : long_sides(project_, piece).too_short)
      say(Severity::error, "closing-cut-short", piece, s.at,
          capital(piece.named.name) + " is cut " + worked(s.has, in_) + " past the " +
              std::string(*s.closing->drawn_to == DrawnTo::fold ? "fold" : "meeting line") + " of " + s.closing->named.name +
              "; " + worked(s.wants, in_) + " is needed" +
              (s.closing->facing.empty() ? " to turn back." : " for the lap and the seam with the facing."),
          "cut " + worked(s.wants - s.has, in_) + " wider at that edge" +
              (s.closing->facing.empty() ? ", or give a `facing`" : "") +
              "; if the width holds it already, `drawn to: cut edge`");
  }

  void add_cut(const Piece& piece, ClothCuts& cuts, std::int64_t layers) {
    const Cloth& cloth = *cuts.cloth;
    const std::string& name = cloth.named.name;
    if (!cloth.width.known()) {
      say(Severity::hold, "width-unknown", piece, cloth.named.at,
          capital(name) + " has no width yet: what is cut from it cannot be laid.",
          "`width: 54 in` on the cloth, selvage to selvage");
      return;
    }
    const auto number = copies(piece, cloth, layers);
    if (!number) {
      if (project_.failed_sections.count("pleats") != 0 || project_.failed_sections.count("rounds") != 0) return;
      say(Severity::hold, "fills-unknown", piece, piece.make.at,
          capital(piece.named.name) + " fills " + piece.make->fills + ", whose flat width is not known.",
          "give the run its `flat`, or `finished` and what settles the rest");
      return;
    }
    const Allowed a = allowed_on(piece);
    const bool covers = to_cover(project_, piece, cloth).has_value();
    const bool full = is_full_width(piece) && !covers;
    const auto wide = cut_width(project_, piece, cloth, full, figures_);
    const auto high = cut_length(project_, piece, cloth, *number, figures_);
    if (!wide || !high) {
      say(Severity::hold, "size-missing", piece, piece.named.at,
          capital(piece.named.name) + " has no " + (wide ? "length" : "width") + " yet: it is not in the lay of " + name + ".",
          wide ? "`finished length`, stitch line to stitch line or hem" : "`finished width`, stitch line to stitch line");
      return;
    }
    Cut cut;
    cut.source = &piece;
    CutPiece& c = cut.piece;
    c.piece = piece.named.name;
    c.cloth = name;
    c.copies = *number;
    c.pair = piece.make.known() && piece.make->kind == Make::Kind::pairs;
    c.on_fold = piece.on_fold.known() && *piece.on_fold;
    c.full_width = full;
    const Grain grain = piece.grain.known() ? *piece.grain : Grain::along;
    const LayRule rule = piece.lay.known() ? *piece.lay : cloth.lay.known() ? *cloth.lay : LayRule::either_way;
    c.grain = std::string(word_for(rule == LayRule::bias ? Grain::bias : grain));
    c.across = grain == Grain::across && !full ? *high : *wide;
    c.along = grain == Grain::across && !full ? *wide : *high;
    c.seam = a.seam;
    c.hem = a.skirt_ends ? a.hem : Length{};
    c.top = a.skirt_ends ? a.top : Length{};
    c.allowances = allowances_in_words(project_, piece, a, full);
    c.at = piece.named.at;
    c.key = "pieces/" + piece.named.name + "/" + name;
    cut.takes = c.along;
    if (cloth.repeat && cloth.repeat->along) {
      if (*project_.rules.plaid_extra == PlaidExtra::one_repeat_a_piece) {
        cut.takes = c.along + *cloth.repeat->along;
        figure(piece, "repeat along", name).is(*cloth.repeat->along).at(cloth.repeat->at).written().add();
        figure(piece, "taken", name)
            .is(cut.takes)
            .from(c.key + "/cut length")
            .from(c.key + "/repeat along")
            .from("rules/plaid extra")
            .working("cloth that one " + c.piece + " takes", "cut length + one repeat",
                     worked(c.along, in_) + " + " + worked(*cloth.repeat->along, in_))
            .add();
      } else if (full || covers) {
        cut.repeat = cloth.repeat->along;
        cut.takes = up_to_repeat(c.along, *cut.repeat);
        cut.half_drop = cloth.repeat->half_drop && full && *number > 1;
        add_repeats(project_, cut, *cut.repeat, figures_);
      }
    }
    cut.may_turn = rule == LayRule::any_way && !full;
    cut.end_for_end = rule != LayRule::one_way;
    if (piece.drawn && !full) c.outline = grain == Grain::across ? nest::posed(piece.drawn->cut, {1, false}) : piece.drawn->cut;
    add_lines(piece, cloth, grain, a, full, c);
    add_copies(piece, cloth, *number, layers);
    if (c.on_fold)
      figure(piece, "half width", name)
          .is(wide->times(1, 2))
          .from(c.key + "/cut width")
          .working("from the fold to the cut edge", "cut width / 2", worked(*wide, in_) + " / 2")
          .add();
    for (Cut& one : settled(piece, cloth, std::move(cut), grain, rule)) cuts.cuts.push_back(std::move(one));
  }

  void add_copies(const Piece& piece, const Cloth& cloth, std::int64_t number, std::int64_t layers) {
    NewFigure f = figure(piece, "copies", cloth.named.name);
    f.is(number);
    const Make make = piece.make.known() ? *piece.make : Make{};
    const std::string times = layers > 1 ? " × " + whole_number(layers) + " layers" : "";
    if (make.kind == Make::Kind::joined_round || make.kind == Make::Kind::fills) {
      const Length one = *joined_width(piece, cloth);
      const std::string what = worked(make.kind == Make::Kind::fills ? *sums_.filled(make.fills) : make.joined_round, in_);
      f.plain_input(make.kind == Make::Kind::fills ? (project_.run(make.fills) != nullptr ? "pleats/" : "rounds/") + make.fills
                                                   : key(piece, "joined round"));
      f.from("cloths/" + cloth.named.name + "/width").from(key(piece, "seam allowance"));
      f.working("widths of " + cloth.named.name + " for " + piece.named.name,
                "flat / width between seam lines, up to a whole width" + times, what + " / " + worked(one, in_));
    } else {
      f.from(key(piece, "make"), piece.make);
      if (layers > 1)
        f.working("copies of " + piece.named.name, "make × layers", whole_number(number / layers) + " × " + whole_number(layers));
      else f.written();
    }
    f.add();
  }

  // What is drawn in the piece, and where the repeat must meet: a drawing's mark, or the top of the first edge that is named.
  void add_lines(const Piece& piece, const Cloth& cloth, Grain grain, const Allowed& a, bool full, CutPiece& c) {
    const bool matched = !piece.match_at.empty() && cloth.repeat && !full;
    if (piece.drawn && !full) {
      const Length high = bounds(piece.drawn->cut).height;
      for (const DrawnPiece::Line& line : piece.drawn->lines) {
        Polygon points = line.points;
        if (grain == Grain::across)  // as the outline: a quarter turn
          for (Point& p : points) p = {high - p.y, p.x};
        c.lines.push_back({line.kind, std::move(points), line.closed});
      }
      if (matched) meet_neighbours(piece, cloth, c);
    } else if (matched && grain != Grain::across) {
      const bool far = same_name(piece.match_at.front(), "back") || same_name(piece.match_at.front(), "centre");
      c.match = Point{std::min(c.along, a.skirt_ends ? a.top : a.seam),
                      far ? c.across - std::min(c.across, a.seam) : std::min(c.across, a.seam)};
    }
  }

  // By its first match mark, or by its neighbours'; what then does not meet is told.
  void meet_neighbours(const Piece& piece, const Cloth& cloth, CutPiece& c) {
    const auto places = match_places_.try_emplace(cloth.named.name).first;
    if (places->second.on_lines.empty()) places->second = match_places(project_, cloth);
    const auto at = places->second.on_lines.find(piece.named.name);
    if (at == places->second.on_lines.end()) return;
    const Repeat laid = laid_repeat(*cloth.repeat);
    c.match = Point{within_repeat(at->second.x, c.along, laid.along), within_repeat(at->second.y, c.across, laid.across)};
    for (const MatchClash& clash : places->second.clashes)
      if (clash.piece == piece.named.name) say_clash(piece, clash);
  }

  void say_clash(const Piece& piece, const MatchClash& clash) {
    say(Severity::hold, "match-not-both", piece, piece.match_at_span,
        capital(piece.named.name) + " is matched at one point of its drawing; at " +
            (clash.mark.empty() ? "the next" : "the mark " + clash.mark) + " the design is off by " +
            worked(clash.along.to_step(mark_step(in_), Rounding::nearest), in_) + " along and " +
            worked(clash.across.to_step(mark_step(in_), Rounding::nearest), in_) + " across.",
        "match one point of it, or move a seam until both are whole repeats apart");
  }

  // May it be laid at all, and in one piece? What may not be laid is left out, and says so.
  std::vector<Cut> settled(const Piece& piece, const Cloth& cloth, Cut cut, Grain grain, LayRule rule) {
    const std::string& name = cloth.named.name;
    CutPiece& c = cut.piece;
    cut.bias = (grain == Grain::bias || rule == LayRule::bias) && !c.full_width;
    if (cut.bias) {  // its box at half a quarter to the length
      const Polygon ring = c.outline.empty() ? rectangle(c.along, c.across) : c.outline;
      const Length high = bounds(nest::posed(ring, {0, false, 45'000})).height;
      if (high <= *shrunk_usable_width(cloth)) return {std::move(cut)};
      cut.in_lay = false;
      say(cloth.width.origin == Origin::written ? Severity::error : Severity::hold, "wider-than-cloth", piece, piece.width.at,
          capital(piece.named.name) + " on the bias takes " + worked(high, in_) + " across; " +
              worked(*shrunk_usable_width(cloth), in_) + " of " + name + " can be used.",
          "draw it in parts, or a wider cloth");
      return {std::move(cut)};
    }
    offer_ways(piece, cloth, cut);
    const Length usable = *shrunk_usable_width(cloth);
    const bool turned_fits = c.along <= usable;
    if (c.full_width || c.across <= usable || (cut.may_turn && turned_fits)) return {std::move(cut)};
    const bool covers = to_cover(project_, piece, cloth).has_value();
    const std::string seen = capital(piece.named.name) + " is " + worked(c.across, in_) + " across; " + worked(usable, in_) +
                             " of " + name + " can be used";
    if (piece.drawn && piece.may_be_pieced.known() && *piece.may_be_pieced) {
      if (auto parts = outline_in_parts(piece, cloth, cut, usable)) return std::move(*parts);
    }
    if (!piece.drawn && (covers || (piece.may_be_pieced.known() && *piece.may_be_pieced))) {
      const auto panel = piece_panel(panel_of(project_, piece, c.across, usable, c.seam));
      const bool joins_allowed =
          panel && (!piece.joining.joins || static_cast<std::int64_t>(panel->joins.size()) <= *piece.joining.joins);
      if (joins_allowed) {
        if (!panel->kept_clear)
          say(Severity::warning, "join-not-clear", piece, piece.joining.at.line > 0 ? piece.joining.at : piece.named.at,
              "A join of " + piece.named.name + " falls " + nearest_join(*panel, c.across) +
                  " from its edge, nearer than it may.",
              "a wider cloth, or fewer places to keep clear");
        return parts_of_panel(project_, cut, *panel, figures_);
      }
      cut.in_lay = false;
      const std::string many =
          panel ? whole_number(static_cast<std::int64_t>(panel->joins.size())) + " joins" : "more joins than can be counted";
      say(Severity::error, "wider-than-cloth", piece, piece.joining.at.line > 0 ? piece.joining.at : piece.named.at,
          seen + ", so it takes " + many + (piece.joining.joins ? "; it may have " + whole_number(*piece.joining.joins) : "") +
              ".",
          "more under `joins`, or a wider cloth");
      return {std::move(cut)};
    }
    cut.in_lay = false;
    const std::string turn = grain == Grain::across ? "along" : "across";
    const bool sure = cloth.width.origin == Origin::written;
    say(sure ? Severity::error : Severity::hold, "wider-than-cloth", piece, piece.width.at, seen + ".",
        piece.drawn && piece.may_be_pieced.known() && *piece.may_be_pieced
            ? "joined where it may be, a part of it would still be too wide or fall apart: draw it in parts"
        : piece.drawn
            ? (turned_fits ? "turn it: `grain: " + turn + "`, or draw it in parts" : "draw it in parts, or a wider cloth")
        : turned_fits ? "turn it: `grain: " + turn + "`, or `may be pieced: yes`"
                      : "`may be pieced: yes`, or a wider cloth");
    return {std::move(cut)};
  }

  // A drawn piece wider than the cloth that may be joined along its length.
  std::optional<std::vector<Cut>> outline_in_parts(const Piece& piece, const Cloth& cloth, const Cut& cut, Length usable) {
    const PanelInput input = panel_of(project_, piece, cut.piece.across, usable, cut.piece.seam);
    auto panel = piece_panel(input);
    if (!panel) return std::nullopt;
    auto parts = joined_outline(project_, cut, input, *panel, figures_);
    if (!parts) return std::nullopt;
    parts->front().breadth = add_joins(project_, cut, *panel, figures_);
    say(Severity::note, "outline-joined", piece, piece.joining.at.line > 0 ? piece.joining.at : piece.named.at,
        capital(piece.named.name) + " is " + worked(cut.piece.across, in_) + " across; " + worked(usable, in_) + " of " +
            cloth.named.name + " can be used: it is joined of " + whole_number(static_cast<std::int64_t>(panel->parts.size())) +
            ", the joins along its length.",
        "a wider cloth has it whole");
    return parts;
  }

  std::string nearest_join(const PiecedPanel& panel, Length across) const {
    Length least = across;
    for (const Length join : panel.joins) least = std::min({least, join, across - join});
    return worked(least.to_step(cut_step(in_), Rounding::nearest), in_);
  }

  // A lining or interlining narrower than the shell's breadths is joined: each way with its cloth and its joins.
  void offer_ways(const Piece& piece, const Cloth& cloth, const Cut& cut) {
    const auto shell = shell_of(project_, piece, cloth);
    if (!shell || !shell->cloth->width.known()) return;
    const auto joined = joined_width(*shell->piece, *shell->cloth);
    const auto breadths = sums_.number_of(*shell->piece, *shell->cloth);
    if (!joined || !breadths) return;
    const Allowed a = allowed_on(piece);
    const auto ways = ways_to_join({*breadths, *joined, cut.takes, a.seam, *shrunk_width(cloth), *shrunk_usable_width(cloth),
                                    selvage_of(cloth), *project_.rules.strips_lose});
    if (!ways) return;
    const std::string& name = cloth.named.name;
    const auto add = [&](const std::string& way, const LayerWay& w, const char* formula) {
      figure(piece, way + "/joins", name).is(w.joins).from(cut.piece.key + "/cut length").add();
      figure(piece, way + "/cloth", name)
          .is(w.cloth)
          .from(cut.piece.key + "/cut length")
          .from("cloths/" + name + "/usable width")
          .working(name + " for " + piece.named.name + ", " + way, formula, whole_number(w.joins) + " joins")
          .add();
    };
    add("in pleats", ways->in_pleats, "widths joined right round × cut length");
    add("by breadths", ways->by_breadths, "the lay of the parts of every breadth");
    std::string hint = "joins inside pleats: " + way_in_words(ways->in_pleats) +
                       "; its seams over the shell's: " + way_in_words(ways->by_breadths);
    if (ways->turned) {
      add("turned", *ways->turned, "shell breadths × width between seam lines + 2 × seam");
      hint += "; turned, its length round the skirt: " + way_in_words(*ways->turned);
    }
    const std::string in_each = whole_number(ways->joins_in_each) + (ways->joins_in_each == 1 ? " join" : " joins") + " in each";
    say(Severity::warning, "joined-interlining", piece, piece.from_at,
        capital(name) + " is " + worked(*shrunk_width(cloth), in_) + " wide; breadths of " + shell->cloth->named.name + " are " +
            worked(*shrunk_width(*shell->cloth), in_) + ": " + in_each + ".",
        hint);
  }

  std::string way_in_words(const LayerWay& way) const {
    return (way.joins == 0 ? "no joins" : whole_number(way.joins) + (way.joins == 1 ? " join" : " joins")) + ", " +
           text_of(way.cloth, in_, cut_step(in_), Rounding::up).plain();
  }

  const Project& project_;
  RoundSums& sums_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
  std::map<std::string, MatchPlaces> match_places_;  // by cloth
};

}  // namespace

std::vector<ClothCuts> cut_list(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag) {
  return CutList(project, sums, figures, diag).made();
}

}  // namespace gownsheaf
