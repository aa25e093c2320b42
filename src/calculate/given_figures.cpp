#include "calculate/given_figures.h"

#include <algorithm>

#include "calculate/cut_list.h"
#include "calculate/new_figure.h"
#include "calculate/pleats_figures.h"

namespace gownsheaf {
namespace {

void add_measure(Figures& figures, ShownIn in, const std::string& name, const char* side, const Given<Length>& given) {
  if (!given.known()) return;
  NewFigure(figures, in, "measures", "", name + side).is(*given).at(given.at).from("", given).written().add();
}

bool is_outer_skirt_breadth(const Project& project, const Piece& piece) {
  if (!piece.part_of.known() || *piece.part_of != PartOf::skirt || !is_full_width(piece) || piece.from.empty()) return false;
  const Cloth* cloth = project.cloth(piece.from.front());
  return cloth != nullptr && (!cloth->used_as.known() || *cloth->used_as == UsedAs::outer);
}

}  // namespace

void add_day_and_measures(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  if (project.worn_on.known())
    NewFigure(figures, in, "garment", "", "worn on").is(*project.worn_on).at(project.worn_on.at).from("", project.worn_on).add();
  for (const auto& [name, measure] : project.measures.girths_and_lengths) {
    add_measure(figures, in, name, "", measure.both);
    add_measure(figures, in, name, "/left", measure.left);
    add_measure(figures, in, name, "/right", measure.right);
  }
  std::optional<Length> longest;
  std::string places;
  for (const auto& [place, given] : project.measures.waist_to_floor.at) {
    add_measure(figures, in, "waist to floor/", place.c_str(), given);
    if (!given.known()) continue;
    longest = longest ? std::max(*longest, *given) : *given;
    places += (places.empty() ? "" : ", ") + place + " " + worked(*given, in);
  }
  if (!longest) return;
  NewFigure f(figures, in, "measures", "", "waist to floor/longest");
  f.is(*longest);
  for (const auto& [place, given] : project.measures.waist_to_floor.at)
    if (given.known()) f.from("measures/waist to floor/" + place);
  f.working("the longest of the skirt", "largest of waist to floor", places).add();
}

void add_cloths_as_given(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const Cloth& cloth : project.cloths) {
    const std::string& name = cloth.named.name;
    const auto figure = [&](std::string_view quantity) {
      NewFigure f(figures, in, "cloths", name, quantity);
      f.at(cloth.named.at);
      return f;
    };
    if (cloth.width.known()) {
      NewFigure f = figure("width");
      f.is(*cloth.width).from("", cloth.width).written();
      if (cloth.width.at.line > 0) f.at(cloth.width.at);
      f.add();
      NewFigure usable = figure("usable width");
      usable.is(*shrunk_usable_width(cloth)).from("cloths/" + name + "/width").from("cloths/" + name + "/selvage", cloth.selvage);
      const bool shrinks = *shrunk_width(cloth) != *cloth.width;
      if (shrinks) usable.from("cloths/" + name + "/shrinks/across", cloth.shrinks_across);
      usable
          .working("usable width of " + name,
                   std::string("width") + (shrinks ? " × (1 − shrinkage across)" : "") + " − 2 × selvage",
                   worked(*cloth.width, in) + (shrinks ? " × (1 − " + text_of(*cloth.shrinks_across) + ")" : "") + " − 2 × " +
                       worked(selvage_of(cloth), in))
          .add();
    }
    if (cloth.shrinks_along.known())
      figure("shrinks").is(Percent{shrinks_along(cloth)}).from("", cloth.shrinks_along).written().add();
  }
}

void add_eased_seams(const Project& project, Figures& figures) {
  for (const Seam& seam : project.seams) {
    if (!seam.ease_in.known() || seam.ease_in->is_zero()) continue;
    NewFigure(figures, shown_in(project), "seams", seam.named.name, "ease in")
        .is(*seam.ease_in)
        .from("", seam.ease_in)
        .written()
        .at(seam.named.at)
        .add();
  }
}

void add_skirt(const Project& project, RoundSums& sums, Figures& figures) {
  const ShownIn in = shown_in(project);
  std::vector<std::string> breadths;
  for (const Piece& piece : project.pieces)
    if (is_outer_skirt_breadth(project, piece)) breadths.push_back(piece.named.name);
  const Joined joined = sums.joined(breadths);
  const auto figure = [&](std::string_view quantity) {
    NewFigure f(figures, in, "skirt", "", quantity);
    if (project.skirt) f.at(project.skirt->at);
    return f;
  };
  if (joined.length) {
    const JoinedLine line = joined_line(project, sums, breadths);
    NewFigure f = figure("joined round");
    f.is(*joined.length).working("the skirt's breadths joined", line.formula, line.numbers);
    for (const std::string& input : line.inputs) f.from(input);
    f.add();
  }
  if (project.skirt && project.skirt->hem && project.skirt->hem->depth.known())
    figure("hem depth").is(*project.skirt->hem->depth).from("", project.skirt->hem->depth).add();
  // As written; else the round of the skirt's pieces, which may be more than its full breadths; else those. A gore is as
  // wide as at its hem.
  if (project.skirt && project.skirt->hem_round.known()) {
    figure("hem round")
        .is(*project.skirt->hem_round)
        .from("", project.skirt->hem_round)
        .written()
        .at(project.skirt->hem_round.at)
        .add();
    return;
  }
  if (project.skirt && project.skirt->kind.known() && (*project.skirt->kind == "tiers" || *project.skirt->kind == "circle"))
    return;
  const Round* round = project.skirt_round();
  const auto all = round == nullptr ? std::nullopt : figures.length("rounds/" + round->named.name + "/joined round");
  if (all && all != joined.length) figure("hem round").is(*all).from("rounds/" + round->named.name + "/joined round").add();
  else if (joined.length) figure("hem round").is(*joined.length).from("skirt/joined round").add();
}

}  // namespace gownsheaf
