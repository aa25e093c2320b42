#include "calculate/order_of_work.h"

#include <algorithm>
#include <map>
#include <set>

#include "calculate/cloth_touched.h"
#include "calculate/gates.h"
#include "calculate/good_order.h"
#include "calculate/step_instances.h"
#include "calculate/step_times.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostSteps = 2000;

// A reference resolved for one item: words, or the key of a figure that is there. Empty when the figure is not known.
std::optional<SayPart> resolved(const std::string& reference, const std::string& item, const Project& project,
                                const Figures& figures) {
  const SayReference r = read_reference(reference);
  if (r.item_word.empty()) {
    if (figures.find(reference) == nullptr) return std::nullopt;
    return SayPart{"", reference};
  }
  if (r.quantity.empty()) return SayPart{item, ""};
  const std::string whole = r.section + "/" + item + "/" + r.quantity;
  if (r.item_word == "piece")
    if (const Piece* piece = project.piece(item); piece != nullptr && !piece->from.empty()) {
      const std::string of_cloth = r.section + "/" + item + "/" + piece->from.front() + "/" + r.quantity;
      if (figures.find(of_cloth) != nullptr) return SayPart{"", of_cloth};
    }
  if (figures.find(whole) == nullptr) return std::nullopt;
  return SayPart{"", whole};
}

struct Built {
  Say say;
  bool whole = true;
};

Built built(const std::string& text, const std::string& item, const Project& project, const Figures& figures) {
  Built b;
  for (const SayPiece& piece : read_say(text).pieces) {
    if (!piece.reference) {
      b.say.push_back({piece.text, ""});
      continue;
    }
    if (auto part = resolved(piece.text, item, project, figures)) b.say.push_back(std::move(*part));
    else b.whole = false;
  }
  // Neighbouring words become one part.
  Say joined;
  for (SayPart& part : b.say) {
    if (part.figure.empty() && !joined.empty() && joined.back().figure.empty()) joined.back().words += part.words;
    else joined.push_back(std::move(part));
  }
  b.say = std::move(joined);
  return b;
}

// An act whose figures are not all known is said plainly; a library without plain words was refused when it was read.
Say act_of(const StepInstance& s, const Project& project, const Figures& figures) {
  if (s.change != nullptr && !s.change->say.empty()) return {{s.change->say, ""}};
  if (s.own != nullptr) return {{s.own->say.empty() ? s.own->named.name : s.own->say, ""}};
  Built b = built(s.step->say, s.item, project, figures);
  if (!b.whole && !s.step->plainly.empty()) b = built(s.step->plainly, s.item, project, figures);
  return std::move(b.say);
}

std::string as_sentence(std::string text) {
  if (text.empty()) return text;
  text = capital(std::move(text));
  if (text.back() != '.' && text.back() != '?' && text.back() != '!') text += '.';
  return text;
}

void report_ring(const std::vector<std::size_t>& ring, const StepInstances& all, Diagnostics& diag) {
  Diagnostic d;
  d.code = "steps-ring";
  d.section = "work";
  d.sheet = "order of work";
  const OwnStep* own = nullptr;
  for (const std::size_t i : ring) {
    if (!d.sentence.empty()) d.sentence += " waits for ";
    d.sentence += all.steps[i].id;
    if (own == nullptr) own = all.steps[i].own;
  }
  d.sentence += " waits for " + all.steps[ring.front()].id + ".";
  d.hint = "drop one `after`";
  if (own != nullptr) {
    d.at = own->after_at.line > 0 ? own->after_at : own->before_at.line > 0 ? own->before_at : own->named.at;
    d.item = own->named.name;
  } else {
    d.at = all.steps[ring.front()].step->at;
  }
  diag.add(std::move(d));
}

// Says what an open hold waits for, to follow the word HOLD: "until 3/8 yd of slate wool more is here".
std::string until(const Diagnostic& hold, const Project& project, const Figures& figures) {
  if (hold.code == "cloth-short" || hold.code == "lengths-too-short") {
    const Figure* missing = figures.find("cloths/" + hold.item + "/short");
    if (missing != nullptr)
      return "until " + plain_text(*missing, project.show_lengths_in.value.value_or(ShownIn::inches)) + " more of " + hold.item +
             " is here";
  }
  if (hold.code == kGateUnsigned) return "until " + hold.item + " is signed";
  // A hold that speaks of the body is named, never quoted: steps hang where others read them.
  if (hold.is_private)
    return "until the hold on " + (hold.item.empty() ? std::string("the measures") : hold.item) + " is settled";
  return "until this is settled: " + hold.sentence;
}

