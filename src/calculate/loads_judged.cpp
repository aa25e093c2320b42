// What a strained closing has to be told of. Capacities are untested and pulls are estimates: nothing here refuses a packet.
#include <algorithm>

#include "calculate/loads.h"
#include "calculate/strained.h"
#include "diagnostics/message.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

constexpr double kGramsPerPound = 16 * kGramsPerOunce;

class LoadJudge {
 public:
  LoadJudge(const Strained& s, const LoadPlan& load, Diagnostics& diag) : s_(s), load_(load), diag_(diag) {}

  void all() {
    weight();
    fasteners();
    one_opens();
    close_worn();
    pitch();
    kind();
    stay();
    own_band();
    eyelets();
  }

 private:
  void say(Severity severity, std::string code, const SourceSpan& at, std::string sentence, std::string hint) {
    diag_.add(message({s_.closure.named.name, "strain", "closure reinforcement", true}, severity, std::move(code),
                      at.line > 0 ? at : s_.strain.at, std::move(sentence), std::move(hint)));
  }
  std::string force(Force f) const {
    return s_.in == ShownIn::centimetres ? decimal(f.value, 0) + " N" : decimal(f.value / kNewtonsPerPoundForce, 1) + " lbf";
  }
  static std::string mmhg(Pressure p) { return decimal(p.value / kPascalsPerMillimetreOfMercury, 0) + " mmHg"; }
  std::string said(Length l) const { return worked(l, s_.in); }
  static std::string number(std::size_t i) { return whole_number(static_cast<std::int64_t>(i + 1)); }
  bool hangs_from(std::string_view word) const { return *s_.strain.skirt_hangs_from == word; }

  void weight() {
    const bool heavy = s_.edge.hung.value > 3 * kGramsPerPound;
    if (s_.edge.hung.value <= 0 || !(hangs_from("hooks") || (hangs_from("bodice waist") && heavy))) return;
    say(Severity::hold, "skirt-on-hooks", s_.strain.at,
        "About " + plain_text(Value(s_.edge.hung), s_.in) + " of skirt would hang on " +
            (hangs_from("hooks") ? "hooks" : "a bodice without a stay") + ".",
        "give it a `stay`, or `skirt hangs from: own band`; an estimate, common practice");
  }

  // More than the share that is asked is a warning; more than one holds keeps the step waiting.
  void fasteners() {
    if (load_.band == "R0" || load_.fastener.value <= s_.may_hold.value) return;
    const std::string takes = "One of the fasteners may take about " + force(load_.fastener) + "; ";
    if (load_.fastener.value > s_.holds.value)
      say(Severity::hold, "fastener-overloaded", s_.strain.at, takes + force(s_.holds) + " is all that one holds.", hint());
    else
      say(Severity::warning, "fastener-near-limit", s_.strain.at, takes + force(s_.may_hold) + " is what it should be asked for.",
          hint());
  }
  // The first way of those reckoned that is enough.
  std::string hint() const {
    const std::string end = "; untested figures, an estimate";
    for (const WayToEase& w : load_.eased) {
      if (!w.enough) continue;
      if (w.way == "own band") return "enough by this reckoning: `skirt hangs from: own band`" + end;
      if (w.way == "waist stay")
        return "enough by this reckoning: a `stay` smaller by " + said(Length::sixty_fourths(32)) + ", at every bone" + end;
      if (w.way == "second row") return "enough by this reckoning: `rows: " + whole_number(s_.plan.rows + 1) + "`" + end;
      if (w.way == "lacing") return "enough by this reckoning: lace it" + end;
      if (w.way == "closer" || w.way == "closer still") return "enough by this reckoning: more of them, closer together" + end;
    }
    return "closer together (`at most`), a second row, or lacing" + end;
  }

  void one_opens() {
    if (!load_.gives_way || load_.band < "R2" || load_.fastener.value > s_.holds.value ||
        load_.neighbour_takes.value <= s_.holds.value)
      return;
    const std::string which =
        *load_.gives_way == *load_.neighbour ? "the other of its place" : "number " + number(*load_.neighbour);
    say(Severity::warning, "neighbour-overloaded", s_.strain.at,
        "Should number " + number(*load_.gives_way) + " open, " + which + " takes about " + force(load_.neighbour_takes) + "; " +
            force(s_.holds) + " is all that one holds.",
        "closer together, or look at every fastener before each wearing; an estimate");
  }

