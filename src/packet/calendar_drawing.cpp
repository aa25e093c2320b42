#include "packet/calendar_drawing.h"

#include <algorithm>
#include <map>

#include "packet/figure_text.h"
#include "packet/run_parts.h"
#include "packet/scale.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr double kWeekWide = 37, kCellWide = 64;  // points; 37 + 7 x 64 = 485
constexpr int kFewWords = 2;
constexpr const char* kDayNames[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
// As short as the first column is wide.
constexpr const char* kMonthNames[] = {"Jan", "Feb", "March", "April", "May", "June", "July", "Aug", "Sept", "Oct", "Nov", "Dec"};

struct DayWords {
  std::vector<std::string> words;
  bool heavy = false;
};

std::map<Day, DayWords> words_of_days(const Plans& plans) {
  std::map<Day, DayWords> all;
  const WorkPlan& plan = *plans.days;
  const auto add = [&](std::optional<Day> day, const std::string& what, bool heavy) {
    if (!day) return;
    DayWords& d = all[*day];
    if (std::find(d.words.begin(), d.words.end(), what) == d.words.end()) d.words.push_back(what);
    d.heavy = d.heavy || heavy;
  };
  add(plan.worn_on, "worn", true);
  for (const PlannedStep& s : plans.work)
    if (!s.gate.empty() && !s.done && s.first_day) add(s.first_day, s.gate == "dress rehearsal" ? "rehearsal" : "fitting", true);
  for (const Delivery& d : plan.deliveries) {
    add(d.arrives, "delivery", false);
    add(d.order_by, "order by", false);
  }
  add(plan.last, "last day", false);
  return all;
}

struct WeekRow {
  Day monday;
  int weeks = 1;
  bool idle = false;
};

class WeekChart {
 public:
  WeekChart(const Plans& plans, const Typesetter& typesetter)
      : plans_(plans), typesetter_(typesetter), size_(typesetter.scale().smallest), words_(words_of_days(plans)) {
    row_ = size_ * 2 + 20;  // the day, its steps, the bar
    for (const CalendarDayPlan& d : plans.days->days) longest_ = std::max({longest_, d.minutes, minutes_of_day(d)});
  }

  std::vector<Drawing> drawings() {
    const std::vector<CalendarDayPlan>& days = plans_.days->days;
    std::vector<Drawing> all;
    if (days.empty()) return all;
    Day last = days.back().day;
    if (plans_.days->worn_on) last = std::max(last, *plans_.days->worn_on);
    const Day first{days.front().day.serial - calendar(days.front().day).weekday};
    std::vector<WeekRow> rows;
    for (Day from = first; from <= last; from.serial += 7) {
      const bool idle = nothing_in(from);
      if (idle && !rows.empty() && rows.back().idle) ++rows.back().weeks;
      else rows.push_back({from, 1, idle});
    }
    // A single week without work keeps its row: its days tell why.
    for (WeekRow& row : rows) row.idle = row.idle && row.weeks > 1;
    const auto head = std::make_shared<const Drawing>(day_names());
    all.push_back(*head);
    for (const WeekRow& row : rows) {
      all.push_back(one(row));
      all.back().head = head;
    }
    return all;
  }

 private:
  static std::int64_t minutes_of_day(const CalendarDayPlan& d) {
    std::int64_t sum = 0;
    for (const auto& stint : d.does) sum += stint.minutes;
    return sum;
  }
  const CalendarDayPlan* plan_of(Day day) const {
    const auto& days = plans_.days->days;
    const std::int32_t at = day.serial - days.front().day.serial;
    return at < 0 || at >= static_cast<std::int32_t>(days.size()) ? nullptr : &days[static_cast<std::size_t>(at)];
  }

  bool nothing_in(Day monday) const {
    for (int d = 0; d < 7; ++d) {
      const Day day{monday.serial + d};
      const CalendarDayPlan* plan = plan_of(day);
      if (words_.count(day) > 0 || (plan != nullptr && !plan->does.empty())) return false;
    }
    return true;
  }

  // Weeks in which nothing is planned, in one line instead of empty rows.
  std::string idle_words(const WeekRow& row) const {
    const auto day_and_month = [](Day day) {
      const std::string s = replaced(short_day(day), kNoBreak, " ");  // "Mon 1 March"
      return s.substr(s.find(' ') + 1);
    };
    const Day sunday{row.monday.serial + 7 * row.weeks - 1};
    const bool free = plans_.days->last && row.monday > *plans_.days->last;
    return whole_number(row.weeks) + " weeks " + (free ? "kept free" : "without work") + ": " + day_and_month(row.monday) +
           " to " + day_and_month(sunday) + ".";
  }

  static constexpr double kWide = kWeekWide + 7 * kCellWide;

  Drawing day_names() const {
    Drawing out;
    for (int d = 0; d < 7; ++d)
      out.items.push_back(put(bold(kDayNames[d]), {pt(kWeekWide + kCellWide * d + 3), pt(size_)}, size_));
    out.width = pt(kWide + 1);
    out.height = pt(size_ + 4);
    out.name = "days of the week";
    return out;
  }

  // A row is a drawing of its own, so that a page ends between two weeks.
  Drawing one(const WeekRow& row) const {
    Drawing out;
    const double high = row.idle ? size_ + 7 : row_;
    for (const double y : {0.0, high}) out.items.push_back(line({Length(), pt(y)}, {pt(kWide), pt(y)}, 0.7));
    if (row.idle) {
      out.items.push_back(put(condensed(idle_words(row)), {pt(kWeekWide + 3), pt(size_ + 2)}, size_));
    } else {
      const CalendarDay monday = calendar(row.monday);
      out.items.push_back(put(bold(whole_number(monday.day)), {Length(), pt(size_ + 2)}, size_));
      out.items.push_back(put(condensed(kMonthNames[monday.month - 1]), {Length(), pt(2 * size_ + 3)}, size_));
      for (int d = 0; d < 7; ++d) cell(out, Day{row.monday.serial + d}, kWeekWide + kCellWide * d, 0);
    }
    out.width = pt(kWide + 1);
    out.height = pt(high);
    out.name = row.idle ? "weeks without work" : "week";
    out.below_last = true;
    return out;
  }

  void cell(Drawing& out, Day day, double x, double top) const {
    const CalendarDayPlan* plan = plan_of(day);
    const Box box{pt(x), pt(top), pt(kCellWide), pt(row_)};
    const bool past = plans_.days->last && day > *plans_.days->last && !(plans_.days->worn_on && day == *plans_.days->worn_on);
    if ((plan != nullptr && plan->off && plan->does.empty()) ||
        (past && (plan == nullptr || plan->does.empty()) && inside(day))) {
      const Box hatched{pt(x + 2), pt(top + row_ - 8), pt(kCellWide - 4), pt(6)};
      out.items.push_back(Hatch{outline(hatched, 0.5).path, 45, 5, 0.5});
    }
    const auto said = words_.find(day);
    const Text date = condensed(whole_number(calendar(day).day) + (plan != nullptr && plan->helper ? " +" : ""));
    out.items.push_back(put(date, {pt(x + 3), pt(top + size_ + 2)}, size_));
    double base = top + size_ + 2;
    if (said != words_.end()) {
      if (said->second.heavy) out.items.push_back(outline(box, 2.0));
      std::string words = listed(said->second.words);
      if (said->second.words.size() > kFewWords) words = listed({said->second.words[0], said->second.words[1]});
      const Length from = pt(x + 3 + size_ / 4) + typesetter_.width(date, size_);
      Text what = words_in(Face::condensed_bold, words);
      if (from + typesetter_.width(what, size_) > box.right() - pt(2)) what = condensed(words);  // clear of the frame
      out.items.push_back(put(what, {from, pt(base)}, size_));
    }
    if (plan == nullptr || plan->does.empty()) return;
    bool chain = false;
    for (const auto& stint : plan->does) chain = chain || on_chain(stint.step);
    std::vector<int> numbers;
    for (const auto& stint : plan->does) numbers.push_back(stint.step);
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    base += size_ + 2;
    out.items.push_back(put(steps_that_fit(numbers), {pt(x + 3), pt(base)}, size_));
    const double wide =
        longest_ > 0 ? (kCellWide - 6) * static_cast<double>(minutes_of_day(*plan)) / static_cast<double>(longest_) : 0;
    FillMark bar;
    const Box bar_box{pt(x + 3), pt(top + row_ - 9), pt(wide), pt(5)};
    bar.path = outline(bar_box, 1).path;
    bar.ink = Ink::mid_grey;
    out.items.push_back(bar);
    out.items.push_back(outline(bar_box, 0.5));
    if (chain) out.items.push_back(line({pt(x + 3), pt(top + row_ - 2.5)}, {pt(x + 3 + wide), pt(top + row_ - 2.5)}, 2.0));
  }

  // Three and more that follow on are said by the first and the last. As many as the cell is wide for; dots stand for the rest.
  Text steps_that_fit(const std::vector<int>& numbers) const {
    std::vector<Text> said;
    for (std::size_t i = 0, end = 0; i < numbers.size(); i = end) {
      const bool chain = on_chain(numbers[i]);
      for (end = i + 1; end < numbers.size() && numbers[end] == numbers[end - 1] + 1 && on_chain(numbers[end]) == chain;) ++end;
      if (end - i < 3) end = i + 1;
      const std::string words = whole_number(numbers[i]) + (end - i > 1 ? "\u2013" + whole_number(numbers[end - 1]) : "");
      said.push_back(chain ? bold(words) : condensed(words));
    }
    for (std::size_t shown = said.size();; --shown) {
      Text steps;
      for (std::size_t i = 0; i < shown; ++i) steps = steps + (i > 0 ? condensed(" ") : Text{}) + said[i];
      if (shown < said.size()) steps = steps + condensed(" \u2026");
      if (shown <= 1 || typesetter_.width(steps, size_) <= pt(kCellWide - 5)) return steps;
    }
  }
  bool inside(Day day) const {
    return plans_.days->from && day >= *plans_.days->from && (!plans_.days->worn_on || day < *plans_.days->worn_on);
  }
  bool on_chain(int step) const { return plans_.work[static_cast<std::size_t>(step - 1)].on_longest_chain; }

  const Plans& plans_;
  const Typesetter& typesetter_;
  double size_, row_ = 0;
  std::int64_t longest_ = 0;
  std::map<Day, DayWords> words_;
};

}  // namespace

std::vector<Drawing> draw_weeks(const Plans& plans, const Typesetter& typesetter) {
  return WeekChart(plans, typesetter).drawings();
}

}  // namespace gownsheaf
