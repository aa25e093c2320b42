#include "calculate/pleat_waist.h"

#include <algorithm>
#include <vector>

#include "calculate/exact.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {

Gauging gauge(Length flat, Length stitch, Length layers) {
  Gauging g;
  g.ridges = std::max<std::int64_t>(1, (Exact(flat) / (Exact(2) * Exact(stitch))).nearest_tie_down());
  g.stitch = flat.times(1, 2 * g.ridges);
  g.closes_to = layers * (2 * g.ridges);
  return g;
}

bool will_not_close(const Gauging& g, Length finished) { return g.closes_to > finished; }

bool looks_gathered(const Gauging& g, Length finished, Length layers) { return finished > layers * (8 * g.ridges); }

Length pleated_thickness(Length flat, Length finished, Length layers) {
  return layers.times(flat.in_ticks(), finished.in_ticks());
}

namespace {

const Length kWorthSaying = Length::mm(1), kThick = Length::mm(3), kTooThick = Length::mm(5);

// The layers of cloth at the top of a run.
struct Layers {
  Length thickness;
  std::vector<const Cloth*> cloths;
  bool known = true, written = true, heavy = false, interlined = false;  // heavy: wool, or interlined
};

void put_cloths(const Project& project, const Piece& piece, bool interlining_cut_away, Layers& into) {
  for (const std::string& name : piece.from) {
    const Cloth* cloth = project.cloth(name);
    if (cloth == nullptr) {
      into.known = false;
      continue;
    }
    const bool interlining = cloth->used_as.known() && *cloth->used_as == UsedAs::interlining;
    if (interlining && interlining_cut_away) continue;
    into.interlined = into.interlined || interlining;
    into.heavy = into.heavy || interlining || (cloth->kind.known() && cloth->kind->find("wool") != std::string::npos);
    into.known = into.known && cloth->thickness.known();
    into.written = into.written && cloth->thickness.origin == Origin::written;
    if (cloth->thickness.known()) into.thickness += *cloth->thickness;
    into.cloths.push_back(cloth);
  }
}

// The pieces of a run lie side by side: the thickest tells. A piece that fills the run or its round lies under them.
Layers layers_of(const Project& project, const RoundSums& sums, const PleatRun& run) {
  const Round* round = sums.round_of(run);
  const std::vector<std::string>& of = run.of.empty() && round != nullptr ? round->of : run.of;
  const bool cut_away = run.interlining_stops.known() && *run.interlining_stops > Length{};
  Layers thickest;
  thickest.known = false;
  for (const std::string& name : of) {
    const Piece* piece = project.piece(name);
    if (piece == nullptr) continue;
    Layers own;
    put_cloths(project, *piece, cut_away, own);
    if (!own.known || own.cloths.empty()) return {};
    if (thickest.cloths.empty() || own.thickness > thickest.thickness) thickest = own;
  }
  if (thickest.cloths.empty()) {
    thickest.known = false;
    return thickest;
  }
  for (const Piece& piece : project.pieces) {
    if (!piece.make.known() || piece.make->kind != Make::Kind::fills) continue;
    if (!piece.made_for.empty()) continue;  // a hem's facing is not at the waist
    const bool fills =
        same_name(piece.make->fills, run.named.name) || (round != nullptr && same_name(piece.make->fills, round->named.name));
    const bool named = std::any_of(of.begin(), of.end(), [&](const std::string& n) { return same_name(n, piece.named.name); });
    if (fills && !named) put_cloths(project, piece, cut_away, thickest);
  }
  return thickest;
}

std::string in_mm(Length l) { return decimal(Exact::make(l.in_ticks(), Length::mm(1).in_ticks()).value(), 2) + " mm"; }

class Waist {
 public:
  Waist(const Project& project, const RoundSums& sums, const RunSum& s, Figures& figures, Diagnostics& diag)
      : project_(project), s_(s), run_(*s.run), in_(shown_in(project)), figures_(figures), diag_(diag),
        layers_(layers_of(project, sums, run_)), flat_(*s.flat - (run_.plus.known() ? *run_.plus : Length{})),
        finished_(*s.finished) {}

