#include "calculate/lay.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/lay_places.h"
#include "calculate/lay_shelf.h"
#include "calculate/lay_strips.h"
#include "calculate/lay_words.h"
#include "calculate/new_figure.h"
#include "calculate/width_chart.h"
#include "calculate/yardage.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

class ClothLay {
 public:
  ClothLay(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag)
      : project_(project), cloth_(*cuts.cloth), cuts_(cuts.cuts), work_(work), figures_(figures), diag_(diag),
        in_(shown_in(project)), name_(cuts.cloth->named.name), gap_(cloth_.gap.known() ? *cloth_.gap : Length{}) {}

  LayPlan made() {
    plan_.cloth = name_;
    const LayRule rule = cloth_.lay.known() ? *cloth_.lay : LayRule::either_way;
    plan_.one_way = rule == LayRule::one_way;
    plan_.repeats_one_way = plan_.one_way && cloth_.design.known() && *cloth_.design != "plain";
    for (const Cut& cut : cuts_) {
      plan_.cut.push_back(cut.piece);
      if (cut.breadth) plan_.breadths.push_back(*cut.breadth);
    }
    add_envelope();
    add_cuts();
    if (!std::any_of(cuts_.begin(), cuts_.end(), [](const Cut& c) { return c.in_lay; })) return plan_;
    add_panels();
    if (!lay_open()) return plan_;
    lay_on_lengths();
    add_needed();
    add_density();
    add_places(cloth_, plan_, in_, figures_);
    if (plan_.cut_short) mark_cut_short(plan_, cloth_, diag_);
    return plan_;
  }

 private:
  std::string key(std::string_view quantity) const { return "cloths/" + name_ + "/" + std::string(quantity); }
  NewFigure figure(std::string_view quantity) {
    NewFigure f(figures_, in_, "cloths", name_, quantity);
    f.at(cloth_.named.at);
    return f;
  }
  std::string printed(std::string_view quantity) const { return plain_text(figures_.at(key(quantity)), in_); }

  void hold(std::string code, std::string sentence, std::string hint) {
    say(Severity::hold, std::move(code), cloth_.bought.known() && cloth_.bought.at.line > 0 ? cloth_.bought.at : cloth_.named.at,
        std::move(sentence), std::move(hint));
  }

  void say(Severity severity, std::string code, const SourceSpan& at, std::string sentence, std::string hint) {
    diag_.add(message({name_, "cloths", "cutting layouts"}, severity, std::move(code), at, std::move(sentence), std::move(hint)));
  }

  void add_cuts() {
    std::int64_t all = 0, breadths = 0;
    const Cut* longest = nullptr;
    std::string sum;
    for (const Cut& cut : cuts_) {
      all += cut.piece.copies;
      sum += (sum.empty() ? "" : " + ") + whole_number(cut.piece.copies);
      if (!cut.piece.full_width) continue;
      breadths += cut.piece.copies;
      if (longest == nullptr || cut.piece.along > longest->piece.along) longest = &cut;
    }
    if (breadths > 0) {
      NewFigure f = figure("breadths");
      f.is(breadths);
      for (const Cut& cut : cuts_)
        if (cut.piece.full_width) f.from(cut.piece.key + "/copies");
      f.add();
      figure("breadth cut length").is(longest->piece.along).from(longest->piece.key + "/cut length").add();
    }
    NewFigure f = figure("pieces");
    f.is(all);
    for (const Cut& cut : cuts_) f.from(cut.piece.key + "/copies");
    f.working("parts cut from " + name_, "sum of the copies", sum).add();
  }

  void from_cuts(NewFigure& f) const {
    for (const Cut& cut : cuts_)
      if (cut.in_lay) f.from(cut.piece.key + "/cut length").from(cut.piece.key + "/cut width").from(cut.piece.key + "/copies");
    f.from(key("usable width"));
  }

