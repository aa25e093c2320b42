// Keys of the work and the paper.
#include "check/key_row.h"

namespace gownsheaf {

void add_work_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  constexpr std::string_view kWeekdays = "monday|tuesday|wednesday|thursday|friday|saturday|sunday";
  const std::vector<KeySpec> rows = {
      KeyRow("work", block).means("When the maker works, what is done, and steps of her own."),
      KeyRow("work/hours a week", number).limits("0", "100").form("{ monday: 2, … }").means("Hours, a bare number."),
      KeyRow("work/hours a week/monday", number).limits("0", "24").means("Hours on a Monday."),
      KeyRow("work/hours a week/tuesday", number).limits("0", "24").means("Hours on a Tuesday."),
      KeyRow("work/hours a week/wednesday", number).limits("0", "24").means("Hours on a Wednesday."),
      KeyRow("work/hours a week/thursday", number).limits("0", "24").means("Hours on a Thursday."),
      KeyRow("work/hours a week/friday", number).limits("0", "24").means("Hours on a Friday."),
      KeyRow("work/hours a week/saturday", number).limits("0", "24").means("Hours on a Saturday."),
      KeyRow("work/hours a week/sunday", number).limits("0", "24").means("Hours on a Sunday."),
      KeyRow("work/hand sewing only", any_of_these).words(kWeekdays).means("Days without table or machine."),
      KeyRow("work/days off", list).each(day).or_a(day_range).means("Days without work."),
      KeyRow("work/other days", map).each(number).of("days").limits("0", "24").means("Hours on single days."),
      KeyRow("work/helper here", list).each(day).means("Days with a second pair of hands."),
      KeyRow("work/rehearsal", day).guess("~ 7 days before it is worn").means("Day of the dress rehearsal."),
      KeyRow("work/buffer", span).is("3 days", 'c').means("Days kept free before the end."),
      KeyRow("work/due", map).each(day).of("steps").means("Other deadlines, by step."),
      KeyRow("work/done", list).each(block, "finished step").means("What is done."),
      KeyRow("work/done/*/step", name).of("steps").must().means("Its id, or `id@item` for a step that comes once an item."),
      KeyRow("work/done/*/day", day).means("The day it was done."),
      KeyRow("work/done/*/part", text).means("Which part of it, where it was split."),
      KeyRow("work/own steps", list).each(block, "step").means("Steps of the maker's own."),
      KeyRow("work/own steps/*/step", name).must().means("Name of the step."),
      KeyRow("work/own steps/*/say", text).means("What to do, as printed."),
      KeyRow("work/own steps/*/after", list).each(name).of("steps").means("Steps it waits for."),
      KeyRow("work/own steps/*/before", list).each(name).of("steps").means("Steps that wait for it."),
      KeyRow("work/own steps/*/because", text).means("Why it waits."),
      KeyRow("work/own steps/*/takes", span).is("30 min", 'c').means("How long it takes."),
      KeyRow("work/own steps/*/needs", any_of_these)
          .words("table|machine|iron|second person|wearer|form|quiet")
          .means("What it needs."),
      KeyRow("work/own steps/*/uses", list).each(name).of("cloths|notions").means("What it uses up."),
      KeyRow("work/own steps/*/cannot undo", word)
          .words("cuts good cloth|trims an allowance|shuts access|pierces cloth|sets the cloth")
          .means("What it makes final."),
      KeyRow("work/change steps", list).each(block, "change").means("Steps of the library done otherwise."),
      KeyRow("work/change steps/*/step", name).of("steps").must().means("Which step."),
      KeyRow("work/change steps/*/drop", yes_no).means("Leave it out; then say `because`."),
      KeyRow("work/change steps/*/because", text).means("Why it is left out."),
      KeyRow("work/change steps/*/say", text).means("The maker's own words for it."),
      KeyRow("work/change steps/*/takes", span).means("How long it takes her."),
      KeyRow("work/change steps/*/after", list).each(name).of("steps").means("Steps it waits for."),
      KeyRow("work/change steps/*/parts", list).each(block, "part").means("Parts it is done in."),
      KeyRow("work/change steps/*/parts/*/part", text).must().means("What part."),
      KeyRow("work/change steps/*/parts/*/takes", span).means("How long it takes."),
      KeyRow("work/may come before", list).each(block, "question").means("Whether one step may come before another."),
      KeyRow("work/may come before/*/step", name).of("steps").must().means("The step."),
      KeyRow("work/may come before/*/other", name).of("steps").must().means("The other."),
      KeyRow("spend", block).since(kLater).means("What a bad evening's cloth must go to."),
      KeyRow("spend/must", list).each(name).of("pieces").means("Pieces that must be cut."),
      KeyRow("spend/wants", list).each(block, "want").means("What may give way."),
      KeyRow("spend/wants/*/want", text).must().means("A piece, or `hem`."),
      KeyRow("spend/wants/*/at least", length).limits("0 in", "").means("The least of it."),
      KeyRow("spend/wants/*/up to", length).means("The most of it."),
      KeyRow("mishap", list).each(block, "mishap").since(kLater).means("What went wrong."),
      KeyRow("mishap/*/mishap", name).must().means("What it is called."),
      KeyRow("mishap/*/piece", name).of("pieces").means("The piece."),
      KeyRow("mishap/*/edge", text).means("Its edge."),
      KeyRow("mishap/*/lost", length).means("How much is lost."),
      KeyRow("mishap/*/when", word).words("uncut|cut|sewn").means("When it happened."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_print_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("print", block).means("Paper and sheets; options of the command win."),
      KeyRow("print/paper", word).words("letter|a4").guess("~ a4 with centimetres, else letter").means("Size of the paper."),
      KeyRow("print/sheets", word).words("pin-up|binder|group").is("binder", 'c').means("Which set of sheets."),
      KeyRow("print/holes", word).words("none|two|three").guess("~ three with letter, two with a4").means("Room for holes."),
      KeyRow("print/read from", length)
          .limits("10 cm", "5 m")
          .since(kLater)
          .is("60 cm pin-up, 40 cm else", 'c')
          .means("Distance it is read from; type sizes follow."),
      KeyRow("print/smallest angle", angle).is("20 arcmin", 'a').since(kLater).means("Smallest height of letters, as an angle."),
      KeyRow("print/eyesight", text).since(kLater).means("The reader's eyesight: `20/70`."),
      KeyRow("print/printer prints 50 mm as", length).since(kLater).means("What 50 mm measure on this printer."),
      KeyRow("print/full size", list).each(name).of("pieces").since(kLater).means("Pieces printed at full size."),
      KeyRow("print/gauges", any_of_these).words("pleats|hooks|bones|hem").since(kLater).means("Gauges printed at full size."),
      KeyRow("print/booklet", yes_no).since(kLater).means("Whether pages are set for folding."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
