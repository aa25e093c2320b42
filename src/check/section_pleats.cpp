// Pleat runs and the skirt. Whether the numbers of a run agree is the calculator's to say.
#include "check/sections.h"
#include "diagnostics/message.h"

namespace gownsheaf {

void fill_skirt(const Filling& file, Project& project) {
  const Item item = file.root.block("skirt");
  if (item.entry() == nullptr) return;
  Skirt skirt;
  skirt.at = item.entry()->key_at;
  skirt.kind = item.word("kind");
  skirt.levelled_at = item.word("levelled at");
  if (!skirt.levelled_at.known() && skirt.kind.known())
    skirt.levelled_at = Given<std::string>::guessed(*skirt.kind == "straight breadths" ? "waist" : "hem",
                                                    "its kind: " + *skirt.kind, skirt.kind.at);
  skirt.clears_floor_by = item.length("clears floor by");
  if (!skirt.clears_floor_by.known() && skirt.clears_floor_by.origin != Origin::to_measure)
    skirt.clears_floor_by = Given<Length>::standing(Length::inches(1), 'c', "1 in clear of the floor");
  skirt.weighs = item.mass("weighs");
  skirt.hem_round = item.length("hem round");
  const Item hem = item.block("hem");
  if (hem.entry() != nullptr) {
    skirt.hem.emplace();
    skirt.hem->depth = hem.length("depth");
    skirt.hem->faced_with = name_in(file, hem, "faced with", "cloths");
    skirt.hem->stiffened_with = name_in(file, hem, "stiffened with", "cloths");
    skirt.hem->braid = name_in(file, hem, "braid", "notions");
  }
  project.skirt = std::move(skirt);
}

namespace {

// Rows of stitches that draw a run up. A stitch under 1/4 in looks gathered (trade practice), so cartridge pleats stand at 3/8 in.
void fill_rows(const Item& item, PleatRun& run) {
  const bool gauged = run.kind == PleatKind::cartridge;
  run.stitch = item.length("stitch");
  if (!run.stitch.known() && gauged && run.stitch.origin == Origin::absent)
    run.stitch = Given<Length>::standing(Length::sixty_fourths(24), 'c', "3/8 in; stitches under 1/4 in look gathered");
  run.rows = item.count("rows");
  run.row_gap = item.length("row gap");
  if (gauged || run.kind == PleatKind::gathers) {
    if (!run.rows.known()) run.rows = Given<std::int64_t>::standing(3, 'c', "three rows");
    if (!run.row_gap.known()) run.row_gap = Given<Length>::standing(Length::sixty_fourths(16), 'c', "1/4 in between rows");
  }
  run.interlining_stops = item.length("interlining stops");
  if (!run.interlining_stops.known())
    run.interlining_stops = Given<Length>::standing(Length{}, 'c', "the interlining reaches the top");
}

RunLevels levels_of(const Item& item, std::string_view key) {
  const Item block = item.block(key);
  return {block.length("waist"), block.length("hip"), block.length("hem")};
}

void fill_uneven(const Item& item, PleatRun& run) {
  run.finished_at = levels_of(item, "finished at");
  run.flat_at = levels_of(item, "flat at");
  if (!run.finished.known() && run.finished.origin == Origin::absent) run.finished = run.finished_at.waist;
  if (!run.flat.known() && run.flat.origin == Origin::absent && !run.flat_is_the_rest) run.flat = run.flat_at.waist;
  run.first_takes = item.length("first takes");
  std::vector<Length> takes;
  for (const Entry* e : item.values("takes"))
    if (e->kind == Entry::Kind::text)
      if (const auto read = read_length(e->text, "takes"); read.ok()) takes.push_back(read.value().length);
  if (!takes.empty()) run.takes = Given<std::vector<Length>>::written(takes, item.at("takes")->at);
}

// A step that the shown ruler has: halves of halves of an inch, or whole tenths of a millimetre.
bool on_ruler(Length step, ShownIn in) {
  if (in != ShownIn::inches) return step.in_ticks() % Length::tenth_mm(1).in_ticks() == 0;
  for (Length l = Length::inches(1); l >= Length::sixty_fourths(1); l = l.times(1, 2))
    if (step == l) return true;
  return false;
}

void fill_marks_to(const Filling& file, const Item& item, ShownIn in, PleatRun& run) {
  run.marks_to = item.length("marks to");
  if (run.marks_to.known() && !on_ruler(*run.marks_to, in)) {
    file.diag.add(message({run.named.name, "pleats", "pleats"}, Severity::error, "marks-to-unit", run.marks_to.at,
                          "Run " + run.named.name + ": a step of " + item.plain("marks to") + " is on no " +
                              (in == ShownIn::inches ? "inch" : "centimetre") + " ruler.",
                          in == ShownIn::inches
                              ? "`marks to: 1/16 in`, or lengths shown in centimetres: `show lengths in: centimetres`"
                              : "`marks to: 2 mm`, or lengths shown in inches: `show lengths in: inches`"));
    run.marks_to = {};
  }
  if (!run.marks_to.known()) run.marks_to = Given<Length>::standing(pleat_step(in), 'c', "the usual step for marking pleats");
}

}  // namespace

void fill_pleats(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("pleats")) {
    PleatRun run;
    run.named = named_of(file, item, "pleats", "run");
    const auto kind = choice(item.word("kind"), PleatKind::inverted_at_seams);
    run.kind_at = kind.at;
    if (kind.known()) run.kind = *kind;
    run.of = names_in(file, item, "of", "pieces");
    run.flat = item.length("flat");
    run.flat_is_the_rest = item.word("flat").known();
    run.finished = item.length("finished");
    run.depth = item.length("depth");
    run.visible = item.length("visible");
    run.plus = item.length("plus");
    if (!run.plus.known()) run.plus = Given<Length>::standing(Length{}, 'x', "no flat cloth outside the pleats");
    run.count = item.count("count");
    run.fullness = item.ratio("fullness");
    run.half = item.yes_no("half").value.value_or(false);
    run.toward = choice(item.word("toward"), Toward::right);
    if (!run.toward.known())
      run.toward = Given<Toward>::guessed(Toward::centre_back, "folds usually turn to centre back", run.named.at);
    run.begins_at = item.length("begins at");
    fill_uneven(item, run);
    fill_marks_to(file, item, *project.show_lengths_in, run);
    fill_rows(item, run);
    run.stitched_down = item.length("stitched down");
    run.show_plans = item.yes_no("show plans").value.value_or(false);
    for (const Item& each : item.items("tiers"))
      run.tiers.push_back(
          {named_of(file, each, "", "tier"), each.ratio("fullness"), each.length("flat"), each.length("finished length")});
    project.pleats.push_back(std::move(run));
  }
}

void fill_pockets(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("pockets")) {
    Pocket pocket;
    pocket.named = named_of(file, item, "pockets", "pocket");
    pocket.side = item.word("side");
    pocket.past_centre_front = item.length("past centre front");
    pocket.opening = item.length("opening");
    project.pockets.push_back(std::move(pocket));
  }
}

}  // namespace gownsheaf