  // What a bought pattern's envelope asks, and what the width chart makes of it for this cloth.
  void add_envelope() {
    const bool by_chart = *project_.rules.yardage_by == YardageBy::width_chart;
    if (!cloth_.envelope_says) {
      if (by_chart)
        say(Severity::warning, "chart-without-envelope", project_.rules.yardage_by.at,
            "Cloth is to be reckoned by the width chart, and " + name_ +
                " has no `envelope says`: its pieces are laid out instead.",
            "`envelope says: { length: 4 1/4 yd, width: 36 in }` on the cloth");
      return;
    }
    const EnvelopeSays& says = *cloth_.envelope_says;
    figure("envelope length").is(says.length).at(says.at).written().add();
    figure("envelope width").is(says.width).at(says.at).written().add();
    chart_ = cloth_.width.known() ? by_width_chart(says.length, says.width, *cloth_.width) : std::nullopt;
    if (chart_) {
      figure("by the chart")
          .is(*chart_)
          .from(key("envelope length"))
          .from(key("envelope width"))
          .from(key("width"))
          .label('a')
          .working(name_ + " by the width chart", "the row of the envelope's length and width, in the cloth's column",
                   worked(says.length, in_) + " at " + worked(says.width, in_))
          .add();
      return;
    }
    if (by_chart)
      say(Severity::warning, "not-in-chart", says.at,
          "The width chart has no row for " + worked(says.length, in_) + " at " + worked(says.width, in_) +
              " that leads to cloth of " + (cloth_.width.known() ? worked(*cloth_.width, in_) : "an unknown width") +
              ": the pieces of " + name_ + " are laid out instead.",
          "it goes from 1 to 5 yd and from 35 to 66 in; mend what is mistyped, or `yardage by: lay`");
  }

  // By rule the chart's length is what is bought; the lay stands beside it.
  void take_chart() {
    if (!chart_ || *project_.rules.yardage_by != YardageBy::width_chart) return;
    if (*chart_ < to_buy(plan_.total, false))
      say(Severity::warning, "chart-short", cloth_.envelope_says->at,
          "The width chart gives " + printed("by the chart") + " of " + name_ + "; as laid out here its pieces take " +
              worked(to_buy(plan_.total, false), in_) + ".",
          "buy by the lay: take `yardage by` out of `rules`; the chart is an average");
    plan_.needed = *chart_;
  }

  bool matched() const {
    return std::any_of(cuts_.begin(), cuts_.end(), [](const Cut& c) { return c.in_lay && c.piece.match; });
  }

  void add_panels() {
    usable_ = open_strip(cloth_).usable_width * (open_strip(cloth_).folded == Folded::lengthwise ? 2 : 1);
    for (Cut& panel : panels_to_keep(cloth_, usable_)) {
      figure("keep/" + panel.piece.piece.substr(std::string("kept for ").size()) + "/across")
          .is(panel.piece.across)
          .written()
          .add();
      figure("keep/" + panel.piece.piece.substr(std::string("kept for ").size()) + "/along")
          .is(panel.piece.along)
          .written()
          .add();
      plan_.kept.push_back(panel.piece);
      cuts_.push_back(std::move(panel));
    }
  }

  // How much of the cloth that the lay takes, between its selvages, the pieces cover.
  void add_density() {
    Area area;
    for (const Cut& cut : cuts_)
      if (cut.in_lay && !cut.piece.kept) area += area_of(cut, usable_) * cut.piece.copies;
    if (plan_.total <= Length{} || usable_ <= Length{} || !plan_.pieced.empty()) return;
    figure("density")
        .is(count_of(100 * area.over(usable_, Rounding::nearest), plan_.total, Rounding::nearest))
        .from(key("lay length"))
        .working("how close " + name_ + " is laid", "100 × area of the pieces / (usable width × lay length)",
                 "100 × " + worked(area.over(usable_, Rounding::nearest), in_) + " / " + worked(plan_.total, in_))
        .add();
  }

  // False when nothing can be laid; then a hold says why.
  bool lay_open() {
    asked_ = {usable_, gap_, work_, matched() ? cloth_.repeat : std::nullopt};
    open_ = lay_on(cuts_, all_copies(cuts_), {open_strip(cloth_)}, asked_);
    plan_.cut_short = open_.cut_short;
    if (!open_.unsupported.empty() || !open_.left_out.empty()) {
      hold("not-laid", capital(name_) + " could not be laid" + (open_.unsupported.empty() ? "" : ": " + open_.unsupported) + ".",
           "lay it by hand before it is cut");
      return false;
    }
    plan_.to_buy = open_.strips.front();
    if (open_.strips.size() > 1) plan_.opened = open_.strips[1];
    plan_.bound = open_.bound;
    plan_.total = taken(plan_.to_buy, plan_.opened ? &*plan_.opened : nullptr);
    NewFigure lay = figure("lay length");
    lay.is(plan_.total);
    from_cuts(lay);
    lay.working("the lay of " + name_, "longest end of a piece, as drawn", lay_in_words(cuts_, in_)).add();
    NewFigure bound = figure("bound");
    bound.is(plan_.bound);
    from_cuts(bound);
    const bool drawn = any_outline() && work_.outlines > 0;
    if (plan_.to_buy.folded != Folded::no || drawn)
      bound
          .working("no lay can be shorter", plan_.to_buy.folded != Folded::no ? kBoundFolded : kBoundDrawn,
                   bound_in_words(cuts_, usable_, true, in_))
          .add();
    else bound.working("no lay can be shorter", kBoundBoxes, bound_in_words(cuts_, usable_, false, in_)).add();
    return true;
  }

