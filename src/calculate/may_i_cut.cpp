// "May I cut this now?", cloth by cloth: open holds first, then what was bought, then the steps that must come before.
#include <algorithm>
#include <set>

#include "calculate/cloth_touched.h"
#include "calculate/gates.h"
#include "calculate/order_of_work.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

using Steps = std::vector<const PlannedStep*>;

bool cuts_good_cloth(const PlannedStep& step) { return step.cannot_undo == kCannotUndo[0]; }

std::string without_stop(std::string text) {
  while (!text.empty() && text.back() == '.') text.pop_back();
  return text;
}

class Judge {
 public:
  Judge(const Project& project, const Plans& plans, const Figures& figures, const Diagnostics& diag)
      : project_(project), plans_(plans), figures_(figures), messages_(diag.sorted()) {}

  std::vector<CutVerdict> verdicts() const {
    std::vector<CutVerdict> rows;
    for (const bool outer : {true, false})
      for (const LayPlan& lay : plans_.lays) {
        const Cloth* cloth = project_.cloth(lay.cloth);
        const bool is_outer = cloth == nullptr || !cloth->used_as.known() || *cloth->used_as == UsedAs::outer;
        if (is_outer != outer || lay.cut.empty()) continue;
        const Steps cuts = cuts_of(lay.cloth);
        const bool all_done = !cuts.empty() && std::all_of(cuts.begin(), cuts.end(), [](auto* s) { return s->done; });
        if (!all_done) rows.push_back(verdict(lay, cuts));
      }
    return rows;
  }

 private:
  // Steps that cut into this cloth: those for the cloth itself, or for a piece that is cut from it.
  Steps cuts_of(const std::string& cloth) const {
    Steps found;
    for (const PlannedStep& step : plans_.work) {
      if (!cuts_good_cloth(step) || step.item.empty()) continue;
      const Piece* piece = project_.piece(step.item);
      const bool by_piece =
          piece != nullptr && project_.cloth(step.item) == nullptr &&
          std::any_of(piece->from.begin(), piece->from.end(), [&](const std::string& from) { return same_name(from, cloth); });
      if (same_name(step.item, cloth) || by_piece) found.push_back(&step);
    }
    return found;
  }

  const PlannedStep* step(const std::string& id) const {
    for (const PlannedStep& s : plans_.work)
      if (s.id == id) return &s;
    return nullptr;
  }

  // All steps that stand before these and are not done, in their order, reached through steps that are not done.
  Steps waiting_before(const Steps& cuts) const {
    std::set<int> numbers;
    Steps stack;
    for (const PlannedStep* s : cuts)
      if (!s->done) stack.push_back(s);
    while (!stack.empty()) {
      const PlannedStep* s = stack.back();
      stack.pop_back();
      for (const std::string& id : s->hard_after)
        if (const PlannedStep* earlier = step(id); earlier != nullptr && !earlier->done &&
                                                   std::find(cuts.begin(), cuts.end(), earlier) == cuts.end() &&
                                                   numbers.insert(earlier->number).second)
          stack.push_back(earlier);
    }
    Steps found;
    for (const PlannedStep& s : plans_.work)
      if (numbers.count(s.number) > 0) found.push_back(&s);
    return found;
  }

  CutVerdict verdict(const LayPlan& lay, const Steps& cuts) const {
    CutVerdict v;
    v.cloth = lay.cloth;
    for (const CutPiece& cut : lay.cut) {
      const Piece* piece = project_.piece(cut.as_named());
      if (piece == nullptr || !piece->part_of.known()) continue;
      const std::string part(word_for(*piece->part_of));
      if (std::find(v.parts.begin(), v.parts.end(), part) == v.parts.end()) v.parts.push_back(part);
    }
    const bool short_is_decided = add_decided(v, cuts);
    if (stopped_by_hold(v, cuts) || (!short_is_decided && stopped_by_cloth(v, lay))) return v;
    if (cuts.empty()) {
      v.reason = "No step of the order of work cuts the " + v.cloth + ".";
      return v;
    }
    stopped_by_steps(v, cuts);
    return v;
  }

  bool concerns(const Diagnostic& d, const CutVerdict& v, const Steps& cuts) const {
    if (hold_touches(d, v.cloth, project_)) return true;
    return std::any_of(cuts.begin(), cuts.end(), [&](const PlannedStep* s) {
      if (!s->done && stopped_at_gate(d, *s, plans_.work)) return true;
      return !d.step.empty() && !s->done && (s->id == d.step || s->id.rfind(d.step + "@", 0) == 0);
    });
  }

  // Accepted holds are decisions. True when the maker accepted that this cloth is short.
  bool add_decided(CutVerdict& v, const Steps& cuts) const {
    bool short_is_decided = false;
    for (const Diagnostic& d : messages_) {
      if (d.severity != Severity::hold || d.accepted_because.empty() || !concerns(d, v, cuts)) continue;
      if (!v.decided.empty()) v.decided += ' ';
      // The reason for a decision about the body may name a measure, so it stays at home with it.
      v.decided += "Decided: " +
                   (d.is_private ? without_stop(words_of_hold(d))
                                 : without_stop(d.sentence) + ", because " + without_stop(d.accepted_because)) +
                   ".";
      if (d.code == "cloth-short" || d.code == "lengths-too-short") short_is_decided = true;
    }
    return short_is_decided;
  }