  void add() {
    if (flat_ <= Length{} || finished_ <= Length{}) return;
    judge_stitching();
    if (run_.interlining_stops.known() && *run_.interlining_stops > Length{})
      figure("interlining stops").is(*run_.interlining_stops).from("", run_.interlining_stops).add();
    const bool gauged = run_.kind == PleatKind::cartridge;
    if (gauged || run_.kind == PleatKind::gathers) add_rows();
    if (gauged) add_ridges();
    else if (run_.kind != PleatKind::tucks) add_thickness();
  }

 private:
  std::string key(std::string_view quantity) const { return "pleats/" + run_.named.name + "/" + std::string(quantity); }
  NewFigure figure(std::string_view quantity) {
    NewFigure f(figures_, in_, "pleats", run_.named.name, quantity);
    f.at(run_.named.at);
    return f;
  }
  void from_cloths(NewFigure& f) const {
    for (const Cloth* cloth : layers_.cloths) f.from("cloths/" + cloth->named.name + "/thickness", cloth->thickness);
  }
  std::string thicknesses() const {
    std::string out;
    for (const Cloth* cloth : layers_.cloths) out += (out.empty() ? "" : " + ") + in_mm(*cloth->thickness);
    return layers_.cloths.size() > 1 ? "(" + out + ")" : out;
  }
  void say(const char* code, Severity severity, std::string sentence, std::string hint) {
    diag_.add(
        message({run_.named.name, "pleats", "pleats"}, severity, code, run_.named.at, std::move(sentence), std::move(hint)));
  }

  // No pleat is stitched down further than its cloth is long.
  void judge_stitching() {
    if (!run_.stitched_down.known()) return;
    for (const std::string& name : run_.of)
      if (const Piece* piece = project_.piece(name);
          piece != nullptr && piece->length.kind == Size::Kind::finished && *run_.stitched_down > piece->length.value) {
        diag_.add(message({run_.named.name, "pleats", "pleats"}, Severity::error, "pleats-contradict", run_.stitched_down.at,
                          "Run " + run_.named.name + " is stitched down " + worked(*run_.stitched_down, in_) + "; " + name +
                              " is only " + worked(piece->length.value, in_) + " long.",
                          "`stitched down` is measured from the top, to the hip as a rule"));
        return;
      }
  }

  void add_rows() {
    const Length plus = *s_.flat - flat_;
    const bool some = !plus.is_zero();
    if (some) figure("plus").is(plus).from("", run_.plus).written().add();
    if (run_.rows.known()) figure("rows").is(*run_.rows).from("", run_.rows).add();
    if (run_.row_gap.known() && run_.rows.known() && *run_.rows > 1)
      figure("row gap").is(*run_.row_gap).from("", run_.row_gap).add();
    for (std::int64_t k = 1; k <= 4; ++k) {
      const std::string part = "quarter " + whole_number(k);
      figure(part + "/flat")
          .is(plus + flat_.times(k, 4))
          .from(key("flat"))
          .working("this quarter mark on the flat cloth", some ? "plus + (flat − plus) × k / 4" : "flat × k / 4",
                   (some ? worked(plus, in_) + " + " : "") + worked(flat_, in_) + " × " + whole_number(k) + " / 4")
          .add();
      figure(part + "/edge")
          .is(finished_.times(k, 4))
          .from(key("finished"))
          .working("where it lies on the finished edge", "finished × k / 4",
                   worked(finished_, in_) + " × " + whole_number(k) + " / 4")
          .add();
    }
  }

  std::string gathered_flat() const { return s_.flat == flat_ ? "flat" : "(flat − plus)"; }