  void lay_on_lengths() {
    if (cloth_.bought.known()) {
      Length sum;
      for (const BoughtLength& b : *cloth_.bought) sum += b.length;
      plan_.bought = sum;
    }
    plan_.fits_bought = false;
    if (shelf(cloth_).empty()) {
      plan_.fits_bought = !cloth_.bought.known();  // nothing was said about the shelf
      if (plan_.fits_bought) return;
      const std::vector<std::vector<int>> copies = all_copies(cuts_);
      for (std::size_t i = 0; i < copies.size(); ++i)
        if (!cuts_[i].piece.kept)
          for (const int c : copies[i]) leave_out(i, c);
      return;
    }
    OnShelf on = lay_on_shelf(cloth_, cuts_, open_, asked_, figures_, project_);
    if (!on.unsupported.empty()) {
      hold("not-laid", capital(name_) + " could not be laid on the lengths bought: " + on.unsupported + ".",
           "lay it by hand before it is cut");
      return;
    }
    plan_.cut_short = plan_.cut_short || on.cut_short;
    plan_.on_bought = std::move(on.strips);
    plan_.other_ways = std::move(on.other_ways);
    plan_.pieced = std::move(on.pieced);
    cuts_ = std::move(on.cuts);
    for (const auto& [cut, copy] : on.left_out) leave_out(cut, copy);
    plan_.fits_bought = left_out_.empty();
    for (const Missing& missing : on.missing) add_missing(missing);
    say_what_gave_way(on.not_kept);
  }

  void say_what_gave_way(const std::vector<std::string>& not_kept) {
    if (plan_.fits_bought)
      for (const std::string& panel : not_kept) {
        plan_.not_kept.push_back(panel);
        hold("panel-lost", "Nothing of the " + name_ + " is left as large as the panel " + panel + ".",
             "a smaller panel under `keep`, or take it out");
      }
    if (plan_.pieced.empty()) return;
    plan_.cut.clear();
    for (const Cut& cut : cuts_)
      if (!cut.piece.kept) plan_.cut.push_back(cut.piece);
    for (const std::string& piece : plan_.pieced)
      say(Severity::warning, "pieced-last", cloth_.named.at,
          capital(piece) + " is joined of " + parts_in_words(plan_, piece) + ": in one piece there is no room for it on the " +
              name_ + " that was bought.",
          "it lies so on the layout; buy more, or take `may be pieced` out, to have it whole");
  }

  bool any_outline() const {
    return std::any_of(cuts_.begin(), cuts_.end(), [](const Cut& c) { return c.in_lay && (c.bias || !c.piece.outline.empty()); });
  }

  void leave_out(std::size_t cut, int copy) {
    left_out_.emplace_back(cut, copy);
    const CutPiece& c = cuts_[cut].piece;
    plan_.left_out.push_back(c.copies > 1 ? c.piece + " " + whole_number(copy + 1) : c.piece);
  }

  // "2", "2 and 3", "2 to 5", "1, 3 and 4"; the copies are counted from 0 and growing.
  static std::string copies_in_words(const std::vector<int>& copies) {
    const int first = copies.front() + 1, last = copies.back() + 1, many = static_cast<int>(copies.size());
    if (many > 2 && last - first + 1 == many) return whole_number(first) + " to " + whole_number(last);
    std::string words = whole_number(first);
    for (std::size_t i = 1; i < copies.size(); ++i)
      words += (i + 1 == copies.size() ? " and " : ", ") + whole_number(copies[i] + 1);
    return words;
  }

  void add_missing(const Missing& missing) {
    const CutPiece& c = cuts_[missing.cut].piece;
    std::string name = c.piece;
    if (static_cast<std::int64_t>(missing.copies.size()) < c.copies) name += " " + copies_in_words(missing.copies);
    const std::string at = "missing/" + name + "/";
    figure(at + "alone")
        .is(to_buy(missing.alone, true))
        .from(c.key + "/cut length")
        .from(c.key + "/cut width")
        .working("cloth for " + name + " by itself", "its lay on an open length, as to buy", worked(missing.alone, in_))
        .add();
    if (missing.more) {
      const Ratio s = shrinks_along(cloth_);
      figure(at + "more")
          .is(missing.more->times(s.d, s.d - s.n, Rounding::up))
          .from(c.key + "/cut length")
          .from(c.key + "/cut width")
          .from(key("bought"))
          .working("longer for " + name + " to go as well", "the lay with it − the length there is",
                   worked(missing.more->to_step(cut_step(in_), Rounding::up), in_))
          .add();
    }
    plan_.missing.push_back({name, key("missing/" + name), missing.on});
  }