  void close_worn() {
    const Length too_tight = Length::inches(1);
    if (s_.project.garment.known() && *s_.project.garment == Garment::corset) return;
    for (std::size_t i = 0; i < s_.zones.size(); ++i) {
      const PulledZone& z = s_.edge.zones[i];
      if (z.pressure || z.shortfall <= too_tight) continue;
      const ZoneFrom& from = s_.zones[i];
      const std::string round = from.goes_round.empty() ? "girth" : from.goes_round;
      say(Severity::hold, "too-tight", from.written != nullptr ? from.written->named.at : s_.strain.at,
          "It is " + said(z.shortfall) + " smaller than the " + round + " it goes round; more than " + said(too_tight) +
              " is not built.",
          "lace the corset, not the bodice: less in `ease`; common practice");
      return;
    }
  }

  void pitch() {
    Length at_most = band_pitch(load_.band);
    if (s_.in == ShownIn::centimetres) at_most = Length::mm(at_most.in_ticks() / Length::mm(1).in_ticks());  // whole millimetres
    if (!s_.in_rows() || load_.band == "R0" || s_.plan.widest_gap <= at_most) return;
    say(Severity::warning, "pitch-too-wide", s_.strain.at,
        "At this strength fasteners stand " + said(at_most) + " apart at most; here " + said(s_.plan.widest_gap) + ".",
        "`at most: " + said(at_most) + "`; common practice");
  }

  void kind() {
    const bool weak = s_.closure.fasten == Fasten::snaps || s_.closure.fasten == Fasten::hooks_and_loops;
    const bool laced = s_.closure.fasten == Fasten::lacing || s_.closure.fasten == Fasten::busk;
    const std::string many(word_for(s_.closure.fasten));
    if (weak && load_.band != "R0")
      say(Severity::warning, "kind-too-weak", s_.closure.fasten_at,
          "Such a pull is band " + load_.band + "; " + many + " are for edges that nothing pulls, R0.",
          "`fasten: hooks and eyes` or `lacing`; common practice");
    else if (!laced && load_.band == "R4")
      say(Severity::warning, "kind-too-weak", s_.closure.fasten_at,
          "Such a pull is band R4, a corset's: " + many + " are not built for it.",
          "`fasten: lacing`, or let it out; common practice");
  }

  void stay() {
    const std::optional<Stay>& stay = s_.strain.stay;
    if (!stay || s_.edge.hung.value <= 0) return;
    if (stay->anchored_at.value.value_or("") == "lining only")
      say(Severity::warning, "stay-on-lining", stay->anchored_at.at,
          "The stay is sewn to the lining only; the skirt's weight tears it out.",
          "`anchored at: every bone` or `every seam`; common practice");
    if (!stay->hooked_first)
      say(Severity::warning, "stay-hooked-last", s_.strain.at,
          "The stay is hooked after the bodice, so the bodice's fasteners take the pull meanwhile.",
          "`hooked first: yes`; common practice");
  }

  void own_band() {
    if (!load_.band_hold) return;
    const BandHold& hold = *load_.band_hold;
    if (hold.slides) {
      say(Severity::warning, "band-slides", s_.strain.at,
          "The hip gives the skirt's band nothing to lie on: no tension holds it up.", "`skirt hangs from: straps`; an estimate");
      return;
    }
    if (!hold.comfort || hold.pressure <= *hold.comfort) return;
    say(Severity::warning, "band-too-tight", s_.strain.at,
        "To hold " + plain_text(Value(s_.edge.hung), s_.in) + " up the band would press about " + mmhg(hold.pressure) +
            "; about " + mmhg(*hold.comfort) + " is borne at that age.",
        "a wider `band`, or `skirt hangs from: straps`; an estimate");
  }

  // Without a bone beside the row the edge draws together between the eyelets.
  void eyelets() {
    if (s_.closure.fasten != Fasten::lacing || s_.closure.edge.empty() || load_.band < "R2") return;
    const bool boned = std::any_of(s_.project.bones.begin(), s_.project.bones.end(),
                                   [&](const Bone& b) { return same_name(b.on_edge, s_.closure.edge); });
    if (boned || s_.project.failed_sections.count("bones") > 0) return;
    say(Severity::hold, "eyelets-unboned", s_.closure.fasten_at, "No bone stands beside the eyelets of " + s_.closure.edge + ".",
        "a bone `on edge: " + s_.closure.edge + "`, one to each side; an article of 1894");
  }

  const Strained& s_;
  const LoadPlan& load_;
  Diagnostics& diag_;
};

}  // namespace

void judge_load(const Strained& s, const LoadPlan& load, Diagnostics& diag) { LoadJudge(s, load, diag).all(); }

}  // namespace gownsheaf
