#include "packet/calendar_drawing.h"

#include <algorithm>
#include <map>

#include "packet/figure_text.h"
#include "packet/run_parts.h"
#include "packet/scale.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr double kWeekWide = 44, kCellWide = 63;  // points; 44 + 7 x 63 = 485
constexpr int kWeeksADrawing = 12, kWeeksInLargeType = 6, kFewWords = 2;
constexpr const char* kDayNames[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

struct DayWords { std::vector<std::string> words; bool heavy = false; };

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

struct WeekRow { Day monday; int weeks = 1; bool idle = false; };

class WeekChart {
 public:
  WeekChart(const Plans& plans, const Typesetter& typesetter) : plans_(plans), typesetter_(typesetter), size_(typesetter.scale().smallest), words_(words_of_days(plans)) {
    row_ = size_ * 3 + 14;
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
    const std::size_t most = size_ > 10 ? kWeeksInLargeType : kWeeksADrawing;  // parts that fit under a heading
    for (std::size_t from = 0; from < rows.size(); from += most)
      all.push_back(one({rows.begin() + static_cast<std::ptrdiff_t>(from), rows.begin() + static_cast<std::ptrdiff_t>(std::min(from + most, rows.size()))}));
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
    return whole_number(row.weeks) + " weeks " + (free ? "kept free" : "without work") + ": " + day_and_month(row.monday) + " to " + day_and_month(sunday) + ".";
  }

  Drawing one(const std::vector<WeekRow>& rows) {
    Drawing out;
    const double head = size_ + 4;
    for (int d = 0; d < 7; ++d) out.items.push_back(put(bold(kDayNames[d]), {pt(kWeekWide + kCellWide * d + 3), pt(size_)}, size_));
    double top = head;
    for (const WeekRow& row : rows) {
      out.items.push_back(line({Length(), pt(top)}, {pt(kWeekWide + 7 * kCellWide), pt(top)}, 0.7));
      if (row.idle) {
        out.items.push_back(put(condensed(idle_words(row)), {pt(kWeekWide + 3), pt(top + size_ + 2)}, size_));
        top += size_ + 7;
        continue;
      }
      const std::string monday = short_day(row.monday);
      const std::string of = monday.substr(monday.find(kNoBreak) + std::string(kNoBreak).size());  // "1 March"
      const auto space = of.find(kNoBreak);
      out.items.push_back(put(bold(of.substr(0, space)), {Length(), pt(top + size_ + 2)}, size_));
      out.items.push_back(put(condensed(of.substr(space + std::string(kNoBreak).size())), {Length(), pt(top + 2 * size_ + 3)}, size_));
      for (int d = 0; d < 7; ++d) cell(out, Day{row.monday.serial + d}, kWeekWide + kCellWide * d, top);
      top += row_;
    }
    const double foot = top;
    out.items.push_back(line({Length(), pt(foot)}, {pt(kWeekWide + 7 * kCellWide), pt(foot)}, 0.7));
    out.width = pt(kWeekWide + 7 * kCellWide + 1);
    out.height = pt(foot + 2);
    out.name = "weeks";
    return out;
  }

  void cell(Drawing& out, Day day, double x, double top) const {
    const CalendarDayPlan* plan = plan_of(day);
    const Box box{pt(x), pt(top), pt(kCellWide), pt(row_)};
    const bool past = plans_.days->last && day > *plans_.days->last && !(plans_.days->worn_on && day == *plans_.days->worn_on);
    if ((plan != nullptr && plan->off && plan->does.empty()) || (past && (plan == nullptr || plan->does.empty()) && inside(day))) {
      const Box hatched{pt(x + 2), pt(top + row_ - 8), pt(kCellWide - 4), pt(6)};
      out.items.push_back(Hatch{outline(hatched, 0.5).path, 45, 5, 0.5});
    }
    const auto said = words_.find(day);
    out.items.push_back(put(condensed(whole_number(calendar(day).day) + (plan != nullptr && plan->helper ? " +" : "")), {pt(x + 3), pt(top + size_ + 2)}, size_));
    double base = top + size_ + 2;
    if (said != words_.end()) {
      if (said->second.heavy) out.items.push_back(outline(box, 2.0));
      std::string words = listed(said->second.words);
      if (said->second.words.size() > kFewWords) words = listed({said->second.words[0], said->second.words[1]});
      out.items.push_back(put(words_in(Face::condensed_bold, words), {pt(x + 4 + size_ * 1.2), pt(base)}, size_));
    }
    if (plan == nullptr || plan->does.empty()) return;
    bool chain = false;
    for (const auto& stint : plan->does) chain = chain || on_chain(stint.step);
    std::vector<int> numbers;
    for (const auto& stint : plan->does)
      if (numbers.empty() || numbers.back() != stint.step) numbers.push_back(stint.step);
    base += size_ + 2;
    out.items.push_back(put(steps_that_fit(numbers), {pt(x + 3), pt(base)}, size_));
    const double wide = longest_ > 0 ? (kCellWide - 6) * static_cast<double>(minutes_of_day(*plan)) / static_cast<double>(longest_) : 0;
    FillMark bar;
    const Box bar_box{pt(x + 3), pt(top + row_ - 9), pt(wide), pt(5)};
    bar.path = outline(bar_box, 1).path;
    bar.ink = Ink::mid_grey;
    out.items.push_back(bar);
    out.items.push_back(outline(bar_box, 0.5));
    if (chain) out.items.push_back(line({pt(x + 3), pt(top + row_ - 2.5)}, {pt(x + 3 + wide), pt(top + row_ - 2.5)}, 2.0));
  }

  // As many as the cell is wide for; how many more there are.
  Text steps_that_fit(const std::vector<int>& numbers) const {
    for (std::size_t shown = numbers.size();; --shown) {
      Text steps;
      for (std::size_t i = 0; i < shown; ++i) {
        const std::string number = (i > 0 ? " " : "") + whole_number(numbers[i]);
        steps = steps + (on_chain(numbers[i]) ? bold(number) : condensed(number));
      }
      if (shown < numbers.size()) steps = steps + condensed(" and " + whole_number(static_cast<std::int64_t>(numbers.size() - shown)));
      if (shown <= 1 || typesetter_.width(steps, size_) <= pt(kCellWide - 5)) return steps;
    }
  }
  bool inside(Day day) const { return plans_.days->from && day >= *plans_.days->from && (!plans_.days->worn_on || day < *plans_.days->worn_on); }
  bool on_chain(int step) const { return plans_.work[static_cast<std::size_t>(step - 1)].on_longest_chain; }

  const Plans& plans_;
  const Typesetter& typesetter_;
  double size_, row_ = 0;
  std::int64_t longest_ = 0;
  std::map<Day, DayWords> words_;
};

}  // namespace

std::vector<Drawing> draw_weeks(const Plans& plans, const Typesetter& typesetter) { return WeekChart(plans, typesetter).drawings(); }

}  // namespace gownsheaf