// A step that is done though one that must come before it is not: said once for each line of `done`, never of a step that
// only may be there.
void report_done_early(const std::vector<StepNode>& nodes, const StepInstances& all, Diagnostics& diag) {
  std::set<const DoneStep*> said;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    const StepInstance& s = all.steps[i];
    if (!nodes[i].present || s.done_by == nullptr) continue;
    for (const StepEdge& edge : nodes[i].after) {
      const StepInstance& earlier = all.steps[edge.before];
      if (!edge.hard || earlier.done || earlier.holds == Truth::unknown || !said.insert(s.done_by).second) continue;
      Diagnostic d;
      d.code = "done-early";
      d.severity = Severity::warning;
      d.at = s.done_by->at;
      d.section = "work";
      d.item = s.id;
      d.sheet = "order of work";
      d.sentence = s.id + " is marked done, but " + earlier.id + " comes before it and is not" +
                   (edge.because.empty() ? "." : ": " + edge.because + ".");
      d.hint = "`- { step: " + earlier.id + " }` under `done`, if it was done";
      diag.add(std::move(d));
    }
  }
}

const std::vector<std::string>& needs_of(const StepInstance& s) { return s.own != nullptr ? s.own->needs : s.step->needs; }

constexpr const char* kSetUps[] = {"table", "machine", "iron", "hand", "figure"};
SetUp set_up_of(const StepInstance& s, const Pace& pace) {
  const auto& needs = needs_of(s);
  const auto has = [&](const char* what) { return std::find(needs.begin(), needs.end(), what) != needs.end(); };
  if (has("wearer") || has("form") || (s.step != nullptr && !s.step->gate.empty())) return SetUp::figure;
  if (has("machine") && !pace.all_by_hand) return SetUp::machine;
  if (has("iron")) return SetUp::iron;
  return has("table") ? SetUp::table : SetUp::hand;
}

// The steps as bare numbers, and of all orders that keep every wait the one that a person would choose. What is done does not
// move them: marking a step done changes no number on the wall.
std::vector<std::size_t> chosen_order(const StepInstances& all, const std::vector<StepNode>& nodes, const Project& project,
                                      const Templates& templates, const Figures& figures, std::int64_t effort) {
  const KeptOrder kept = kept_order(nodes);
  std::vector<SewStep> steps(nodes.size());
  std::map<std::string, int> items, sittings;
  const auto number = [](std::map<std::string, int>& of, const std::string& name) {
    return of.emplace(name, static_cast<int>(of.size())).first->second;
  };
  std::set<std::string> anchors;
  for (const Step& step : templates.steps)
    if (!step.with.empty()) anchors.insert(step.with);
  for (const std::size_t i : kept.order) {
    const StepInstance& s = all.steps[i];
    SewStep& sew = steps[i];
    sew.set_up = set_up_of(s, project.pace);
    sew.minutes = minutes_of(time_of(s, project, figures));
    sew.after = kept.after[i];
    if (!s.item.empty()) sew.item = number(items, s.item);
    sew.act = static_cast<int>(i);
    if (s.step == nullptr) continue;
    const auto index = static_cast<int>(s.step - templates.steps.data());
    sew.act = static_cast<int>(nodes.size()) + index;
    sew.fitting = !s.step->gate.empty();
    if (s.step->cannot_undo == kCannotUndo[0]) sew.cut = index;
    if (!s.step->with.empty()) sew.sitting = number(sittings, s.step->with);
    else if (anchors.count(s.step->id) > 0) sew.sitting = number(sittings, s.step->id);
  }
  return good_order(steps, kept.order, effort);
}

