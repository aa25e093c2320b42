// Hours and days of the work, steps done otherwise, and the maker's pace.
#include <algorithm>

#include "check/sections.h"
#include "diagnostics/message.h"
#include "figures/figures.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

constexpr std::array<std::string_view, 7> kWeekdays{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
constexpr std::int64_t kDay = 24 * 3600 * 1000;

int weekday_of(std::string_view word) {
  const auto at = std::find(kWeekdays.begin(), kWeekdays.end(), word);
  return at == kWeekdays.end() ? -1 : static_cast<int>(at - kWeekdays.begin());
}

std::optional<std::pair<Day, Day>> days_in(const std::string& text) {
  const auto to = text.find(" to ");
  const auto first = read_day(text.substr(0, to), "days off");
  if (!first.ok()) return {};
  if (to == std::string::npos) return std::pair(first.value(), first.value());
  const auto last = read_day(text.substr(to + 4), "days off");
  if (!last.ok()) return {};
  return std::pair(first.value(), last.value());
}

// Whether a kind of work goes by the inch of something, not by its number.
bool timed_by_length(const Templates& templates, const std::string& kind) {
  for (const Step& step : templates.steps) {
    if (step.hours_rate != kind || step.hours_times.empty()) continue;
    const SayReference r = read_reference(step.hours_times);
    const FigureKind* figure = find_figure_kind(r.section, r.quantity);
    return figure != nullptr && figure->dimension == "length";
  }
  return false;
}

void say(const Filling& file, std::string code, const SourceSpan& at, std::string sentence, std::string hint) {
  report(file, {"work", ""}, Severity::error, std::move(code), at, std::move(sentence), std::move(hint));
}

}  // namespace

void fill_work_days(const Filling& file, const Item& work, Project& project) {
  Work& w = project.work;
  const Item by_day = work.block("hours a week");
  if (by_day.entry() != nullptr) {
    w.hours_by_weekday.emplace();
    w.hours_by_weekday->fill(Ratio{0, 1});
    for (const Entry& day : by_day.entry()->children) {
      const auto hours = read_number(day.text, day.key);
      if (const int at = weekday_of(day.key); at >= 0 && hours.ok())
        (*w.hours_by_weekday)[static_cast<std::size_t>(at)] = hours.value();
    }
  }
  for (const Entry* e : work.values("hand sewing only"))
    if (const int at = weekday_of(e->text); at >= 0) w.hand_sewing_only.insert(at);
  for (const Entry* e : work.values("days off")) {
    const auto days = days_in(e->text);
    if (!days) continue;
    if (days->second < days->first)
      say(file, "days-backward", e->at, "The days off end before they begin.",
          "`" + iso_day(days->second) + " to " + iso_day(days->first) + "`");
    else w.days_off.push_back(*days);
  }
  if (const Entry* days = work.at("other days"); days != nullptr && days->kind == Entry::Kind::block)
    for (const Entry& e : days->children) {
      const auto day = read_day(e.key, "day");
      const auto hours = read_number(e.text, e.key);
      if (day.ok() && hours.ok()) w.other_days[day.value()] = hours.value();
    }
  if (work.has("helper here")) {
    w.helper_here.emplace();
    for (const Entry* e : work.values("helper here"))
      if (const auto day = read_day(e->text, "helper here"); day.ok()) w.helper_here->push_back(day.value());
    std::sort(w.helper_here->begin(), w.helper_here->end());
  }
  w.rehearsal = work.day("rehearsal");
  w.buffer = work.span("buffer");
  if (!w.buffer.known()) w.buffer = Given<Span>::standing(Span{3 * kDay}, 'c', "kept free before the end");
  if (w.rehearsal.known() && project.worn_on.known() && *w.rehearsal > *project.worn_on)
    say(file, "rehearsal-late", w.rehearsal.at, "The dress rehearsal comes after the day it is worn.",
        "a week before: `" + iso_day(Day{project.worn_on->serial - 7}) + "`");
  if (const Entry* due = work.at("due"); due != nullptr && due->kind == Entry::Kind::block)
    for (const Entry& e : due->children)
      if (const auto day = read_day(e.text, "due"); day.ok()) w.due.push_back({step_id_in(file, e.key), day.value(), e.key_at});
}

