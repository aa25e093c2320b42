// The days that are left: what is to be done and what time there is, the weeks as a chart, the days that are fixed, what can
// be done while something is late, and what could give way.
#include <algorithm>
#include <memory>

#include "packet/calendar_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

std::string no_break(std::string words) { return replaced(std::move(words), " ", kNoBreak); }
std::string span_words(Span span) { return no_break(text_of(span)); }

Text answer(const WorkPlan& plan) {
  if (plan.needed.milliseconds == 0) return words("All the work is done.");
  Text out = bold(span_words(plan.needed)) + words(" of work is left");
  if (!plan.from) return out + words("; without the key today in the project file only the latest days are known.");
  if (!plan.last) {
    if (plan.ends)
      out = out + words("; the last of it is done on ") + bold(no_break(long_day(*plan.ends))) +
            words(". The day it is worn is not written.");
    return out;
  }
  out = out + words(", and ") + bold(span_words(plan.there)) + words(" of time until " + short_day(*plan.last) + ". ");
  if (plan.unfinished.milliseconds == 0)
    return out + words(plan.ends ? "Gone on with as planned, the last step is done on " : "It fits.") +
           (plan.ends ? bold(short_day(*plan.ends)) + words(".") : Text{});
  if (plan.needed > plan.there)
    out = out + bold(span_words(Span{plan.needed.milliseconds - plan.there.milliseconds}) + " too little.");
  else out = out + bold("There is time enough, but " + span_words(plan.unfinished) + " has to wait past it.");
  if (plan.ends) out = out + words(" As it stands the last step is done on " + short_day(*plan.ends) + ".");
  return out;
}

void what_gives(const PacketInput& input, const FigureText& text, Sheet& sheet) {
  const WorkPlan& plan = *input.plans.days;
  if (plan.unfinished.milliseconds == 0) return;
  sheet.blocks.push_back(heading("What could give way"));
  if (plan.gives_way.size() > 1)
    sheet.blocks.push_back(paragraph(words(plan.one_is_enough ? "Any one of these is enough:" : "All of these together:")));
  for (const TimeSaved& g : plan.gives_way) {
    Text line = words(capital(g.what) + ".");
    if (g.step > 0) {
      line =
          words("Leave out " + nth_step(g.step) + ", ") + text.reason(input.plans.work[static_cast<std::size_t>(g.step - 1)].act);
      if (!g.also.empty())
        line = line + words(" With it " + ranges(g.also) + (g.also.size() == 1 ? " falls away." : " fall away."));
    }
    sheet.blocks.push_back(paragraph(tick_box() + words(" ") + line + words(" Saves " + span_words(g.saves) + ".")));
  }
  if (plan.gives_way.empty() || plan.still_wanting.milliseconds > 0)
    sheet.blocks.push_back(paragraph(
        words(plan.gives_way.empty()
                  ? "No step of this garment may simply be left out: more hours, another day, or a second pair of hands."
                  : "That is not enough: " + span_words(plan.still_wanting) +
                        " are still wanting. More hours, another day, or a second pair of hands.")));
}

struct FixedDay {
  Day day;
  Text what, latest;
};