PlannedStep planned(const StepInstance& s, const Project& project, const Figures& figures, const FactLookup& facts) {
  PlannedStep p;
  p.id = s.id;
  p.item = s.item;
  p.act = act_of(s, project, figures);
  p.done = s.done;
  p.takes = time_of(s, project, figures);
  p.set_up = kSetUps[static_cast<int>(set_up_of(s, project.pace))];
  if (s.change != nullptr)
    for (const StepPart& part : s.change->parts) p.parts.push_back({part.part, part.takes, s.parts_done.count(part.part) > 0});
  if (s.own != nullptr) {
    p.cannot_undo = s.own->cannot_undo;
    p.needs = s.own->needs;
    p.uses = s.own->uses;
    p.at = s.own->named.at;
    return p;
  }
  const Step& step = *s.step;
  for (const std::string& line : step.shows) {
    Built b = built(line, s.item, project, figures);
    if (b.whole) p.shows.push_back(std::move(b.say));
  }
  p.cannot_undo = step.cannot_undo;
  p.gate = step.gate;
  p.needs = step.needs;
  p.rests = step.rests;
  p.stop = step.stop;
  p.may_be_left_out = step.may_be_left_out;
  p.sheet = step.sheet;
  p.at = step.at;
  for (const std::string& use : step.uses) {
    std::string words;
    for (const SayPiece& piece : read_say(use).pieces) words += piece.reference ? s.item : piece.text;
    p.uses.push_back(words);
  }
  p.conditional = s.holds == Truth::unknown;
  if (p.conditional) p.condition = step.when.open_question(facts, s.item);
  return p;
}

}  // namespace

std::vector<PlannedStep> order_of_work(const Project& project, const Templates& templates, const Figures& figures,
                                       const FactLookup& facts, Diagnostics& diag, std::int64_t effort) {
  const StepInstances all = step_instances(project, templates, facts);
  const auto present =
      static_cast<std::size_t>(std::count_if(all.nodes.begin(), all.nodes.end(), [](const StepNode& n) { return n.present; }));
  if (present > kMostSteps) {
    diag.error("steps-many", project.title_at,
               "The order of work would have " + whole_number(static_cast<std::int64_t>(present)) + " steps; 2,000 is the most.",
               "make one project of each garment");
    return {};
  }
  if (const auto ring = hard_ring(all.nodes); !ring.empty()) {
    report_ring(ring, all, diag);
    return {};
  }
  const std::vector<StepNode> nodes = contracted(all.nodes);
  report_done_early(nodes, all, diag);
  std::vector<PlannedStep> work;
  std::vector<int> numbers(nodes.size(), 0);
  for (const std::size_t i : chosen_order(all, nodes, project, templates, figures, effort)) {
    PlannedStep p = planned(all.steps[i], project, figures, facts);
    p.number = numbers[i] = static_cast<int>(work.size()) + 1;
    int first_waited_for = 0;  // where all it waits for was passed on, no written reason fits: its number is the reason
    for (const StepEdge& edge : nodes[i].after) {
      if (!edge.hard) continue;
      const StepInstance& earlier = all.steps[edge.before];
      p.hard_after.push_back(earlier.id);
      p.hard_because.push_back(edge.because);
      if (earlier.done) continue;
      if (first_waited_for == 0) first_waited_for = numbers[edge.before];
      if (p.reason.empty() && !edge.because.empty()) p.reason = {{as_sentence(edge.because), ""}};
    }
    if (p.reason.empty() && first_waited_for > 0) p.reason = {{"Step " + whole_number(first_waited_for) + " comes first.", ""}};
    work.push_back(std::move(p));
  }
  return work;
}

void add_holds(std::vector<PlannedStep>& work, const Project& project, const Figures& figures, const Diagnostics& diag) {
  for (const Diagnostic& hold : diag.sorted()) {
    if (hold.severity != Severity::hold || !hold.accepted_because.empty()) continue;
    for (PlannedStep& step : work) {
      if (step.done) continue;
      const bool named = !hold.step.empty() && (hold.step == step.id || step.id.rfind(hold.step + "@", 0) == 0);
      const bool cuts = step.cannot_undo == kCannotUndo[0] && hold_touches(hold, step.item, project);
      if (!named && !cuts && !stopped_at_gate(hold, step, work)) continue;
      const std::string words = until(hold, project, figures);
      if (std::find(step.holds.begin(), step.holds.end(), words) == step.holds.end()) step.holds.push_back(words);
    }
  }
}

}  // namespace gownsheaf