void fill_changed_steps(const Filling& file, const Item& work, Project& project) {
  for (const Item& item : work.items("change steps")) {
    const Entry* step = item.at("step");
    if (step == nullptr || step->kind != Entry::Kind::text) continue;
    ChangedStep change;
    change.step = step_id_in(file, step->text);
    change.at = step->at;
    change.drop = item.yes_no("drop").value.value_or(false);
    change.because = item.plain("because");
    change.say = item.plain("say");
    change.takes = item.span("takes").value;
    change.after = step_ids_in(file, item, "after");
    for (const Item& part : item.items("parts"))
      change.parts.push_back({clean_name(part.plain("part")), part.span("takes").value});
    if (change.drop && change.because.empty())
      say(file, "drop-because", item.at("drop")->at, "`" + step->text + "` is left out without a reason.",
          "`because: …`, so that nobody looks for it later");
    std::optional<Span> sum = Span{};
    for (const StepPart& part : change.parts) {
      if (sum && part.takes) sum->milliseconds += part.takes->milliseconds;
      else sum.reset();
    }
    if (!change.parts.empty() && sum) {
      if (change.takes && *change.takes != *sum)
        say(file, "parts-differ", item.at("takes")->at,
            "The parts of " + change.step + " take " + text_of(*sum) + " together, not " + text_of(*change.takes) + ".",
            "leave out `takes`; the parts say it");
      change.takes = sum;
    }
    project.work.changes.push_back(std::move(change));
  }
  for (const Item& item : work.items("may come before")) {
    const Entry *step = item.at("step"), *other = item.at("other");
    if (step == nullptr || other == nullptr) continue;
    project.work.questions.push_back({step_id_in(file, step->text), step_id_in(file, other->text), step->at});
  }
}

// A part that is done is one of those the step was split into.
void check_parts_done(const Filling& file, const Item& work, const Project& project) {
  for (const Item& item : work.items("done")) {
    const Entry *step = item.at("step"), *part = item.at("part");
    if (step == nullptr || part == nullptr) continue;
    const std::string id = step_id_in(file, step->text);
    std::vector<std::string> parts;
    for (const ChangedStep& change : project.work.changes)
      if (same_name(change.step, id))
        for (const StepPart& one : change.parts) parts.push_back(one.part);
    if (std::find(parts.begin(), parts.end(), clean_name(part->text)) != parts.end()) continue;
    std::string all;
    for (const std::string& one : parts) all += (all.empty() ? "`" : ", `") + one + "`";
    const std::string near = did_you_mean(clean_name(part->text), parts);
    say(file, "unknown-part", part->at, "`" + id + "` has no part `" + part->text + "`.",
        parts.empty()  ? "split it under `change steps`: `parts: [{ part: " + part->text + " }]`"
        : near.empty() ? "its parts are " + all
                       : "did you mean `" + near + "`?");
  }
}

void fill_pace(const Filling& file, Project& project) {
  const Item pace = file.root.block("pace");
  project.pace.i_am = pace.word("i am");
  if (!project.pace.i_am.known()) project.pace.i_am = Given<std::string>::standing("practised", 'c', "who sews it");
  project.pace.threading = pace.percent("threading");
  if (!project.pace.threading.known())
    project.pace.threading = Given<Percent>::standing(Percent{Ratio::of(15, 100)}, 'c', "threading, tidying, unpicking");
  if (pace.entry() == nullptr) return;
  project.pace.all_by_hand = pace.yes_no("all by hand").value.value_or(false);
  std::vector<std::string> rates;
  for (const Step& step : file.templates.steps)
    if (!step.hours_rate.empty() && std::find(rates.begin(), rates.end(), step.hours_rate) == rates.end())
      rates.push_back(step.hours_rate);
  std::sort(rates.begin(), rates.end());
  for (const Entry& e : pace.entry()->children) {
    if (e.key == "i am" || e.key == "threading" || e.key == "needleful" || e.key == "all by hand" || e.kind != Entry::Kind::text)
      continue;
    const auto rate = read_rate(e.text, e.key);
    if (!rate.ok()) continue;
    const std::string kind = clean_name(e.key);
    if (!rates.empty() && std::find(rates.begin(), rates.end(), kind) == rates.end()) {
      const std::string near = did_you_mean(kind, rates);
      std::string all;
      for (const std::string& r : rates) all += (all.empty() ? "" : ", ") + r;
      report(file, {"pace", ""}, Severity::warning, "pace-unused", e.key_at,
             "No step is timed by `" + kind + "`: this pace changes nothing.",
             near.empty() ? "they are " + all : "did you mean `" + near + "`?");
      continue;
    }
    const bool by_length = timed_by_length(file.templates, kind);
    const Rate& r = rate.value();
    const bool of_length = r.per == "in" || r.per == "cm" || (r.of == "stitches" && r.per == "min");
    if (by_length != of_length && !rates.empty()) {
      report(file, {"pace", ""}, Severity::warning, "pace-unused", e.at,
             capital(kind) + " is timed by the " + (by_length ? "inch" : "piece") + ": `" + e.text + "` changes nothing.",
             by_length ? "`0.3 min per in`, or `20 stitches per min`" : "`4 min each`");
      continue;
    }
    project.pace.own[kind] = r;
  }
}

}  // namespace gownsheaf