  // "front and back 2", the first with how much longer it would have to be.
  std::string no_room_for() const {
    if (plan_.missing.empty() || plan_.missing.front().on.empty()) return first_left_out();
    const std::string more = plain_text(figures_.at(plan_.missing.front().key + "/more"), in_);
    const std::size_t others = plan_.missing.size() - 1;
    return plan_.missing.front().piece + ", for which " + more + " is missing" +
           (others == 0   ? ""
            : others == 1 ? ", and one piece more"
                          : ", and " + whole_number(static_cast<std::int64_t>(others)) + " pieces more");
  }

  Length to_buy(Length lay, bool to_step) const {
    const Length usual = in_ == ShownIn::inches ? Length::inches(36).times(1, 8) : Length::cm(10);
    const Length step = cloth_.sold_by.known() ? *cloth_.sold_by : usual;
    return length_to_buy(lay, shrinks_along(cloth_), straighten_each_end(cloth_), to_step ? step : Length{});
  }

  // What of the bought lengths is used, before shrinking and with the straightening of each.
  Length taken_from_shelf() const {
    Length sum;
    for (std::size_t k = 0; k < plan_.on_bought.size(); ++k) {
      const LaidStrip& s = plan_.on_bought[k];
      const bool rest = k > 0 && plan_.on_bought[k - 1].folded != Folded::no && s.name.rfind(plan_.on_bought[k - 1].name, 0) == 0;
      if (rest || s.name.rfind("bought", 0) != 0) continue;
      const bool opened =
          k + 1 < plan_.on_bought.size() && s.folded != Folded::no && plan_.on_bought[k + 1].name.rfind(s.name, 0) == 0;
      const Length used = taken(s, opened ? &plan_.on_bought[k + 1] : nullptr);
      if (!used.is_zero()) sum += to_buy(used, false);
    }
    return plan_.bought ? std::min(sum, *plan_.bought) : sum;
  }

  void add_needed() {
    const Length lay = plan_.total;
    plan_.needed = to_buy(lay, true);
    NewFigure f = figure("needed");
    const Ratio s = shrinks_along(cloth_);
    const Length straighten = straighten_each_end(cloth_);
    const std::string shrunk = s.n == 0 ? "" : " / (1 − " + text_of(Percent{s}) + ")";
    std::string formula = std::string("lay") + (s.n == 0 ? "" : " / (1 − shrinkage)") + " + 2 × straightening";
    std::string numbers =
        worked(lay, in_) + shrunk + " + 2 × " + worked(straighten, in_) + " = " + worked(to_buy(lay, false), in_);
    const bool on_shelf = !plan_.on_bought.empty() && plan_.fits_bought;
    if (on_shelf && !plan_.bought) {
      plan_.needed = Length{};
      formula = "the remnants hold every piece";
      numbers = "nothing to buy";
    } else if (on_shelf && plan_.needed > *plan_.bought && to_buy(lay, false) <= *plan_.bought) {
      plan_.needed = to_buy(lay, false);
    } else if (on_shelf && plan_.needed > *plan_.bought) {
      plan_.needed = taken_from_shelf();
      formula = "what the pieces take of the lengths bought";
      numbers = "as drawn";
    } else {
      formula += ", up to the shop's step";
    }
    const Length laid = plan_.needed;
    take_chart();
    if (plan_.needed != laid) {
      formula = "by the width chart, as `rules` asks";
      numbers = "the lay would take " + worked(laid, in_);
    }
    f.is(plan_.needed)
        .from(key("lay length"))
        .from(key("shrinks"), cloth_.shrinks_along)
        .from(key("straighten"), cloth_.straighten)
        .from(key("sold by"), cloth_.sold_by)
        .working("cloth to buy of " + name_, formula, numbers)
        .add();
    open_length();
    if (plan_.bought) add_bought();
    else if (!plan_.on_bought.empty() && !plan_.fits_bought && !left_out_.empty()) add_short_of_remnants();
  }

  // The open length as it is drawn: what the needed cloth gives when it is straightened and shrunk.
  void open_length() {
    const Length whole = std::max(plan_.total, laid_length(cloth_, plan_.needed));
    const bool crosswise = plan_.to_buy.folded == Folded::crosswise;
    if (plan_.opened) {
      plan_.opened->length = whole - plan_.opened->starts_at;
      plan_.to_buy.length = plan_.to_buy.used;
    } else {
      plan_.to_buy.length = crosswise ? whole.times(1, 2) : whole;
    }
  }

