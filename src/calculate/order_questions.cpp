#include "calculate/order_questions.h"

#include <algorithm>
#include <map>

#include "diagnostics/message.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

using Places = std::vector<std::size_t>;

class Answers {
 public:
  explicit Answers(const std::vector<PlannedStep>& work) : work_(work) {
    for (std::size_t i = 0; i < work.size(); ++i) place_[work[i].id] = i;
  }

  Places meant_by(const std::string& id) const {
    Places found;
    for (std::size_t i = 0; i < work_.size(); ++i)
      if (same_name(work_[i].id, id) || work_[i].id.rfind(id + "@", 0) == 0) found.push_back(i);
    return found;
  }

  // The shortest chain of waits from `later` back to `earlier`, later one first; empty when it does not wait for it.
  Places chain(std::size_t later, std::size_t earlier) const {
    std::vector<std::size_t> from(work_.size(), work_.size());
    Places reached{later};
    for (std::size_t at = 0; at < reached.size(); ++at) {
      const std::size_t i = reached[at];
      if (i == earlier) {
        Places back{earlier};
        while (back.back() != later) back.push_back(from[back.back()]);
        std::reverse(back.begin(), back.end());
        return back;
      }
      for (const std::string& id : work_[i].hard_after)
        if (const std::size_t k = place_.at(id); from[k] == work_.size() && k != later) {
          from[k] = i;
          reached.push_back(k);
        }
    }
    return {};
  }

  // "b waits for a: reason; c waits for b: reason"
  std::string told(const Places& chain) const {
    std::string words;
    for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
      const PlannedStep& step = work_[chain[i]];
      const auto at = std::find(step.hard_after.begin(), step.hard_after.end(), work_[chain[i + 1]].id);
      const std::string& because = step.hard_because[static_cast<std::size_t>(at - step.hard_after.begin())];
      words += (words.empty() ? "" : "; ") + step.id + " waits for " + work_[chain[i + 1]].id +
               (because.empty() ? "" : ", because " + because);
    }
    return words + ".";
  }

  std::string answer(const OrderQuestion& q, std::string& hint) const {
    const Places steps = meant_by(q.step), others = meant_by(q.other);
    if (steps.empty() || others.empty())
      return "Nothing is asked: " + (steps.empty() ? q.step : q.other) + " is no step of this garment.";
    const std::string asked = q.step + " may not come before " + q.other;
    for (const std::size_t step : steps)
      for (const std::size_t other : others) {
        if (step == other) return q.step + " and " + q.other + " are the same step.";
        if (const Places way = chain(step, other); !way.empty()) return "No, " + asked + ": " + told(way);
      }
    for (const std::size_t step : steps)
      for (const std::size_t other : others)
        if (const Places way = chain(other, step); !way.empty()) return "Yes, it must: " + told(way);
    const std::size_t step = steps.front(), other = others.front();
    if (step < other)
      return "Yes, and it does: " + q.step + " is step " + whole_number(work_[step].number) + ", " + q.other + " step " +
             whole_number(work_[other].number) + "; neither waits for the other.";
    hint = "to have it so: `- { step: " + q.other + ", after: [" + q.step + "] }` under `change steps`";
    return "Yes: neither waits for the other. As it stands " + q.other + " is step " + whole_number(work_[other].number) +
           " and " + q.step + " step " + whole_number(work_[step].number) + ", only so that like work comes together.";
  }

 private:
  const std::vector<PlannedStep>& work_;
  std::map<std::string, std::size_t> place_;
};

}  // namespace

void answer_order_questions(const Project& project, const std::vector<PlannedStep>& work, Diagnostics& diag) {
  if (project.work.questions.empty() || work.empty()) return;
  const Answers answers(work);
  for (const OrderQuestion& q : project.work.questions) {
    std::string hint;
    std::string sentence = answers.answer(q, hint);
    diag.add(
        message({q.step, "work", "order of work"}, Severity::note, "order-answer", q.at, std::move(sentence), std::move(hint)));
  }
}

void ask_how_drapery_is_held(const Project& project, Diagnostics& diag) {
  const auto of = [&](PartOf part) {
    return std::find_if(project.pieces.begin(), project.pieces.end(),
                        [&](const Piece& p) { return p.part_of.known() && *p.part_of == part; });
  };
  const auto drapery = of(PartOf::drapery);
  if (drapery == project.pieces.end() || of(PartOf::bodice) == project.pieces.end()) return;
  if (!project.drapery.empty() || project.failed_sections.count("drapery") > 0) return;
  Diagnostic d = message(
      {"", "drapery", "order of work"}, Severity::hold, "drapery-held", drapery->named.at,
      "Nothing says whether the drapery is fixed, tacked or detachable, and the order turns on it: fixed, it is basted in "
      "before the sleeves are set and its armhole edges stay raw; tacked, it is sewn on after them; detachable, its "
      "fastenings go on last, when the lining is felled.",
      "`drapery: [{ drapery: " + drapery->named.name + ", held: tacked, of: [" + drapery->named.name + "] }]`");
  d.step = "bind-drapery";
  diag.add(std::move(d));
}

}  // namespace gownsheaf
