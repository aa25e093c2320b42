#include "calculate/cloth_weight.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

bool is_part(const Piece& piece, PartOf part) { return piece.part_of.known() && *piece.part_of == part; }

// Where no skirt is cut the petticoat is what hangs.
PartOf what_hangs(const Project& project) {
  const bool skirt =
      std::any_of(project.pieces.begin(), project.pieces.end(), [](const Piece& p) { return is_part(p, PartOf::skirt); });
  return skirt ? PartOf::skirt : PartOf::petticoat;
}

Area area_of_skirt(const Project& project, const LayPlan& lay) {
  const PartOf part = what_hangs(project);
  Area area;
  for (const CutPiece& cut : lay.cut)
    if (const Piece* piece = project.piece(cut.as_named()); piece != nullptr && is_part(*piece, part))
      area += Area::of(cut.across, cut.along) * cut.copies;
  return area;
}

}  // namespace

std::optional<Mass> add_skirt_weight(const Project& project, const Plans& plans, Figures& figures) {
  const ShownIn in = shown_in(project);
  if (project.skirt && project.skirt->weighs.known()) {
    NewFigure(figures, in, "skirt", "", "weight")
        .is(*project.skirt->weighs)
        .at(project.skirt->weighs.at)
        .written()
        .from("", project.skirt->weighs)
        .add();
    return *project.skirt->weighs;
  }
  Mass total;
  std::vector<std::string> keys;
  std::string numbers;
  for (const LayPlan& lay : plans.lays) {
    const Area area = area_of_skirt(project, lay);
    const Cloth* cloth = project.cloth(lay.cloth);
    if (area == Area{} || cloth == nullptr) continue;
    if (!cloth->weight.known()) return std::nullopt;
    const Mass mass{area.in_square_metres() * cloth->weight->value};
    total.value += mass.value;
    const Figure& layer = NewFigure(figures, in, "skirt", "", "weight/" + cloth->named.name)
                              .is(mass)
                              .at(cloth->named.at)
                              .from("cloths/" + cloth->named.name + "/weight", cloth->weight)
                              .working("weight of its " + cloth->named.name, "area × weight",
                                       plain_text(Value(area), in) + " × " + plain_text(Value(*cloth->weight), in))
                              .add();
    keys.push_back(layer.key);
    numbers += (numbers.empty() ? "" : " + ") + plain_text(layer, in);
  }
  if (keys.empty()) return std::nullopt;
  NewFigure sum(figures, in, "skirt", "", "weight");
  sum.is(total);
  if (project.skirt) sum.at(project.skirt->at);
  for (const std::string& key : keys) sum.from(key);
  sum.working("weight of the skirt, an estimate", "sum of its layers", numbers).add();
  return total;
}

}  // namespace gownsheaf
