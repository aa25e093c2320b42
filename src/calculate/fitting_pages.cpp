#include "calculate/fitting_pages.h"

#include <algorithm>

#include "calculate/gates.h"
#include "calculate/new_figure.h"
#include "templates/say.h"
#include "units/read.h"

namespace gownsheaf {
namespace {

// Lengths in braces become words in the project's unit, keys stay keys. `whole` turns false where a figure is not there.
Say set_in(const std::string& text, const Figures& figures, ShownIn in, bool& whole) {
  Say say;
  const auto add_words = [&](const std::string& words) {
    if (!say.empty() && say.back().figure.empty()) say.back().words += words;
    else say.push_back({words, ""});
  };
  for (const SayPiece& piece : read_say(text).pieces) {
    if (!piece.reference) {
      add_words(piece.text);
    } else if (const auto length = read_length(piece.text, ""); length.ok()) {
      add_words(rule_text_of(length.value().length, in).plain());
    } else if (piece.text == "one") {  // one of the project's own unit
      add_words(in == ShownIn::inches ? "1 in" : "1 cm");
    } else if (figures.find(piece.text) != nullptr) {
      say.push_back({"", piece.text});
    } else {
      whole = false;
    }
  }
  return say;
}

class Pages {
 public:
  Pages(const Project& project, const Templates& templates, const Figures& figures, const FactLookup& facts,
        const std::vector<PlannedStep>& work, const std::vector<FittingChange>& changes)
      : project_(project), templates_(templates), figures_(figures), facts_(facts), work_(work), changes_(changes),
        in_(shown_in(project)), gates_(gates_in(work)) {}

  // In the order of work; a stage without a step stands after the gate before it in the file, the last ones at the end.
  std::vector<FittingPlan> all() const {
    std::vector<FittingPlan> pages;
    const std::vector<FittingChecks>& file = templates_.fitting_checks;
    std::vector<bool> put(file.size(), false);
    const auto put_page = [&](std::size_t i) {
      if (!put[i]) add(file[i], pages);
      put[i] = true;
    };
    std::size_t last_gate = 0;
    for (std::size_t i = 0; i < file.size(); ++i)
      if (is_step(file[i].gate)) last_gate = i;
    for (const std::string& gate : gates_)
      for (std::size_t i = 0; i < file.size(); ++i) {
        if (file[i].gate != gate) continue;
        put_page(i);
        for (std::size_t k = i + 1; k < last_gate && !is_step(file[k].gate); ++k) put_page(k);
      }
    for (std::size_t i = 0; i < file.size(); ++i)
      if (!is_step(file[i].gate)) put_page(i);
    return pages;
  }

 private:
  bool is_step(const std::string& gate) const {
    return std::any_of(templates_.steps.begin(), templates_.steps.end(), [&](const Step& s) { return s.gate == gate; });
  }

  void add(const FittingChecks& checks, std::vector<FittingPlan>& pages) const {
    if (checks.when.holds(facts_, "") != Truth::yes) return;
    FittingPlan page;
    page.gate = checks.gate;
    page.title = checks.title;
    bool passed = false;
    for (const PlannedStep& s : work_) {
      if (s.gate != checks.gate) continue;
      page.step = s.number;
      passed = s.done;
      page.next_step = next_after(s);
      break;
    }
    for (const Fitting& f : project_.fittings) {
      if (page.step == 0 || gate_of_fitting(f.named.name, gates_) != checks.gate) continue;
      page.fitting = f.named.name;
      page.signed_on = f.signed_on.known() ? long_day(*f.signed_on) : "";
    }
    if (!page.signed_on.empty() || (passed && page.fitting.empty())) return;
    for (const FittingChange& c : changes_)
      if (!page.fitting.empty() && c.fitting == page.fitting) page.changes.push_back(c);
    page.wear = layers(checks);
    for (const FittingLine& line : checks.lines) add_line(line, page);
    page.moves = checks.moves;
    if (!page.checks.empty()) pages.push_back(std::move(page));
  }

  int next_after(const PlannedStep& gate) const {
    for (const PlannedStep& s : work_)
      if (!s.done && std::find(s.hard_after.begin(), s.hard_after.end(), gate.id) != s.hard_after.end()) return s.number;
    return 0;
  }

  // What was measured over, then what this fitting asks for besides; of either, what is not made yet.
  std::vector<LayerWorn> layers(const FittingChecks& checks) const {
    std::vector<LayerWorn> all;
    const auto put = [&](const std::string& layer) {
      if (std::any_of(all.begin(), all.end(), [&](const LayerWorn& w) { return same_name(w.layer, layer); })) return;
      LayerWorn worn{layer, false, ""};
      for (const StillToMake& s : project_.still_to_make) {
        if (!same_name(s.layer, layer)) continue;
        worn.still_to_make = true;
        if (s.ready_by) worn.ready_by = long_day(*s.ready_by);
      }
      all.push_back(std::move(worn));
    };
    if (project_.taken)
      for (const std::string& layer : project_.taken->over) put(layer);
    for (const StillToMake& s : project_.still_to_make) put(s.layer);
    for (const std::string& layer : checks.wear) put(layer);
    return all;
  }

  void add_line(const FittingLine& line, FittingPlan& page) const {
    const Truth holds = line.when.holds(facts_, "");
    if (holds == Truth::no) return;
    FittingCheckPlan check;
    check.look = line.look;
    check.how = line.how;
    if (holds == Truth::unknown) check.condition = line.when.open_question(facts_, "");
    bool sound = true, unused = true;
    check.allowed_plainly = set_in(line.plainly.empty() ? line.allowed : line.plainly, figures_, in_, unused);
    check.allowed = set_in(line.allowed, figures_, in_, sound);
    if (!sound) check.allowed = check.allowed_plainly;
    sound = true;
    check.remedy_plainly = set_in(line.remedy_plainly.empty() ? line.remedy : line.remedy_plainly, figures_, in_, unused);
    check.remedy = set_in(line.remedy, figures_, in_, sound);
    if (!sound) check.remedy = check.remedy_plainly;
    page.checks.push_back(std::move(check));
  }

  const Project& project_;
  const Templates& templates_;
  const Figures& figures_;
  const FactLookup& facts_;
  const std::vector<PlannedStep>& work_;
  const std::vector<FittingChange>& changes_;
  ShownIn in_;
  std::vector<std::string> gates_;
};

}  // namespace

std::vector<FittingPlan> fitting_pages(const Project& project, const Templates& templates, const Figures& figures,
                                       const FactLookup& facts, const std::vector<PlannedStep>& work,
                                       const std::vector<FittingChange>& changes) {
  return Pages(project, templates, figures, facts, work, changes).all();
}

std::vector<CautionPlan> cautions_called_for(const Project& project, const Templates& templates, const FactLookup& facts) {
  std::vector<CautionPlan> called;
  const Figures none;
  for (const Caution& caution : templates.cautions) {
    const Truth holds = caution.when.holds(facts, "");
    if (holds == Truth::no) continue;
    bool whole = true;
    CautionPlan plan{caution.about, set_in(caution.say, none, shown_in(project), whole), caution.defers_to, ""};
    if (holds == Truth::unknown) plan.condition = caution.when.open_question(facts, "");
    called.push_back(std::move(plan));
  }
  return called;
}

}  // namespace gownsheaf
