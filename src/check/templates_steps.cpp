#include <algorithm>

#include "check/template_block.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostShown = 3;

class StepReader {
 public:
  StepReader(const Entry& e, Diagnostics& diag) : entry_(e), diag_(diag), block_(e, "step", diag) {}

  Step read() {
    step_.id = block_.text("step");
    step_.at = block_.entry("step") != nullptr ? block_.at("step") : entry_.at;
    if (!step_.id.empty() && !is_id(step_.id))
      block_.error("name-letters", "step", "`" + step_.id + "`: an id is small letters, digits and hyphens.", "mark-pleats");
    step_.for_each = block_.text("for each");
    step_.when = block_.condition("when");
    check_fact_items(step_.when, step_.for_each, block_.at("when"), diag_);
    texts();
    edges();
    step_.with = block_.text("with");
    step_.replaces = block_.text("replaces");
    step_.gate = block_.text("gate");
    step_.cannot_undo = block_.text("cannot undo");
    step_.needs = block_.texts("needs");
    step_.sheet = block_.text("sheet");
    step_.rests = block_.span("rests");
    step_.stop = block_.text("stop");
    step_.may_be_left_out = block_.yes("may be left out");
    hours();
    origin();
    return std::move(step_);
  }

 private:
  void texts() {
    step_.say = block_.text("say");
    step_.plainly = block_.text("plainly");
    if (const Entry* say = block_.entry("say")) {
      const ReferenceCount refs = check_references(*say, step_.for_each, false, diag_);
      if (refs.figures > 0 && step_.plainly.empty())
        block_.error("key-missing", "say",
                     "`say` holds a figure that some garment may not have, and nothing says the act without it.",
                     "plainly: the same act in words alone");
    }
    if (const Entry* plainly = block_.entry("plainly"))
      if (check_references(*plainly, step_.for_each, false, diag_).figures > 0)
        block_.error("unknown-figure", "plainly", "`plainly` is what is said without figures.", "names only: {run}");
    step_.shows = block_.texts("shows");
    if (const Entry* shows = block_.entry("shows")) {
      each_text(*shows, [&](const Entry& line) {
        const ReferenceCount refs = check_references(line, step_.for_each, false, diag_);
        if (refs.faults == 0 && refs.figures != 1)
          diag_.error("shows-form", line.at, "Each line of `shows` holds one figure.", "\"{run:depth} deep\"");
      });
      if (step_.shows.size() > kMostShown)
        block_.error("shows-form", "shows", "`shows` has more than three lines; more go to their own sheet.", "name the `sheet`");
    }
    step_.uses = block_.texts("uses");
    if (const Entry* uses = block_.entry("uses"))
      each_text(*uses, [&](const Entry& one) {
        if (check_references(one, step_.for_each, false, diag_).figures > 0)
          diag_.error("unknown-figure", one.at, "`uses` holds names, no figures.", "{cloth}");
      });
  }

  template <class Do>
  static void each_text(const Entry& e, const Do& act) {
    if (e.kind == Entry::Kind::text) act(e);
    for (const Entry& item : e.children) act(item);
  }

  void edges() {
    for (const Entry* e : block_.blocks("after")) {
      const TemplateBlock one(*e, "after", diag_);
      After after{one.text("id"), one.text("because"), one.yes("hard"), one.at("id")};
      if (const Entry* because = one.entry("because")) {
        const SayRead read = read_say(because->text);
        if (read.fault || std::any_of(read.pieces.begin(), read.pieces.end(), [](const SayPiece& p) { return p.reference; }))
          one.error("braces", "because", "A reason is words alone, without braces.", "");
      }
      if (after.id.empty()) continue;
      const bool twice = std::any_of(step_.after.begin(), step_.after.end(), [&](const After& a) { return a.id == after.id; });
      if (twice) one.error("name-twice", "id", "`" + after.id + "` stands twice in `after` of " + step_.id + ".", "keep one");
      else step_.after.push_back(std::move(after));
    }
  }

  void hours() {
    const Entry* e = block_.entry("hours");
    if (e == nullptr) return;
    const TemplateBlock hours(*e, "hours", diag_);
    step_.hours_each = hours.span("each");
    step_.hours_rate = hours.text("rate");
    step_.hours_plus = hours.span("plus");
    step_.hours_else = hours.span("else");
    const Entry* times = hours.entry("times");
    if (times == nullptr) return;
    const SayRead read = read_say(times->text);
    const ReferenceCount refs = check_references(*times, step_.for_each, false, diag_);
    if (refs.faults > 0) return;
    if (refs.figures != 1 || read.pieces.size() != 1)
      hours.error("shows-form", "times", "`times` is one figure and nothing else.", "\"{run:count}\"");
    else step_.hours_times = read.pieces.front().text;
  }

  void origin() {
    step_.label = block_.label();
    step_.source = block_.text("source");
    check_source(block_, step_.label, step_.source);
  }

  const Entry& entry_;
  Diagnostics& diag_;
  TemplateBlock block_;
  Step step_;
};

}  // namespace

void read_step_library(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "steps", diag);
  for (const Entry* e : block.blocks("list")) {
    Step step = StepReader(*e, diag).read();
    if (!step.id.empty() && names.fresh("step", step.id, step.at, diag)) into.steps.push_back(std::move(step));
  }
}

}  // namespace gownsheaf
