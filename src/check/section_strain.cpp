// What pulls at a closing: how closely it is worn, and how the skirt hangs. What is not written is guessed from the
// layers, from what the garment is worn for, and from how bodice and skirt are joined.
#include <algorithm>

#include "check/sections.h"
#include "project/edges.h"
#include "project/sizes.h"

namespace gownsheaf {

namespace {

bool some_layer(const Project& project, std::string_view word) {
  return project.taken && std::any_of(project.taken->over.begin(), project.taken->over.end(),
                                      [&](const std::string& layer) { return has_word(layer, word); });
}

void guess_over(const Project& project, Strain& strain) {
  if (strain.over.known()) return;
  const bool corset = some_layer(project, "corset"), stays = some_layer(project, "stays");
  strain.over = Given<std::string>::guessed(corset  ? "corset"
                                            : stays ? "soft stays"
                                                    : "body",
                                            project.taken ? "the layers measured over" : "no layers being named", strain.at);
}

void guess_moves(const Project& project, Strain& strain) {
  if (strain.moves.known()) return;
  const bool dances = project.worn_for.contains("dancing");
  strain.moves = Given<std::string>::guessed(dances ? "dancing" : "walking",
                                             dances ? "its being worn for dancing" : "no more being said", strain.at);
}

// Neither a cuff nor a collar goes round the trunk: no skirt hangs there.
bool off_the_trunk(const Project& project, const Strain& strain) {
  const std::string round = folded_name(strain.goes_round);
  for (const char* name : {"bust", "high bust", "underbust", "chest", "waist", "hip"})
    if (round == name) return false;
  const Closure* closing = project.closure(strain.closure);
  const EdgeLine* edge = closing == nullptr ? nullptr : project.edge(closing->edge);
  if (edge != nullptr && (comes_twice(*edge) || edge->kind == "neck")) return true;
  for (const char* name : {"neck", "upper arm", "elbow", "wrist", "armhole", "head", "thigh", "calf"})
    if (round == name) return true;
  return false;
}

// Joined garments hang on the bodice's waist, or on its stay; a skirt apart has its own band.
void guess_hang(const Project& project, Strain& strain) {
  if (strain.skirt_hangs_from.known()) return;
  const bool has_skirt = std::any_of(project.pieces.begin(), project.pieces.end(), [](const Piece& p) {
    return p.part_of.known() && (*p.part_of == PartOf::skirt || *p.part_of == PartOf::petticoat);
  });
  const bool joined =
      project.joined_at_waist.known() ? *project.joined_at_waist : project.garment.known() && *project.garment == Garment::dress;
  if (off_the_trunk(project, strain)) {
    strain.skirt_hangs_from = Given<std::string>::guessed("nothing", "its going round no part of the trunk", strain.at);
    return;
  }
  const char* guess = !has_skirt ? "nothing" : !joined ? "own band" : strain.stay ? "bodice and stay" : "bodice waist";
  const char* why = !has_skirt ? "there being no skirt"
                    : !joined  ? "the skirt's being made apart"
                               : "bodice and skirt being joined";
  strain.skirt_hangs_from = Given<std::string>::guessed(guess, why, strain.at);
}

// A written girth, or the measure of that name; a measure taken left and right counts with both.
void fill_girth(const Filling& file, const Item& item, const Project& project, std::string& goes_round, Given<Length>& girth) {
  const Entry* round = item.at("goes round");
  if (round == nullptr || round->kind != Entry::Kind::text) return;
  if (const auto written = read_length(round->text, "goes round"); written.ok()) {
    girth = Given<Length>::written(written.value().length, round->at);
    return;
  }
  goes_round = clean_name(round->text);
  girth.at = round->at;
  const auto measure = project.measures.girths_and_lengths.find(goes_round);
  if (measure == project.measures.girths_and_lengths.end()) {
    const auto measures = keys_below("measures");
    const bool a_measure =
        std::any_of(measures.begin(), measures.end(), [&](const KeySpec* k) { return k->path.substr(9) == goes_round; });
    if (!a_measure) return;  // a name that nobody knows is told where names are looked up
    report(file, {"strain", item.plain("closure")}, Severity::warning, "strain-unmeasured", round->at,
           "No " + goes_round + " stands under `measures`, so how hard it pulls is not reckoned.",
           "write `" + goes_round + "` there, or the length itself here: `goes round: 28 in`");
    return;
  }
  girth = measure->second.both;
  if (girth.known()) return;
  if (const auto both = all_round(project, goes_round)) girth = Given<Length>::written(*both, measure->second.left.at);
}

void fill_zones(const Filling& file, const Item& item, const Project& project, Strain& strain) {
  for (const Item& zone : item.items("zones")) {
    StrainZone z;
    z.named = named_of(file, zone, "strain", "zone");
    z.starts = zone.length("starts");
    z.ends = zone.length("ends");
    fill_girth(file, zone, project, z.goes_round, z.girth);
    z.ease = zone.length("ease");
    z.worn = zone.word("worn");
    z.breathes_at = zone.word("breathes at");
    strain.zones.push_back(std::move(z));
  }
}

}  // namespace

void fill_strain(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("strain")) {
    Strain strain;
    strain.at = item.has("closure") ? item.at("closure")->at : item.entry()->at;
    strain.closure = name_in(file, item, "closure", "closures");
    fill_girth(file, item, project, strain.goes_round, strain.girth);
    strain.worn = item.word("worn");
    strain.pressure = item.pressure("pressure");
    strain.over = item.word("over");
    strain.breathes_at = item.word("breathes at");
    const bool midway = *project.rules.waist_is == WaistIs::midway && folded_name(strain.goes_round) == "waist";
    if (!strain.breathes_at.known() && midway)
      strain.breathes_at = Given<std::string>::guessed("navel", "the waist is measured midway, near the navel", strain.at);
    if (!strain.breathes_at.known())
      strain.breathes_at = Given<std::string>::standing("natural waist", 'c', "closings are reckoned at the natural waist");
    strain.moves = item.word("moves");
    fill_zones(file, item, project, strain);
    strain.skirt_hangs_from = item.word("skirt hangs from");
    if (const Item stay = item.block("stay"); stay.entry() != nullptr)
      strain.stay = Stay{name_in(file, stay, "with", "notions"), stay.length("smaller by"), stay.word("anchored at"),
                         stay.yes_no("hooked first").value.value_or(true)};
    if (const Item band = item.block("band"); band.entry() != nullptr)
      strain.band = WaistBand{band.length("width"), band.word("slack").value.value_or("none") == "loose", band.word("slides on"),
                              band.ratio("friction")};
    for (const Item& hung : item.items("also hangs"))
      if (const auto mass = hung.mass("weighs"); mass.known()) strain.also_hangs.push_back({hung.plain("item"), *mass});
    strain.hip_slope = item.angle("hip slope");
    strain.fastener_holds = item.force("fastener holds");
    strain.use_at_most = item.ratio("use at most");
    if (!strain.use_at_most.known()) strain.use_at_most = Given<Ratio>::standing(Ratio{1, 2}, 'c', "half of what one holds");
    guess_over(project, strain);
    guess_moves(project, strain);
    guess_hang(project, strain);
    project.strain.push_back(std::move(strain));
  }
}

}  // namespace gownsheaf