Table fixed_days(const PacketInput& input, bool with_the_end) {
  const WorkPlan& plan = *input.plans.days;
  std::vector<FixedDay> days;
  const auto at_latest = [](const std::optional<Day>& day) { return day ? words(short_day(*day)) : words("\u2013"); };
  for (const PlannedStep& s : input.plans.work) {
    if (s.gate.empty() || s.done || (!s.first_day && !s.latest)) continue;
    const bool late = s.first_day && s.latest && *s.first_day > *s.latest;
    days.push_back({s.first_day ? *s.first_day : *s.latest,
                    (late ? tag(Tag::late) + words(" ") : Text{}) + bold(capital(s.gate)) + words(", " + nth_step(s.number)),
                    at_latest(s.latest)});
  }
  for (const Delivery& d : plan.deliveries) {
    const Text late = d.late ? tag(Tag::late) + words(" ") : Text{};
    if (d.order_by) days.push_back({*d.order_by, late + words("order the ") + bold(d.what), words(short_day(*d.order_by))});
    if (d.order_by_to_replace)
      days.push_back({*d.order_by_to_replace,
                      words("order the ") + bold(d.what) + words(", if it should be possible to order it again"),
                      words("\u2013")});
    if (d.arrives)
      days.push_back({*d.arrives, late + words("the ") + bold(d.what) + words(" should be here"), at_latest(d.needed)});
  }
  if (plan.last && with_the_end)
    days.push_back({*plan.last, words("last day for work; those after it are kept free"), words("\u2013")});
  if (plan.worn_on && with_the_end) days.push_back({*plan.worn_on, bold("It is worn"), words("\u2013")});
  std::stable_sort(days.begin(), days.end(), [](const FixedDay& a, const FixedDay& b) { return a.day < b.day; });
  Table table;
  const bool far = pinned_up(input);
  add_column(table, Column::Kind::tick, "", far ? 30 : 20, false);
  add_column(table, Column::Kind::words, "day", far ? 150 : 110, true);
  add_column(table, Column::Kind::words, "what", 0, false);
  add_column(table, Column::Kind::words, "at the latest", far ? 130 : 100, false);
  for (const FixedDay& d : days) {
    Row row;
    row.cells = {{tick_box()}, {bold(short_day(d.day))}, {d.what}, {d.latest}};
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::vector<int> rising(std::vector<int> numbers) {
  std::sort(numbers.begin(), numbers.end());
  return numbers;
}

bool leaves_out(const Drawing& week) {
  return std::any_of(week.items.begin(), week.items.end(), [](const DrawingItem& item) {
    const auto* label = std::get_if<Label>(&item);
    return label != nullptr && !label->text.empty() && label->text.back().words.ends_with("\u2026");
  });
}

void days_to_keep(const PacketInput& input, bool with_the_end, std::vector<Block>& blocks) {
  blocks.push_back(heading("Days to keep"));
  blocks.push_back(block(fixed_days(input, with_the_end)));
  for (const Delivery& d : input.plans.days->deliveries)
    if (d.arrives)
      blocks.push_back(
          paragraph(bold("While the " + d.what + " is not here: ") +
                    words(d.meanwhile.empty() ? "nothing else can be done." : "steps " + ranges(rising(d.meanwhile)) + ".")));
}

}  // namespace

Sheet calendar_sheet(const PacketInput& input) {
  Sheet sheet;
  if (!input.plans.days || input.plans.work.empty()) return sheet;
  const FigureText text = figure_text_of(input);
  const WorkPlan& plan = *input.plans.days;
  sheet.section = Section::work;
  sheet.answer = answer(plan);
  if (plan.needed.milliseconds == 0) return sheet;
  what_gives(input, text, sheet);
  const std::vector<Drawing> weeks = draw_weeks(input.plans, input.typesetter);
  for (std::size_t i = 0; i < weeks.size(); ++i)  // the first two weeks stand together, and the last two with the key
    sheet.blocks.push_back(block(weeks[i], i < 2 || i + 2 >= weeks.size()));
  if (!weeks.empty()) {
    std::string key =
        "Numbers are steps of the order of work; a bar is the day\u2019s work against the longest day. Bold numbers and a heavy line under the bar: "
        "the longest chain. A heavy frame: the wearer is needed, or it is worn. Hatched: kept free.";
    if (std::any_of(plan.days.begin(), plan.days.end(), [](const CalendarDayPlan& d) { return d.helper; }))
      key += " +: a second person is there.";
    if (std::any_of(weeks.begin(), weeks.end(), leaves_out)) key += " \u2026: more steps than have room.";
    sheet.blocks.push_back(paragraph(condensed(key), true));
  }
  if (pinned_up(input)) {
    // The wall does without what would take a page of its own: the chart has the chain in bold, the last day and the day it is worn.
    const auto chart = std::make_shared<const std::vector<Block>>(sheet.blocks);
    for (const bool with_the_end : {true, false})
      if (with_the_end || !weeks.empty())
        sheet.shorter.push_back([input, chart, with_the_end] {
          std::vector<Block> blocks = *chart;
          days_to_keep(input, with_the_end, blocks);
          return blocks;
        });
  }
  days_to_keep(input, true, sheet.blocks);
  if (plan.chain.size() > 1)
    sheet.blocks.push_back(
        paragraph(bold("The longest chain: ") + words("steps " + listed([&] {
                                                        std::vector<std::string> numbers;
                                                        for (const int n : plan.chain) numbers.push_back(whole_number(n));
                                                        return numbers;
                                                      }()) +
                                                      ", each waiting for the one before, " + span_words(plan.chain_takes) +
                                                      ". A second pair of hands makes the work shorter only beside it."),
                  true));
  sheet.blocks.push_back(paragraph(
      condensed("Hours are common practice, no source, rounded to 5 min; after the first evenings write your own under pace."),
      true));
  return sheet;
}

}  // namespace gownsheaf
