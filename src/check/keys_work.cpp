// Keys of the work and the paper.
#include "check/key_row.h"

namespace gownsheaf {

void add_work_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  constexpr std::string_view kWeekdays = "monday|tuesday|wednesday|thursday|friday|saturday|sunday";
  const std::vector<KeySpec> rows = {
      Row("work", block).means("When the maker works, what is done, and steps of her own."),
      Row("work/hours a week", number).limits("0", "100").form("{ monday: 2, … }").means("Hours, a bare number."),
      Row("work/hours a week/monday", number).limits("0", "24").since(5).means("Hours on a Monday."),
      Row("work/hours a week/tuesday", number).limits("0", "24").since(5).means("Hours on a Tuesday."),
      Row("work/hours a week/wednesday", number).limits("0", "24").since(5).means("Hours on a Wednesday."),
      Row("work/hours a week/thursday", number).limits("0", "24").since(5).means("Hours on a Thursday."),
      Row("work/hours a week/friday", number).limits("0", "24").since(5).means("Hours on a Friday."),
      Row("work/hours a week/saturday", number).limits("0", "24").since(5).means("Hours on a Saturday."),
      Row("work/hours a week/sunday", number).limits("0", "24").since(5).means("Hours on a Sunday."),
      Row("work/hand sewing only", any_of_these).words(kWeekdays).since(5).means("Days without table or machine."),
      Row("work/days off", list).each(day).or_a(day_range).since(5).means("Days without work."),
      Row("work/other days", map).each(number).of("days").limits("0", "24").since(5).means("Hours on single days."),
      Row("work/helper here", list).each(day).since(5).means("Days with a second pair of hands."),
      Row("work/rehearsal", day).guess("~ 7 days before it is worn").since(5).means("Day of the dress rehearsal."),
      Row("work/buffer", span).is("3 days", 'c').since(5).means("Days kept free before the end."),
      Row("work/due", map).each(day).of("steps").since(5).means("Other deadlines, by step."),
      Row("work/done", list).each(block, "finished step").means("What is done."),
      Row("work/done/*/step", name).of("steps").must().means("Its id, or `id@item` for a step that comes once an item."),
      Row("work/done/*/day", day).means("The day it was done."),
      Row("work/own steps", list).each(block, "step").means("Steps of the maker's own."),
      Row("work/own steps/*/step", name).must().means("Name of the step."),
      Row("work/own steps/*/say", text).means("What to do, as printed."),
      Row("work/own steps/*/after", list).each(name).of("steps").means("Steps it waits for."),
      Row("work/own steps/*/before", list).each(name).of("steps").means("Steps that wait for it."),
      Row("work/own steps/*/because", text).means("Why it waits."),
      Row("work/own steps/*/takes", span).is("30 min", 'c').since(5).means("How long it takes."),
      Row("work/own steps/*/needs", any_of_these).words("table|machine|second person|wearer|form|quiet").means("What it needs."),
      Row("work/own steps/*/uses", list).each(name).of("cloths|notions").means("What it uses up."),
      Row("work/own steps/*/cannot undo", word)
          .words("cuts good cloth|trims an allowance|shuts access|pierces cloth|sets the cloth").means("What it makes final."),
      Row("work/change steps", list).each(block, "change").since(5).means("Steps of the library done otherwise."),
      Row("work/change steps/*/step", name).of("steps").must().means("Which step."),
      Row("work/change steps/*/drop", yes_no).means("Leave it out; then say `because`."),
      Row("work/change steps/*/because", text).means("Why it is left out."),
      Row("work/change steps/*/say", text).means("The maker's own words for it."),
      Row("work/change steps/*/takes", span).means("How long it takes her."),
      Row("work/change steps/*/after", list).each(name).of("steps").means("Steps it waits for."),
      Row("work/change steps/*/parts", list).each(block, "part").means("Parts it is done in."),
      Row("work/change steps/*/parts/*/part", text).must().means("What part."),
      Row("work/change steps/*/parts/*/takes", span).means("How long it takes."),
      Row("work/may come before", list).each(block, "question").since(5).means("Whether one step may come before another."),
      Row("work/may come before/*/step", name).of("steps").must().means("The step."),
      Row("work/may come before/*/other", name).of("steps").must().means("The other."),
      Row("spend", block).since(kLater).means("What a bad evening's cloth must go to."),
      Row("spend/must", list).each(name).of("pieces").means("Pieces that must be cut."),
      Row("spend/wants", list).each(block, "want").means("What may give way."),
      Row("spend/wants/*/want", text).must().means("A piece, or `hem`."),
      Row("spend/wants/*/at least", length).limits("0 in", "").means("The least of it."),
      Row("spend/wants/*/up to", length).means("The most of it."),
      Row("mishap", list).each(block, "mishap").since(kLater).means("What went wrong."),
      Row("mishap/*/mishap", name).must().means("What it is called."),
      Row("mishap/*/piece", name).of("pieces").means("The piece."),
      Row("mishap/*/edge", text).means("Its edge."),
      Row("mishap/*/lost", length).means("How much is lost."),
      Row("mishap/*/when", word).words("uncut|cut|sewn").means("When it happened."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_print_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      Row("print", block).means("Paper and sheets; options of the command win."),
      Row("print/paper", word).words("letter|a4").guess("~ a4 with centimetres, else letter").means("Size of the paper."),
      Row("print/sheets", word).words("pin-up|binder|group").is("binder", 'c').means("Which set of sheets."),
      Row("print/holes", word).words("none|two|three").guess("~ three with letter, two with a4").means("Room for holes."),
      Row("print/read from", length).limits("10 cm", "5 m").is("60 cm pin-up, 40 cm else", 'c')
          .means("Distance it is read from; type sizes follow."),
      Row("print/smallest angle", angle).is("20 arcmin", 'a').since(kLater).means("Smallest height of letters, as an angle."),
      Row("print/eyesight", text).since(kLater).means("The reader's eyesight: `20/70`."),
      Row("print/printer prints 50 mm as", length).since(kLater).means("What 50 mm measure on this printer."),
      Row("print/full size", list).each(name).of("pieces").since(kLater).means("Pieces printed at full size."),
      Row("print/gauges", any_of_these).words("pleats|hooks|bones|hem").since(kLater).means("Gauges printed at full size."),
      Row("print/booklet", yes_no).since(kLater).means("Whether pages are set for folding."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