  void add_bought() {
    const Length bought = *plan_.bought;
    plan_.spare = bought - plan_.needed;
    NewFigure f = figure("bought");
    f.is(bought).at(cloth_.bought.at);
    if (cloth_.bought->size() > 1) {
      std::string sum;
      for (const BoughtLength& b : *cloth_.bought) sum += (sum.empty() ? "" : " + ") + worked(b.length, in_);
      f.working("bought of " + name_, "sum of the lengths", sum);
    }
    f.add();
    const std::string left = worked(bought, in_) + " − " + worked(plan_.needed, in_);
    if (*plan_.spare >= Length{} && plan_.fits_bought)
      figure("spare")
          .is(*plan_.spare)
          .from(key("bought"))
          .from(key("needed"))
          .working("spare of " + name_, "bought − needed", left)
          .add();
    if (plan_.fits_bought) return;
    // Not needed − bought: the pieces that found no room seldom fit on that. What is printed as short is what, bought by
    // itself, holds them.
    figure("short")
        .is(bought.is_zero() ? plan_.needed : rest_in_one_piece())
        .from(key("needed"))
        .from(key("bought"))
        .working("to buy more of " + name_ + ", in one piece", "the lay of what is left out, as above", first_left_out())
        .add();
    const std::string more = printed("short") + " more, in one piece";
    if (*plan_.spare < Length{}) {
      hold("cloth-short",
           capital(name_) + ": " + printed("needed") + " needed in one length, " + printed("bought") + " bought; buy " + more +
               ".",
           bought.is_zero() ? "buy it, then write the length under `bought`"
                            : "on what was bought there is no room for " + no_room_for() + other_ways());
    } else {
      hold("lengths-too-short",
           capital(name_) + ": " + printed("needed") + " needed and " + printed("bought") +
               " bought, but the lengths one by one do not hold " + first_left_out() + ".",
           more + other_ways());
    }
  }

  // "; it would go in one layer, not folded".
  std::string other_ways() const {
    std::string words;
    for (const OtherWay& way : plan_.other_ways)
      if (way.goes) words += (words.empty() ? "; it would go " : ", or ") + way.words;
    return words;
  }

  // Only remnants lie there, and they do not hold everything.
  void add_short_of_remnants() {
    figure("short")
        .is(rest_in_one_piece())
        .from(key("needed"))
        .working("to buy more of " + name_ + ", in one piece", "the lay of what the remnants do not hold", first_left_out())
        .add();
    hold("cloth-short",
         capital(name_) + ": the remnants do not hold " + first_left_out() + "; buy " + printed("short") + ", in one piece.",
         "or turn the piece, `grain: across`, where its thread may run that way");
  }

  std::string first_left_out() const {
    const std::string first = plan_.left_out.front();
    const std::size_t more = plan_.left_out.size() - 1;
    return more == 0 ? first : first + " and " + whole_number(static_cast<std::int64_t>(more)) + " more";
  }

  Length rest_in_one_piece() {
    std::vector<std::vector<int>> copies(cuts_.size());
    for (const auto& [cut, copy] : left_out_) copies[cut].push_back(copy);
    const LaidOut rest = lay_on(cuts_, copies, {open_strip(cloth_)}, asked_);
    plan_.cut_short = plan_.cut_short || rest.cut_short;
    return to_buy(taken(rest.strips.front(), rest.strips.size() > 1 ? &rest.strips[1] : nullptr), true);
  }

  const Project& project_;
  const Cloth& cloth_;
  std::vector<Cut> cuts_;  // with the panels to be kept behind them
  LayWork work_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
  std::string name_;
  Length gap_;  // between pieces
  LayPlan plan_;
  Length usable_;
  LayAsked asked_;
  LaidOut open_;  // on a length still to be bought
  std::optional<Length> chart_;
  std::vector<std::pair<std::size_t, int>> left_out_;
};

}  // namespace

void mark_cut_short(LayPlan& plan, const Cloth& cloth, Diagnostics& diag) {
  plan.cut_short = true;
  diag.add(message({plan.cloth, "cloths", "cutting layouts"}, Severity::warning, "lay-cut-short", cloth.named.at,
                   "The search for the lay of " + plan.cloth +
                       " was stopped before its end: every piece lies right, but less cloth may do, "
                       "and this lay can be had no second time.",
                   "make the packet again and let it end; or cut by this one, and keep it"));
}

LayPlan lay_out_cloth(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag) {
  return ClothLay(project, cuts, work, figures, diag).made();
}

}  // namespace gownsheaf