  void add_ridges() {
    if (!run_.stitch.known()) return;
    const Gauging g = gauge(flat_, *run_.stitch, layers_.thickness);
    const std::string n = whole_number(g.ridges);
    figure("ridges")
        .is(g.ridges)
        .from(key("flat"))
        .from(key("stitch wished"), run_.stitch)
        .working("ridges", gathered_flat() + " / (2 × stitch wished), to the nearest",
                 worked(flat_, in_) + " / (2 × " + worked(*run_.stitch, in_) + ")")
        .add();
    figure("stitch")
        .is(g.stitch)
        .from(key("flat"))
        .from(key("ridges"))
        .working("one stitch", gathered_flat() + " / (2 × ridges)", worked(flat_, in_) + " / (2 × " + n + ")")
        .add();
    if (!layers_.known) return;
    NewFigure f = figure("closes to");
    f.is(g.closes_to).from(key("ridges"));
    from_cloths(f);
    f.working("least width of the ridges drawn close", "ridges × 2 × cloth", n + " × 2 × " + thicknesses()).add();
    const std::string room = worked(finished_, in_) + (run_.half ? " in each half" : "");
    if (will_not_close(g, finished_))
      say("gauging-will-not-close", layers_.written ? Severity::error : Severity::hold,
          "Run " + run_.named.name + ": " + n + " ridges of cloth " + in_mm(layers_.thickness) + " thick need " +
              text_of(g.closes_to, in_, mark_step(in_), Rounding::up).plain() + "; finished says " + room + ".",
          layers_.interlined ? "a longer `stitch`, the interlining cut away at the top (`interlining stops: 3 in`), or less cloth"
                             : "a longer `stitch`, or less cloth");
    else if (looks_gathered(g, finished_, layers_.thickness))
      say("gauging-loose", Severity::warning,
          "Run " + run_.named.name + ": " + n + " ridges stand in " + room +
              ", more than four times their own thickness; they will look gathered.",
          "a shorter finished edge or more cloth; wadding or flannel laid in the top also fills the ridges");
  }

  void add_thickness() {
    const Ratio thick = Ratio::of(flat_.in_ticks(), finished_.in_ticks());
    if (s_.pleated) {
      figure("cloths thick")
          .is(thick)
          .from(key("flat"))
          .from(key("finished"))
          .working("cloths on each other", "flat / finished", worked(flat_, in_) + " / " + worked(finished_, in_))
          .add();
      const bool five = flat_ >= 5 * finished_, seven = flat_ >= 7 * finished_;
      // How deep pleats lie is her choice only where she wrote it; else it follows from the cloth.
      const std::string less = run_.depth.known() && run_.depth.origin == Origin::written ? "less `depth`" : "fewer breadths";
      if (five)
        say("plies-stack", seven && layers_.known && layers_.heavy ? Severity::hold : Severity::warning,
            "Run " + run_.named.name + " lies " + decimal(Exact::of(thick).value(), 1) + " times its cloth thick at its seam; " +
                (seven ? "7 is too much for wool or an interlined skirt." : "5 and more are hard to sew through."),
            layers_.interlined ? less + ", more `finished`, or the interlining cut away at the top (`interlining stops: 3 in`)"
                               : less + ", or more `finished`");
    }
    if (!layers_.known || layers_.thickness.is_zero() || flat_ <= finished_) return;
    const Length stack = pleated_thickness(flat_, finished_, layers_.thickness);
    if (stack < kWorthSaying) return;  // it would print as next to nothing
    NewFigure f = figure("waist thickness");
    f.is(stack).from(key("flat")).from(key("finished"));
    from_cloths(f);
    f.working("thickness at the seam", "flat / finished × the layers",
              worked(flat_, in_) + " / " + worked(finished_, in_) + " × " + thicknesses())
        .add();
    if (stack > kThick)
      say("waist-thick", stack > kTooThick ? Severity::hold : Severity::warning,
          "Run " + run_.named.name + " is about " + in_mm(stack) + " thick at its seam; " +
              (stack > kTooThick ? "over 5 mm no waist seam holds well." : "over 3 mm is much for a waist seam."),
          layers_.interlined
              ? "cut the interlining away at the top (`interlining stops: 3 in`), or gauge instead: `kind: cartridge`"
              : "less cloth in the same edge, or gauge instead: `kind: cartridge`");
  }

  const Project& project_;
  const RunSum& s_;
  const PleatRun& run_;
  ShownIn in_;
  Figures& figures_;
  Diagnostics& diag_;
  Layers layers_;
  Length flat_, finished_;
};

}  // namespace

std::optional<Length> layers_at_top(const Project& project, const RoundSums& sums, const PleatRun& run) {
  const Layers layers = layers_of(project, sums, run);
  return layers.known && !layers.thickness.is_zero() ? std::optional(layers.thickness) : std::nullopt;
}

void add_pleat_waist(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag) {
  for (const RunSum& s : sums.runs())
    if (s.run->kind != PleatKind::plain && s.flat && s.finished) Waist(project, sums, s, figures, diag).add();
}

}  // namespace gownsheaf
