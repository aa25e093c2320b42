#include "calculate/step_drivers.h"

#include <algorithm>

#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

// Of the skirt: a seam that joins an edge of one of its pieces ("side of skirt breadth").
bool of_the_skirt(const Seam& seam, const Project& project) {
  return std::any_of(seam.joins.begin(), seam.joins.end(), [&](const std::string& edge) {
    const auto of = edge.rfind(" of ");
    const Piece* piece = of == std::string::npos ? nullptr : project.piece(edge.substr(of + 4));
    return piece != nullptr && piece->part_of.known() && (*piece->part_of == PartOf::skirt || *piece->part_of == PartOf::petticoat);
  });
}

}  // namespace

void add_step_drivers(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  std::int64_t pieces = 0, bones = 0;
  bool bodice = false;
  for (const Piece& p : project.pieces) {
    if (!p.made_for.empty() || !p.make.known() || !p.part_of.known() || *p.part_of != PartOf::bodice) continue;
    bodice = true;
    pieces += p.make->kind == Make::Kind::pairs ? 2 * p.make->number : p.make->kind == Make::Kind::number ? p.make->number : 0;
  }
  if (bodice && pieces > 0) NewFigure(figures, in, "garment", "", "pieces").is(pieces).plain_input("pieces").add();
  Length channels, seams;
  bool all_known = true;
  for (const Bone& b : project.bones) {
    bones += b.number;
    const auto length = figures.length("bones/" + b.named.name + "/channel length");
    if (length) channels += *length * b.number;
    else all_known = false;
  }
  if (bones > 0) NewFigure(figures, in, "garment", "", "bones").is(bones).plain_input("bones").add();
  if (bones > 0 && all_known) NewFigure(figures, in, "garment", "", "channels").is(channels).plain_input("bones").add();
  for (const Seam& s : project.seams) {
    if (of_the_skirt(s, project)) continue;
    if (!s.length.known()) return;  // a sum that leaves some out would say too little
    seams += *s.length * s.number;
  }
  if (!seams.is_zero()) NewFigure(figures, in, "garment", "", "seams").is(seams).plain_input("seams").add();
}

}  // namespace gownsheaf
