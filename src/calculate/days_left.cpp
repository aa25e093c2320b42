#include "calculate/days_left.h"

#include <algorithm>
#include <map>

#include "calculate/critical_path.h"
#include "calculate/day_plan.h"
#include "calculate/step_times.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kDay = 24 * 60 * kMinute;
constexpr std::int32_t kRehearsedBefore = 7, kLongestPlan = 1500;

std::int64_t minutes_in(const Ratio& hours) { return hours.n * 60 / hours.d; }
std::int32_t days_in(Span span) { return static_cast<std::int32_t>((span.milliseconds + kDay - 1) / kDay); }
Day later(Day day, std::int32_t days) { return Day{day.serial + days}; }

std::optional<DayHours> hours_of(const Work& work) {
  DayHours hours;
  if (work.hours_by_weekday) {
    for (std::size_t i = 0; i < 7; ++i) hours.minutes[i] = minutes_in((*work.hours_by_weekday)[i]);
  } else if (work.hours_a_week.known()) {
    const std::int64_t week = minutes_in(*work.hours_a_week);
    for (std::int64_t i = 0; i < 7; ++i) hours.minutes[static_cast<std::size_t>(i)] = week * (i + 1) / 7 - week * i / 7;
  } else if (work.other_days.empty()) {
    return {};
  }
  hours.hand_only = work.hand_sewing_only;
  hours.off = work.days_off;
  for (const auto& [day, h] : work.other_days) hours.other[day] = minutes_in(h);
  hours.helper = work.helper_here;
  return hours;
}

class Planner {
 public:
  Planner(const Project& project, Plans& plans, DayHours hours, Diagnostics& diag)
      : project_(project), plans_(plans), hours_(std::move(hours)), diag_(diag), steps_(plans.work.size()) {
    for (std::size_t i = 0; i < plans.work.size(); ++i) place_[plans.work[i].id] = i;
    for (std::size_t i = 0; i < plans.work.size(); ++i) order_.push_back(i);
  }

  WorkPlan plan() {
    plan_.from = project_.today.value;
    plan_.worn_on = project_.worn_on.value;
    if (plan_.worn_on)
      plan_.last = later(*plan_.worn_on, -1 - (project_.work.buffer.known() ? days_in(*project_.work.buffer) : 0));
    make_steps();
    rehearse();
    longest_chain();
    deliveries();
    backward();
    if (plan_.from) forward();
    judge_deliveries();
    judge_due();
    if (plan_.from && plan_.last) judge_hours();
    return std::move(plan_);
  }

 private:
  const PlannedStep& work(std::size_t i) const { return plans_.work[i]; }

