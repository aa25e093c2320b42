#include "calculate/lay.h"

#include <algorithm>

#include "calculate/lay_places.h"
#include "calculate/lay_strips.h"
#include "calculate/new_figure.h"
#include "calculate/width_chart.h"
#include "calculate/yardage.h"
#include "diagnostics/message.h"
#include "geometry/region.h"

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
    for (const Cut& cut : cuts_) {
      plan_.cut.push_back(cut.piece);
      if (cut.breadth) plan_.breadths.push_back(*cut.breadth);
    }
    add_envelope();
    add_cuts();
    if (!lay_open()) return plan_;
    lay_on_shelf();
    add_needed();
    add_places(cloth_, plan_, in_, figures_);
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
      if (cut.in_lay)
        f.from(cut.piece.key + "/cut length").from(cut.piece.key + "/cut width").from(cut.piece.key + "/copies");
    f.from(key("usable width"));
  }

  // What a bought pattern's envelope asks, and what the width chart makes of it for this cloth.
  void add_envelope() {
    const bool by_chart = *project_.rules.yardage_by == YardageBy::width_chart;
    if (!cloth_.envelope_says) {
      if (by_chart)
        say(Severity::warning, "chart-without-envelope", project_.rules.yardage_by.at,
            "Cloth is to be reckoned by the width chart, and " + name_ + " has no `envelope says`: its pieces are laid out instead.",
            "`envelope says: { length: 4 1/4 yd, width: 36 in }` on the cloth");
      return;
    }
    const EnvelopeSays& says = *cloth_.envelope_says;
    figure("envelope length").is(says.length).at(says.at).written().add();
    figure("envelope width").is(says.width).at(says.at).written().add();
    chart_ = cloth_.width.known() ? by_width_chart(says.length, says.width, *cloth_.width) : std::nullopt;
    if (chart_) {
      figure("by the chart").is(*chart_).from(key("envelope length")).from(key("envelope width")).from(key("width"))
          .label('a').working(name_ + " by the width chart", "the row of the envelope's length and width, in the cloth's column",
                              worked(says.length, in_) + " at " + worked(says.width, in_)).add();
      return;
    }
    if (by_chart)
      say(Severity::warning, "not-in-chart", says.at,
          "The width chart has no row for " + worked(says.length, in_) + " at " + worked(says.width, in_) + " that leads to cloth of " +
              (cloth_.width.known() ? worked(*cloth_.width, in_) : "an unknown width") + ": the pieces of " + name_ + " are laid out instead.",
          "it goes from 1 to 5 yd and from 35 to 66 in; mend what is mistyped, or `yardage by: lay`");
  }

  // By rule the chart's length is what is bought; the lay stands beside it.
  void take_chart() {
    if (!chart_ || *project_.rules.yardage_by != YardageBy::width_chart) return;
    if (*chart_ < to_buy(plan_.to_buy.used, false))
      say(Severity::warning, "chart-short", cloth_.envelope_says->at,
          "The width chart gives " + printed("by the chart") + " of " + name_ + "; as laid out here its pieces take " +
              worked(to_buy(plan_.to_buy.used, false), in_) + ".",
          "buy by the lay: take `yardage by` out of `rules`; the chart is an average");
    plan_.needed = *chart_;
  }

  // False when nothing can be laid; then a hold says why.
  bool lay_open() {
    const bool any = std::any_of(cuts_.begin(), cuts_.end(), [](const Cut& c) { return c.in_lay; });
    if (!any) return false;
    LaidStrip open = open_strip(cloth_);
    usable_ = open.usable_width;
    LaidOut laid = lay_on(cuts_, all_copies(cuts_), {open}, usable_, gap_, work_);
    if (!laid.unsupported.empty() || !laid.left_out.empty()) {
      hold("not-laid", capital(name_) + " could not be laid" + (laid.unsupported.empty() ? "" : ": " + laid.unsupported) + ".",
           "lay it by hand before it is cut");
      return false;
    }
    plan_.to_buy = laid.strips.front();
    plan_.bound = laid.bound;
    NewFigure lay = figure("lay length");
    lay.is(plan_.to_buy.used);
    from_cuts(lay);
    lay.working("the lay of " + name_, "longest end of a piece, as drawn", lay_in_words()).add();
    NewFigure bound = figure("bound");
    bound.is(plan_.bound);
    from_cuts(bound);
    bound.working("no lay can be shorter",
                  any_outline() && work_.outlines > 0 ? "the most of: area of the outlines / usable width; the longest piece"
                                                      : "the most of: area / usable width; the longest piece; pieces too wide to lie side by side, end to end",
                  bound_in_words()).add();
    return true;
  }

  // The three sums that the bound is the most of.
  std::string bound_in_words() const {
    const bool as_drawn = any_outline() && work_.outlines > 0;
    Area area;
    Length longest, stacked;
    for (const Cut& cut : cuts_) {
      if (!cut.in_lay) continue;
      const Length across = cut.piece.full_width ? usable_ : cut.piece.across;
      const Length least_along = cut.may_turn ? std::min(cut.takes, across) : cut.takes;
      const Length least_across = cut.may_turn ? std::min(cut.takes, across) : across;
      const Area ring = as_drawn && !cut.piece.outline.empty() ? gownsheaf::area(cut.piece.outline) : Area::of(cut.takes, across);
      area += (ring < Area{} ? Area{} - ring : ring) * cut.piece.copies;
      longest = std::max(longest, least_along);
      if (2 * least_across > usable_) stacked += cut.piece.copies * least_along;
    }
    const std::string first_two = worked(area.over(usable_, Rounding::up), in_) + "; " + worked(longest, in_);
    return as_drawn ? first_two : first_two + "; " + worked(stacked, in_);
  }

  std::string lay_in_words() const {
    std::string words;
    for (const Cut& cut : cuts_) {
      if (!cut.in_lay) continue;
      words += (words.empty() ? "" : ", ") + whole_number(cut.piece.copies) + " × " + worked(cut.takes, in_);
      if (cut.repeat)
        words += " (" + worked(cut.piece.along, in_) + " up to whole repeats of " + worked(*cut.repeat, in_) + ")";
      if (!cut.piece.full_width) words += " by " + worked(cut.piece.across, in_);
    }
    return words;
  }

  void lay_on_shelf() {
    const std::vector<LaidStrip> strips = shelf(cloth_);
    if (cloth_.bought.known()) {
      Length sum;
      for (const BoughtLength& b : *cloth_.bought) sum += b.length;
      plan_.bought = sum;
    }
    plan_.fits_bought = false;
    if (strips.empty()) {
      plan_.fits_bought = !cloth_.bought.known();  // nothing was said about the shelf
      if (plan_.fits_bought) return;
      const std::vector<std::vector<int>> copies = all_copies(cuts_);
      for (std::size_t i = 0; i < copies.size(); ++i)
        for (const int c : copies[i]) leave_out(i, c);
      return;
    }
    // A lay of outlines is dear: the one length bought holds what the open length held, if it is as long.
    const bool as_open = any_outline() && strips.size() == 1 && strips.front().bad_places.empty() && strips.front().usable_width == usable_ &&
                         plan_.to_buy.used <= strips.front().length;
    LaidOut laid;
    if (!as_open) laid = lay_on(cuts_, all_copies(cuts_), strips, usable_, gap_, work_);
    if (as_open || !laid.left_out.empty() || !laid.unsupported.empty())
      for (std::size_t k = 0; k < strips.size(); ++k) {
        // The open lay itself may lie on one length.
        if (!strips[k].bad_places.empty() || strips[k].usable_width != usable_ || plan_.to_buy.used > strips[k].length) continue;
        laid.strips = strips;
        laid.strips[k].placed = plan_.to_buy.placed;
        laid.strips[k].used = plan_.to_buy.used;
        laid.left_out.clear();
        laid.unsupported.clear();
        break;
      }
    if (!laid.unsupported.empty()) {
      hold("not-laid", capital(name_) + " could not be laid on the lengths bought: " + laid.unsupported + ".", "lay it by hand before it is cut");
      return;
    }
    plan_.on_bought = std::move(laid.strips);
    for (const auto& [cut, copy] : laid.left_out) leave_out(cut, copy);
    plan_.fits_bought = left_out_.empty();
  }

  bool any_outline() const {
    return std::any_of(cuts_.begin(), cuts_.end(), [](const Cut& c) { return c.in_lay && !c.piece.outline.empty(); });
  }

  void leave_out(std::size_t cut, int copy) {
    left_out_.emplace_back(cut, copy);
    const CutPiece& c = cuts_[cut].piece;
    plan_.left_out.push_back(c.copies > 1 ? c.piece + " " + whole_number(copy + 1) : c.piece);
  }

  Length to_buy(Length lay, bool to_step) const {
    const Length usual = in_ == ShownIn::inches ? Length::inches(36).times(1, 8) : Length::cm(10);
    const Length step = cloth_.sold_by.known() ? *cloth_.sold_by : usual;
    return length_to_buy(lay, shrinks_along(cloth_), straighten_each_end(cloth_), to_step ? step : Length{});
  }

  // What of the bought lengths is used, before shrinking and with the straightening of each.
  Length taken_from_shelf() const {
    Length sum;
    for (const LaidStrip& s : plan_.on_bought)
      if (!s.used.is_zero() && s.name.rfind("bought", 0) == 0) sum += to_buy(s.used, false);
    return plan_.bought ? std::min(sum, *plan_.bought) : sum;
  }

  void add_needed() {
    const Length lay = plan_.to_buy.used;
    plan_.needed = to_buy(lay, true);
    NewFigure f = figure("needed");
    const Ratio s = shrinks_along(cloth_);
    const Length straighten = straighten_each_end(cloth_);
    const std::string shrunk = s.n == 0 ? "" : " / (1 − " + text_of(Percent{s}) + ")";
    std::string formula = std::string("lay") + (s.n == 0 ? "" : " / (1 − shrinkage)") + " + 2 × straightening";
    std::string numbers = worked(lay, in_) + shrunk + " + 2 × " + worked(straighten, in_) + " = " + worked(to_buy(lay, false), in_);
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
    f.is(plan_.needed).from(key("lay length")).from(key("shrinks"), cloth_.shrinks_along)
        .from(key("straighten"), cloth_.straighten).from(key("sold by"), cloth_.sold_by)
        .working("cloth to buy of " + name_, formula, numbers).add();
    open_length();
    if (plan_.bought) add_bought();
    else if (!plan_.on_bought.empty() && !plan_.fits_bought && !left_out_.empty()) add_short_of_remnants();
  }

  // The open length as it is drawn: what the needed cloth gives when it is straightened and shrunk.
  void open_length() { plan_.to_buy.length = std::max(plan_.to_buy.used, laid_length(cloth_, plan_.needed)); }

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
      figure("spare").is(*plan_.spare).from(key("bought")).from(key("needed")).working("spare of " + name_, "bought − needed", left).add();
    if (plan_.fits_bought) return;
    // Not needed − bought: the pieces that found no room seldom fit on that. What is printed as short is what, bought by
    // itself, holds them.
    figure("short").is(bought.is_zero() ? plan_.needed : rest_in_one_piece()).from(key("needed")).from(key("bought"))
        .working("to buy more of " + name_ + ", in one piece", "the lay of what is left out, as above", first_left_out()).add();
    const std::string more = printed("short") + " more, in one piece";
    if (*plan_.spare < Length{}) {
      hold("cloth-short",
           capital(name_) + ": " + printed("needed") + " needed in one length, " + printed("bought") + " bought; buy " + more + ".",
           bought.is_zero() ? "buy it, then write the length under `bought`"
                            : "on what was bought there is no room for " + first_left_out());
    } else {
      hold("lengths-too-short",
           capital(name_) + ": " + printed("needed") + " needed and " + printed("bought") +
               " bought, but the lengths one by one do not hold " + first_left_out() + ".",
           more);
    }
  }

  // Only remnants lie there, and they do not hold everything.
  void add_short_of_remnants() {
    figure("short").is(rest_in_one_piece()).from(key("needed"))
        .working("to buy more of " + name_ + ", in one piece", "the lay of what the remnants do not hold", first_left_out()).add();
    hold("cloth-short", capital(name_) + ": the remnants do not hold " + first_left_out() + "; buy " + printed("short") + ", in one piece.",
         "or turn the piece, `grain: across`, where its thread may run that way");
  }

  std::string first_left_out() const {
    const std::string first = plan_.left_out.front();
    const std::size_t more = plan_.left_out.size() - 1;
    return more == 0 ? first : first + " and " + whole_number(static_cast<std::int64_t>(more)) + " more";
  }

  Length rest_in_one_piece() const {
    std::vector<std::vector<int>> copies(cuts_.size());
    for (const auto& [cut, copy] : left_out_) copies[cut].push_back(copy);
    const LaidOut rest = lay_on(cuts_, copies, {open_strip(cloth_)}, usable_, gap_, work_);
    return to_buy(rest.strips.front().used, true);
  }

  const Project& project_;
  const Cloth& cloth_;
  const std::vector<Cut>& cuts_;
  LayWork work_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
  std::string name_;
  Length gap_;  // between pieces
  LayPlan plan_;
  Length usable_;
  std::optional<Length> chart_;
  std::vector<std::pair<std::size_t, int>> left_out_;
};

}  // namespace

LayPlan lay_out_cloth(const Project& project, const ClothCuts& cuts, const LayWork& work, Figures& figures, Diagnostics& diag) {
  return ClothLay(project, cuts, work, figures, diag).made();
}

}  // namespace gownsheaf
