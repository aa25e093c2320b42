// The work and the paper.
#include "check/sections.h"

namespace gownsheaf {

// An id as the order of work writes it: `cut-breadths@slate wool`, `own/NAME`; names as they were first written.
std::string step_id_in(const Filling& file, std::string_view written) {
  const auto mark = written.find('@');
  std::string id = clean_name(written.substr(0, mark));
  std::string_view bare = id;
  if (bare.starts_with("own/")) bare.remove_prefix(4);
  const auto known = file.names.find("steps", bare);
  const std::string given = known.value_or(std::string(bare));
  id = known && file.templates.step(given) == nullptr ? "own/" + given : given;
  if (mark == std::string_view::npos) return id;
  char joint = '@';
  for (const std::string& item : parted(written.substr(mark + 1), '+')) {
    constexpr std::string_view kItems =
        "cloths|notions|pieces|pleats|rounds|seams|edges|closures|bones|piping|binding|trims|plackets|pockets|drapery|fittings";
    id += joint + file.names.find(kItems, item).value_or(clean_name(item));
    joint = '+';
  }
  return id;
}

std::vector<std::string> step_ids_in(const Filling& file, const Item& item, std::string_view key) {
  std::vector<std::string> ids;
  for (const Entry* e : item.values(key))
    if (e->kind == Entry::Kind::text && e->text != kNone) ids.push_back(step_id_in(file, e->text));
  return ids;
}

namespace {

Given<Ratio> hours_of(const Item& work) {
  const Item days = work.block("hours a week");
  if (days.entry() == nullptr) return work.number("hours a week");
  Ratio sum{0, 1};
  for (const Entry& day : days.entry()->children) {
    const auto hours = read_number(day.text, day.key);
    if (!hours.ok()) continue;
    const Ratio& h = hours.value();
    sum = Ratio::of(sum.n * h.d + h.n * sum.d, sum.d * h.d);
  }
  auto given = Given<Ratio>::guessed(sum, "the hours of its days", days.entry()->at);
  given.label = 'x';
  return given;
}

}  // namespace

void fill_work(const Filling& file, Project& project) {
  const Item work = file.root.block("work");
  if (work.entry() == nullptr) return;
  project.work.hours_a_week = hours_of(work);
  for (const Item& item : work.items("done")) {
    const Entry* step = item.at("step");
    if (step == nullptr || step->kind != Entry::Kind::text) continue;
    project.work.done.push_back({step_id_in(file, step->text), item.day("day").value, step->at, clean_name(item.plain("part"))});
  }
  for (const Item& item : work.items("own steps")) {
    OwnStep step;
    step.named = named_of(file, item, "", "step");
    step.say = item.plain("say");
    step.because = item.plain("because");
    step.cannot_undo = item.plain("cannot undo");
    step.after = step_ids_in(file, item, "after");
    step.before = step_ids_in(file, item, "before");
    for (const Entry* e : item.values("needs")) step.needs.push_back(e->text);
    step.uses = names_in(file, item, "uses", "cloths|notions");
    step.takes = item.span("takes").value;
    step.after_at = item.has("after") ? item.at("after")->at : step.named.at;
    step.before_at = item.has("before") ? item.at("before")->at : step.named.at;
    project.work.own_steps.push_back(std::move(step));
  }
  fill_work_days(file, work, project);
  fill_changed_steps(file, work, project);
  check_parts_done(file, work, project);
}

void fill_print(const Filling& file, Project& project) {
  const Item print = file.root.block("print");
  const bool metric = *project.show_lengths_in == ShownIn::centimetres;
  const auto paper = print.word("paper");
  project.print.paper = paper.known()
                            ? Given<Paper>::written(*paper == "a4" ? Paper::a4 : Paper::letter, paper.at)
                            : Given<Paper>::guessed(metric ? Paper::a4 : Paper::letter,
                                                    metric ? "lengths are shown in centimetres" : "lengths are shown in inches");
  project.print.sheets = print.word("sheets");
  if (!project.print.sheets.known()) project.print.sheets = Given<std::string>::standing("binder", 'c', "the whole packet");
  const auto holes = print.word("holes");
  const bool letter = *project.print.paper == Paper::letter;
  project.print.holes = holes.known()
                            ? Given<Holes>::written(*holes == "none"  ? Holes::none
                                                    : *holes == "two" ? Holes::two
                                                                      : Holes::three,
                                                    holes.at)
                            : Given<Holes>::guessed(letter ? Holes::three : Holes::two, letter ? "letter paper" : "a4 paper");
  project.print.read_from = print.length("read from");
  if (!project.print.read_from.known())
    project.print.read_from = *project.print.sheets == "pin-up"
                                  ? Given<Length>::standing(Length::cm(60), 'c', "pinned above the table")
                                  : Given<Length>::standing(Length::cm(40), 'c', "read in the hand");
}

}  // namespace gownsheaf
