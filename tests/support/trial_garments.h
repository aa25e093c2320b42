// Garments to try the delivered steps on: one with every part of an evening dress, and any garment that dice throw.
#pragma once
#include <initializer_list>
#include <set>

#include "calculate/step_instances.h"
#include "support/step_library.h"

namespace gownsheaf::test {

using Order = std::vector<PlannedStep>;

// Every step that must be done before this one, by hard edges alone.
inline std::set<std::string> all_before(const Order& work, const std::string& id) {
  std::set<std::string> found;
  std::vector<std::string> stack{id};
  while (!stack.empty()) {
    const PlannedStep* s = find_step(work, stack.back());
    stack.pop_back();
    REQUIRE(s != nullptr);
    for (const std::string& earlier : s->hard_after)
      if (found.insert(earlier).second) stack.push_back(earlier);
  }
  return found;
}

inline void give(WorkGarment& g, std::initializer_list<const char*> sections) {
  for (const char* s : sections) g.project.sections_given.insert(s);
}

inline void add_run(WorkGarment& g, const std::string& name, PleatKind kind) {
  g.project.pleats.push_back(run_named(name, kind, {"skirt breadth"}));
}

inline void add_bones(WorkGarment& g) {
  give(g, {"bones"});
  Bone b;
  b.named.name = "side seams";
  b.on_seam = "side";
  b.number = 2;
  g.project.bones = {b};
}

inline Strain strain_with_stay() {
  Strain s;
  s.stay = Stay{};
  return s;
}

inline WorkGarment evening_dress() {
  WorkGarment g = garment_of({Garment::dress, true, true, true, false, true, false, true});
  Project& p = g.project;
  p.joined_at_waist = Given<bool>::written(true, {});
  p.lining_sewn_in = Given<std::string>::written("bagged", {});
  p.ease["bust"] = Given<Length>::written(Length::inches(1), {});
  give(g, {"piping", "trims", "pockets", "plackets", "seams"});
  add_bones(g);
  p.strain = {strain_with_stay()};
  add_run(g, "back", PleatKind::cartridge);
  p.closures = {closure_named("front", Fasten::hooks_and_eyes, "")};
  p.closures[0].guard = Guard{};
  return g;
}

inline WorkGarment any_garment(draws::Draws& dice) {
  const auto some = [&] { return dice.of(0, 1) == 1; };
  const Garment kinds[] = {Garment::dress,   Garment::bodice, Garment::skirt,     Garment::petticoat, Garment::corset,
                           Garment::spencer, Garment::coat,   Garment::waistcoat, Garment::other};
  Parts parts;
  parts.garment = kinds[dice.of(0, 8)];
  parts.bodice = some();
  parts.sleeves = some();
  parts.skirt = some();
  parts.band = some();
  parts.drapery = some();
  parts.corset = parts.garment == Garment::corset;
  parts.lined = some();
  WorkGarment g = garment_of(parts);
  Project& p = g.project;
  for (const char* section : {"piping", "trims", "pockets", "plackets", "seams", "binding"})
    if (some()) give(g, {section});
  if (some()) p.joined_at_waist = Given<bool>::written(some(), {});
  if (some()) p.lining_sewn_in = Given<std::string>::written(some() ? "flat" : "bagged", {});
  if (some()) p.ease["waist"] = Given<Length>::written(Length::inches(dice.of(-1, 4)), {});
  if (some()) add_bones(g);
  if (some()) p.strain = {some() ? strain_with_stay() : Strain{}};
  if (some()) p.still_to_make = {{"corset", std::nullopt, {}}};
  if (some() && p.sections_given.count("seams") > 0) {
    Seam dart;
    dart.kind = "dart";
    p.seams.push_back(dart);
  }
  if (some()) {
    Seam side;
    side.kind = some() ? "princess" : some() ? "breadth" : "side";
    side.by_hand = some();
    p.seams.push_back(side);
  }
  if (some()) p.pieces.push_back(piece_named("collar", PartOf::collar, {"slate wool"}));
  if (dice.of(0, 3) == 0)
    p.pieces.push_back(
        piece_named("front leg", PartOf::leg,
                    some() ? std::vector<std::string>{"slate wool", "drab sateen"} : std::vector<std::string>{"slate wool"}));
  if (some() && p.sections_given.count("trims") > 0) {
    Trim bows;
    bows.kind = some() ? "bow" : "ruche";
    p.trims = {bows};
  }
  if (parts.drapery && some()) {
    Drapery d;
    const char* ways[] = {"fixed", "tacked", "detachable"};
    d.held = ways[dice.of(0, 2)];
    d.foundation = some() ? "net" : "";
    p.drapery = {d};
  }
  if (some()) {
    Seam open;
    open.length = open.left_open = Given<Length>::written(Length::inches(40), {});
    p.seams.push_back(open);
  }
  if (parts.skirt && some()) {
    p.cloths.push_back(cloth_named("white muslin", UsedAs::interlining));
    p.pieces.push_back(piece_named("skirt interlining", PartOf::skirt, {"white muslin"}));
  }
  if (parts.skirt && some()) {
    Piece flounce;
    flounce.named.name = "flounce";
    flounce.from = p.pieces.empty() ? std::vector<std::string>{} : p.pieces.front().from;
    flounce.part_of = Given<PartOf>::written(PartOf::skirt, {});
    p.pieces.push_back(flounce);
  }
  if (some()) {
    Notion lace;
    lace.kind = "lace";
    p.notions.push_back(lace);
  }
  EdgeLine armhole;
  armhole.kind = "armhole";
  armhole.finish = some() ? "piped" : "";
  if (some()) p.edges = {armhole};
  if (parts.skirt) {
    const PleatKind runs[] = {PleatKind::knife, PleatKind::box, PleatKind::cartridge, PleatKind::gathers, PleatKind::plain};
    for (const char* name : {"front", "back"})
      if (some()) add_run(g, name, runs[dice.of(0, 4)]);
    if (some()) {
      p.skirt.emplace();
      p.skirt->levelled_at = Given<std::string>::written(some() ? "waist" : "hem", {});
      p.skirt->hem = SkirtHem{Given<Length>{}, some() ? "drab sateen" : "", some() ? "hair cloth" : "", some() ? "braid" : ""};
    }
  }
  if (some()) add_figure(g.figures, "skirt/weight", Mass{static_cast<double>(dice.of(500, 4000))});
  const Fasten fastens[] = {
      Fasten::hooks_and_eyes, Fasten::hooks_and_bars, Fasten::hooks_and_loops, Fasten::buttons, Fasten::snaps, Fasten::lacing,
      Fasten::buckle,         Fasten::ties,           Fasten::drawstring,      Fasten::busk};
  for (const char* name : {"front closing", "cuffs", "placket"})
    if (some()) {
      p.closures.push_back(closure_named(name, fastens[dice.of(0, 9)], ""));
      if (some()) p.closures.back().guard = Guard{};
    }
  return g;
}

}  // namespace gownsheaf::test
