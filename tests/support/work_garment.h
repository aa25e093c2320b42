// A small garment for tests of the order of work: a wool skirt of breadths with a muslin interlining, and the figures
// and lays that its calculators would make.
#pragma once
#include <string>

#include "figures/figures.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf::test {

inline Cloth cloth_named(const std::string& name, UsedAs use) {
  Cloth c;
  c.named.name = name;
  c.kind = Given<std::string>::written("wool suiting", {});
  c.used_as = Given<UsedAs>::written(use, {});
  c.care = Given<std::string>::written("steam", {});
  c.lay = Given<LayRule>::written(LayRule::either_way, {});
  return c;
}

inline Piece piece_named(const std::string& name, PartOf part, std::vector<std::string> from) {
  Piece p;
  p.named.name = name;
  p.part_of = Given<PartOf>::written(part, {});
  p.from = std::move(from);
  return p;
}

inline PleatRun run_named(const std::string& name, PleatKind kind, std::vector<std::string> of) {
  PleatRun r;
  r.named.name = name;
  r.kind = kind;
  r.of = std::move(of);
  return r;
}

inline CutPiece cut_of(const std::string& piece, const std::string& cloth, std::int64_t copies, bool full) {
  CutPiece c;
  c.piece = piece;
  c.cloth = cloth;
  c.copies = copies;
  c.full_width = full;
  c.along = Length::inches(45);
  return c;
}

inline void add_figure(Figures& figures, const std::string& key, Value value, Shown shown = Shown::mark) {
  Figure f;
  f.key = key;
  f.value = std::move(value);
  f.shown = shown;
  figures.add(std::move(f));
}

struct WorkGarment {
  Project project;
  Figures figures;
  Plans plans;
};

// 3 breadths of slate wool and a band of it, 3 interlining breadths of white muslin; enough of both was bought.
inline WorkGarment skirt_garment() {
  WorkGarment g;
  Project& p = g.project;
  p.file = "skirt.yaml";
  p.title = "Wool skirt for the toll bridge";
  p.garment = Given<Garment>::written(Garment::skirt, {});
  p.sections_given = {"title", "cloths", "pieces", "pleats", "skirt"};
  p.cloths = {cloth_named("white muslin", UsedAs::interlining), cloth_named("slate wool", UsedAs::outer)};
  p.pieces = {piece_named("skirt breadth", PartOf::skirt, {"slate wool"}),
              piece_named("skirt interlining", PartOf::skirt, {"white muslin"}),
              piece_named("waistband", PartOf::band, {"slate wool"})};
  p.pleats = {run_named("front", PleatKind::plain, {"skirt breadth"}), run_named("sides", PleatKind::knife, {"skirt breadth"})};
  for (const char* name : {"white muslin", "slate wool"}) {
    LayPlan lay;
    lay.cloth = name;
    lay.needed = Length::inches(180);
    lay.bought = Length::inches(198);
    const bool wool = lay.cloth == "slate wool";
    lay.cut.push_back(cut_of(wool ? "skirt breadth" : "skirt interlining", lay.cloth, 3, true));
    if (wool) lay.cut.push_back(cut_of("waistband", lay.cloth, 1, false));
    g.plans.lays.push_back(lay);
    add_figure(g.figures, "cloths/" + lay.cloth + "/breadths", std::int64_t{3}, Shown::exact);
    add_figure(g.figures, "cloths/" + lay.cloth + "/pieces", std::int64_t{wool ? 4 : 3}, Shown::exact);
    add_figure(g.figures, "cloths/" + lay.cloth + "/breadth cut length", Length::inches(45), Shown::cut);
  }
  add_figure(g.figures, "pleats/sides/depth", Length::sixty_fourths(96), Shown::pleat_mark);
  add_figure(g.figures, "pleats/sides/kind", std::string("knife"), Shown::exact);
  return g;
}

inline Step step_named(const std::string& id, std::vector<After> after = {}, const std::string& for_each = "") {
  Step s;
  s.id = id;
  s.say = "Do " + id;
  s.after = std::move(after);
  s.for_each = for_each;
  return s;
}
inline After hard_after(const std::string& id, const std::string& because = "") {
  return {id, because.empty() ? "because of " + id : because, true, {}};
}

inline std::string words_of(const Say& say) {
  std::string s;
  for (const SayPart& part : say) s += part.figure.empty() ? part.words : "[" + part.figure + "]";
  return s;
}

inline const PlannedStep* find_step(const std::vector<PlannedStep>& work, const std::string& id) {
  for (const PlannedStep& s : work)
    if (s.id == id) return &s;
  return nullptr;
}

}  // namespace gownsheaf::test