  // A hold that speaks of the body is named, never quoted: the answer hangs where others read it.
  static std::string words_of_hold(const Diagnostic& d) {
    if (!d.is_private) return capital(without_stop(d.sentence)) + ".";
    const std::string what = d.item.empty() ? "the measures" : d.item;
    return d.accepted_because.empty() ? "The hold on " + what + " is not settled." : "the hold on " + what + ".";
  }

  bool stopped_by_hold(CutVerdict& v, const Steps& cuts) const {
    for (const Diagnostic& d : messages_) {
      if (d.severity != Severity::hold || !d.accepted_because.empty() || !concerns(d, v, cuts)) continue;
      v.reason = words_of_hold(d);
      return true;
    }
    return false;
  }

  // `{}` in a reason is where its figure stands.
  bool name_missing(CutVerdict& v) const {
    const std::string key = "cloths/" + v.cloth + "/short";
    if (figures_.find(key) != nullptr) v.reason_figure = key;
    return !v.reason_figure.empty();
  }

  bool stopped_by_cloth(CutVerdict& v, const LayPlan& lay) const {
    const Cloth* cloth = project_.cloth(v.cloth);
    if (cloth != nullptr && project_.today.known() && cloth->arrives.known() && *cloth->arrives > *project_.today) {
      v.reason = capital("the " + v.cloth + " arrives on " + long_day(*cloth->arrives) + ".");
      return true;
    }
    if (cloth != nullptr && project_.today.known() && cloth->bought.known())
      for (const BoughtLength& bought : *cloth->bought)
        if (bought.arrives && *bought.arrives > *project_.today) {
          v.reason = capital("the " + v.cloth + " arrives on " + long_day(*bought.arrives) + ".");
          return true;
        }
    // Remnants alone may hold every piece; they are no length bought.
    if (!lay.bought && !lay.on_bought.empty() && lay.fits_bought && lay.left_out.empty()) return false;
    if (!lay.bought) {
      v.reason = "Nothing is written as bought of the " + v.cloth + ".";
      return true;
    }
    if (*lay.bought < lay.needed) {
      v.reason = "The " + v.cloth + (name_missing(v) ? " is {} short." : " is short.");
      return true;
    }
    if (lay.fits_bought) return false;
    v.reason = "The lengths of " + v.cloth + " that were bought do not hold " +
               (lay.left_out.empty() ? std::string("every piece") : lay.left_out.front()) + ".";
    return true;
  }

  std::string act_words(const PlannedStep& s) const {
    std::string words;
    for (const SayPart& part : s.act) {
      const Figure* f = part.figure.empty() ? nullptr : figures_.find(part.figure);
      words += f != nullptr ? plain_text(*f, project_.show_lengths_in.value.value_or(ShownIn::inches)) : part.words;
    }
    // What stands before the first pause is the act; what follows is how.
    for (const char* pause : {". ", "; ", ": ", ", "})
      if (const auto stop = words.find(pause); stop != std::string::npos) words.resize(stop);
    words = without_stop(words);
    if (!words.empty() && words.front() >= 'A' && words.front() <= 'Z')
      words.front() = static_cast<char>(words.front() - 'A' + 'a');
    return words;
  }

  // Cuts that come first must be free to be made themselves, or nothing waits for them alone.
  bool free_to_cut(const PlannedStep& cut) const {
    CutVerdict v;
    v.cloth = cut.item;
    const Steps own{&cut};
    if (!cut.holds.empty() || stopped_by_hold(v, own)) return false;
    for (const LayPlan& lay : plans_.lays)
      if (same_name(lay.cloth, cut.item) && !add_decided(v, own) && stopped_by_cloth(v, lay)) return false;
    return true;
  }

  void stopped_by_steps(CutVerdict& v, const Steps& cuts) const {
    std::string after;
    for (const PlannedStep* s : waiting_before(cuts)) {
      const bool earlier_cut = cuts_good_cloth(*s) && !s->item.empty() && free_to_cut(*s);
      if (!earlier_cut) {
        v.reason = "Step " + whole_number(s->number) + ", " + act_words(*s) +
                   (s->condition.empty() ? "" : " (if " + s->condition + ")") + ", is not done.";
        return;
      }
      const std::string name = "the " + s->item;
      if (after.find(name) == std::string::npos) after += (after.empty() ? "" : " and ") + name;
    }
    v.verdict = after.empty() ? MayCut::yes : MayCut::yes_after;
    v.after = after;
    if (!after.empty()) v.reason = first_reason(cuts);
    else v.reason = "Every step before it is done.";
  }

  std::string first_reason(const Steps& cuts) const {
    for (const PlannedStep* s : cuts)
      if (!s->reason.empty()) return s->reason.front().words;
    return "";
  }

  const Project& project_;
  const Plans& plans_;
  const Figures& figures_;
  std::vector<Diagnostic> messages_;
};

}  // namespace

std::vector<CutVerdict> may_i_cut(const Project& project, const Plans& plans, const Figures& figures, const Diagnostics& diag) {
  return Judge(project, plans, figures, diag).verdicts();
}

}  // namespace gownsheaf