  void make_steps() {
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      const PlannedStep& p = work(i);
      DayStep& s = steps_[i];
      const auto needs = [&](const char* what) { return std::find(p.needs.begin(), p.needs.end(), what) != p.needs.end(); };
      s.minutes = p.done ? 0 : minutes_of(p.takes);
      s.by_hand = p.set_up == "hand";
      s.helper = needs("second person");
      s.one_sitting = s.helper || !p.gate.empty() || needs("wearer");
      if (p.rests) s.rests = days_in(*p.rests);
      for (const std::string& id : p.hard_after) s.after.push_back(place_.at(id));
      plan_.needed.milliseconds += s.minutes * kMinute;
    }
    for (const DueStep& due : project_.work.due)
      for_each_meant(due.step, [&](std::size_t i) {
        steps_[i].not_after = steps_[i].not_after ? std::min(*steps_[i].not_after, due.day) : due.day;
      });
  }

  template <class Do>
  void for_each_meant(const std::string& id, const Do& act) const {
    for (std::size_t i = 0; i < steps_.size(); ++i)
      if (same_name(work(i).id, id) || work(i).id.rfind(id + "@", 0) == 0) act(i);
  }

  // The rehearsal is an appointment: its day has room for it, whatever else the day has.
  void rehearse() {
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      if (work(i).gate != "dress rehearsal" || work(i).done) continue;
      std::optional<Day> day = project_.work.rehearsal.value;
      if (!day && plan_.worn_on) day = std::min(later(*plan_.worn_on, -kRehearsedBefore), *plan_.last);
      if (!day) return;
      plan_.rehearsal = day;
      plan_.rehearsal_step = work(i).number;
      if (plan_.last && *day > *plan_.last) plan_.last = std::max(*day, later(*plan_.worn_on, -1));
      steps_[i].not_before = steps_[i].not_after = day;
      hours_.other[*day] = std::max(hours_.on(*day), steps_[i].minutes);
      if (hours_.helper && steps_[i].helper && !hours_.helper_on(*day)) {
        hours_.helper->push_back(*day);
        std::sort(hours_.helper->begin(), hours_.helper->end());
      }
      return;
    }
  }

  void longest_chain() {
    std::int64_t week = 0;
    for (const std::int64_t m : hours_.minutes) week += m;
    std::vector<Activity> activities(steps_.size());
    for (std::size_t i = 0; i < steps_.size(); ++i)  // a day that passes counts as a day's share of the week's work
      activities[i] = {steps_[i].minutes + (work(i).done ? 0 : steps_[i].rests * week / 7), steps_[i].after};
    for (const std::size_t i : critical_path(activities).path) {
      if (work(i).done) continue;
      plan_.chain.push_back(work(i).number);
      plan_.chain_takes.milliseconds += steps_[i].minutes * kMinute;
      plans_.work[i].on_longest_chain = true;
    }
  }

  bool uses(const PlannedStep& p, const std::string& what) const {
    return same_name(p.item, what) ||
           std::any_of(p.uses.begin(), p.uses.end(), [&](const std::string& u) { return same_name(u, what); });
  }

  void add_delivery(const std::string& what, std::optional<Day> arrives) {
    Delivery d;
    d.what = what;
    d.arrives = arrives;
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      if (work(i).done || !uses(work(i), what)) continue;
      d.uses_it.push_back(work(i).number);
      if (arrives) steps_[i].not_before = std::max(steps_[i].not_before.value_or(*arrives), *arrives);
    }
    if (!d.uses_it.empty()) plan_.deliveries.push_back(std::move(d));
  }

  void deliveries() {
    for (const Cloth& cloth : project_.cloths) {
      std::optional<Day> arrives = cloth.arrives.value;
      if (cloth.bought.known())
        for (const BoughtLength& b : *cloth.bought)
          if (b.arrives) arrives = std::max(arrives.value_or(*b.arrives), *b.arrives);
      if (plan_.from && arrives && *arrives <= *plan_.from) arrives.reset();
      const auto lay = std::find_if(plans_.lays.begin(), plans_.lays.end(),
                                    [&](const LayPlan& l) { return same_name(l.cloth, cloth.named.name); });
      const bool to_buy = lay != plans_.lays.end() && !lay->needed.is_zero() && (!lay->bought || *lay->bought < lay->needed);
      if (arrives || (to_buy && cloth.takes_to_arrive.known())) add_delivery(cloth.named.name, arrives);
    }
    for (const Notion& notion : project_.notions)
      if (notion.arrives.known() && !(plan_.from && *notion.arrives <= *plan_.from))
        add_delivery(notion.named.name, *notion.arrives);
  }

  void backward() {
    if (!plan_.last) return;
    const Day least = plan_.from ? std::min(*plan_.from, later(*plan_.last, -kLongestPlan)) : later(*plan_.last, -kLongestPlan);
    const DayPlan late = plan_backward(steps_, order_, hours_, least, *plan_.last);
    for (std::size_t i = 0; i < steps_.size(); ++i) plans_.work[i].latest = late.first[i];
  }

  void forward() {
    const Day most = later(plan_.last.value_or(*plan_.from), kLongestPlan);
    const DayPlan early = plan_forward(steps_, order_, hours_, *plan_.from, most);
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      plans_.work[i].first_day = early.first[i];
      plans_.work[i].last_day = early.last[i];
    }
    if (early.left == 0 && !early.work.empty()) plan_.ends = early.work.back().day;
    Day last = plan_.last.value_or(*plan_.from);
    if (!early.work.empty()) last = std::max(last, early.work.back().day);
    auto at = early.work.begin();
    for (Day day = *plan_.from; day <= last; day.serial += 1) {
      CalendarDayPlan one;
      one.day = day;
      one.minutes = hours_.on(day);
      one.by_hand_only = hours_.by_hand_only(day);
      one.helper = hours_.helper.has_value() && hours_.helper_on(day);
      one.off =
          std::any_of(hours_.off.begin(), hours_.off.end(), [&](const auto& o) { return o.first <= day && day <= o.second; });
      bool helped = false;
      for (; at != early.work.end() && at->day == day; ++at) {
        one.does.push_back({work(at->step).number, at->minutes});
        helped = helped || steps_[at->step].helper;
        if (plan_.last && day > *plan_.last) plan_.unfinished.milliseconds += at->minutes * kMinute;
      }
      if (one.helper && helped) plan_.helper_days.push_back(day);
      if (!plan_.last || day <= *plan_.last) plan_.there.milliseconds += one.minutes * kMinute;
      plan_.days.push_back(std::move(one));
    }
    plan_.unfinished.milliseconds += early.left * kMinute;
    // A plan that fits shows itself that its days are early enough: the one from the end keeps the order also where a step
    // that has to wait for its day would let others go before it.
    if (plan_.last && plan_.unfinished.milliseconds == 0)
      for (PlannedStep& s : plans_.work)
        if (s.first_day && s.latest) s.latest = std::max(*s.latest, *s.first_day);
  }

  void say(Severity severity, const char* code, const SourceSpan& at, const std::string& item, std::string sentence,
           std::string hint) {
    Diagnostic d = message({item, "work", "calendar"}, severity, code, at, std::move(sentence), std::move(hint));
    diag_.add(std::move(d));
  }

  void judge_deliveries() {
    for (Delivery& d : plan_.deliveries) {
      for (const int number : d.uses_it) {
        const auto& latest = work(static_cast<std::size_t>(number - 1)).latest;
        if (latest) d.needed = std::min(d.needed.value_or(*latest), *latest);
      }
      const Cloth* cloth = project_.cloth(d.what);
      SourceSpan at = project_.title_at;
      if (cloth != nullptr)
        at = cloth->arrives.known()           ? cloth->arrives.at
             : cloth->takes_to_arrive.known() ? cloth->takes_to_arrive.at
                                              : cloth->named.at;
      if (const Notion* notion = project_.notion(d.what)) at = notion->arrives.at;
      if (cloth != nullptr && !d.arrives && d.needed && cloth->takes_to_arrive.known()) {
        d.order_by = later(*d.needed, -1 - days_in(*cloth->takes_to_arrive));
        if (cloth->restock.known()) d.order_by_to_replace = later(*d.order_by, -days_in(*cloth->restock));
        if (plan_.from && *d.order_by < *plan_.from) {
          d.late = true;
          say(Severity::hold, "order-late", at, d.what,
              capital(d.what) + " should have been ordered by " + long_day(*d.order_by) + ": it takes " +
                  days_text_of(*cloth->takes_to_arrive) + " to come, and work on it must begin by " + long_day(*d.needed) + ".",
              "a shop that has it; or drop a step under `change steps`");
        }
      }
      if (d.arrives && d.needed && *d.arrives > *d.needed) {
        d.late = true;
        say(Severity::hold, "arrives-late", at, d.what,
            capital(d.what) + " arrives on " + long_day(*d.arrives) + "; work on it must begin by " + long_day(*d.needed) + ".",
            "the calendar says what can be done meanwhile");
      }
      if (d.arrives) meanwhile(d);
    }
  }

  void meanwhile(Delivery& d) {
    std::vector<bool> waits(steps_.size());
    for (const int number : d.uses_it) waits[static_cast<std::size_t>(number - 1)] = true;
    for (std::size_t i = 0; i < steps_.size(); ++i) {  // in order: what it waits for stands before it
      for (const std::size_t a : steps_[i].after) waits[i] = waits[i] || waits[a];
      const bool other =
          steps_[i].not_before && (!plan_.from || *steps_[i].not_before > *plan_.from) && *steps_[i].not_before >= *d.arrives;
      waits[i] = waits[i] || (other && !work(i).done);
      if (!waits[i] && !work(i).done) d.meanwhile.push_back(work(i).number);
    }
    for (const int number : d.uses_it) {
      PlannedStep& p = plans_.work[static_cast<std::size_t>(number - 1)];
      const std::string words = "until the " + d.what + " is here, " + long_day(*d.arrives);
      if (plan_.from && *d.arrives > *plan_.from && std::find(p.holds.begin(), p.holds.end(), words) == p.holds.end())
        p.holds.push_back(words);
    }
  }

  void judge_due() {
    if (!plan_.from) return;
    for (const DueStep& due : project_.work.due)
      for_each_meant(due.step, [&](std::size_t i) {
        const PlannedStep& p = work(i);
        if (p.done || !p.last_day || *p.last_day <= due.day) return;
        say(Severity::warning, "due-late", due.at, p.id,
            p.id + " is due on " + long_day(due.day) + "; in this order and these hours it is done on " + long_day(*p.last_day) +
                ".",
            "more hours before it, or fewer steps");
      });
  }

  bool waits_for(std::size_t later, std::size_t earlier) const {
    const auto& after = steps_[later].after;
    return std::find(after.begin(), after.end(), earlier) != after.end();
  }

  // What goes with a step that is left out: optional steps that only serve it, or that it alone serves. Trims that are not
  // sewn on need not be made; what is not made need not be sewn on.
  std::vector<std::size_t> left_out_with(std::size_t step) const {
    std::vector<std::size_t> optional, gone{step};
    for (std::size_t i = 0; i < steps_.size(); ++i)
      if (work(i).may_be_left_out && !work(i).done) optional.push_back(i);
    const auto is_gone = [&](std::size_t i) { return std::find(gone.begin(), gone.end(), i) != gone.end(); };
    for (bool more = true; more;) {
      more = false;
      for (const std::size_t i : optional) {
        if (is_gone(i)) continue;
        int feeds = 0, feeds_gone = 0, fed = 0, fed_gone = 0;  // of the optional ones beside it
        for (const std::size_t k : optional) {
          if (waits_for(k, i)) ++feeds, feeds_gone += is_gone(k) ? 1 : 0;
          if (waits_for(i, k)) ++fed, fed_gone += is_gone(k) ? 1 : 0;
        }
        if ((feeds > 0 && feeds == feeds_gone) || (fed > 0 && fed == fed_gone)) gone.push_back(i), more = true;
      }
    }
    std::sort(gone.begin(), gone.end());
    return gone;
  }

  // One thing that could give way: what it saves, and the minutes that its steps then take.
  struct Choice {
    TimeSaved saved;
    std::map<std::size_t, std::int64_t> minutes;
  };

  Choice leaving_out(const std::vector<std::size_t>& gone) const {
    Choice c;
    c.saved.step = work(gone.front()).number;
    for (const std::size_t i : gone) {
      if (i != gone.front()) c.saved.also.push_back(work(i).number);
      c.saved.saves.milliseconds += steps_[i].minutes * kMinute;
      c.minutes[i] = 0;
    }
    return c;
  }

  Choice sewing_by_machine() const {
    Choice c;
    c.saved.what = "sew by machine what is sewn by hand";
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      const PlannedStep& p = work(i);
      const bool at_the_machine = std::find(p.needs.begin(), p.needs.end(), "machine") != p.needs.end();
      std::int64_t saved = 0;
      if (project_.pace.all_by_hand && at_the_machine) saved = steps_[i].minutes / 2;
      // Back stitch 48 s an inch against 18 s of a curved seam; running stitch 15 s against 9 s (docs/formulas.md).
      if (!project_.pace.all_by_hand && p.id == "sew-seams-by-hand") saved = steps_[i].minutes * 5 / 8;
      if (!project_.pace.all_by_hand && p.id == "sew-breadths-by-hand") saved = steps_[i].minutes * 2 / 5;
      saved = saved / 5 * 5;
      if (saved == 0) continue;
      c.minutes[i] = steps_[i].minutes - saved;
      c.saved.saves.milliseconds += saved * kMinute;
    }
    return c;
  }

  // A simpler trimming: lace sewn on flat takes 15 s an inch where joined, gathered and sewn it takes 27, of which some joins stay;
  // half the bows.
  std::vector<Choice> simpler_trims() const {
    std::vector<Choice> all;
    std::int64_t bows = 0;
    for (const Trim& t : project_.trims)
      if (t.kind == "bow") bows += t.number.value.value_or(1);
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      std::int64_t saved = 0;
      Choice c;
      if (work(i).id == "join-lace") {
        saved = steps_[i].minutes * 4 / 5;
        c.saved.what = "sew the lace on flat, not gathered";
      } else if (work(i).id == "make-bows" && bows > 1) {
        saved = steps_[i].minutes * (bows / 2) / bows;
        c.saved.what = "make " + whole_number(bows - bows / 2) + (bows - bows / 2 == 1 ? " bow" : " bows") + " instead of " +
                       whole_number(bows);
      }
      saved = saved / 5 * 5;
      if (saved == 0) continue;
      c.minutes[i] = steps_[i].minutes - saved;
      c.saved.saves.milliseconds = saved * kMinute;
      all.push_back(std::move(c));
    }
    return all;
  }

  // What is still not done by the last day when these give way: planned again, as what is saved in one place may have to wait in another.
  Span wanting_with(const std::map<std::size_t, std::int64_t>& minutes) const {
    std::vector<DayStep> steps = steps_;
    for (const auto& [i, m] : minutes) {
      steps[i].minutes = m;
      if (m == 0) steps[i].rests = 0;
    }
    const DayPlan plan = plan_forward(steps, order_, hours_, *plan_.from, later(*plan_.last, kLongestPlan));
    Span wanting{plan.left * kMinute};
    for (const auto& stint : plan.work)
      if (stint.day > *plan_.last) wanting.milliseconds += stint.minutes * kMinute;
    return wanting;
  }

  // Up to three of which each would do by itself, the least first; or, the largest first, what is wanted together.
  void find_what_gives() {
    std::vector<Choice> all;
    if (Choice machine = sewing_by_machine(); !machine.minutes.empty()) all.push_back(std::move(machine));
    for (Choice& simpler : simpler_trims()) all.push_back(std::move(simpler));
    std::vector<std::vector<std::size_t>> seen;
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      if (!work(i).may_be_left_out || work(i).done || steps_[i].minutes == 0) continue;
      std::vector<std::size_t> gone = left_out_with(i);
      if (std::find(seen.begin(), seen.end(), gone) != seen.end()) continue;
      all.push_back(leaving_out(gone));
      seen.push_back(std::move(gone));
    }
    std::stable_sort(all.begin(), all.end(), [](const Choice& a, const Choice& b) { return a.saved.saves > b.saved.saves; });
    constexpr std::size_t kMostChoices = 3;
    for (auto at = all.rbegin(); at != all.rend() && plan_.gives_way.size() < kMostChoices; ++at)
      if (wanting_with(at->minutes).milliseconds == 0) plan_.gives_way.push_back(at->saved);
    plan_.one_is_enough = !plan_.gives_way.empty();
    if (plan_.one_is_enough) return;
    std::map<std::size_t, std::int64_t> minutes;
    plan_.still_wanting = plan_.unfinished;
    for (const Choice& c : all) {
      if (plan_.still_wanting.milliseconds == 0) break;
      if (std::any_of(c.minutes.begin(), c.minutes.end(), [&](const auto& m) { return minutes.count(m.first) > 0; })) continue;
      minutes.insert(c.minutes.begin(), c.minutes.end());
      plan_.still_wanting = wanting_with(minutes);
      plan_.gives_way.push_back(c.saved);
    }
  }

  std::string ids_of(const TimeSaved& t) const {
    std::vector<std::string> ids{work(static_cast<std::size_t>(t.step - 1)).id};
    for (const int n : t.also) ids.push_back(work(static_cast<std::size_t>(n - 1)).id);
    std::string out;
    for (std::size_t i = 0; i < ids.size(); ++i) out += (i == 0 ? "" : i + 1 == ids.size() ? " and " : ", ") + ids[i];
    return out;
  }

  void judge_hours() {
    if (plan_.unfinished.milliseconds == 0) return;
    if (!project_.failed_sections.empty())
      return;  // what is not known of the garment may all be work, so the hours would be wrong
    find_what_gives();
    const SourceSpan at = project_.work.hours_a_week.known() ? project_.work.hours_a_week.at : project_.worn_on.at;
    std::string hint;
    for (const TimeSaved& g : plan_.gives_way)
      hint += (hint.empty()          ? ""
               : plan_.one_is_enough ? "; or "
                                     : "; and ") +
              (g.step > 0 ? "leave out " + ids_of(g) : g.what) + " (" + text_of(g.saves) + ")";
    if (!hint.empty() && plan_.still_wanting.milliseconds > 0)
      hint += "; then " + text_of(plan_.still_wanting) + " are still wanting";
    if (hint.empty()) hint = "more hours, or a step left out under `change steps`";
    if (plan_.needed > plan_.there)
      say(Severity::hold, "days-short", at, "",
          text_of(plan_.needed) + " of work, " + text_of(plan_.there) + " until " + long_day(*plan_.last) + ": " +
              text_of(Span{plan_.needed.milliseconds - plan_.there.milliseconds}) + " short.",
          hint);
    else
      say(Severity::hold, "days-short", at, "",
          text_of(plan_.needed) + " of work would go into " + text_of(plan_.there) + " until " + long_day(*plan_.last) +
              ", but " + text_of(plan_.unfinished) +
              " of it waits longer: for a delivery, a second person, a day with the machine, or what must rest.",
          hint);
  }

  const Project& project_;
  Plans& plans_;
  DayHours hours_;
  Diagnostics& diag_;
  std::vector<DayStep> steps_;
  std::vector<std::size_t> order_;
  std::map<std::string, std::size_t> place_;
  WorkPlan plan_;
};

}  // namespace

std::optional<WorkPlan> days_left(const Project& project, Plans& plans, Diagnostics& diag) {
  const std::optional<DayHours> hours = hours_of(project.work);
  if (!hours || plans.work.empty() || (!project.today.known() && !project.worn_on.known())) return {};
  return Planner(project, plans, *hours, diag).plan();
}

}  // namespace gownsheaf
